package fit

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"example.com/hingeline/mixcore"
)

// Tabled is a measured table that fits measurements.
type Tabled struct {
	Table         []mixcore.Point // as it is written into a file
	Before, After []float64       // computed less measured, by point, degrees
	Points        []Point         // what was measured, the mean of each output
}

// ErrTurnsBack is that a table through what was measured would turn back.
var ErrTurnsBack = errors.New("a table through what was measured would turn back: measure it again")

// leastSpan is how much of a table's outputs must lie between the outermost measurements.
const leastSpan = 0.5

// mostApart is how far apart readings at one output may be, in degrees: twice what two
// readings to half a degree are at most.
const mostApart = 2.0

// mostPoints is the most points that a file's table may have.
const mostPoints = 33

// Table moves a measured table to what was measured: between two measurements by what
// they are off, in a straight line, and beyond the outermost by as much as there.
func Table(old []mixcore.Point, points []Point) (*Tabled, error) {
	return TableOver(old, points, mixcore.Percent(old[0].X), mixcore.Percent(old[len(old)-1].X))
}

// TableOver is Table of a channel that is never put further than from low to high, in
// percent: the measurements need to reach over half of that only.
func TableOver(old []mixcore.Point, points []Point, low, high mixcore.Percent) (*Tabled, error) {
	if err := apart(points); err != nil {
		return nil, err
	}
	points = Merged(points)
	if len(points) < leastPoints {
		return nil, ErrFewPoints
	}
	t := &Tabled{Points: points}
	off := make([]float64, len(points))
	for i, p := range points {
		off[i] = float64(p.Angle) - lineAt(old, float64(p.Output))
		t.Before = append(t.Before, -off[i])
	}
	first, last := old[0], old[len(old)-1]
	lowest, highest := points[0], points[len(points)-1]
	should, does := lineAt(old, float64(highest.Output))-lineAt(old, float64(lowest.Output)), float64(highest.Angle-lowest.Angle)
	if err := mistaken(should, does); err != nil {
		return nil, err
	}
	if float64(highest.Output-lowest.Output) < leastSpan*(math.Min(last.X, float64(high))-math.Max(first.X, float64(low))) {
		return nil, ErrTooClose
	}
	var at []float64
	for _, p := range old {
		at = append(at, p.X)
	}
	for _, p := range points {
		x := to(float64(p.Output), outputTo)
		if x < first.X || x > last.X {
			continue
		}
		if i := slices.IndexFunc(at, func(o float64) bool { return math.Abs(o-x) < nearOutput }); i < 0 {
			at = append(at, x)
		}
	}
	slices.SortFunc(at, cmp.Compare)
	if len(at) > mostPoints {
		return nil, errors.New("the table would have more points than a file may hold")
	}
	for _, x := range at {
		t.Table = append(t.Table, mixcore.Point{X: x, Y: to(lineAt(old, x)+between(points, off, x), angleTo) + 0})
	}
	for i := 2; i < len(t.Table); i++ {
		if (t.Table[i].Y-t.Table[i-1].Y)*(t.Table[i-1].Y-t.Table[i-2].Y) < 0 {
			return nil, ErrTurnsBack
		}
	}
	for _, p := range points {
		t.After = append(t.After, lineAt(t.Table, float64(p.Output))-float64(p.Angle))
	}
	return t, nil
}

// apart says which readings at one output do not go together.
func apart(points []Point) error {
	sorted := inOrder(points)
	for i := range sorted {
		for j := i + 1; j < len(sorted) && sorted[j].Output-sorted[i].Output < sameOutput; j++ {
			if off := math.Abs(float64(sorted[j].Angle - sorted[i].Angle)); off > mostApart {
				return &ScatteredError{true, sorted[i].Output, off}
			}
		}
	}
	return nil
}

const (
	outputTo   = 0.1 // percent, of outputs in a table
	nearOutput = 5   // percent: closer to a point of the table than this, none is put beside it
)

// lineAt is the straight line between the points that x lies between.
func lineAt(p []mixcore.Point, x float64) float64 {
	i := 1
	for i < len(p)-1 && x >= p[i].X {
		i++
	}
	a, b := p[i-1], p[i]
	x = math.Max(p[0].X, math.Min(p[len(p)-1].X, x))
	return a.Y + (b.Y-a.Y)*(x-a.X)/(b.X-a.X)
}

// between is what points are off at x.
func between(points []Point, off []float64, x float64) float64 {
	if x <= float64(points[0].Output) {
		return off[0]
	}
	for i := 1; i < len(points); i++ {
		if a, b := float64(points[i-1].Output), float64(points[i].Output); x <= b {
			return off[i-1] + (off[i]-off[i-1])*(x-a)/(b-a)
		}
	}
	return off[len(off)-1]
}
