package phrase

import (
	"slices"

	"example.com/hingeline/mixcore"
)

// oneLine reads "with A and B, when C, after 2 s, the port flap drops".
func (r *reader) oneLine() Meaning {
	s := Meaning{Role: Then, OneLine: true}
	moved := false
	if r.words("with") {
		if !r.settingsBefore(&s.With) {
			return r.lost(s)
		}
		r.joint()
	}
	if r.words("when") {
		moved = true
		if !r.settingsBefore(&s.Move) {
			return r.lost(s)
		}
		r.joint()
	}
	s.Outcomes = r.timedOutcomes()
	if len(s.Outcomes) == 0 {
		return r.lostOutcome(s)
	}
	if r.problem == nil && !moved && !allMoving(s.Outcomes) {
		r.splitMovement(&s)
	}
	return s
}

// allMoving is true if every outcome brings its own movement, or needs none because
// it asks about every position: then all that is set is how things stand.
func allMoving(outcomes []Outcome) bool {
	return !slices.ContainsFunc(outcomes, func(o Outcome) bool {
		return o.Every == nil || o.NeedsMovement() && !o.Every.moving()
	})
}

// settingsBefore reads the settings of a one-line sentence. They end at a comma
// behind which the rest of the text is outcomes, if there is one: with "full
// right rudder, the rudder moves right" the part is spoken of, not the stick of
// the same name.
func (r *reader) settingsBefore(g *Group) bool {
	type cut struct {
		at    int
		group Group
	}
	var cuts []cut
	for at := r.at + 1; at < len(r.tokens)-1; at++ {
		if r.tokens[at].text != "," {
			continue
		}
		front := &reader{Vocabulary: r.Vocabulary, at: r.at, text: r.text,
			tokens: append(slices.Clone(r.tokens[:at]), token{kind: endToken, column: r.tokens[at].column, width: 1})}
		var group Group
		if !front.settings(&group) || front.problem != nil || !front.ended() {
			continue
		}
		back := r.probe(at)
		back.joint()
		if len(back.timedOutcomes()) > 0 && back.problem == nil && back.ended() {
			cuts = append(cuts, cut{at, group})
		}
	}
	switch {
	case len(cuts) == 0:
		return r.settings(g)
	case !sameControls(&cuts[0].group, &cuts[len(cuts)-1].group):
		return r.fail(across(r.tokens[cuts[0].at+1], r.tokens[cuts[len(cuts)-1].at-1], CodeUnclearName,
			"this could be set, or be what happens", "join what is set with \"and\", and what happens too: one comma between the two"))
	}
	*g, r.at = cuts[0].group, cuts[0].at
	return true
}

// sameControls is true if more sets no control that g does not set.
func sameControls(g, more *Group) bool {
	for _, s := range more.Settings {
		if !slices.ContainsFunc(g.Settings, func(t Setting) bool { return t.Control == s.Control }) {
			return false
		}
	}
	return g.Signal == more.Signal && g.Rests == more.Rests
}

// lost explains settings that were not understood.
func (r *reader) lost(s Meaning) Meaning {
	if r.problem == nil {
		r.unknownSetting(r.at)
	}
	return s
}

// lostOutcome explains the end of a one-line sentence that is neither a
// further setting nor an outcome.
func (r *reader) lostOutcome(s Meaning) Meaning {
	if r.problem != nil {
		return s
	}
	if r.ended() {
		r.fail(problemAt(r.peek(), CodeUnknownSentence, "what should happen then?", "end the sentence with a part and what it does, such as \"the port flap drops\""))
		return s
	}
	if _, isSubject := r.probe(r.at).subject(); !isSubject && r.controlWithin(r.at, r.phraseEnd(r.at)) {
		r.unknownSetting(r.at)
		return s
	}
	r.unknownOutcome(r.at)
	return s
}

// splitMovement takes the movement of a one-line sentence without "when" out
// of its settings: a change of the signal; without one, axes and trims; without
// any, levers; without those too, switches. The rest is how things stood before.
func (r *reader) splitMovement(s *Meaning) {
	if s.With.Signal != SignalKept {
		s.Move = Group{Signal: s.With.Signal, SignalAt: s.With.SignalAt}
		s.With.Signal, s.With.SignalAt = SignalKept, Span{}
		return
	}
	for _, kinds := range [][]mixcore.ControlKind{
		{mixcore.AxisControl, mixcore.TrimControl}, {mixcore.LeverControl}, {mixcore.SwitchControl},
	} {
		var moving, standing []Setting
		for _, setting := range s.With.Settings {
			kind := r.setup.Controls[setting.Control].Kind
			if kind == kinds[0] || kind == kinds[len(kinds)-1] {
				moving = append(moving, setting)
			} else {
				standing = append(standing, setting)
			}
		}
		if len(moving) > 0 {
			s.Move.Settings, s.With.Settings = moving, standing
			return
		}
	}
}
