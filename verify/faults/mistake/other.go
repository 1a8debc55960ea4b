package mistake

import (
	"reflect"
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
)

// otherModels loads the settings of other models, and of the plainest one there is:
// roll, pitch, power and yaw on channels 1 to 4, straight through, and nothing else.
func otherModels(l *lister) {
	put := func(name string, edit func(*mixcore.Setup)) {
		what := "the settings of " + name
		l.add(words{what + " are loaded", "load " + what, "load the settings of this model"}, where.Channel(l.m, 0), edit)
	}
	put("a plain model of four channels", plain)
	for _, other := range l.others {
		if reflect.DeepEqual(other.Setup, l.m.Setup) {
			continue
		}
		put(other.Name, func(s *mixcore.Setup) { load(s, other) })
	}
}

// plain is what a model of four channels has.
func plain(s *mixcore.Setup) {
	of := func(fits func(*mixcore.Control) bool) int {
		return slices.IndexFunc(s.Controls, func(c mixcore.Control) bool { return fits(&c) })
	}
	axis := func(a mixcore.Axis) int {
		return of(func(c *mixcore.Control) bool { return c.Kind == mixcore.AxisControl && c.Axis == a })
	}
	lever := of(func(c *mixcore.Control) bool { return c.Kind == mixcore.LeverControl })
	follows := []int{axis(mixcore.Roll), axis(mixcore.Pitch), lever, axis(mixcore.Yaw)}
	for i := range s.Channels {
		c := &s.Channels[i]
		c.Mix, c.Reversed, c.SubTrim, c.Slow = nil, false, 0, 0
		c.Limit, c.EndPoints, c.Failsafe = 100, mixcore.Both(100), mixcore.Failsafe{Hold: true}
		if c.Number > len(follows) || follows[c.Number-1] < 0 {
			continue
		}
		from := follows[c.Number-1]
		demand := len(s.Demands)
		d := mixcore.Demand{Name: "plain " + s.Controls[from].Name, From: from, Trim: mixcore.NoTrim,
			Rates: []mixcore.Rate{{Throw: mixcore.Both(100)}}}
		c.Mix = []mixcore.MixLine{{Op: mixcore.Add, Demand: demand, Share: mixcore.Both(100)}}
		if from == lever { // all its travel is all of the channel's
			d.Curve = &mixcore.Curve{Points: []mixcore.Point{{X: 0, Y: -100}, {X: 100, Y: 100}}}
		}
		s.Demands = append(s.Demands, d)
	}
}

// load puts another model's phases, demands and channels on this one's controls and
// parts: a channel of the same number does what the other's does, one that the other has
// not rests at its middle. Controls are the same by kind, axis and name, else by kind and
// order; what has no match stands at rest.
func load(s *mixcore.Setup, other *airframes.Model) {
	o := other.Setup.Clone()
	first := len(s.Controls)
	same := make([]int, len(o.Controls))
	for i := range o.Controls {
		same[i] = match(s.Controls[:first], &o.Controls[i])
	}
	phases, demands := len(s.Phases), len(s.Demands)
	rewrite := func(c *mixcore.Condition) *mixcore.Condition { return moved(c, &o, same, s.Controls, phases) }
	for _, p := range o.Phases {
		p.When = *rewrite(&p.When)
		s.Phases = append(s.Phases, p)
	}
	rest, out := other.Plan.Rest(), other.Plan.NewOutput()
	other.Plan.Eval(&rest, out)
	for i, d := range o.Demands {
		d = placed(d, out.Demands[i], same, s.Controls)
		for k := range d.Rates {
			d.Rates[k].When = rewrite(d.Rates[k].When)
		}
		s.Demands = append(s.Demands, d)
	}
	for i := range s.Channels {
		number := s.Channels[i].Number
		k := slices.IndexFunc(o.Channels, func(c mixcore.Channel) bool { return c.Number == number })
		if k < 0 {
			s.Channels[i].Mix, s.Channels[i].SubTrim, s.Channels[i].Failsafe = nil, 0, mixcore.Failsafe{Hold: true}
			continue
		}
		c := o.Channels[k]
		c.Name = s.Channels[i].Name
		for j := range c.Mix {
			c.Mix[j].When = rewrite(c.Mix[j].When)
			c.Mix[j].Demand += demands
		}
		s.Channels[i] = c
	}
}

