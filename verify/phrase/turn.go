package phrase

import (
	"slices"

	"example.com/hingeline/mixcore"
)

// turnWords are the words of the model's three turns.
var turnWords = map[mixcore.Axis]struct{ do, does string }{
	mixcore.Roll:  {"roll", "rolls"},
	mixcore.Pitch: {"pitch", "pitches"},
	mixcore.Yaw:   {"yaw", "yaws"},
}

// axes are the three, in the order of the chain.
var axes = []mixcore.Axis{mixcore.Roll, mixcore.Pitch, mixcore.Yaw}

// wayWords are the words of the ways that the model turns.
var wayWords = map[Way]string{Right: "right", Left: "left", Up: "up", Down: "down"}

// waysAbout are the plus and the minus way about an axis: those of package
// effect.
func waysAbout(axis mixcore.Axis) (plus, minus Way) {
	if axis == mixcore.Pitch {
		return Up, Down
	}
	return Right, Left
}

// turns reads "rolls right", "pitches up", "does not yaw".
func (r *reader) turns(o *Outcome) bool {
	start := r.at
	not := r.words("does", "not") || r.any("doesn't")
	if o.Not && not {
		r.at = start
		return false
	}
	for _, axis := range axes {
		word := turnWords[axis]
		o.Axis = axis
		switch {
		case not && r.words(word.do):
			o.Verb = NoTurn
			return true
		case !not && r.any(word.does, word.do):
			o.Verb = Turn
			if o.Not && r.outcomeEnds() {
				o.Verb, o.Not = NoTurn, false
				return true
			}
			return r.turnsWay(o, start)
		}
	}
	r.at = start
	return false
}

func (r *reader) turnsWay(o *Outcome, verb int) bool {
	plus, minus := waysAbout(o.Axis)
	r.words("to", "the")
	for _, way := range []Way{plus, minus} {
		if r.words(wayWords[way]) {
			o.Way = way
			return true
		}
	}
	word := turnWords[o.Axis].does
	return r.fail(across(r.tokens[verb], r.last(), CodeUnknownSentence, word+" which way?",
		"write "+word+" "+wayWords[plus]+" or "+word+" "+wayWords[minus]))
}

// misplacedVerb refuses to ask of a part what only the model or a servo does.
func (r *reader) misplacedVerb(o *Outcome) bool {
	probe, verb := r.probe(r.at), r.peek()
	var turn Outcome
	switch {
	case probe.turns(&turn), probe.problem != nil:
		r.fail(across(verb, probe.last(), CodeWrongMotion, "only the model rolls, pitches and yaws",
			"write \"the model "+joinText(r.tokens[r.at:probe.at])+"\", or what the part does"))
	case slices.Contains([]string{"has", "have"}, verb.text) && len(o.Subject.Parts) > 0 && probe.torque(&turn):
		r.fail(across(verb, probe.last(), CodeWrongMotion, "a servo has torque, a part has none",
			"write \"the "+r.setup.Parts[o.Subject.Parts[0]].Name+" servo has …\""))
	case r.peek().text == "agree":
		r.fail(problemAt(verb, CodeWrongMotion, "parts do not agree, servos do", "write \"the servos of the port aileron agree\", or \"moves together with\""))
	default:
		return false
	}
	return true
}
