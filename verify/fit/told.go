package fit

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
)

// readingOff is by how much a reading may be off either way, in degrees, every size as
// likely: a modelling choice, no source. readingVariance is the variance of that.
const (
	readingOff      = 0.5
	readingVariance = readingOff * readingOff / 3
)

// How sure what is told is: in 19 of 20 fits a value lies within it. Readings count as worse
// than they should be where as much left over comes once in twenty times.
const sure = 0.95

// scattered is what may be left over of one reading beside the fit, as a root of the mean
// over those that are not used up by the values fitted, in degrees: three times what
// readings to half a degree leave.
const scattered = 0.9

// told is how well a minimum is told: half the width of what holds the value surely.
type told struct{ ratio, lean, rod, horn, travel float64 }

// told works out how well a minimum is told from how the angles change with the values
// about it. Readings count as good to half a degree, or as worse where what is left over
// shows that they are. The error is a *ScatteredError, ErrNoFit where it is no minimum, or
// ErrTooClose where readings do not tell the values apart at all.
func (m *minimal) told(low, high mixcore.Percent) (t told, err error) {
	p := m.of
	n, k := len(p.points), len(m.x)
	left, _ := p.residuals(m.geometry)
	j := p.jacobian(m.x, n)
	if j == nil {
		return t, ErrNoFit
	}
	inverse, ok := inverseOf(j)
	if !ok {
		return t, ErrTooClose
	}
	if !minimumThere(j, inverse, left, m.sum) {
		return t, ErrNoFit
	}
	wide := wideOf(readingVariance)
	if free := float64(n - k); free > 0 {
		if m.sum/free > scattered*scattered {
			return t, p.worst(j, inverse, left)
		}
		if m.sum > readingVariance*(distuv.ChiSquared{K: free}).Quantile(sure) {
			wide = (distuv.StudentsT{Sigma: 1, Nu: free}).Quantile((1+sure)/2) * math.Sqrt(m.sum/free)
		}
	}
	t.ratio = wide * m.geometry.Arm / m.geometry.Horn * math.Sqrt(inverse.At(0, 0))
	t.lean = wide * leanUnit * math.Sqrt(inverse.At(1, 1))
	if p.rod {
		t.rod = wide * p.drive.Linkage.Arm * math.Sqrt(inverse.At(2, 2))
	}
	if at := p.hornAt(); p.horn {
		t.horn = standsOut * wide * leanUnit * math.Sqrt(inverse.At(at, at))
	}
	over := *p
	over.points = p.travel(m.geometry, low, high)
	j = over.jacobian(m.x, len(over.points))
	if j == nil {
		return t, ErrNoFit
	}
	for i := range over.points {
		t.travel = math.Max(t.travel, wide*math.Sqrt(mat.Inner(j.RowView(i), inverse, j.RowView(i))))
	}
	return t, nil
}

// standsOut is by how much what is told of the horn's lean is wider than what the readings
// leave open: it is fitted only where it stands out, and so where readings that are off
// make much of it. Found by trying; TestHornRecoversFromNoisyReadings holds it.
const standsOut = 1.4

// wideOf is within how many degrees a reading of a variance lies surely.
func wideOf(variance float64) float64 {
	return distuv.UnitNormal.Quantile((1+sure)/2) * math.Sqrt(variance)
}

// inverseOf is (JᵀJ)⁻¹, which times the variance of a reading is that of the values; false
// where readings do not tell the values apart at all.
func inverseOf(j *mat.Dense) (*mat.Dense, bool) {
	var normal, inverse mat.Dense
	normal.Mul(j.T(), j)
	err := inverse.Inverse(&normal)
	return &inverse, err == nil
}

// settledTo is by how much a step from a minimum may still lower the sum of squares, as a
// part of it and by itself in degrees²: more, and the search was stopped at an edge.
const settledTo = 1e-6

// minimumThere says whether the sum of squares is at its least as far as the angles change
// in straight lines.
func minimumThere(j, inverse *mat.Dense, left []float64, sum float64) bool {
	var slope mat.VecDense
	slope.MulVec(j.T(), mat.NewVecDense(len(left), left))
	return mat.Inner(&slope, inverse, &slope) <= settledTo*(1+sum)
}

// worst names the reading without which the others go together best, where that can be
// told: by how far off it is from a fit of the others.
func (p *problem) worst(j, inverse *mat.Dense, left []float64) error {
	e := &ScatteredError{}
	n, k := j.Dims()
	if n-k < 2 { // without any one of them the others fit exactly
		return e
	}
	most := 0.0
	for i, off := range left {
		own := 1 - mat.Inner(j.RowView(i), inverse, j.RowView(i)) // how little it fits itself
		if fell := off * off / math.Max(own, leastOwn); fell > most {
			most = fell
			*e = ScatteredError{true, p.points[i].Output, math.Abs(off) / math.Max(own, leastOwn)}
		}
	}
	return e
}

// leastOwn keeps a reading that no other holds from counting without end.
const leastOwn = 1e-3

// travelSteps is at how many places the travel is looked at, less one.
const travelSteps = 20

// travel are places from one output to another, as far as a geometry goes.
func (p *problem) travel(g linkage.Geometry, low, high mixcore.Percent) (list []Point) {
	l, err := linkage.New(g)
	if err != nil {
		return nil
	}
	for i := range travelSteps + 1 {
		at := low + (high-low)*mixcore.Percent(i)/travelSteps
		if _, ok := p.angle(l, at); ok {
			list = append(list, Point{Output: at})
		}
	}
	return list
}
