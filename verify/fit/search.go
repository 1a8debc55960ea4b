package fit

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/diff/fd"
	"gonum.org/v1/gonum/mat"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
)

// What is searched: an arm from a third to three times as long as written, and the angles
// that a file may hold, in degrees; a pushrod by so much longer or shorter, in arms.
const (
	armFactor = 3
	leastLean = 10
	mostLean  = 170
	rodByArms = 1
)

// problem is one servo, what was measured of its surface, and what is searched beside the
// arm's length and lean.
type problem struct {
	drive     *mixcore.Drive
	points    []Point
	rod, horn bool // the pushrod's length, the horn's lean
}

// freeing is a problem in which other values are searched.
func (p problem) freeing(rod, horn bool) *problem {
	p.rod, p.horn = rod, horn
	return &p
}

// free is how many values are searched.
func (p *problem) free() int { return p.hornAt() + one(p.horn) }

// hornAt is the place of the horn's lean among them, behind the arm's length and lean and
// the pushrod's length.
func (p *problem) hornAt() int { return 2 + one(p.rod) }

func one(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// angle is what a geometry makes of an output; false where it cannot be built or is driven
// to its end.
func (p *problem) angle(l *linkage.Linkage, output mixcore.Percent) (float64, bool) {
	swing := float64(output) / 100 * float64(p.drive.Servo.Swing)
	if !p.drive.Servo.PlusAft {
		swing = -swing
	}
	most := float64(p.drive.Servo.Max)
	swing = math.Max(-most, math.Min(most, swing))
	fore, aft := l.Range()
	return p.drive.Sign * l.Swing(swing), swing > fore.Swing && swing < aft.Swing
}

func (p *problem) residuals(g linkage.Geometry) ([]float64, bool) {
	l, err := linkage.New(g)
	if err != nil {
		return nil, false
	}
	list := make([]float64, len(p.points))
	for i, at := range p.points {
		a, ok := p.angle(l, at.Output)
		if !ok {
			return nil, false
		}
		list[i] = a - float64(at.Angle)
	}
	return list, true
}

// minimal is a minimum.
type minimal struct {
	of       *problem
	geometry linkage.Geometry
	x        []float64
	sum      float64
}

// of is the geometry of values in units in which they are about 1: the arm's length and
// lean, the pushrod's length and the horn's lean.
func (p *problem) of(x []float64) (g linkage.Geometry, ok bool) {
	g = *p.drive.Linkage
	g.Arm *= math.Exp(x[0])
	g.ArmDeg += x[1] * leanUnit
	if math.Abs(x[0]) > math.Log(armFactor) || g.ArmDeg < leastLean || g.ArmDeg > mostLean {
		return g, false
	}
	if p.horn {
		if g.HornDeg += x[p.hornAt()] * leanUnit; g.HornDeg < leastLean || g.HornDeg > mostLean {
			return g, false
		}
	}
	if p.rod {
		if math.Abs(x[2]) > rodByArms {
			return g, false
		}
		g.Pushrod = p.rodWritten() + x[2]*p.drive.Linkage.Arm
		return g, g.Pushrod > 0
	}
	return g, true
}

// leanUnit is the unit of an angle in a search, in degrees.
const leanUnit = 10

// rodWritten is the pushrod's length as written, or as the angles at neutral need.
func (p *problem) rodWritten() float64 {
	if l, err := linkage.New(*p.drive.Linkage); err == nil {
		return l.Pushrod()
	}
	return p.drive.Linkage.Pushrod
}

func (p *problem) sum(x []float64) float64 {
	g, ok := p.of(x)
	if !ok {
		return math.Inf(1)
	}
	list, ok := p.residuals(g)
	if !ok {
		return math.Inf(1)
	}
	sum := 0.0
	for _, r := range list {
		sum += r * r
	}
	return sum
}

// How the search goes on and ends: damping of a step, and how little the sum of squares may
// still fall, as a part of it.
const (
	firstDamping = 1e-3
	leastDamping = 1e-12
	mostDamping  = 1e9
	settled      = 1e-10
	mostRounds   = 200
)

// minimum finds the least sum of squares: from several starts by damped Gauss-Newton steps
// (Levenberg, Quarterly of Applied Mathematics 2, 1944; Marquardt, Journal of SIAM 11,
// 1963), each solved by an orthogonal decomposition.
func (p *problem) minimum() (best minimal, err error) { return p.minimumFrom(p.starts()) }

func (p *problem) minimumFrom(starts [][]float64) (best minimal, err error) {
	best.sum, best.of = math.Inf(1), p
	for _, start := range starts {
		if x, sum := p.descend(start); sum < best.sum {
			best.x, best.sum = x, sum
		}
	}
	if math.IsInf(best.sum, 1) {
		return best, ErrNoFit
	}
	best.geometry, _ = p.of(best.x)
	return best, nil
}

// starts are where a search begins: at what is written, and with one value on either side.
func (p *problem) starts() [][]float64 {
	list := [][]float64{make([]float64, p.free())}
	beside := func(at int, by float64) {
		for _, sign := range []float64{1, -1} {
			x := make([]float64, p.free())
			x[at] = sign * by
			list = append(list, x)
		}
	}
	beside(0, 0.3)
	beside(1, 2)
	if p.horn {
		beside(p.hornAt(), hornAside)
	}
	return list
}

// descend goes down from a start to a minimum.
func (p *problem) descend(x []float64) ([]float64, float64) {
	sum := p.sum(x)
	if math.IsInf(sum, 1) {
		return x, sum
	}
	damping := firstDamping
	for range mostRounds {
		g, _ := p.of(x)
		r, _ := p.residuals(g)
		j := p.jacobian(x, len(r))
		if j == nil {
			break
		}
		fell := 0.0
		for damping <= mostDamping {
			next, ok := stepFrom(x, j, r, damping)
			if now := p.sum(next); ok && now < sum {
				x, fell, sum = next, sum-now, now
				damping = math.Max(damping/10, leastDamping)
				break
			}
			damping *= 10
		}
		if fell <= settled*sum {
			break
		}
	}
	return x, sum
}

// stepFrom solves min |J·d + r|² + damping·|d|².
func stepFrom(x []float64, j *mat.Dense, r []float64, damping float64) ([]float64, bool) {
	n, k := len(r), len(x)
	a := mat.NewDense(n+k, k, nil)
	a.Slice(0, n, 0, k).(*mat.Dense).Copy(j)
	b := mat.NewVecDense(n+k, nil)
	for i, ri := range r {
		b.SetVec(i, -ri)
	}
	for i := range k {
		a.Set(n+i, i, math.Sqrt(damping))
	}
	var qr mat.QR
	qr.Factorize(a)
	var d mat.VecDense
	if err := qr.SolveVecTo(&d, false, b); err != nil {
		return x, false
	}
	next := slices.Clone(x)
	for i := range next {
		next[i] += d.AtVec(i)
	}
	return next, true
}

// jacobian is how residuals change with the values; nil at the edge of what can be built.
func (p *problem) jacobian(x []float64, n int) *mat.Dense {
	j := mat.NewDense(n, len(x), nil)
	fine := true
	fd.Jacobian(j, func(y, x []float64) {
		g, _ := p.of(x)
		list, ok := p.residuals(g)
		if fine = fine && ok; ok {
			copy(y, list)
		}
	}, x, &fd.JacobianSettings{Formula: fd.Central})
	if !fine {
		return nil
	}
	return j
}
