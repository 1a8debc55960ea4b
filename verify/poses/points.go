package poses

import (
	"slices"

	"example.com/hingeline/mixcore"
)

// How fine the positions are.
const (
	// threshold is how far either side of a threshold a control is tried, in
	// percent: the unit of all settings.
	threshold = 0.001
	// halfWay is where sticks and levers are tried, as a share of their travel
	// from 0, to see an expo or a smooth curve, which change nothing at the ends.
	halfWay = 50
)

// points are the positions to try of each control, its rest first, then
// from one end to the other.
func (p *Probe) points() [][]float64 {
	points := make([][]float64, len(p.setup.Controls))
	for i := range p.setup.Controls {
		c := &p.setup.Controls[i]
		low, high := c.Range()
		if c.Kind == mixcore.SwitchControl {
			for at := range c.Positions {
				points[i] = append(points[i], float64(at))
			}
			continue
		}
		points[i] = append(points[i], low, 0, high)
		for _, d := range c.Detents {
			points[i] = append(points[i], float64(d.At))
		}
	}
	p.EachTest(func(c *mixcore.Condition) {
		if p.setup.Controls[c.Control].Kind == mixcore.SwitchControl {
			return
		}
		for _, at := range Thresholds(c) {
			points[c.Control] = append(points[c.Control], at-threshold, at, at+threshold)
		}
	})
	for i := range p.setup.Demands {
		d := &p.setup.Demands[i]
		if d.Values == nil && bends(d) {
			low, _ := p.setup.Controls[d.From].Range()
			points[d.From] = append(points[d.From], halfWay)
			if low < 0 {
				points[d.From] = append(points[d.From], -halfWay)
			}
		}
		if d.Curve != nil {
			for _, bend := range d.Curve.Points {
				points[d.From] = append(points[d.From], bend.X)
			}
		}
	}
	for i := range points {
		points[i] = p.inOrder(i, points[i])
	}
	return points
}

// inOrder puts a control's rest first and the other positions after it, each
// once and inside the control's range.
func (p *Probe) inOrder(control int, points []float64) []float64 {
	c := &p.setup.Controls[control]
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

// Thresholds are where a test of a lever or stick begins or ceases to hold, in
// percent.
func Thresholds(c *mixcore.Condition) []float64 {
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

// EachTest visits every test of a control in the set-up.
func (p *Probe) EachTest(visit func(*mixcore.Condition)) {
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
	p.EachWhen(down)
}

// EachWhen visits every condition that the set-up writes out; it is nil where a
// rate, a mix line or a motor has none.
func (p *Probe) EachWhen(visit func(c *mixcore.Condition)) {
	for i := range p.setup.Phases {
		visit(&p.setup.Phases[i].When)
	}
	for i := range p.setup.Demands {
		for j := range p.setup.Demands[i].Rates {
			visit(p.setup.Demands[i].Rates[j].When)
		}
	}
	for i := range p.setup.Channels {
		for j := range p.setup.Channels[i].Mix {
			visit(p.setup.Channels[i].Mix[j].When)
		}
	}
	for i := range p.setup.Parts {
		if motor := p.setup.Parts[i].Motor; motor != nil {
			visit(motor.StoppedWhen)
		}
	}
}
