package phrase

import (
	"fmt"
	"strings"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/wording"
)

// settings reads one or more settings joined by commas and "and". It stops
// before a joint that no setting follows.
func (r *reader) settings(g *Group) bool {
	if !r.setting(g) {
		return false
	}
	for r.problem == nil {
		if !r.try(func() bool { return r.joint() && r.setting(g) }) {
			return r.problem == nil
		}
	}
	return false
}

// joint takes a comma, "and", or both.
func (r *reader) joint() bool {
	comma := r.words(",")
	and := r.any("and", "but")
	return comma || and
}

// setting reads one setting into the group.
func (r *reader) setting(g *Group) bool {
	start := r.at
	if signal, ok := r.signal(); ok {
		if g.Signal != SignalKept && g.Signal != signal {
			return r.fail(across(r.tokens[start], r.last(), CodeConflict,
				"the signal is both lost and back in one go", "say one of them"))
		}
		g.Signal, g.SignalAt = signal, r.span(start)
		return true
	}
	if r.everythingRests() {
		g.Rests = true
		return true
	}
	control, position, ok := r.controlFirst()
	if !ok && r.problem == nil {
		control, position, ok = r.valueFirst()
	}
	if !ok {
		return false
	}
	return r.put(g, Setting{Control: control, Position: position, At: r.span(start)})
}

// put adds a setting unless the group already sets the control elsewhere.
func (r *reader) put(g *Group, s Setting) bool {
	if problem := g.conflict(r.setup, s); problem != nil {
		return r.fail(problem)
	}
	g.Settings = append(g.Settings, s)
	return true
}

func (g *Group) conflict(setup *mixcore.Setup, s Setting) *Problem {
	for _, other := range g.Settings {
		if other.Control == s.Control && other.Position != s.Position {
			return &Problem{Column: s.At.Column, Width: s.At.Width, Code: CodeConflict,
				Message: fmt.Sprintf("the %s is set twice, to different places", setup.Controls[s.Control].Name),
				Hint:    "settings joined by \"and\" hold together; a new When moves on from where the last one ended"}
		}
	}
	return nil
}

func (r *reader) signal() (Signal, bool) {
	start := r.at
	r.words("the")
	switch {
	case r.words("signal", "is", "lost"), r.words("signal", "lost"):
		return SignalLost, true
	case r.words("signal", "is", "back"), r.words("signal", "back"):
		return SignalBack, true
	}
	r.at = start
	return SignalKept, false
}

func (r *reader) everythingRests() bool {
	return r.words("everything", "rests") || r.words("everything", "is", "at", "rest") || r.words("everything", "at", "rest")
}

// control takes the name of one control.
func (r *reader) control() (int, bool) {
	start := r.at
	r.words("the")
	found, words := r.controls.find(r.tokens[r.at:])
	if words == 0 {
		r.at = start
		return 0, false
	}
	r.at += words
	if len(found.indices) > 1 {
		name := r.tokens[r.at-words : r.at]
		r.fail(across(name[0], name[words-1], CodeUnclearName,
			fmt.Sprintf("%q could be %s", joinText(name), wording.OneOf(r.controlNames(found.indices))), "write the whole name"))
		return 0, false
	}
	return found.indices[0], true
}

// controlFirst reads "the roll stick is full right", "rates high".
func (r *reader) controlFirst() (control int, position float64, ok bool) {
	start := r.at
	if control, ok = r.control(); !ok {
		r.at = start
		return 0, 0, false
	}
	verb := r.settingVerb()
	if position, ok = r.value(control); ok {
		return control, position, true
	}
	if r.problem == nil && verb && !r.outcomeFollows(start) {
		r.unknownPlace(control, r.tokens[r.at:r.phraseEnd(r.at)])
	}
	r.at = start
	return 0, 0, false
}

// outcomeFollows is true if the text from there on is an outcome: the name of
// a control may be that of a part too.
func (r *reader) outcomeFollows(from int) bool {
	probe := r.probe(from)
	_, ok := probe.outcome(nil)
	return ok || probe.problem != nil && probe.problem.Code != CodeUnknownName
}

// probe is a reader at another place, whose problems do not count.
func (r *reader) probe(at int) *reader {
	return &reader{Vocabulary: r.Vocabulary, tokens: r.tokens, at: at, text: r.text}
}

// settingVerb takes the verb between a control and where it is put.
func (r *reader) settingVerb() bool {
	switch {
	case r.any("is", "are"):
		_ = r.words("moved", "to") || r.words("set", "to") || r.words("put", "to") || r.words("at")
	case r.any("moves", "move", "goes", "go"):
		r.words("to")
	case r.any("stands", "stand"):
		if !r.words("at") {
			r.at--
			return false
		}
	default:
		return r.words("at")
	}
	return true
}

// widestValue is the most tokens that a position before its control can take:
// a detent's name, or "full right", "50 % right".
const widestValue = 8

// valueFirst reads "landing flap", "full right roll", "50% throttle".
func (r *reader) valueFirst() (int, float64, bool) {
	start := r.at
	r.words("the")
	first := r.at
	for at := first + 1; at < len(r.tokens) && at <= first+widestValue; at++ {
		if previous := r.tokens[at-1]; previous.text == "," || previous.text == "and" {
			break
		}
		found, words := r.controls.find(r.tokens[at:])
		if words == 0 {
			continue
		}
		for _, control := range found.indices {
			r.at = first
			position, ok := r.valueBefore(control, at)
			if r.problem != nil {
				return 0, 0, false
			}
			if !ok {
				continue
			}
			r.at = at + words
			if len(found.indices) > 1 {
				r.at = at
				r.control()
				return 0, 0, false
			}
			return control, position, true
		}
	}
	r.at = start
	return 0, 0, false
}

// valueBefore reads a position that fills the tokens up to a place.
func (r *reader) valueBefore(control, end int) (float64, bool) {
	position, ok := r.value(control)
	if r.at != end {
		return 0, false
	}
	return position, ok
}

// phraseEnd is the token index where the words that begin at a place end: at a
// comma, "and", or the end of the text.
func (r *reader) phraseEnd(from int) int {
	for from < len(r.tokens) {
		t := r.tokens[from]
		if t.kind == endToken || t.text == "," || t.text == "and" || t.text == "but" {
			break
		}
		from++
	}
	return from
}

// unknownPlace is the problem of a control that has no such position.
func (r *reader) unknownPlace(control int, words []token) bool {
	c := &r.setup.Controls[control]
	if len(words) == 0 {
		return r.fail(problemAt(r.peek(), CodeUnknownPosition,
			fmt.Sprintf("where the %s stands is missing", c.Name), "it can stand at "+placesOf(c)))
	}
	got := joinText(words)
	hint := "it can stand at " + placesOf(c)
	if best, ok := diag.Closest(got, placeNames(c)); ok {
		hint = fmt.Sprintf("did you mean %q?", best)
	}
	return r.fail(across(words[0], words[len(words)-1], CodeUnknownPosition,
		fmt.Sprintf("%q is no position of the %s", got, c.Name), hint))
}

// joinText is tokens as text again, in lower case.
func joinText(tokens []token) string {
	var text strings.Builder
	for i, t := range tokens {
		if i > 0 && t.kind == wordToken || t.kind == numberToken && i > 0 || t.text == "±" {
			text.WriteByte(' ')
		}
		text.WriteString(t.text)
	}
	return text.String()
}
