package script

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	gherkin "github.com/cucumber/gherkin/go/v42"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/phrase"
)

// english is the dialect whose keywords are looked for in every file: its
// sentences are English whatever its keywords are.
var english = gherkin.DialectsBuiltin().GetDialect(gherkin.DefaultDialect)

// stepWords are the words that begin a step in the file's language or in
// English, without the space behind them.
func (d *document) stepWords() []string {
	var words []string
	for _, keyword := range append(d.dialect.StepKeywords(), english.StepKeywords()...) {
		if word := strings.TrimSpace(keyword); word != "*" {
			words = append(words, word)
		}
	}
	return words
}

// headings are the words that a colon makes a heading.
func (d *document) headings() []string {
	var words []string
	for _, dialect := range []*gherkin.Dialect{d.dialect, english} {
		words = slices.Concat(words, dialect.FeatureKeywords(), dialect.RuleKeywords(), dialect.ScenarioKeywords(),
			dialect.ScenarioOutlineKeywords(), dialect.BackgroundKeywords(), dialect.ExamplesKeywords())
	}
	return words
}

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
var ordinary = []string{"the", "they", "them", "than", "thin", "there", "these", "this", "any", "add", "end", "hand", "land", "band", "sand", "an", "put", "out", "cut", "gives", "give", "hen", "ten", "buy", "bus"}

// lost explains a line that Gherkin takes for description although a person
// most likely meant it as a step or heading. near is true below a scenario or
// background, where steps are expected.
func (d *document) lost(v *phrase.Vocabulary, line string, near bool) (message, hint string, is bool) {
	const remark = "; a remark begins with #"
	line = strings.TrimSpace(line)
	word := firstWord(line)
	rest := strings.TrimSpace(strings.TrimLeft(line[len(word):], ": "))
	for _, raw := range append(d.dialect.StepKeywords(), english.StepKeywords()...) {
		keyword := strings.TrimSpace(raw)
		if keyword != "*" && (strings.EqualFold(word, keyword) || strings.HasPrefix(line, raw)) {
			return fmt.Sprintf("this step stands where Gherkin takes it for a description%s", heldBy(keyword, word)),
				"put it below a Scenario, with the keyword written " + keyword + remark, true
		}
	}
	if strings.HasPrefix(line, "*") {
		return "this step stands where Gherkin takes it for a description", "put it below a Scenario, with a space behind the *" + remark, true
	}
	for _, heading := range d.headings() {
		if len(line) >= len(heading) && strings.EqualFold(line[:len(heading)], heading) && !isLetterAt(line, len(heading)) {
			return fmt.Sprintf("%q is taken for a description here", line[:len(heading)]),
				"a heading is written \"" + heading + ":\"" + remark, true
		}
	}
	if before, _, colon := strings.Cut(line, ":"); colon {
		if heading, ok := diag.Closest(before, d.headings()); ok {
			return fmt.Sprintf("%q is no keyword, and would be taken for a description", before), fmt.Sprintf("did you mean %q?", heading+":"), true
		}
	}
	if sentence(v, line) || sentence(v, strings.TrimLeftFunc(line, notLetter)) {
		return "this sentence has no keyword, and would be taken for a description", "begin it with Given, When, Then, And or *" + remark, true
	}
	if keyword, ok := closest(word, d.stepWords()); ok {
		common := slices.Contains(ordinary, strings.ToLower(word))
		if sentence(v, rest) || !common && (near || v.Mentions(rest)) {
			return fmt.Sprintf("%q is no keyword, and the line would be taken for a description", word), fmt.Sprintf("did you mean %q?", keyword), true
		}
	}
	return "", "", false
}

func heldBy(keyword, word string) string {
	if keyword == word {
		return ""
	}
	return fmt.Sprintf(": %q is not written %q", word, keyword)
}

func isLetterAt(line string, at int) bool {
	for _, r := range line[at:] {
		return unicode.IsLetter(r)
	}
	return false
}

func notLetter(r rune) bool { return !unicode.IsLetter(r) }

// sentence is true if a text is a sentence of scripts.
func sentence(v *phrase.Vocabulary, text string) bool {
	_, problem := v.Parse(phrase.AnyRole, text)
	return problem == nil
}
