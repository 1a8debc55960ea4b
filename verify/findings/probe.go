package findings

import (
	"slices"

	"example.com/hingeline/mixcore"
)

// The effort of one look over a model, and how fine it is.
const (
	// budget is how many poses are evaluated at most, so that a model of any
	// size takes well under a second.
	budget = 150_000
	// threshold is how far either side of a threshold a control is tried, in
	// percent: the unit of all settings.
	threshold = 0.001
	// halfWay is where sticks and levers are tried, as a share of their travel
	// from 0, to see an expo or a smooth curve, which change nothing at the ends.
	halfWay = 50
)

// probePoints are the positions to try of each control, its rest first, then
// from one end to the other.
func (f *finder) probePoints() [][]float64 {
	points := make([][]float64, len(f.s.Controls))
	for i := range f.s.Controls {
		c := &f.s.Controls[i]
		low, high := c.Range()
		if c.Kind == mixcore.SwitchControl {
			for p := range c.Positions {
				points[i] = append(points[i], float64(p))
			}
			continue
		}
		points[i] = append(points[i], low, 0, high)
		for _, d := range c.Detents {
			points[i] = append(points[i], float64(d.At))
		}
	}
	f.eachCondition(func(c *mixcore.Condition) {
		if f.s.Controls[c.Control].Kind == mixcore.SwitchControl {
			return
		}
		for _, at := range thresholds(c) {
			points[c.Control] = append(points[c.Control], at-threshold, at, at+threshold)
		}
	})
	for i := range f.s.Demands {
		d := &f.s.Demands[i]
		if d.Values == nil && bends(d) {
			low, _ := f.s.Controls[d.From].Range()
			points[d.From] = append(points[d.From], halfWay)
			if low < 0 {
				points[d.From] = append(points[d.From], -halfWay)
			}
		}
		if d.Curve != nil {
			for _, p := range d.Curve.Points {
				points[d.From] = append(points[d.From], p.X)
			}
		}
	}
	for i := range points {
		points[i] = f.inOrder(i, points[i])
	}
	return points
}

// inOrder puts a control's rest first and the other positions after it, each
// once and inside the control's range.
func (f *finder) inOrder(control int, points []float64) []float64 {
	c := &f.s.Controls[control]
	low, high := c.Range()
	rest := c.Rest()
	slices.Sort(points)
	ordered := []float64{rest}
	for _, at := range slices.Compact(points) {
		if at != rest && at >= low && at <= high {
			ordered = append(ordered, at)
		}
	}
	return ordered
}

// bends says whether a demand is no straight line between its control's ends.
func bends(d *mixcore.Demand) bool {
	return d.Curve != nil && d.Curve.Smooth ||
		slices.ContainsFunc(d.Rates, func(r mixcore.Rate) bool { return r.Expo != 0 })
}

func thresholds(c *mixcore.Condition) []float64 {
	switch c.Op {
	case mixcore.Above, mixcore.AtLeast:
		return []float64{float64(c.Low)}
	case mixcore.Below, mixcore.AtMost:
		return []float64{float64(c.High)}
	case mixcore.Within:
		return []float64{float64(c.Low), float64(c.High)}
	}
	return nil
}

// eachCondition visits every test of a control in the set-up.
func (f *finder) eachCondition(visit func(*mixcore.Condition)) {
	var down func(c *mixcore.Condition)
	down = func(c *mixcore.Condition) {
		switch {
		case c == nil || c.Op == mixcore.InPhase:
		case c.Op == mixcore.And || c.Op == mixcore.Or || c.Op == mixcore.Not:
			for i := range c.Args {
				down(&c.Args[i])
			}
		default:
			visit(c)
		}
	}
	f.eachWhen(down)
}

// eachWhen visits every condition that the set-up writes out; it is nil where a
// rate, a mix line or a motor has none.
func (f *finder) eachWhen(visit func(c *mixcore.Condition)) {
	for i := range f.s.Phases {
		visit(&f.s.Phases[i].When)
	}
	for i := range f.s.Demands {
		for j := range f.s.Demands[i].Rates {
			visit(f.s.Demands[i].Rates[j].When)
		}
	}
	for i := range f.s.Channels {
		for j := range f.s.Channels[i].Mix {
			visit(f.s.Channels[i].Mix[j].When)
		}
	}
	for i := range f.s.Parts {
		if motor := f.s.Parts[i].Motor; motor != nil {
			visit(motor.StoppedWhen)
		}
	}
}

// combinations is how many poses of some controls there are to try; at most
// beyond, which is returned where there are more.
func (f *finder) combinations(controls []int, beyond int) int {
	n := 1
	for _, c := range controls {
		if n *= len(f.points[c]); n >= beyond {
			return beyond
		}
	}
	return n
}

// walk visits poses of some controls, with everything else at rest: first with
// none of them off rest, then with each one, then with each two, and so on. It
// stops after so many visits and says whether it tried every combination. Where
// it cannot, three and more controls are tried at their ends only. digits are
// the indexes into points of the controls.
func (f *finder) walk(controls []int, most int, visit func(in *mixcore.Input, digits []int, moved int)) bool {
	all := f.combinations(controls, most+1) <= most
	in := f.rest.Clone()
	digits := make([]int, len(controls))
	visits := 0
	var choose func(from, more, moved int)
	choose = func(from, more, moved int) {
		if more == 0 {
			visits++
			visit(&in, digits, moved)
			return
		}
		for i := from; i <= len(controls)-more; i++ {
			c := controls[i]
			for d := 1; d < len(f.points[c]) && visits < most; d++ {
				if !all && moved > 2 && !f.atEnd(c, d) {
					continue
				}
				in.Position[c], digits[i] = f.points[c][d], d
				choose(i+1, more-1, moved)
			}
			in.Position[c], digits[i] = f.points[c][0], 0
		}
	}
	for moved := 0; moved <= len(controls) && visits < most; moved++ {
		choose(0, moved, moved)
	}
	return all
}

// atEnd says whether a probe point is an end of a stick or lever, or any
// position of a switch.
func (f *finder) atEnd(control, point int) bool {
	c := &f.s.Controls[control]
	low, high := c.Range()
	at := f.points[control][point]
	return c.Kind == mixcore.SwitchControl || at == low || at == high
}
