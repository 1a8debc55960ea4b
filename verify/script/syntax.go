package script

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"example.com/hingeline/airframes/diag"
)

var parseError = regexp.MustCompile(`^\((\d+):(\d+)\): (.*)$`)

// syntax turns the parser's errors into problems.
func (d *document) syntax(err error) (problems []diag.Problem) {
	d.errors = map[int]bool{}
	for _, line := range strings.Split(err.Error(), "\n") {
		found := parseError.FindStringSubmatch(line)
		if found == nil {
			continue
		}
		number, _ := strconv.Atoi(found[1])
		if d.errors[number] {
			continue
		}
		d.errors[number] = true
		problems = append(problems, d.syntaxProblem(number, found[3]))
	}
	if len(problems) == 0 {
		problems = []diag.Problem{{Place: diag.Place{File: d.name}, Code: codeSyntax, Message: "the script cannot be read as Gherkin",
			Hint: "compare it with a script made by \"hingeline new\""}}
	}
	return problems
}

func (d *document) syntaxProblem(number int, said string) diag.Problem {
	place := d.at(min(number, len(d.lines)))
	p := diag.Problem{Place: place, Code: codeSyntax}
	switch {
	case strings.Contains(said, "whitespace"):
		p.Message, p.Hint = "a tag may not hold a space", "join its words with a hyphen: @port-wing"
	case strings.Contains(said, "inconsistent cell count"):
		p.Message, p.Hint = "the rows of a table differ in their number of cells", "give every row as many cells as the first"
	case strings.HasPrefix(said, "unexpected end of file"):
		p.Message, p.Hint = "the script ends in the middle of something", "a tag wants a scenario below it, a text block its closing marks"
	default:
		d.misplaced(number, &p)
	}
	return p
}

// misplaced explains a line that cannot stand where it does.
func (d *document) misplaced(number int, p *diag.Problem) {
	line := strings.TrimSpace(d.line(number))
	word := firstWord(line)
	if d.isHeading(line) {
		p.Message, p.Hint = "this heading cannot stand here", "a file has one Feature; Background comes before the scenarios, Examples below an outline"
		return
	}
	if _, ok := d.keywordAt(line); ok {
		p.Message, p.Hint = "this step cannot stand here", "steps stand right below a Scenario, Scenario Outline or Background, and before Examples"
		return
	}
	if found, ok := d.foreign(line); ok {
		p.Code = codeMisspeltKeyword
		p.Message, p.Hint = fmt.Sprintf("%q is a keyword of %s", found.keyword, found.Name), found.hint()
		return
	}
	if keyword, ok := d.keywordLike(word); ok && !slices.Contains(ordinary, strings.ToLower(word)) {
		p.Code = codeMisspeltKeyword
		p.Message, p.Hint = fmt.Sprintf("%q is no keyword", word), fmt.Sprintf("did you mean %q?", keyword)
		return
	}
	p.Message, p.Hint = "a line that fits nothing here", "a step begins with Given, When, Then, And, But or *; a heading ends its keyword with a colon; a remark begins with #"
}

// firstLine is the first line that is neither empty nor a remark nor a tag; 0 if
// there is none.
func (d *document) firstLine() int {
	for i, line := range d.lines {
		if line = strings.TrimSpace(line); line != "" && !strings.HasPrefix(line, "#") && !strings.HasPrefix(line, "@") {
			return i + 1
		}
	}
	return 0
}

// noFeature explains a script that does not begin with a feature. Nothing below
// can be read then, so that this is its one mistake.
func (d *document) noFeature(first int) diag.Problem {
	p := diag.Problem{Place: d.at(first), Code: codeSyntax,
		Message: "the script must begin with its Feature", Hint: "write \"Feature: NAME\" above this line"}
	line := strings.TrimSpace(d.line(first))
	word := firstWord(line)
	if _, ok := d.keywordAt(line); ok || d.isHeading(line) {
		return p
	}
	feature := d.dialect.FeatureKeywords()
	if keyword, ok := closest(word, feature); ok || slices.Contains(feature, word) {
		if !ok {
			keyword = word
		}
		p.Code = codeMisspeltKeyword
		p.Message, p.Hint = fmt.Sprintf("%q is not how a Feature begins", word), fmt.Sprintf("did you mean %q?", keyword+":")
	} else if found, ok := d.foreign(line); ok {
		p.Code = codeMisspeltKeyword
		p.Message, p.Hint = fmt.Sprintf("%q is a keyword of %s, and the script does not say that it is in that language", found.keyword, found.Name), found.hint()
	}
	return p
}
