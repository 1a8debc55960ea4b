package script

import (
	"bytes"
	"fmt"
	"regexp"
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
	spoken  map[string]int    // by language: how many lines have a keyword of it
}

var languageLine = regexp.MustCompile(`^\s*#\s*language\s*:\s*([a-zA-Z\-_]+)\s*$`)

// read parses a script. The dialect is looked up first: the parser does not
// survive one that it does not know.
func read(f File) (d *document, problems []diag.Problem) {
	d = &document{source: newSource(f)}
	language, line := d.language()
	d.dialect = gherkin.DialectsBuiltin().GetDialect(language)
	if d.dialect == nil {
		return d, []diag.Problem{{Place: d.at(line), Code: codeLanguage,
			Message: fmt.Sprintf("no Gherkin language is called %q", language), Hint: "write a code such as en, de or fr, or leave the line out"}}
	}
	defer func() {
		if fault := recover(); fault != nil {
			d.feature, d.broken = nil, true
			problems = append(problems, diag.Problem{Place: diag.Place{File: d.name}, Code: codeSyntax,
				Message: "the script cannot be read as Gherkin", Hint: "compare it with a script made by \"hingeline new\""})
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
	if first := d.firstLine(); d.feature == nil && d.errors[first] {
		problems = []diag.Problem{d.noFeature(first)}
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
