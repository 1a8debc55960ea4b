package phrase

import (
	"fmt"
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/wording"
)

// anywhere reads what follows "with" where a control may stand anywhere on a stretch:
// "the flap lever anywhere between parked and takeoff". Settings may follow it with
// "and": they are read as if "with" stood there.
func (r *reader) anywhere() bool {
	for {
		from := r.at
		control, ok := r.control()
		if !ok || !r.words("anywhere") {
			return false
		}
		over, ok := r.stretch(control, from)
		if !ok || !r.freeOne(control, over, freeStanding, from) {
			return false
		}
		start := r.at
		r.words(",")
		if !r.words("and") {
			r.at = start
			return true
		}
		if probe := r.probe(r.at); !probe.anywhereFollows() {
			return r.settingsFollow(start)
		}
	}
}

func (r *reader) anywhereFollows() bool {
	_, ok := r.control()
	return ok && r.words("anywhere")
}

// settingsFollow turns the "and" before settings into "with".
func (r *reader) settingsFollow(start int) bool {
	if probe := r.probe(r.at); !probe.setting(&Group{}) && probe.problem == nil {
		r.at = start
		return true
	}
	r.at--
	r.tokens = slices.Clone(r.tokens)
	r.tokens[r.at].text = "with"
	return true
}

// stretch reads "between parked and takeoff", "above 20 %", "at most 40 %"; without any
// it is all of the control's travel.
func (r *reader) stretch(control, from int) (prove.Span, bool) {
	c := &r.setup.Controls[control]
	over := prove.Whole(c)
	start := r.at
	two := false
	var set func(first, second float64)
	switch {
	case r.words("between"), r.words("from"):
		two = true
		set = func(a, b float64) { over.Low, over.High = min(a, b), max(a, b) }
	case r.words("above"), r.words("more", "than"):
		set = func(a, _ float64) { over.Low = math.Nextafter(a, math.Inf(1)) }
	case r.words("below"), r.words("less", "than"):
		set = func(a, _ float64) { over.High = math.Nextafter(a, math.Inf(-1)) }
	case r.words("at", "least"):
		set = func(a, _ float64) { over.Low = a }
	case r.words("at", "most"), r.words("up", "to"):
		set = func(a, _ float64) { over.High = a }
	default:
		return over, true
	}
	if c.Kind == mixcore.SwitchControl {
		return over, r.fail(across(r.tokens[start], r.last(), CodeUnknownPosition, fmt.Sprintf("the %s is a switch: nothing lies between its positions", c.Name),
			"write \"whenever the "+c.Name+" is "+wording.OneOf(c.Positions)+", …\""))
	}
	first, ok := r.place(control)
	second := first
	if ok && two {
		if !r.any("and", "to") {
			return over, r.fail(problemAt(r.peek(), CodeUnknownPosition, "between one place and which other?", "write it as \"between "+fmt.Sprint(placeNames(c)[0])+" and …\""))
		}
		second, ok = r.place(control)
	}
	if !ok {
		return over, false
	}
	set(first, second)
	if !(over.Low < over.High) {
		return over, r.fail(across(r.tokens[from], r.last(), CodeOutOfRange, fmt.Sprintf("that leaves the %s nowhere to stand", c.Name),
			"write two different places, or one that it can stand beyond"))
	}
	return over, true
}

// place reads where a control is put, or says that it cannot be.
func (r *reader) place(control int) (float64, bool) {
	from := r.at
	at, ok := r.value(control)
	if !ok && r.problem == nil {
		end := r.phraseEnd(from)
		r.unknownPlace(control, r.tokens[from:end])
	}
	return at, ok && r.problem == nil
}
