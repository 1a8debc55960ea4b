package phrase

import (
	"fmt"
	"slices"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/wording"
)

// unexpected is the problem of text left over behind a sentence that was
// understood.
func (r *reader) unexpected() bool {
	from := r.tokens[r.at]
	last := r.tokens[len(r.tokens)-2]
	if r.ended() {
		last = from
	}
	return r.fail(across(from, last, CodeUnknownSentence,
		fmt.Sprintf("%q is left over", joinText(r.tokens[r.at:])), hintPhrases))
}

// verbs of parts, by their first word, to find where a subject ends.
var outcomeVerbs = []string{
	"rises", "rise", "drops", "drop", "moves", "move", "goes", "go", "stays", "stay", "does", "do", "doesn't", "don't",
	"speeds", "speed", "slows", "slow", "extends", "extend", "retracts", "retract", "stops", "stop", "runs", "run",
	"is", "are", "points", "point", "rolls", "pitches", "yaws", "adds", "add", "has", "have", "agree", "reaches", "reach", "depends", "depend",
}

// suggestedVerbs are those of them that a slip of the hand may have meant.
var suggestedVerbs = []string{"rises", "drops", "moves", "goes", "stays", "speeds", "slows", "extends", "retracts", "stops", "runs", "points", "rolls", "pitches", "yaws", "adds"}

// verbAfter finds the first verb of a part behind the first token.
func (r *reader) verbAfter(from int) (int, bool) {
	for at := from + 1; at < len(r.tokens)-1; at++ {
		if slices.Contains(outcomeVerbs, r.tokens[at].text) {
			return at, true
		}
		if r.tokens[at].text == "," {
			break
		}
	}
	return 0, false
}

// reserved begin sentences that are no plain outcome.
var reserved = []string{"whatever", "whenever", "always", "never", "at", "no", "nothing", "if", "while", "until", "unless", "on"}

// reservedHint leads to the form that most likely says what was meant.
func reservedHint(word string) string {
	switch word {
	case "if", "while", "until", "unless":
		return "write \"whenever …, …\": where it is so, the outcome must hold"
	case "never":
		return "\"never\" stands behind the part: \"the port flap never drops\""
	case "at":
		return "write \"at every switch position, …\" or \"at every position of the …, …\""
	}
	return hintPhrases
}

// unknownOutcome explains an outcome that was not understood.
func (r *reader) unknownOutcome(from int) bool {
	first, last := r.tokens[from], r.tokens[len(r.tokens)-1]
	if len(r.tokens) > 1 && from < len(r.tokens)-1 {
		last = r.tokens[len(r.tokens)-2]
	}
	if first.kind == endToken {
		return r.fail(problemAt(first, CodeUnknownSentence, "the sentence ends too early", hintPhrases))
	}
	if slices.Contains(reserved, first.text) {
		return r.fail(across(first, last, CodeUnknownSentence, fmt.Sprintf("unknown sentence %q", joinText(r.tokens[from:])), reservedHint(first.text)))
	}
	probe := r.probe(from)
	_, ok := probe.servos()
	if !ok && probe.problem == nil {
		_, ok = probe.subjects()
	}
	if ok {
		return r.unknownVerb(from, probe)
	}
	if probe.problem != nil {
		return r.fail(probe.problem)
	}
	if verb, ok := r.verbAfter(from); ok {
		return r.unknownSubject(from, verb)
	}
	return r.fail(across(first, last, CodeUnknownSentence, fmt.Sprintf("unknown sentence %q", joinText(r.tokens[from:])), hintPhrases))
}

// unknownVerb explains what follows a subject that was understood.
func (r *reader) unknownVerb(from int, probe *reader) bool {
	subject := joinText(r.tokens[from:probe.at])
	if !slices.Contains([]string{"the", "both", "all", "every", "each", "channel"}, r.tokens[from].text) {
		subject = "the " + subject
	}
	if probe.ended() {
		return r.fail(problemAt(probe.peek(), CodeUnknownSentence, fmt.Sprintf("and what of %s?", subject), hintPhrases))
	}
	at := probe.at
	hint := hintPhrases
	if best, ok := diag.Closest(r.tokens[at].text, suggestedVerbs); ok && !slices.Contains(outcomeVerbs, r.tokens[at].text) {
		hint = fmt.Sprintf("did you mean %q?", best)
	}
	end := max(r.phraseEnd(at), at+1)
	return r.fail(across(r.tokens[at], r.tokens[end-1], CodeUnknownSentence,
		fmt.Sprintf("%q is nothing that can be asked of %s", joinText(r.tokens[at:end]), subject), hint))
}

