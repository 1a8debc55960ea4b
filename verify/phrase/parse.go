package phrase

// Parse reads the text of one step. role is what its keyword makes it; a
// sentence of the one-line form fits every role. A text that could both set the
// controls and say what happens is refused under AnyRole.
func (v *Vocabulary) Parse(role Role, text string) (Meaning, *Problem) {
	meaning, problem := v.parse(role, text)
	if problem != nil {
		v.advise(role, text, problem)
	}
	return meaning, problem
}

// parse is Parse without advice.
func (v *Vocabulary) parse(role Role, text string) (Meaning, *Problem) {
	tokens, problem := tokenize(text)
	if problem != nil {
		return Meaning{}, problem
	}
	r := &reader{Vocabulary: v, tokens: tokens, text: []rune(text)}
	if r.ended() {
		return Meaning{}, problemAt(r.peek(), CodeUnknownSentence, "the sentence is empty", hintPhrases)
	}
	var s Meaning
	switch first := r.peek().text; {
	case r.opensEvery(0):
		s = r.everySentence(role)
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

// everySentence reads a sentence that begins with the positions over which it must
// hold.
func (r *reader) everySentence(role Role) Meaning {
	r.prefixes()
	if r.problem != nil {
		return Meaning{}
	}
	if next := r.peek().text; next == "with" || next == "when" {
		return r.oneLine()
	}
	s := r.outcomeSentence()
	if r.problem == nil && (role == Given || role == When) {
		r.fail(across(r.tokens[0], r.tokens[len(r.tokens)-2], CodeWrongPlace,
			"this says what must hold, but the step sets the controls", "write it under Then"))
	}
	return s
}

func (r *reader) anySentence() Meaning {
	switch settings, outcomes := r.isSettings(), r.isOutcomes(); {
	case settings && outcomes:
		r.fail(across(r.tokens[0], r.tokens[len(r.tokens)-2], CodeUnclearName,
			"this could set a control, or say what a part does", "begin it with Given or When if it sets the control, with Then if it says what happens"))
		return Meaning{}
	case settings:
		return r.settingSentence(Given)
	case outcomes:
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
	said := r.prefixes()
	clock, seconds, timed := r.time()
	if timed {
		r.words(",")
	}
	said = r.prefixes() || said
	if r.problem != nil {
		return nil
	}
	outcomes := r.outcomes()
	if len(outcomes) == 0 && r.problem == nil && !timed && !said {
		r.at = start
	}
	outcomes = r.everywhere(outcomes)
	for i := range outcomes {
		if !timed {
			break
		}
		if outcomes[i].Clock != AtRest {
			r.fail(across(r.tokens[start], r.tokens[start+2], CodeConflict, "the time is given twice", "say when it is so once, before or behind"))
			break
		}
		r.clock(&outcomes[i], clock, seconds)
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
