package phrase

import (
	"math"
	"slices"
)

// adverb takes "always" or "never" before a verb or behind "is", out of the sentence.
func (r *reader) adverb(o *Outcome) {
	at := r.at
	if slices.Contains([]string{"is", "are"}, r.tokens[at].text) {
		at++
	}
	switch r.tokens[at].text {
	case "always":
	case "never":
		o.Not = true
	default:
		return
	}
	o.Every = &Every{usual: ever}
	r.tokens = slices.Delete(slices.Clone(r.tokens), at, at+1)
}

// ever reads the word, and is what "no" and "nothing" set free with it or without.
func (r *reader) ever() scope {
	if r.words("ever") {
		return ever
	}
	return unset
}

// outcomeEnds is true where nothing more of an outcome stands.
func (r *reader) outcomeEnds() bool {
	t := r.peek()
	return t.kind == endToken || t.text == "," || t.text == "and" || t.text == "but" || t.text == "whenever" || t.text == "on"
}

// neverVerb reads the verbs that stand only behind "never" or "no": "runs out of
// travel", "reaches its stop", "moves".
func (r *reader) neverVerb(o *Outcome) bool {
	start := r.at
	outOfTravel := r.words("runs", "out", "of", "travel") || r.words("run", "out", "of", "travel")
	atStop := !outOfTravel && r.any("reaches", "reach") && (r.any("its", "their")) && r.any("stop", "stops")
	switch {
	case (outOfTravel || atStop) && !o.Not:
		return r.fail(across(r.tokens[start], r.last(), CodeUnknownSentence, "this is asked the other way round",
			"write \"never "+joinText(r.tokens[start:r.at])+"\""))
	case outOfTravel:
		o.Verb, o.Not = InTravel, false
		return true
	case atStop:
		o.Verb, o.Not = NotAtStop, false
		return r.hasStops(o)
	}
	r.at = start
	if o.Not && r.any("moves", "move") && r.outcomeEnds() {
		o.Verb, o.Not = Still, false
		return true
	}
	r.at = start
	return false
}

// aboutEvery reads the outcomes that are about every position by themselves.
func (r *reader) aboutEvery(o *Outcome) bool {
	if r.problem != nil {
		return false
	}
	return r.risingAgain(o) || r.problem == nil && r.rising(o) || r.problem == nil && r.nothing(o) || r.problem == nil && r.none(o)
}

// nothing reads "nothing moves", "nothing but the ailerons moves", "nothing reaches its
// stop".
func (r *reader) nothing(o *Outcome) bool {
	start := r.at
	if !r.words("nothing") {
		return false
	}
	var but Subject
	if r.any("but", "except") {
		from := r.at
		var ok bool
		if but, ok = r.subjects(); !ok || len(but.Parts) == 0 {
			return r.problem == nil && r.unknownNone(from)
		}
	}
	o.Every = &Every{usual: r.ever()}
	switch {
	case r.words("moves"), r.words("move"):
		for i := range r.setup.Parts {
			if !slices.Contains(but.Parts, i) {
				o.Subject.Parts = append(o.Subject.Parts, i)
			}
		}
		o.Verb = Still
	case r.words("reaches", "its", "stop"), r.words("reach", "its", "stop"), r.words("is", "at", "its", "stop"):
		for _, i := range r.stopped() {
			if !slices.Contains(but.Parts, i) {
				o.Subject.Parts = append(o.Subject.Parts, i)
			}
		}
		o.Verb = NotAtStop
	case r.words("runs", "out", "of", "travel") && len(but.Parts) == 0:
		o.Subject.Channels = r.allChannels()
		o.Verb = InTravel
	default:
		return r.fail(across(r.tokens[start], r.peek(), CodeUnknownSentence, "nothing does what?",
			"write \"nothing moves\", \"nothing but the ailerons moves\", \"nothing reaches its stop\" or \"nothing runs out of travel\""))
	}
	o.Subject.At = r.span(start)
	if len(o.Subject.Parts)+len(o.Subject.Channels) == 0 {
		return r.fail(across(r.tokens[start], r.last(), CodeUnknownName, "the model has nothing else that could", ""))
	}
	return true
}

// unknownNone is the problem of a name that no part has, up to the verb.
func (r *reader) unknownNone(from int) bool {
	end, found := r.verbAfter(from)
	if !found {
		end = r.phraseEnd(from)
	}
	return r.unknownSubject(from, end)
}

func (r *reader) allChannels() []int {
	all := make([]int, len(r.setup.Channels))
	for i := range all {
		all[i] = i
	}
	return all
}

// stopped are the surfaces whose stops are known.
func (r *reader) stopped() []int {
	return slices.DeleteFunc(r.surfaces(), func(i int) bool {
		s := &r.setup.Parts[i].Stops
		return math.IsInf(float64(s.Plus), 1) && math.IsInf(float64(s.Minus), 1)
	})
}

// none reads "no channel runs out of travel", "no surface reaches its stop", "no motor
// ever runs".
func (r *reader) none(o *Outcome) bool {
	start := r.at
	if !r.words("no") {
		return false
	}
	from := r.at
	subject, ok := r.noneOf()
	switch {
	case r.problem != nil:
		return false
	case !ok:
		return r.unknownNone(from)
	}
	subject.At = r.span(start)
	o.Subject, o.Not, o.Every = subject, true, &Every{usual: r.ever()}
	if !r.predicate(o) {
		return r.problem == nil && r.unknownVerb(start, r.probe(r.at))
	}
	return true
}

// noneOf is what "no" speaks of.
func (r *reader) noneOf() (Subject, bool) {
	start := r.at
	switch {
	case r.any("channel", "channels"):
		return Subject{Channels: r.allChannels()}, r.countBoth(false, start, len(r.setup.Channels))
	case r.any("surface", "surfaces"):
		if r.peek().text == "reaches" || r.peek().text == "reach" || r.peek().text == "ever" {
			list := r.stopped()
			if len(list) == 0 {
				return Subject{}, r.fail(across(r.tokens[start], r.last(), CodeMissingSize, "where the surfaces have their stops is not known", "give their stops in the airframe file"))
			}
			return Subject{Parts: list}, true
		}
		return Subject{Parts: r.surfaces()}, r.countBoth(false, start, len(r.surfaces()))
	}
	found, words := r.parts.find(r.tokens[r.at:])
	if group, more := r.groups.find(r.tokens[r.at:]); more > words {
		found, words = group, more
	}
	r.at += words
	return Subject{Parts: found.indices}, words > 0
}