// unknownSubject is the problem of a name that no part or channel has.
func (r *reader) unknownSubject(from, end int) bool {
	for from < end-1 && slices.Contains([]string{"the", "both", "all", "every", "each"}, r.tokens[from].text) {
		from++
	}
	end = max(end, from+1)
	name := joinText(r.tokens[from:end])
	hint := r.partsHint()
	among := append(append(r.parts.list(), r.groups.list()...), "model", "adverse yaw")
	for _, channel := range r.channels.list() {
		among = append(among, channel+" channel")
	}
	if best, ok := diag.Closest(name, among); ok {
		hint = fmt.Sprintf("did you mean %q?", best)
	}
	if _, words := r.controls.find(r.tokens[from:end]); words == end-from {
		hint = "that is a control; a sentence about what happens names a part"
	}
	return r.fail(across(r.tokens[from], r.tokens[end-1], CodeUnknownName, fmt.Sprintf("no part or channel is called %q", name), hint))
}

// mostNamed is how many parts a hint names; of more it says only that none is called so.
const mostNamed = 12

// partsHint says what parts there are.
func (r *reader) partsHint() string {
	if n := len(r.setup.Parts); n == 0 || n > mostNamed {
		return "the airframe file names no such part"
	}
	var all []string
	for i := range r.setup.Parts {
		all = append(all, fmt.Sprintf("%q", r.setup.Parts[i].Name))
	}
	return "the parts are " + wording.Listed(all)
}

// controlWithin is true if a control is named between two tokens.
func (r *reader) controlWithin(from, end int) bool {
	for at := from; at < end; at++ {
		if _, words := r.controls.find(r.tokens[at:end]); words > 0 {
			return true
		}
	}
	return false
}

// settingVerbs end the name of a control.
var settingVerbs = []string{"is", "are", "moves", "goes", "stands"}

// unknownSetting explains a setting that was not understood.
func (r *reader) unknownSetting(from int) bool {
	if r.problem != nil {
		return false
	}
	end := r.phraseEnd(from)
	if from < end-1 && r.tokens[from].text == "the" {
		from++
	}
	if from >= end {
		return r.fail(problemAt(r.tokens[from], CodeUnknownSentence, "the name of a control is missing", hintPhrases))
	}
	phrase := r.tokens[from:end]
	probe := r.probe(from)
	if control, ok := probe.control(); ok {
		verbs := probe.settingVerb()
		if at := r.settingVerbIn(probe.at, end); at < end && !verbs {
			return r.unknownControl(from, at)
		}
		return r.unknownPlace(control, r.tokens[probe.at:max(end, probe.at)])
	}
	if probe.problem != nil {
		return r.fail(probe.problem)
	}
	for at := from + 1; at < end; at++ {
		if found, words := r.controls.find(r.tokens[at:end]); words > 0 && at+words == end {
			return r.unknownPlace(found.indices[0], r.tokens[from:at])
		}
	}
	if _, words := r.places.find(phrase); words > 0 && words < len(phrase) {
		return r.unknownControl(from+words, r.settingVerbIn(from+words+1, end))
	}
	if at := r.settingVerbIn(from+1, end); at < end {
		return r.unknownControl(from, at)
	}
	return r.fail(across(phrase[0], phrase[len(phrase)-1], CodeUnknownSentence, fmt.Sprintf("unknown sentence %q", joinText(phrase)), settingHint(phrase)))
}

// settingVerbIn is the first verb of a setting between two tokens, or the second.
func (r *reader) settingVerbIn(from, end int) int {
	for at := from; at < end; at++ {
		if slices.Contains(settingVerbs, r.tokens[at].text) {
			return at
		}
	}
	return end
}

// settingHint leads to how a stick is moved where somebody says what a surface does.
func settingHint(phrase []token) string {
	for _, t := range phrase {
		if t.text == "up" || t.text == "down" {
			return "up and down are what a surface does; a stick or trim stands right, left, back or forward, such as \"pitch trim full back\""
		}
	}
	return hintPhrases
}

// unknownControl is the problem of a name that no control has.
func (r *reader) unknownControl(from, end int) bool {
	name := joinText(r.tokens[from:end])
	hint := "the airframe file names no such control"
	if best, ok := diag.Closest(name, r.controls.list()); ok {
		hint = fmt.Sprintf("did you mean %q?", best)
	} else if len(r.setup.Controls) > 0 {
		all := make([]int, len(r.setup.Controls))
		for i := range all {
			all[i] = i
		}
		hint = "the controls are " + wording.OneOf(r.controlNames(all))
	}
	return r.fail(across(r.tokens[from], r.tokens[end-1], CodeUnknownName, fmt.Sprintf("no control is called %q", name), hint))
}