// match is the control that is used for another model's, or -1.
func match(controls []mixcore.Control, of *mixcore.Control) int {
	alike := func(c *mixcore.Control) bool {
		return c.Kind == of.Kind && c.Axis == of.Axis && (c.Kind != mixcore.SwitchControl || len(c.Positions) >= len(of.Positions))
	}
	named := slices.IndexFunc(controls, func(c mixcore.Control) bool {
		return alike(&c) && airframes.FoldName(c.Name) == airframes.FoldName(of.Name)
	})
	if named >= 0 || of.Kind == mixcore.LeverControl || of.Kind == mixcore.SwitchControl {
		return named
	}
	return slices.IndexFunc(controls, func(c mixcore.Control) bool { return alike(&c) })
}

// moved is a condition of the other model about this one's controls: a test of a control
// that has no match is what it is at rest.
func moved(c *mixcore.Condition, o *mixcore.Setup, same []int, controls []mixcore.Control, phases int) *mixcore.Condition {
	if c == nil {
		return nil
	}
	m := *c
	switch c.Op {
	case mixcore.And, mixcore.Or, mixcore.Not:
		m.Args = make([]mixcore.Condition, len(c.Args))
		for i := range c.Args {
			m.Args[i] = *moved(&c.Args[i], o, same, controls, phases)
		}
	case mixcore.InPhase:
		m.Phase += phases
	default:
		if m.Control = same[c.Control]; m.Control < 0 {
			low, high := c.Bounds()
			rest := o.Controls[c.Control].Rest()
			return constant(low <= rest && rest <= high, controls)
		}
	}
	return &m
}

// constant is a condition that always holds, or never: the first control is somewhere in
// its travel, or not.
func constant(holds bool, controls []mixcore.Control) *mixcore.Condition {
	low, high := controls[0].Range()
	c := mixcore.Condition{Op: mixcore.Within, Low: mixcore.Percent(low), High: mixcore.Percent(high)}
	if !holds {
		return &mixcore.Condition{Op: mixcore.Not, Args: []mixcore.Condition{c}}
	}
	return &c
}

// placed is a demand of the other model from this one's control. Of a control that has
// no match it is what it is at rest, whatever is moved.
func placed(d mixcore.Demand, atRest mixcore.Percent, same []int, controls []mixcore.Control) mixcore.Demand {
	d.Name = "other " + d.Name
	if d.Trim != mixcore.NoTrim {
		if d.Trim = same[d.Trim]; d.Trim < 0 {
			d.Trim, d.TrimRange = mixcore.NoTrim, 0
		}
	}
	if same[d.From] < 0 {
		return unmoved(d, atRest, controls)
	}
	d.From = same[d.From]
	if d.Values != nil { // a switch here may have more positions
		for len(d.Values) < len(controls[d.From].Positions) {
			d.Values = append(d.Values, d.Values[len(d.Values)-1])
		}
	}
	return d
}

// unmoved makes a demand one value, wherever the first control stands.
func unmoved(d mixcore.Demand, value mixcore.Percent, controls []mixcore.Control) mixcore.Demand {
	d.From, d.Curve, d.Values = 0, nil, nil
	d.Rates = []mixcore.Rate{{Throw: mixcore.Both(100)}}
	if n := len(controls[0].Positions); n > 0 {
		d.Values = slices.Repeat([]mixcore.Percent{value}, n)
		return d
	}
	low, high := controls[0].Range()
	d.Curve = &mixcore.Curve{Points: []mixcore.Point{{X: low, Y: float64(value)}, {X: high, Y: float64(value)}}}
	return d
}
