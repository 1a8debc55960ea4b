package phrase

import "example.com/hingeline/mixcore"

// Parse reads the text of one step. role is what its keyword makes it; a
// sentence of the one-line form fits every role.
func (v *Vocabulary) Parse(role Role, text string) (Meaning, *Problem) {
	tokens, problem := tokenize(text)
	if problem != nil {
		return Meaning{}, problem
	}
	r := &reader{Vocabulary: v, tokens: tokens}
	if r.ended() {
		return Meaning{}, problemAt(r.peek(), CodeUnknownSentence, "the sentence is empty", hintPhrases)
	}
	var s Meaning
	switch first := r.peek().text; {
	case first == "with" || first == "when":
		s = r.oneLine()
	case role == Given || role == When:
		s = r.settingSentence(role)
	case role == Then:
		s = r.outcomeSentence()
	default:
		s = r.anySentence()
	}
	if r.problem == nil && !r.ended() {
		r.unexpected()
	}
	if r.problem != nil {
		return Meaning{}, r.problem
	}
	return s, nil
}

// whole runs a reading on a fresh reader and says whether it takes the whole
// text.
func (r *reader) whole(reading func(*reader) bool) bool {
	probe := r.probe(0)
	return reading(probe) && probe.problem == nil && probe.ended()
}

func (r *reader) isSettings() bool {
	return r.whole(func(p *reader) bool { return p.settings(&Group{}) })
}

func (r *reader) isOutcomes() bool {
	return r.whole(func(p *reader) bool { return len(p.timedOutcomes()) > 0 })
}

func (r *reader) settingSentence(role Role) Meaning {
	s := Meaning{Role: role}
	if r.settings(&s.Settings) && r.ended() || r.problem != nil && !r.isOutcomes() {
		return s
	}
	if r.isOutcomes() {
		r.problem = nil
		r.fail(across(r.tokens[0], r.tokens[len(r.tokens)-2], CodeWrongPlace,
			"this says what a part does, but the step sets the controls", "write it under Then"))
		return s
	}
	if r.at == 0 {
		r.unknownSetting(0)
		return s
	}
	r.unfinishedSettings()
	return s
}

// unfinishedSettings explains what follows settings that were understood.
func (r *reader) unfinishedSettings() {
	if r.joint() {
		r.unknownSetting(r.at)
		return
	}
	r.unexpected()
}

func (r *reader) outcomeSentence() Meaning {
	s := Meaning{Role: Then}
	s.Outcomes = r.timedOutcomes()
	if len(s.Outcomes) > 0 && r.ended() {
		return s
	}
	if r.isSettings() {
		r.problem = nil
		r.fail(across(r.tokens[0], r.tokens[len(r.tokens)-2], CodeWrongPlace,
			"this sets the controls, but the step says what happens", "write it under Given or When, or as \"with …, the part rises\""))
		return s
	}
	if r.problem == nil && len(s.Outcomes) == 0 {
		r.unknownOutcome(r.at)
	}
	return s
}

func (r *reader) anySentence() Meaning {
	switch {
	case r.isSettings():
		return r.settingSentence(Given)
	case r.isOutcomes():
		return r.outcomeSentence()
	}
	if probe := r.probe(0); probe.outcomeLike() {
		return r.outcomeSentence()
	}
	return r.settingSentence(Given)
}

// outcomeLike is true if a part or channel is named first, or a verb of parts
// comes before anything else is understood.
func (r *reader) outcomeLike() bool {
	if _, ok := r.subject(); ok {
		return true
	}
	r.problem = nil
	_, found := r.verbAfter(r.at)
	return found
}

// timedOutcomes reads outcomes with a time before them, if there is one.
func (r *reader) timedOutcomes() []Outcome {
	start := r.at
	clock, seconds, timed := r.time()
	if timed {
		r.words(",")
	}
	outcomes := r.outcomes()
	if len(outcomes) == 0 && r.problem == nil && !timed {
		r.at = start
	}
	for i := range outcomes {
		if timed && outcomes[i].Clock == AtRest {
			outcomes[i].Clock, outcomes[i].Time = clock, seconds
		}
	}
	return outcomes
}

// outcomes reads outcomes joined by commas and "and".
func (r *reader) outcomes() []Outcome {
	first, ok := r.outcome(nil)
	if !ok {
		return nil
	}
	list := []Outcome{first}
	for r.problem == nil && !r.ended() && r.joint() {
		next, ok := r.outcome(&list[len(list)-1].Subject)
		if !ok {
			if r.problem == nil {
				r.unknownOutcome(r.at)
			}
			return list
		}
		list = append(list, next)
	}
	return list
}

// oneLine reads "with A and B, when C, after 2 s, the port flap drops".
func (r *reader) oneLine() Meaning {
	s := Meaning{Role: Then, OneLine: true}
	moved := false
	if r.words("with") {
		if !r.settings(&s.With) {
			return r.lost(s)
		}
		r.joint()
	}
	if r.words("when") {
		moved = true
		if !r.settings(&s.Move) {
			return r.lost(s)
		}
		r.joint()
	}
	s.Outcomes = r.timedOutcomes()
	if len(s.Outcomes) == 0 {
		return r.lostOutcome(s)
	}
	if r.problem == nil && !moved {
		r.splitMovement(&s)
	}
	return s
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
// of its settings: axes and trims; without any, levers; without those too,
// switches. The rest is how things stood before.
func (r *reader) splitMovement(s *Meaning) {
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
