package phrase

import (
	"fmt"
	"slices"
)

// everywhere gives outcomes what the prefixes set free, and a condition that stands
// behind them all, and refuses what cannot be asked of every position.
func (r *reader) everywhere(outcomes []Outcome) []Outcome {
	if r.problem != nil || len(outcomes) == 0 {
		return outcomes
	}
	if r.try(func() bool {
		r.words(",")
		return r.words("whenever")
	}) && !r.whenever(len(r.tokens)-1) {
		return outcomes
	}
	for i := range outcomes {
		o := &outcomes[i]
		if r.every != nil {
			e := *r.every
			if o.Every != nil {
				e = e.and(o.Every)
			}
			o.Every = &e
		}
		if o.Every != nil {
			o.Every = r.scoped(o)
		}
		if o.Every != nil && !r.askable(o) {
			return outcomes
		}
	}
	return outcomes
}

// scoped adds what the words of an outcome set free by themselves. That a motor stands
// still is what a modeller relies on: it
// is asked over everything that the scenario has not set, unless "whatever" says
// what moves: "whenever the motor switch is safe, the motor is stopped" says nothing if
// the throttle rests.
func (r *reader) scoped(o *Outcome) *Every {
	e := o.Every
	said := len(e.named)+len(e.kinds) > 0
	usual := e.usual
	if o.reliedOn() && (usual == unset || usual == given && e.When != nil) {
		usual = ever
	}
	if usual == given || usual == unset && said || usual == ever && e.saysWhatMoves() {
		return e
	}
	all := everythingMoves()
	whole := e.and(&all)
	return &whole
}

func (o *Outcome) reliedOn() bool {
	switch o.Verb {
	case Stopped, StaysStopped, Running, PowerAt:
		return true
	}
	return false
}

// notTimed refuses a time.
func (r *reader) notTimed(o *Outcome) bool {
	return r.notAlways(o, "what holds at every position is decided once everything has come to rest",
		"leave the time out, or ask for one movement with When")
}

func (r *reader) notAlways(o *Outcome, message, hint string) bool {
	return r.fail(&Problem{Column: o.At.Column, Width: max(o.At.Width, 1), Code: CodeNotAlways, Message: message, Hint: hint})
}

// askable refuses an outcome that cannot be asked of every position.
func (r *reader) askable(o *Outcome) bool {
	const once = "ask for it at one position, with When or \"with …, …\""
	if o.Clock != AtRest {
		return r.notTimed(o)
	}
	switch o.Verb {
	case AddsToRoll:
		return r.notAlways(o, "a share of the roll is an estimate for one movement, not for every one", once)
	case NoMoreAdverse:
		return r.notAlways(o, "adverse yaw is an estimate for one movement, not for every one", once)
	case HoldsAir:
		return r.notAlways(o, "a servo's torque is an estimate for one position, not for every one", "ask for it where it is most: with the surface furthest out")
	case ServosAgree:
		return r.notAlways(o, "whether servos agree is asked at one position, not at every one", once)
	case Stops:
		return r.notAlways(o, "a motor stops in one movement, not at every position", "write \"is stopped\" or \"stays stopped\"")
	case AtStop:
		if !o.Not {
			return r.notAlways(o, "at its stop, or driven against it, at every position cannot be decided", "ask for it at one position, or write how far it stands")
		}
		o.Verb, o.Not = NotAtStop, false
	case Running:
		if o.Not {
			o.Verb, o.Not = Stopped, false
		}
	case Stopped:
		if o.Not {
			o.Verb, o.Not = Running, false
		}
	}
	return !o.Not || r.negatable(o)
}

// negatable refuses "never" where it would leave several things that are wanted.
func (r *reader) negatable(o *Outcome) bool {
	switch o.Verb {
	case Turn:
		return true
	case Move, Stand, PowerAt, PulseAt, OutputAt:
		return r.oneSided(o)
	case Still:
		return r.notAlways(o, "\"never stays still\" would hold for a part that goes the wrong way too", "write which way it moves: \"whenever …, the part rises\"")
	case StaysStopped:
		return r.notAlways(o, "\"never stays stopped\" leaves open what it does", "write \"whenever …, the motor runs\"")
	}
	return r.notAlways(o, "\"never\" does not go with this", "say what should be so, with \"always\" or \"at every position\"")
}

