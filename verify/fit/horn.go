package fit

import (
	"fmt"
	"math"
	"slices"

	"example.com/hingeline/mixcore"
)

// HornKept is why the horn's lean is kept as written.
type HornKept uint8

// The reasons.
const (
	HornFitted     HornKept = iota // it is not kept
	HornNotTold                    // readings tell it apart from the arm's lean too badly
	HornAsWritten                  // another fits hardly better
	HornOneReading                 // another fits better for the readings at one output only
)

// Horn is what became of the horn's lean in a fit.
type Horn struct {
	Kept HornKept
	// Off is how well it is told, as the other values of a Fitted are, or would be, in
	// degrees: at most 180, which is not at all.
	Off    float64
	Output mixcore.Percent // of HornOneReading
}

// HornOrSwingError is that readings surely do not go with the horn's lean and the servo's
// swing as they are written, and as well with another of the one as of the other.
type HornOrSwingError struct {
	Horn  mixcore.Degrees // its lean
	Swing mixcore.Degrees // for 100 %
}

func (e *HornOrSwingError) Error() string {
	return fmt.Sprintf("the readings go with a horn at %.0f° as well as with a servo that swings %.0f° for 100 %%, and with neither as it is written: measure one of the two", e.Horn, e.Swing)
}

// mostHornOff is how well the horn's lean must be told to be fitted, in degrees.
const mostHornOff = 7.0

// farFromTold is by how much worse than that the lean is told about the fit without it, for
// none with it to be looked for: about that one it is told otherwise.
const farFromTold = 3

// lessThanOne is by how many variances of a reading the sum of squares must still fall with
// the horn's lean where the readings at any one output are left out: noise alone does so
// once in twenty times.
const lessThanOne = 3.84

// hornFit is a Horn with its fit, if there is one, or why nothing can be fitted.
type hornFit struct {
	Horn
	fitted *minimal
	err    error
}

// hornOf says whether the horn's lean is fitted beside what m has, the minimum without it.
//
// An arm that leans bends the travel curve as a horn that leans does, to the second order of
// the swing; only what the third order and the lengths make of it tells the two apart. So
// the lean is fitted where it is told well, where without it readings surely do not fit, and
// where neither one misread place nor a servo that swings otherwise would do the same.
func (m *minimal) hornOf(low, high mixcore.Percent) hornFit {
	h := hornFit{Horn: Horn{Kept: HornNotTold, Off: noneTold}}
	if at := m.hornToldAt(); at > farFromTold*mostHornOff {
		h.Off = at / 2
		return h
	}
	with, err := m.of.chosen(m.withHorn)
	if err != nil {
		return h
	}
	t, err := with.tells(low, high)
	if err != nil {
		return h
	}
	if h.Off = math.Min(t.horn/2, noneTold); t.horn > mostHornOff {
		return h
	}
	variance := readingVariance
	if spare := len(m.of.points) - len(with.x); spare > 0 {
		variance = math.Max(variance, with.sum/float64(spare))
	}
	if m.sum-with.sum < surelyLess*variance {
		h.Kept = HornAsWritten
		return h
	}
	if at, ok := m.oneReading(&with, lessThanOne*variance); ok {
		h.Kept, h.Output = HornOneReading, at
		return h
	}
	if swing, sum := m.ofAnotherSwing(); sum < with.sum+surelyLess*variance {
		h.err = &HornOrSwingError{mixcore.Degrees(with.geometry.HornDeg), mixcore.Degrees(swing)}
		return h
	}
	h.Kept, h.fitted = HornFitted, &with
	return h
}

// hornAside is by how much the horn's lean is put aside where a search for it begins, either
// way, in leanUnit.
const hornAside = 1.5

// withHorn is the minimum with the horn's lean that is nearest to one without it.
func (m *minimal) withHorn(rod bool) (minimal, error) {
	p := m.of.freeing(rod, true)
	var starts [][]float64
	for _, horn := range []float64{0, hornAside, -hornAside} {
		x := slices.Clone(m.x[:2])
		if rod {
			x = append(x, 0)
			copy(x[2:], m.x[2:])
		}
		starts = append(starts, append(x, horn))
	}
	return p.minimumFrom(starts)
}

// noneTold stands for an angle of which nothing is told, in degrees.
const noneTold = 180

// hornToldAt is how well the horn's lean would be told about a minimum without it, of
// readings to half a degree.
func (m *minimal) hornToldAt() float64 {
	p := m.of.freeing(m.of.rod, true)
	x := append(slices.Clone(m.x), 0)
	j := p.jacobian(x, len(p.points))
	if j == nil {
		return 2 * noneTold
	}
	inverse, ok := inverseOf(j)
	if !ok {
		return 2 * noneTold
	}
	at := p.hornAt()
	return math.Min(wideOf(readingVariance)*leanUnit*math.Sqrt(inverse.At(at, at)), 2*noneTold)
}

// oneReading finds an output without whose readings the horn's lean would not be fitted.
func (m *minimal) oneReading(with *minimal, least float64) (mixcore.Percent, bool) {
	for _, one := range Merged(m.of.points) {
		left := slices.DeleteFunc(slices.Clone(m.of.points), func(p Point) bool {
			return math.Abs(float64(p.Output-one.Output)) < sameOutput
		})
		without, horned := *m.of, *with.of
		without.points, horned.points = left, left
		_, sum := without.descend(m.x)
		_, less := horned.descend(with.x)
		if !(sum-less >= least) {
			return one.Output, true
		}
	}
	return 0, false
}

// How far a servo's swing may be off what is written, as a part; at how many places either
// side another is looked for, and how closely.
const (
	swingFactor = 1.3
	swingSteps  = 6
	swingTo     = 1e-3
)

// ofAnotherSwing is the servo's swing, in degrees for 100 %, with which the values of m fit
// best, and the sum of squares there: step by step away from what is written, and about the
// best of those by sections in the golden ratio.
func (m *minimal) ofAnotherSwing() (swing, sum float64) {
	from := func(log float64, x []float64) ([]float64, float64) {
		d := *m.of.drive
		d.Servo.Swing *= mixcore.Degrees(math.Exp(log))
		p := *m.of
		p.drive = &d
		return p.descend(x)
	}
	step := math.Log(swingFactor) / swingSteps
	best, nearX, sum := 0.0, m.x, m.sum
	for _, way := range []float64{-step, step} {
		x := m.x
		for i := 1; i <= swingSteps; i++ {
			start := slices.Clone(x)
			start[0] -= way // a servo that swings more shows as a longer arm
			next, now := from(float64(i)*way, start)
			if math.IsInf(now, 1) {
				break
			}
			if x = next; now < sum {
				best, nearX, sum = float64(i)*way, x, now
			}
		}
	}
	at := func(log float64) float64 {
		_, now := from(log, nearX)
		return now
	}
	golden := (math.Sqrt(5) - 1) / 2
	a, b := best-step, best+step
	c, d := b-golden*(b-a), a+golden*(b-a)
	atC, atD := at(c), at(d)
	for b-a > swingTo {
		if atC <= atD {
			b, d, atD = d, c, atC
			c = b - golden*(b-a)
			atC = at(c)
		} else {
			a, c, atC = c, d, atD
			d = a + golden*(b-a)
			atD = at(d)
		}
	}
	if now := math.Min(atC, atD); now < sum {
		best, sum = (a+b)/2, now
	}
	return float64(m.of.drive.Servo.Swing) * math.Exp(best), sum
}
