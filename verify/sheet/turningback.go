package sheet

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore"
)

// steady says whether a part surely goes one way on each side of a control's rest, so
// that it is furthest at an end: one servo, in whose channel every demand of the control is
// added, straight or with a curve that keeps its sense, with shares that agree, and no
// condition looks at the control. It may say no too often.
func (t *thrower) steady(part, control int) bool {
	p := &t.s.Parts[part]
	if len(p.Drives) > 1 {
		return false
	}
	var sense [2]float64 // by side of rest, minus first: which way the sum goes; 0 for none yet
	agree := func(side int, way float64) bool {
		if way == 0 {
			return true
		}
		way = math.Copysign(1, way)
		if sense[side] == 0 {
			sense[side] = way
		}
		return sense[side] == way
	}
	mix := t.s.Channels[p.Drives[0].Channel].Mix
	for i := range mix {
		line := &mix[i]
		if t.looks(line.When, control) {
			return false
		}
		if line.Op != mixcore.Add && line.Op != mixcore.ScaleBy {
			continue
		}
		d := &t.s.Demands[line.Demand]
		for r := range d.Rates {
			if t.looks(d.Rates[r].When, control) {
				return false
			}
		}
		if d.From != control {
			continue
		}
		if line.Op == mixcore.ScaleBy || !plain(d) || !agree(0, -float64(line.Share.Minus)) || !agree(1, float64(line.Share.Plus)) {
			return false
		}
	}
	return true
}

// plain says whether a demand rises with its control and is 0 at its rest, so that the
// shares of its two sides belong to the two sides of the control.
func plain(d *mixcore.Demand) bool { return d.Curve == nil && d.Values == nil }

// looks says whether a condition looks at a control.
func (t *thrower) looks(c *mixcore.Condition, control int) bool {
	r := t.probe.Nothing()
	t.probe.AddCondition(r, c)
	return r[control]
}

// How a control's way is searched for where a part turns back.
const (
	wayPieces  = 24 // between two places where something changes
	narrowings = 30 // around each place where it turns back
)

// search looks at a control's whole way: where something changes, at places between,
// and, where the part turns back, ever more closely. What turns back and back again
// between two places looked at is missed: of a draw of thousands of set-ups never more
// than a few hundredths of a degree.
func (t *thrower) search(control int, look func(x float64), angle func(x float64) mixcore.Degrees) {
	for _, x := range t.way(control) {
		look(x)
	}
	for _, x := range t.turns(control, angle) {
		look(x)
	}
}

// way is a control's whole way: where something changes, and places between.
func (t *thrower) way(control int) []float64 {
	low, high := t.s.Controls[control].Range()
	points := slices.Clone(t.probe.Points[control])
	points = append(points, low, high)
	slices.Sort(points)
	points = slices.Compact(points)
	var way []float64
	for i := range points[1:] {
		for k := range wayPieces {
			way = append(way, points[i]+(points[i+1]-points[i])*float64(k)/wayPieces)
		}
	}
	return append(way, high)
}

// turns are the places on a control's way, its ends left out, where something turns back.
func (t *thrower) turns(control int, of func(x float64) mixcore.Degrees) []float64 {
	way := t.way(control)
	values := make([]mixcore.Degrees, len(way))
	for i, x := range way {
		values[i] = of(x)
	}
	var turns []float64
	for i := 1; i < len(way)-1; i++ {
		switch before, at, behind := values[i-1], values[i], values[i+1]; {
		case at >= before && at >= behind && (at > before || at > behind):
			turns = append(turns, t.turn(way[i-1], way[i+1], of))
		case at <= before && at <= behind && (at < before || at < behind):
			turns = append(turns, t.turn(way[i-1], way[i+1], func(x float64) mixcore.Degrees { return -of(x) }))
		}
	}
	return turns
}

// turn is the place between two others where something is most, to 0.001 %.
func (t *thrower) turn(a, b float64, of func(x float64) mixcore.Degrees) float64 {
	for range narrowings {
		x, y := a+(b-a)/3, b-(b-a)/3
		if of(x) < of(y) {
			a = x
		} else {
			b = y
		}
	}
	return math.Round((a+b)/2*1000) / 1000
}
