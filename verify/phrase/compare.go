package phrase

import (
	"fmt"
	"slices"
)

// comparison reads "moves together with the port flap", "moves less than …".
func (r *reader) comparison(o *Outcome) bool {
	start := r.at
	if !r.any("moves", "move") {
		return false
	}
	switch {
	case r.words("together", "with"):
		o.Verb = Together
	case r.words("opposite", "to"):
		o.Verb = Opposite
	case r.words("as", "far", "as"):
		o.Verb = AsFar
	case r.words("less", "than"):
		o.Verb = LessThan
	case r.words("more", "than"):
		o.Verb = MoreThan
	default:
		r.at = start
		return false
	}
	from := r.at
	if r.peek().kind == numberToken {
		return r.fail(across(r.tokens[start], r.peek(), CodeUnknownSentence, "moves which way?",
			"write rises, drops, moves left or moves right, then the amount"))
	}
	other, ok := r.subject()
	if !ok {
		if r.problem == nil {
			r.unknownSubject(r.at, r.phraseEnd(r.at))
		}
		return false
	}
	if len(other.Parts) != 1 {
		return r.fail(across(r.tokens[from], r.last(), CodeUnclearName, "a comparison needs one other part", "name one"))
	}
	o.Other = other.Parts[0]
	if slices.Contains(o.Subject.Parts, o.Other) {
		return r.fail(across(r.tokens[from], r.last(), CodeUnclearName,
			fmt.Sprintf("the %s is compared with itself", r.setup.Parts[o.Other].Name), "name another part"))
	}
	for _, i := range o.Subject.Parts {
		if r.setup.Parts[i].Motion != r.setup.Parts[o.Other].Motion {
			return r.fail(across(r.tokens[from], r.last(), CodeWrongMotion,
				fmt.Sprintf("the %s and the %s do not move in the same words", r.setup.Parts[i].Name, r.setup.Parts[o.Other].Name),
				motionHint(&r.setup.Parts[i])))
		}
	}
	if o.Verb == AsFar {
		return r.asFarTolerance(o)
	}
	return true
}

// asFarTolerance reads "± 1°" behind "moves as far as the port flap".
func (r *reader) asFarTolerance(o *Outcome) bool {
	unit := "%"
	if r.setup.Parts[o.Other].Motion.Hinged() {
		unit = "°"
	}
	o.Amount = Amount{Kind: About, Slack: defaultSlack[unit], Unit: unit}
	from := r.at
	if !r.words("±") {
		return true
	}
	o.Amount.Unit = ""
	r.tolerance(&o.Amount)
	if most := mostOf(&r.setup.Parts[o.Other], unit); r.problem == nil && o.Amount.Unit == unit && o.Amount.Slack >= most {
		return r.fail(across(r.tokens[from], r.last(), CodeBadNumber, "nothing could fail this: two parts never differ by more than "+measure(most, unit), "write a smaller tolerance"))
	}
	if r.problem == nil && o.Amount.Unit != unit {
		return r.fail(across(r.tokens[from], r.last(), CodeBadUnit, "these two are compared in "+unit, "write the tolerance in "+unit))
	}
	return r.problem == nil
}
