package script

import (
	"bytes"
	"fmt"
	"regexp"
	"strconv"
	"strings"

	gherkin "github.com/cucumber/gherkin/go/v42"
	messages "github.com/cucumber/messages/go/v34"

	"example.com/hingeline/airframes/diag"
)

// document is a script as Gherkin reads it.
type document struct {
	*source
	dialect *gherkin.Dialect
	feature *messages.Feature // nil if there is none
	broken  bool              // parts of the file could not be read
	errors  map[int]bool      // lines that could not be read
}

var languageLine = regexp.MustCompile(`^\s*#\s*language\s*:\s*([a-zA-Z\-_]+)\s*$`)

// read parses a script. The dialect is looked up first: the parser does not
// survive one that it does not know.
func read(f File) (d *document, problems []diag.Problem) {
	d = &document{source: newSource(f)}
	language, line := d.language()
	d.dialect = gherkin.DialectsBuiltin().GetDialect(language)
	if d.dialect == nil {
		return d, []diag.Problem{{Place: d.at(line), Code: CodeLanguage,
			Message: fmt.Sprintf("no Gherkin language is called %q", language), Hint: "write a code such as en, de or fr, or leave the line out"}}
	}
	defer func() {
		if fault := recover(); fault != nil {
			d.feature, d.broken = nil, true
			problems = append(problems, diag.Problem{Place: diag.Place{File: d.name}, Code: CodeSyntax,
				Message: "the script cannot be read as Gherkin", Hint: "compare it with a script made by `hingeline new`"})
		}
	}()
	parsed, err := gherkin.ParseGherkinDocument(bytes.NewReader(d.text), (&messages.Incrementing{}).NewId)
	if err != nil {
		d.broken = true
		problems = d.syntax(err)
	}
	if parsed != nil {
		d.feature = parsed.Feature
	}
	return d, problems
}

// language is what the file's language line says, and its line; English
// without one.
func (d *document) language() (string, int) {
	for i, line := range d.lines {
		trimmed := strings.TrimSpace(line)
		if found := languageLine.FindStringSubmatch(line); found != nil {
			return found[1], i + 1
		}
		if trimmed != "" && !strings.HasPrefix(trimmed, "#") {
			break
		}
	}
	return gherkin.DefaultDialect, 0
}

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
		problems = []diag.Problem{{Place: diag.Place{File: d.name}, Code: CodeSyntax, Message: "the script cannot be read as Gherkin",
			Hint: "compare it with a script made by `hingeline new`"}}
	}
	return problems
}

func (d *document) syntaxProblem(number int, said string) diag.Problem {
	place := d.at(min(number, len(d.lines)))
	p := diag.Problem{Place: place, Code: CodeSyntax}
	switch {
	case strings.Contains(said, "whitespace"):
		p.Message, p.Hint = "a tag may not hold a space", "join its words with a hyphen: @port-wing"
	case strings.Contains(said, "inconsistent cell count"):
		p.Message, p.Hint = "the rows of a table differ in their number of cells", "give every row as many cells as the first"
	case strings.HasPrefix(said, "unexpected end of file"):
		p.Message, p.Hint = "the script ends in the middle of something", "a tag wants a scenario below it, a text block its closing marks"
	default:
		if d.isHeading(strings.TrimSpace(d.line(number))) {
			p.Message, p.Hint = "this heading cannot stand here", "a file has one Feature; Background comes before the scenarios, Examples below an outline"
			break
		}
		word := firstWord(strings.TrimSpace(d.line(number)))
		if keyword, ok := d.keywordLike(word); ok {
			p.Code = CodeMisspeltKeyword
			p.Message, p.Hint = fmt.Sprintf("%q is no keyword", word), fmt.Sprintf("did you mean %q?", keyword)
			break
		}
		p.Message, p.Hint = "a line that fits nothing here", "a step begins with Given, When, Then, And, But or *; a heading ends its keyword with a colon; a remark begins with #"
	}
	return p
}
