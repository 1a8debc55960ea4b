package phrase

import (
	"fmt"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

// prefixes reads what says over which positions an outcome must hold, as far as it
// stands before the outcome: "at every switch position, whatever the roll stick does".
// What was read is in r.every.
func (r *reader) prefixes() (any bool) {
	for r.problem == nil {
		if !r.try(func() bool {
			if any {
				r.joint()
			}
			return r.opensEvery(r.at) && r.prefix()
		}) {
			break
		}
		any = true
	}
	if any && r.problem == nil {
		r.words(",")
	}
	return any
}

// opensEvery is true where words stand that begin a prefix.
func (r *reader) opensEvery(at int) bool {
	next := func(n int) string { return r.tokens[min(at+n, len(r.tokens)-1)].text }
	switch next(0) {
	case "whatever", "whenever", "always":
		return true
	case "at":
		return slices.Contains(everyWords, next(1))
	case "with":
		probe := r.probe(at + 1)
		_, ok := probe.control()
		return ok && probe.words("anywhere")
	}
	return false
}

var everyWords = []string{"every", "any", "each", "all"}

func (r *reader) prefix() bool {
	switch {
	case r.words("always"):
		r.free(Every{usual: ever})
		return true
	case r.words("whatever"):
		return r.whatever()
	case r.words("whenever"):
		return r.whenever(r.commaAfter(r.at))
	case r.words("at"):
		return r.atEvery()
	}
	r.words("with")
	return r.anywhere()
}

// free adds to what is free.
func (r *reader) free(e Every) {
	if r.every != nil {
		e = r.every.and(&e)
	}
	r.every = &e
}

// freeOne sets one control free, unless it is already.
func (r *reader) freeOne(control int, over prove.Span, how freedom, from int) bool {
	f := freeControl{Control: control, Over: over, How: how, At: r.span(from)}
	if r.every != nil && slices.ContainsFunc(r.every.named, func(g freeControl) bool { return g.Control == control && g.How != freeWatched }) {
		return r.fail(&Problem{Column: f.At.Column, Width: f.At.Width, Code: CodeConflict,
			Message: fmt.Sprintf("where the %s stands is said twice", r.setup.Controls[control].Name), Hint: "name each control once"})
	}
	r.free(Every{named: []freeControl{f}})
	return true
}

// whatever reads what follows the word: "the roll stick and the yaw stick do", "else
// moves", "happens".
func (r *reader) whatever() bool {
	rest := r.words("else")
	if r.any("moves", "happens") || r.words("is", "moved") || rest && r.any("does", "do") {
		r.free(everythingMoves())
		return true
	}
	if rest {
		return r.fail(problemAt(r.peek(), CodeUnknownSentence, "whatever else does what?", "write \"whatever else moves\""))
	}
	for {
		from := r.at
		if kind, ok := r.kinds(); ok {
			if !r.freeKinds(kind, freeMoving) {
				return false
			}
		} else if control, ok := r.control(); ok {
			if !r.freeOne(control, prove.Whole(&r.setup.Controls[control]), freeMoving, from) {
				return false
			}
		} else if r.last().text == "," {
			return r.fail(problemAt(r.last(), CodeUnknownSentence, "whatever it does?", "write \"whatever the … does, …\""))
		} else {
			return r.problem == nil && r.unknownFree(from)
		}
		if r.any("does", "do", "moves", "move") {
			return true
		}
		if r.peek().kind == wordToken && r.peek().text != "and" {
			return r.unknownFree(from)
		}
		if !r.joint() {
			return r.fail(problemAt(r.peek(), CodeUnknownSentence, "whatever it does?", "write \"whatever the "+
				r.someControl()+" does, …\""))
		}
	}
}

func (r *reader) someControl() string {
	if len(r.setup.Controls) == 0 {
		return "roll stick"
	}
	return r.setup.Controls[0].Name
}

// unknownFree is the problem of a name that no control has, up to the verb or comma
// behind it.
func (r *reader) unknownFree(from int) bool {
	if from < len(r.tokens)-1 && r.tokens[from].text == "the" {
		from++
	}
	end := from
	for end < len(r.tokens)-1 && !slices.Contains([]string{"does", "do", "moves", "move", "stands", "is", "position", "positions", "anywhere", ",", "and"}, r.tokens[end].text) {
		end++
	}
	if end == from {
		return r.fail(problemAt(r.tokens[from], CodeUnknownSentence, "the name of a control is missing", "write \"whatever the "+r.someControl()+" does, …\" or \"whatever else moves, …\""))
	}
	return r.unknownControl(from, end)
}

// controlKinds are the words for kinds of control.
var controlKinds = map[string]mixcore.ControlKind{
	"stick": mixcore.AxisControl, "lever": mixcore.LeverControl, "switch": mixcore.SwitchControl, "trim": mixcore.TrimControl,
	"sticks": mixcore.AxisControl, "levers": mixcore.LeverControl, "switches": mixcore.SwitchControl, "trims": mixcore.TrimControl,
}

var kindNames = map[mixcore.ControlKind]string{
	mixcore.AxisControl: "stick", mixcore.LeverControl: "lever", mixcore.SwitchControl: "switch", mixcore.TrimControl: "trim",
}

// kinds takes the word for a kind of control, unless a control is called so.
func (r *reader) kinds() (mixcore.ControlKind, bool) {
	start := r.at
	r.words("the")
	kind, ok := controlKinds[r.peek().text]
	if _, words := r.controls.find(r.tokens[r.at:]); !ok || words > 0 {
		r.at = start
		return 0, false
	}
	r.at++
	return kind, true
}

// freeKinds sets a kind of control free.
func (r *reader) freeKinds(kind mixcore.ControlKind, how freedom) bool {
	if !slices.ContainsFunc(r.setup.Controls, func(c mixcore.Control) bool { return c.Kind == kind }) {
		return r.fail(problemAt(r.last(), CodeUnknownName, "the model has no "+kindNames[kind], "leave it out"))
	}
	r.free(Every{kinds: []freeKind{{kind, how}}})
	return true
}

// atEvery reads what follows "at": "every switch position and every stick position",
// "every position of the flap lever and the rate switch", "every rate switch position".
func (r *reader) atEvery() bool {
	r.any(everyWords...)
	for {
		if !r.everyPlace() {
			return false
		}
		more := r.try(func() bool {
			comma := r.words(",")
			and := r.words("and")
			if r.opensEvery(r.at) {
				return false
			}
			every := r.any(everyWords...)
			return and || comma && every
		})
		if !more {
			return true
		}
	}
}

// everyPlace reads one of the places of "at every".
func (r *reader) everyPlace() bool {
	from := r.at
	if r.any("position", "positions") {
		if r.words("of") {
			return r.ofControls()
		}
		for _, kind := range kinds {
			r.free(Every{kinds: []freeKind{{kind, freeStanding}}})
		}
		return true
	}
	if kind, ok := r.kinds(); ok {
		r.any("position", "positions")
		return r.freeKinds(kind, freeStanding)
	}
	control, ok := r.control()
	switch {
	case r.problem != nil:
		return false
	case !ok:
		return r.unknownFree(from)
	}
	r.any("position", "positions")
	return r.freeOne(control, prove.Whole(&r.setup.Controls[control]), freeStanding, from)
}

// ofControls reads "the flap lever and the rate switch".
func (r *reader) ofControls() bool {
	for {
		from := r.at
		control, ok := r.control()
		if !ok {
			return r.problem == nil && r.unknownFree(from)
		}
		if !r.freeOne(control, prove.Whole(&r.setup.Controls[control]), freeStanding, from) {
			return false
		}
		if !r.try(func() bool {
			if !r.any("and", "or") {
				return false
			}
			probe := r.probe(r.at)
			_, ok := probe.control()
			return ok && !slices.Contains(everyWords, r.peek().text)
		}) {
			return true
		}
	}
}
