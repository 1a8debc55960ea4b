package laws

import (
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/wording"
)

var rates = law{Info{"rates", "Rates",
	"Each throw reaches the surfaces whole: while its rate is in force no travel limit, servo or stop cuts the stick short, at every switch and lever position with the other sticks and all trims at rest."},
	func(mk *maker) {
		for d := range mk.s.Demands {
			if mk.s.Controls[mk.s.Demands[d].From].Kind != mixcore.AxisControl || !mk.added(d) {
				continue
			}
			for r := range mk.s.Demands[d].Rates {
				mk.whole(d, r)
			}
		}
		if len(mk.claims) == 0 {
			mk.none = "no channel adds a demand of a stick"
		}
	}}

// whole claims that nothing cuts a rate's throw short.
func (mk *maker) whole(demand, rate int) {
	d := &mk.s.Demands[demand]
	c := claim{sentence: mk.rateName(demand, rate) + " reaches the surfaces whole"}
	var sees []func(v *view) sight
	need := func(want prove.Want, seen func(v *view) sight) {
		now := mk.handsOff()
		now[d.From] = prove.Whole(&mk.s.Controls[d.From])
		c.needs = append(c.needs, prove.Claim{Now: now, When: mk.inForce(demand, rate), Want: want})
		sees = append(sees, seen)
	}
	for i := range mk.s.Channels {
		if !adds(&mk.s.Channels[i], demand) {
			continue
		}
		need(prove.Travel{Channel: i}, func(v *view) sight { return mk.outOfTravel(v, i) })
		for part := range mk.s.Parts {
			p := &mk.s.Parts[part]
			for k := range p.Drives {
				if want, ok := mk.withinServo(part, k); ok && want.Channel == i {
					need(want, func(v *view) sight { return mk.servoEnds(v, part, k) })
				}
			}
			low, high := mk.shortOfStops(part)
			if p.Motion.Hinged() && p.Drives[0].Channel == i && !isFree(low, high) {
				need(prove.Place{Part: part, Low: low, High: high}, func(v *view) sight { return mk.atStop(v, part) })
			}
		}
	}
	c.spare = func(need int, margin float64) (spare, bool) {
		if _, ok := c.needs[need].Want.(prove.Travel); ok {
			return travelLeft(need, margin)
		}
		return spare{}, false
	}
	c.seen = func(v *view) sight { return sees[v.index](v) }
	mk.add(c)
}

// rateName says a rate of a demand: "the throw of roll of 90 % while rate switch is
// high".
func (mk *maker) rateName(demand, rate int) string {
	d := &mk.s.Demands[demand]
	name := "the throw of " + d.Name + " of " + mk.throwWords(demand, rate)
	switch when := d.Rates[rate].When; {
	case when != nil:
		name += " while " + wording.Condition(mk.s, when)
	case len(d.Rates) > 1:
		name += " otherwise"
	}
	return name
}

func (mk *maker) throwWords(demand, rate int) string {
	t, axis := mk.s.Demands[demand].Rates[rate].Throw, mk.s.Controls[mk.s.Demands[demand].From].Axis
	if t.Plus == t.Minus {
		return wording.Setpoint(t.Plus)
	}
	return wording.Setpoint(t.Plus) + " " + wording.AxisSide(axis, true) + " and " + wording.Setpoint(t.Minus) + " " + wording.AxisSide(axis, false)
}
