package phrase

import (
	"fmt"

	"example.com/hingeline/mixcore"
)

// The tolerance of an amount that gives none.
const (
	DefaultDegrees      = 1.0 // ± degrees
	DefaultMillimetres  = 1.0 // ± mm
	DefaultPercent      = 1.0 // ± percent
	DefaultMicroseconds = 5.0 // ± µs
)

// largest is the largest amount that makes sense, by unit.
var largest = map[string]float64{"°": 180, "mm": 10000, "%": 200, "µs": 3000}

var defaultSlack = map[string]float64{"°": DefaultDegrees, "mm": DefaultMillimetres, "%": DefaultPercent, "µs": DefaultMicroseconds}

// amount reads an amount: "18° ± 2°", "at least 8°", "between 8° and 12°".
// It is false if none stands here.
func (r *reader) amount() (Amount, bool) {
	start := r.at
	kind := About
	switch {
	case r.words("at", "least"):
		kind = AtLeast
	case r.words("at", "most"):
		kind = AtMost
	case r.words("more", "than"):
		kind = Over
	case r.words("less", "than"):
		kind = Under
	case r.words("between"):
		kind = Between
	}
	if r.peek().kind != numberToken {
		r.at = start
		return Amount{}, false
	}
	first := r.peek()
	value, unit := r.measure()
	a := Amount{Kind: kind, Value: value, Unit: unit}
	switch {
	case kind == Between:
		r.between(&a, first)
	case kind == About && r.words("±"):
		r.tolerance(&a)
	case kind == About && unit != "":
		a.Slack = defaultSlack[unit]
	}
	if r.problem != nil {
		return a, false
	}
	switch {
	case r.peek().text != "±":
	case kind == About:
		return a, r.fail(problemAt(r.peek(), CodeConflict, "the tolerance is given twice", "write it once"))
	default:
		return a, r.fail(problemAt(r.peek(), CodeBadNumber, a.words()+" has no tolerance", "write either a limit, or an amount with ±"))
	}
	if factor := lengths[r.peek().text]; a.Unit == "" && factor > 0 {
		return a, r.fail(across(first, r.peek(), CodeBadUnit, r.peek().text+" is not a unit here",
			fmt.Sprintf("write %.4g mm", r.last().number*factor)))
	}
	if a.Unit == "" {
		return a, r.fail(problemAt(first, CodeBadUnit, first.text+" has no unit", "write °, mm, % or µs behind it"))
	}
	for _, v := range []float64{a.Value, a.Low, a.High, a.Slack} {
		if v > largest[a.Unit] || v < -largest[a.Unit] {
			return a, r.fail(across(first, r.last(), CodeBadNumber,
				measure(v, a.Unit)+" is more than anything on a model does", "look at the number again"))
		}
	}
	return a, true
}

// measure takes a number and its unit; the unit is empty if there is none.
func (r *reader) measure() (float64, string) {
	value := r.peek().number
	r.at++
	unit := units[r.peek().text]
	if unit == "s" {
		unit = ""
	}
	if unit != "" {
		r.at++
	}
	return value, unit
}

func (r *reader) between(a *Amount, first token) {
	if !r.any("and", "to") || r.peek().kind != numberToken {
		r.fail(problemAt(r.peek(), CodeBadNumber, "between one value and which other?", "write it as \"between 8° and 12°\""))
		return
	}
	high, unit := r.measure()
	a.Low, a.High, a.Value = a.Value, high, 0
	r.sameUnit(a, unit, first)
	if r.problem == nil && a.Low >= a.High {
		r.fail(across(first, r.last(), CodeBadNumber,
			"nothing lies between "+measure(a.Low, a.Unit)+" and "+measure(a.High, a.Unit), "write the smaller value first"))
	}
}

func (r *reader) tolerance(a *Amount) {
	first := r.peek()
	if first.kind != numberToken {
		r.fail(problemAt(first, CodeBadNumber, "a tolerance must follow ±", "write it as 18° ± 2°"))
		return
	}
	slack, unit := r.measure()
	a.Slack = slack
	r.sameUnit(a, unit, first)
	if r.problem == nil && !(slack > 0) {
		r.fail(problemAt(first, CodeBadNumber, "a tolerance of "+measure(slack, a.Unit)+" can hardly be met", "write a tolerance above 0"))
	}
}

// sameUnit lets one of two numbers carry the unit for both.
func (r *reader) sameUnit(a *Amount, unit string, first token) {
	switch {
	case a.Unit == "":
		a.Unit = unit
	case unit != "" && unit != a.Unit:
		r.fail(across(first, r.last(), CodeBadUnit, fmt.Sprintf("%s and %s cannot be held against each other", a.Unit, unit), "write both in one unit"))
	}
}

// fits says whether an amount's unit fits every subject.
func (r *reader) fits(s Subject, a Amount, from int) bool {
	if a.Kind == NoAmount {
		return true
	}
	first, last := r.tokens[from], r.last()
	for range s.Channels {
		if a.Unit != "%" && a.Unit != "µs" {
			return r.fail(across(first, last, CodeBadUnit, a.Unit+" does not fit a channel", "give a channel's output in % or its pulse in µs"))
		}
	}
	for _, i := range s.Parts {
		p := &r.setup.Parts[i]
		switch hinged := p.Motion.Hinged(); {
		case hinged && a.Unit != "°" && a.Unit != "mm":
			return r.fail(across(first, last, CodeBadUnit, fmt.Sprintf("%s does not fit the %s", a.Unit, p.Name), "give it in ° or in mm at the trailing edge"))
		case !hinged && a.Unit != "%":
			return r.fail(across(first, last, CodeBadUnit, fmt.Sprintf("%s does not fit the %s", a.Unit, p.Name), "give it in %"))
		case a.Unit == "mm" && p.Chord <= 0:
			return r.fail(across(first, last, CodeMissingSize, fmt.Sprintf("millimetres at the %s need its chord", p.Name),
				"give chord_mm in the airframe file, or the amount in degrees"))
		}
	}
	if len(s.Channels) == 0 {
		for _, v := range []float64{a.Value, a.Low, a.High} {
			if v < 0 {
				return r.fail(across(first, last, CodeBadNumber, fmt.Sprintf("%s: which way is minus?", first.text), "write the direction as a word and the amount without a sign"))
			}
		}
		if a.Kind == About && a.Value == 0 || a.Kind == AtMost && a.Value == 0 || a.Kind == Under && a.Value == 0 {
			if s.Parts != nil && r.setup.Parts[s.Parts[0]].Motion != mixcore.Power {
				return r.fail(across(first, last, CodeBadNumber, "an amount of 0 has no direction", "write \"stays still\" or \"is at neutral\""))
			}
		}
	}
	return true
}
