package wording

import "strings"

// Listed joins words as a sentence does: "a, b and c".
func Listed(words []string) string { return joined(words, " and ") }

// OneOf joins words of which one is to be chosen: "a, b or c".
func OneOf(words []string) string { return joined(words, " or ") }

func joined(words []string, last string) string {
	n := len(words) - 1
	if n < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:n], ", ") + last + words[n]
}
