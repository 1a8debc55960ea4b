package phrase

import (
	"slices"
	"strings"
)

// Matching is the sentences of [Sentences] that hold every word of a query in
// their name, form, example or explanation, in any order; all of them for an
// empty query. A word that no sentence holds is tried without its last letters,
// so that "rising" finds "rises", and as what people call the thing instead.
func Matching(query string) []Sentence {
	list := Sentences()
	for _, word := range strings.Fields(strings.ToLower(query)) {
		list = holding(list, word)
	}
	return list
}

// otherwise is what sentences call what people call otherwise.
var otherwise = map[string]string{
	"failsafe": "signal", "fail-safe": "signal", "link": "signal", "transmitter": "signal", "receiver": "signal", "radio": "signal",
	"off": "stopped", "on": "runs", "starts": "runs", "turns": "rolls", "banks": "rolls", "lifts": "rises", "lowers": "drops", "up": "rises", "down": "drops",
	"tolerance": "±", "equal": "as far", "same": "together", "mirror": "opposite", "delay": "after", "slow": "within", "comma": "one line",
}

// holding is the sentences that hold a word, or else the nearest to it.
func holding(list []Sentence, word string) []Sentence {
	for _, w := range []string{word, otherwise[word], strings.TrimSuffix(word, "s"), strings.TrimSuffix(word, "ing"), strings.TrimSuffix(word, "ed")} {
		if w == "" {
			continue
		}
		found := slices.DeleteFunc(slices.Clone(list), func(s Sentence) bool {
			return !strings.Contains(strings.ToLower(strings.Join([]string{s.Name, s.Form, s.Example, s.Means}, "\n")), w)
		})
		if len(found) > 0 {
			return found
		}
	}
	return nil
}
