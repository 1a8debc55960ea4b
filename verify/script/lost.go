package script

import (
	"fmt"
	"regexp"
	"strings"
	"unicode"

	"example.com/hingeline/verify/phrase"
)

// asRemark is the end of every hint about a line that would be lost.
const asRemark = "; a remark begins with #"

// lost explains a line that Gherkin takes for a description and passes over.
// Where steps or rows are expected, below a scenario, a background or examples,
// every such line is lost; below a feature or a rule only one that a person may
// have meant as a step, as a heading or as what the model does.
func (d *document) lost(c *compiler, line string, near bool) (message, hint string, is bool) {
	line = strings.TrimSpace(line)
	if message, hint, is = d.meant(c.vocabulary, line, near); is {
		return message, hint, true
	}
	if step := line[len(numbering.FindString(line)):]; step != line {
		if keyword, ok := d.keywordAt(step); ok {
			return fmt.Sprintf("%q in front makes this step a description", strings.TrimSpace(line[:len(line)-len(step)])),
				"begin the line with " + keyword + asRemark, true
		}
		if message, hint, is = d.meant(c.vocabulary, step, near); is {
			return message, hint, true
		}
	}
	switch {
	case near:
		message = "this line would be taken for a remark and not checked"
	case c.vocabulary.Claims(line):
		message = "this line says what the model does, but would be taken for a description and not checked"
	default:
		return "", "", false
	}
	return message, "begin it with Then, or with # if it is a remark", true
}

// numbering is what people put in front of a step: "1.", "-", "Step 2:", "a)".
var numbering = regexp.MustCompile(`^(?:[^\p{L}\p{M}<]+|(?i:step|item|point|no|nr)\.?\s*\d+\s*[.:)–-]*|\p{L}[.)]\s)+`)

// keywordAt is the keyword of a step, as the file's language or English writes
// it, that a text begins with.
func (d *document) keywordAt(text string) (string, bool) {
	for _, keyword := range d.stepKeywords() {
		if word := strings.TrimSpace(keyword); word != "*" && strings.HasPrefix(text, keyword) {
			return word, true
		}
	}
	return "", false
}

// meant finds a step or a heading in a text.
func (d *document) meant(v *phrase.Vocabulary, line string, near bool) (message, hint string, is bool) {
	word := firstWord(line)
	rest := strings.TrimSpace(strings.TrimLeft(line[len(word):], ": "))
	keyword, ok := d.keywordAt(line)
	for _, other := range d.stepWords() {
		if !ok && strings.EqualFold(word, other) {
			keyword, ok = other, true
		}
	}
	if ok {
		return "this step stands where Gherkin takes it for a description" + heldBy(keyword, line),
			"put it below a Scenario, with the keyword written " + keyword + asRemark, true
	}
	if strings.HasPrefix(line, "*") {
		return "this step stands where Gherkin takes it for a description", "put it below a Scenario, with a space behind the *" + asRemark, true
	}
	for _, heading := range d.headings() {
		if len(line) >= len(heading) && strings.EqualFold(line[:len(heading)], heading) && !isLetterAt(line, len(heading)) {
			return fmt.Sprintf("%q is taken for a description here", line[:len(heading)]),
				"a heading is written \"" + heading + ":\"" + asRemark, true
		}
	}
	if found, ok := d.foreign(line); ok {
		return fmt.Sprintf("%q is a keyword of %s, and would be taken for a description here", found.keyword, found.Name), found.hint() + asRemark, true
	}
	if before, _, colon := strings.Cut(line, ":"); colon {
		if heading, ok := closest(before, d.headings()); ok {
			return fmt.Sprintf("%q is no keyword, and would be taken for a description", before), fmt.Sprintf("did you mean %q?", heading+":"), true
		}
	}
	if v.Understands(line) {
		return "this sentence has no keyword, and would be taken for a description", "begin it with Given, When, Then, And or *" + asRemark, true
	}
	if keyword, ok := closest(word, d.stepWords()); ok {
		_, likely := d.slip(word)
		if v.Understands(rest) || likely && (near || v.Mentions(rest)) {
			return fmt.Sprintf("%q is no keyword, and the line would be taken for a description", word), fmt.Sprintf("did you mean %q?", keyword), true
		}
	}
	return "", "", false
}

func heldBy(keyword, line string) string {
	if strings.HasPrefix(line, keyword) {
		return ""
	}
	return fmt.Sprintf(": %q is not written %q", firstWord(line), keyword)
}

func isLetterAt(line string, at int) bool {
	for _, r := range line[at:] {
		return unicode.IsLetter(r)
	}
	return false
}
