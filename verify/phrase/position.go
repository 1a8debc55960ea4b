package phrase

import (
	"fmt"
	"math"
	"slices"

	"example.com/hingeline/mixcore"
)

// standing reads "is 12° down", "is at neutral", "is at 50% ± 2%".
func (r *reader) standing(o *Outcome) bool {
	if r.any("points", "point") {
		return r.stand(o)
	}
	if !r.any("is", "are") {
		return false
	}
	switch {
	case r.words("at", "neutral"), r.words("neutral"), r.words("centred"), r.words("centered"):
		o.Verb = Neutral
	case r.words("stopped"):
		o.Verb = Stopped
	case r.words("running"):
		o.Verb = Running
	case r.words("within", "its", "travel"), r.words("within", "their", "travel"):
		o.Verb = InTravel
	case r.words("not", "at", "its", "stop"), r.words("not", "at", "their", "stops"), r.words("not", "at", "their", "stop"):
		o.Verb = NotAtStop
		return r.hasStops(o)
	case r.words("at", "its", "stop"), r.words("at", "their", "stops"), r.words("at", "their", "stop"):
		o.Verb = AtStop
		return r.hasStops(o)
	default:
		return r.stand(o) || r.problem == nil && r.atAmount(o)
	}
	return true
}

// hasStops refuses to judge a stop that the airframe file does not give.
func (r *reader) hasStops(o *Outcome) bool {
	for _, i := range o.Subject.Parts {
		p := &r.setup.Parts[i]
		if p.Motion.Hinged() && math.IsInf(float64(p.Stops.Plus), 1) && math.IsInf(float64(p.Stops.Minus), 1) {
			return r.fail(across(r.tokens[max(r.at-3, 0)], r.last(), CodeMissingSize,
				fmt.Sprintf("where the %s has its stops is not known", p.Name), "give its stops in the airframe file"))
		}
	}
	return true
}

// way reads a direction of a position.
func (r *reader) way() (Way, bool) {
	switch {
	case r.words("above", "neutral"), r.words("up"):
		return Up, true
	case r.words("below", "neutral"), r.words("down"):
		return Down, true
	case r.words("to", "the", "left"), r.words("left"):
		return Left, true
	case r.words("to", "the", "right"), r.words("right"):
		return Right, true
	case r.words("out"):
		return Out, true
	case r.words("in"):
		return In, true
	}
	return NoWay, false
}

// stand reads a direction with an amount before or behind it, or none. A
// tolerance may stand behind the direction: "12° down ± 2°".
func (r *reader) stand(o *Outcome) bool {
	start := r.at
	if r.peek().text == "at" && r.tokens[r.at+1].kind == numberToken {
		r.at++
	}
	from := r.at
	amount, sized := r.amount()
	way, ok := r.way()
	switch {
	case r.problem != nil:
		return false
	case !ok:
		r.at = start
		return false
	case sized && amount.Kind == About && r.words("±"):
		if slices.ContainsFunc(r.tokens[from:r.at-1], func(t token) bool { return t.text == "±" }) {
			return r.fail(problemAt(r.last(), CodeConflict, "the tolerance is given twice", "write it once"))
		}
		r.tolerance(&amount)
	case !sized:
		behind := r.at
		r.words(",")
		r.words("by")
		from = r.at
		if amount, sized = r.amount(); !sized {
			r.at = behind
		}
	}
	if r.problem != nil {
		return false
	}
	o.Verb, o.Way = Stand, way
	if sized {
		if !r.suits(o, start) || !r.fits(o.Subject, amount, from) || !r.bites(o, amount, from) {
			return false
		}
		o.Amount = amount
	}
	return true
}

// atAmount reads "at 50% ± 2%" of a motor, "at 1500 µs" of a channel.
func (r *reader) atAmount(o *Outcome) bool {
	from := r.at
	amount, ok := r.amount()
	if !ok && r.problem == nil && r.words("at") {
		from = r.at
		amount, ok = r.amount()
	}
	if !ok || r.problem != nil {
		return false
	}
	o.Amount = amount
	switch {
	case len(o.Subject.Channels) > 0 && amount.Unit == "µs":
		o.Verb = PulseAt
	case len(o.Subject.Channels) > 0:
		o.Verb = OutputAt
	case r.setup.Parts[o.Subject.Parts[0]].Motion == mixcore.Power:
		o.Verb = PowerAt
	default:
		p := &r.setup.Parts[o.Subject.Parts[0]]
		return r.fail(across(r.tokens[from], r.last(), CodeUnknownSentence, "which way from neutral?", motionHint(p)))
	}
	return r.fits(o.Subject, amount, from) && r.bites(o, amount, from)
}
