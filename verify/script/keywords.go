package script

import (
	"slices"
	"strings"
	"unicode"

	"example.com/hingeline/airframes/diag"
)

// stepKeywords are those of the file's language and of English, most with a space
// behind them.
func (d *document) stepKeywords() []string {
	return slices.Concat(d.dialect.StepKeywords(), english.StepKeywords())
}

// stepWords are the words that begin a step in the file's language or in
// English, without the space behind them.
func (d *document) stepWords() []string {
	var words []string
	for _, keyword := range d.stepKeywords() {
		if word := strings.TrimSpace(keyword); word != "*" {
			words = append(words, word)
		}
	}
	return words
}

// headings are the words that a colon makes a heading, in the file's language or
// in English.
func (d *document) headings() []string { return append(headings(d.dialect), headings(english)...) }

func (d *document) isHeading(line string) bool {
	return slices.ContainsFunc(d.headings(), func(word string) bool { return strings.HasPrefix(line, word+":") })
}

// firstWord is a line up to its first space or colon.
func firstWord(line string) string {
	if end := strings.IndexFunc(line, func(r rune) bool { return unicode.IsSpace(r) || r == ':' }); end >= 0 {
		return line[:end]
	}
	return line
}

// keywordLike finds the keyword that a word is, but for capitals, or is a slip
// of the hand away from.
func (d *document) keywordLike(word string) (string, bool) {
	all := append(d.stepWords(), d.headings()...)
	for _, keyword := range all {
		if strings.EqualFold(keyword, word) {
			return keyword, true
		}
	}
	return closest(word, all)
}

// closest is diag.Closest among single words only.
func closest(word string, among []string) (string, bool) {
	single := slices.DeleteFunc(slices.Clone(among), func(s string) bool { return strings.ContainsRune(s, ' ') })
	return diag.Closest(word, single)
}

// ordinary are everyday words that look like a misspelt keyword.
var ordinary = strings.Fields("the they them than thin there these this any add end hand land band sand an put out cut gives give hen ten buy bus")

// slip finds the keyword of a step that a word is most likely a slip of the hand
// for.
func (d *document) slip(word string) (keyword string, ok bool) {
	if slices.Contains(ordinary, strings.ToLower(word)) {
		return "", false
	}
	return closest(word, d.stepWords())
}
