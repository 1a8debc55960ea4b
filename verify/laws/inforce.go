package laws

import (
	"slices"

	"example.com/hingeline/mixcore"
)

// inForce is the condition in which a rate of a demand is in force: its own holds and
// none before it; nil if that is always so.
func (mk *maker) inForce(demand, rate int) *mixcore.Condition {
	var all []mixcore.Condition
	for i := range mk.s.Demands[demand].Rates[:rate+1] {
		when := mk.s.Demands[demand].Rates[i].When
		switch {
		case when == nil:
		case i < rate:
			all = append(all, negation(when))
		default:
			all = append(all, *when)
		}
	}
	return allOf(all)
}

func negation(c *mixcore.Condition) mixcore.Condition {
	return mixcore.Condition{Op: mixcore.Not, Args: []mixcore.Condition{*c}}
}

// allOf is the condition that all of some hold; nil of none.
func allOf(list []mixcore.Condition) *mixcore.Condition {
	switch len(list) {
	case 0:
		return nil
	case 1:
		return &list[0]
	}
	return &mixcore.Condition{Op: mixcore.And, Args: list}
}

// anyOf is the condition that one of some holds. There must be one.
func anyOf(list []mixcore.Condition) mixcore.Condition {
	if len(list) == 1 {
		return list[0]
	}
	return mixcore.Condition{Op: mixcore.Or, Args: list}
}

// stickAlive is the condition in which some demand of a stick that reaches what turns
// the model about an axis has a throw of more than 0 % one way or the other; nil where that is always so, or never: then there is no
// switch that could be meant.
func (mk *maker) stickAlive(stick int, axis mixcore.Axis) *mixcore.Condition {
	var off []mixcore.Condition // by demand: all its throw is 0 %
	for d := range mk.s.Demands {
		if mk.s.Demands[d].From != stick || !mk.turnsBy(d, axis) {
			continue
		}
		zero, always := mk.noThrow(d)
		switch {
		case always:
		case zero == nil:
			return nil
		default:
			off = append(off, anyOf(zero))
		}
	}
	if off == nil {
		return nil
	}
	alive := negation(allOf(off))
	return &alive
}

// turnsBy says whether a demand reaches a part that turns the model about an axis.
func (mk *maker) turnsBy(demand int, axis mixcore.Axis) bool {
	for part := range mk.s.Parts {
		if mk.reaches(demand, part) && mk.air.Duty(part, axis) != 0 {
			return true
		}
	}
	return false
}

// noThrow are the conditions in which a demand's throw is 0 % both ways; always, where
// that is so without a condition.
func (mk *maker) noThrow(demand int) (when []mixcore.Condition, always bool) {
	for r := range mk.s.Demands[demand].Rates {
		if mk.s.Demands[demand].Rates[r].Throw != mixcore.Both(0) {
			continue
		}
		c := mk.inForce(demand, r)
		if c == nil {
			return nil, true
		}
		when = append(when, *c)
	}
	return when, false
}

// added says whether a channel adds a demand to its mix.
func (mk *maker) added(demand int) bool {
	return slices.ContainsFunc(mk.s.Channels, func(c mixcore.Channel) bool { return adds(&c, demand) })
}

func adds(c *mixcore.Channel, demand int) bool {
	return slices.ContainsFunc(c.Mix, func(l mixcore.MixLine) bool { return l.Op == mixcore.Add && l.Demand == demand })
}

// names says whether a condition looks at a control, itself or through a phase.
func (mk *maker) names(c *mixcore.Condition, control int) bool {
	r := mk.probe.Nothing()
	mk.probe.AddCondition(r, c)
	return r[control]
}

// elsewhere is what a condition comes to with a switch at another position, as a
// condition on a pose in which that switch stands here.
func (mk *maker) elsewhere(c *mixcore.Condition, control, here, there int) mixcore.Condition {
	switch {
	case c.Op == mixcore.InPhase:
		return mk.elsewhere(&mk.s.Phases[c.Phase].When, control, here, there)
	case c.Args != nil:
		out := mixcore.Condition{Op: c.Op}
		for i := range c.Args {
			out.Args = append(out.Args, mk.elsewhere(&c.Args[i], control, here, there))
		}
		return out
	case c.Op != mixcore.AtPosition || c.Control != control:
		return *c
	}
	standsHere := mixcore.Condition{Op: mixcore.AtPosition, Control: control, Position: here}
	if c.Position == there {
		return standsHere
	}
	return negation(&standsHere)
}
