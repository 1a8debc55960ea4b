package phrase

import (
	"strconv"
	"strings"
)

// Plain is a sentence in one spelling: in lower case, its words with single spaces
// between them, numbers in their shortest form, units in one form. Two sentences that
// come to the same mean the same, for reading begins with the same words. What cannot be
// taken apart is given back with single spaces.
func Plain(sentence string) string {
	tokens, problem := tokenize(sentence)
	if problem != nil {
		return strings.Join(strings.Fields(sentence), " ")
	}
	var said []string
	for i, t := range tokens {
		switch {
		case t.kind == endToken:
		case t.kind == numberToken:
			number := strconv.FormatFloat(t.number, 'f', -1, 64)
			if t.signed && t.number >= 0 {
				number = "+" + number
			}
			said = append(said, number)
		case i > 0 && tokens[i-1].kind == numberToken && units[t.text] != "":
			said = append(said, units[t.text])
		default:
			said = append(said, t.text)
		}
	}
	return strings.Join(said, " ")
}
