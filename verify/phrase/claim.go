package phrase

import (
	"slices"
	"strings"
	"unicode"
)

// looseWords are the words and numbers of any text, whatever stands between.
func looseWords(text string) []token {
	words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !isWordRune(r) && !isApostrophe(r) })
	tokens := make([]token, 0, len(words)+1)
	for _, word := range words {
		t := token{kind: wordToken, text: strings.ReplaceAll(word, "’", "'")}
		if unicode.IsDigit([]rune(word)[0]) {
			t.kind = numberToken
		}
		tokens = append(tokens, t)
	}
	return append(tokens, token{kind: endToken})
}

// namedAt is how many tokens the longest name of a control, part or channel takes
// that begins here.
func (v *Vocabulary) namedAt(tokens []token) (longest int) {
	for _, n := range []*names{&v.controls, &v.parts, &v.groups, &v.channels} {
		_, words := n.find(tokens)
		longest = max(longest, words)
	}
	if longest == 0 && len(tokens) > 2 && tokens[0].text == "channel" && tokens[1].kind == numberToken {
		return 2
	}
	return longest
}

// Mentions is true if a text names a control, part or channel of the model.
func (v *Vocabulary) Mentions(text string) bool {
	tokens := looseWords(text)
	for i := range tokens {
		if v.namedAt(tokens[i:]) > 0 {
			return true
		}
	}
	return false
}

// Understands is true if a text is a sentence under at least one keyword, even
// if it could be one under several.
func (v *Vocabulary) Understands(text string) bool {
	for _, role := range []Role{Given, Then} {
		if _, problem := v.parse(role, text); problem == nil {
			return true
		}
	}
	return false
}

var (
	// modals and the like may stand between a name and what it does.
	modals = []string{"should", "must", "shall", "will", "would", "can", "cannot", "may", "has", "have", "needs", "need", "to", "not", "also", "then", "always", "never", "only", "now", "both", "channel", "servo", "servos"}
	// motions make a claim of what they stand behind.
	motions = append([]string{
		"turns", "turn", "starts", "start", "lifts", "lift", "falls", "fall", "lowers", "lower", "raises", "raise",
		"remains", "remain", "swings", "swing", "deflects", "deflect", "spins", "spin", "steers", "steer",
	}, outcomeVerbs...)
	// states and places make one together: "is up", "stands 12° down".
	states = []string{"is", "are", "be", "stands", "stand", "points", "point", "was", "were"}
	places = []string{
		"up", "down", "left", "right", "out", "in", "back", "forward", "full", "half", "fully", "neutral", "centred", "centered", "at", "above", "below",
		"stopped", "running", "still", "off", "on", "lost", "moved", "set", "put", "pulled", "pushed", "raised", "lowered", "reversed", "not", "never", "always", "within",
	}
)

// Claims is true if a text says of a control, part or channel of the model what
// it does or where it stands: a line that may have been meant as a step. It
// looks for a name with the verb right behind it.
func (v *Vocabulary) Claims(text string) bool {
	tokens := append([]token{{kind: wordToken, text: "the"}}, looseWords(text)...)
	for i := range tokens {
		words := v.namedAt(tokens[i:])
		if words == 0 {
			continue
		}
		at := i + words
		for slices.Contains(modals, tokens[at].text) {
			at++
		}
		verb := tokens[at].text
		switch {
		case slices.Contains(states, verb):
			next := tokens[at+1]
			_, place := v.places.find(tokens[at+1:])
			if next.kind == numberToken || place > 0 || slices.Contains(places, next.text) {
				return true
			}
		case slices.Contains(motions, verb):
			return true
		}
	}
	return false
}
