package phrase

import (
	"math"

	"example.com/hingeline/mixcore"
)

// bites refuses an amount that no part or channel of the subject could miss.
func (r *reader) bites(o *Outcome, a Amount, from int) bool {
	if a.Kind == NoAmount {
		return true
	}
	for _, i := range o.Subject.Channels {
		c := &r.setup.Channels[i]
		low, high := endsOf(c, a.Unit)
		if a.takesIn(low, high) {
			return r.fail(across(r.tokens[from], r.last(), CodeBadNumber,
				"nothing could fail this: the "+channelTitle(c)+" is between "+measure(low, a.Unit)+" and "+measure(high, a.Unit)+" always", "write a narrower amount"))
		}
	}
	for _, i := range o.Subject.Parts {
		p := &r.setup.Parts[i]
		most := mostOf(p, a.Unit)
		guarded := o.Verb == Move || o.Verb == Stand && p.Motion.Hinged() // its direction can still fail
		switch {
		case guarded && ((a.Kind == AtLeast || a.Kind == Over) && a.Value == 0 || a.Kind != About && a.takesIn(0, most)):
			return r.fail(across(r.tokens[from], r.last(), CodeBadNumber,
				a.words()+" asks nothing: it is always so", "leave the amount out, or write one that could be missed"))
		case !guarded && a.takesIn(0, most):
			return r.fail(across(r.tokens[from], r.last(), CodeBadNumber,
				"nothing could fail this: the "+p.Name+" is between "+measure(0, a.Unit)+" and "+measure(most, a.Unit)+" always", "write a narrower amount"))
		}
	}
	return true
}

// takesIn is true if the amount holds for everything from low to high.
func (a Amount) takesIn(low, high float64) bool {
	return a.holds(low) && a.holds(high)
}

// endsOf is the least and the most that a channel could put out, in a unit.
func endsOf(c *mixcore.Channel, unit string) (low, high float64) {
	if unit == "%" {
		return float64(mixcore.OutputOf(c.PulseMin)), float64(mixcore.OutputOf(c.PulseMax))
	}
	return float64(c.PulseMin), float64(c.PulseMax)
}

// mostOf is the furthest that a part could be from neutral, in a unit.
func mostOf(p *mixcore.Part, unit string) float64 {
	switch unit {
	case "°":
		return largest["°"]
	case "mm":
		return 2 * math.Abs(float64(p.Chord))
	}
	return 100
}
