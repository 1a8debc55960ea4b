package phrase

import (
	"fmt"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/wording"
)

// agree reads "agree", of the servos of a part.
func (r *reader) agree(o *Outcome) bool {
	start := r.at
	if !r.any("agree", "agrees") {
		return false
	}
	for _, i := range o.Subject.Parts {
		p := &r.setup.Parts[i]
		switch {
		case !p.Motion.Hinged():
			return r.fail(across(r.tokens[start], r.last(), CodeWrongMotion, fmt.Sprintf("the %s has no hinge at which servos could disagree", p.Name), "name hinged surfaces"))
		case len(p.Drives) < 2:
			return r.fail(across(r.tokens[start], r.last(), CodeWrongMotion, fmt.Sprintf("the %s has one servo, which always agrees with itself", p.Name), "name parts that have two servos or more"))
		}
	}
	o.Verb = ServosAgree
	return true
}

// servosAgree judges whether the servos of a part ask it for the same angle.
func (j *judge) servosAgree(part int, in instant) seen {
	passed := in.out.Parts[part].Limits&mixcore.ServosFight == 0
	if j.mute {
		return seen{passed: passed}
	}
	spread := j.trace(in).Parts[part].Spread
	return seen{passed: passed, got: "its servos ask for angles " + wording.AngleBeside(spread, mixcore.FightSpread) + " apart"}
}