// oneSided wants an amount behind "never" to have one side that is wrong.
func (r *reader) oneSided(o *Outcome) bool {
	a := o.Amount
	upward := a.Kind == NoAmount || a.Kind == AtLeast || a.Kind == Over
	if downward := a.Kind == AtMost || a.Kind == Under; !upward && !(downward && (o.Verb == PowerAt || o.Verb == PulseAt || o.Verb == OutputAt)) {
		limit := a.Value + a.Slack
		if a.Kind == Between {
			limit = a.High
		}
		return r.notAlways(o, fmt.Sprintf("never%s leaves open whether it may be more", a.behind()),
			"write \"never … more than "+measure(limit, a.Unit)+"\"")
	}
	for _, i := range o.Subject.Parts {
		if most := mostOf(&r.setup.Parts[i], a.Unit); a.missesAll(0, most) {
			return r.toothless(o, 0, most)
		}
	}
	for _, i := range o.Subject.Channels {
		if low, high := endsOf(&r.setup.Channels[i], a.Unit); a.missesAll(low, high) {
			return r.toothless(o, low, high)
		}
	}
	return true
}

// missesAll is true if an amount with one limit holds for nothing from low to high.
func (a Amount) missesAll(low, high float64) bool {
	return a.Kind != NoAmount && !a.holds(low) && !a.holds(high)
}

func (r *reader) toothless(o *Outcome, low, high float64) bool {
	return r.fail(&Problem{Column: o.At.Column, Width: max(o.At.Width, 1), Code: CodeBadNumber,
		Message: "nothing could fail this: it is between " + measure(low, o.Amount.Unit) + " and " + measure(high, o.Amount.Unit) + " always", Hint: "write a narrower amount"})
}

// Unfit is the problem of an outcome in a situation in which it would show nothing, or
// which fixes what it sets free; nil if there is none.
func (v *Vocabulary) Unfit(o *Outcome, at *Situation) *Problem {
	if o.Every == nil || at.Unheard() {
		return o.Unmoved(at)
	}
	if p := v.alreadySet(o, at); p != nil {
		return p
	}
	if !o.NeedsMovement() {
		return nil
	}
	if at.Moved {
		return o.Unmoved(at)
	}
	p := &Problem{Column: o.At.Column, Width: o.At.Width, Code: CodeNoMovement}
	moves := slices.ContainsFunc(o.Roams(v.setup, at), func(r Roam) bool { return r.Moves })
	switch {
	case at.Now.Lost:
		p.Message = "while the signal is lost, moving a control changes nothing"
		p.Hint = "ask where things stand, or write \"whatever else moves, when the signal is lost, …\""
	case !moves:
		p.Message, p.Hint = "nothing moves here: every control that is free only stands somewhere", "write a When before it, or \"whatever the … does\""
	case (o.Verb == Move || o.Verb == Turn) && !o.Not && v.restCounts(o, at):
		p.Message = "what is free may also stay where it is, and then nothing moves: this can never hold"
		p.Hint = "write \"whenever the … is …, …\" for the positions that count, \"the more …, the higher …\", or a When"
	default:
		return nil
	}
	return p
}

// restCounts is true if a movement that does not leave where the scenario stands is
// among the positions at which the outcome must hold.
func (v *Vocabulary) restCounts(o *Outcome, at *Situation) bool {
	now := at.Now.Input()
	return o.Every.When == nil || v.model.Plan.Holds(o.Every.When, &now)
}

// alreadySet finds a control that an outcome sets free and the scenario has put
// somewhere.
func (v *Vocabulary) alreadySet(o *Outcome, at *Situation) *Problem {
	moved := at.MovedControls()
	for _, f := range o.Every.named {
		set := at.sets(f.Control) && (f.How == freeStanding || f.How == freeWatched && !slices.Contains(o.Every.watchedKinds(v.setup), v.setup.Controls[f.Control].Kind))
		if set || slices.Contains(moved, f.Control) {
			return v.setElsewhere(f.Control, f.At)
		}
	}
	if o.Verb == Rising && slices.Contains(moved, o.Control) {
		return v.setElsewhere(o.Control, o.At)
	}
	return nil
}

func (v *Vocabulary) setElsewhere(control int, at Span) *Problem {
	return &Problem{Column: at.Column, Width: max(at.Width, 1), Code: CodeConflict,
		Message: fmt.Sprintf("the %s has been put somewhere by a step before, and cannot be anywhere too", v.setup.Controls[control].Name),
		Hint:    "leave out one of the two"}
}
