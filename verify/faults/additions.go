package faults

import (
	"fmt"
	"strings"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// Additions is what to add to a script so that it catches what it missed: a scenario of
// one sentence for every few mistakes, with a remark that says which, written as it must be
// behind the script. It is empty where nothing was missed or no sentence was found.
func Additions(r *result.Faults, behind script.Behind, taken func(scenario string) bool) string {
	var sentences []string
	catches := map[string][]string{}
	for i := range r.Faults {
		f := &r.Faults[i]
		if f.State != result.Missed || f.Sentence == "" {
			continue
		}
		if catches[f.Sentence] == nil {
			sentences = append(sentences, f.Sentence)
		}
		catches[f.Sentence] = append(catches[f.Sentence], f.Text)
	}
	var b strings.Builder
	used := map[string]bool{}
	for _, sentence := range sentences {
		name := scenarioName(sentence)
		for n := 2; used[name] || taken(name); n++ {
			name = fmt.Sprintf("%s (%d)", scenarioName(sentence), n)
		}
		used[name] = true
		b.WriteString("\n")
		for _, text := range catches[sentence] {
			fmt.Fprintf(&b, "  # would be missed without it: %s\n", text)
		}
		fmt.Fprintf(&b, "  %s %s\n", behind.Scenario, name)
		if behind.Rest != "" {
			fmt.Fprintf(&b, "    %s\n", behind.Rest)
		}
		fmt.Fprintf(&b, "    %s\n", sentence)
	}
	return b.String()
}

// scenarioName is a title for a sentence: its settings and its part, without numbers of
// what is wanted.
func scenarioName(sentence string) string {
	words := strings.TrimPrefix(sentence, "* ")
	if i := strings.Index(words, " is "); i > 0 {
		words = words[:i]
	}
	return strings.ToUpper(words[:1]) + words[1:]
}
