package script

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hingeline/airframes/diag"
)

// Selection says which checks to run. Each entry is a tag (@wing), the name of
// a stage of the walk-around, or words of a scenario's name or of a subject; a
// check runs if one of them fits it. An empty selection runs all. An entry
// that fits nothing is a problem.
type Selection struct{ Only []string }

// choose marks the checks that a selection takes.
func (sel Selection) choose(scenarios []*scenario) (problems []diag.Problem) {
	for _, only := range sel.Only {
		if !mark(scenarios, only) {
			problems = append(problems, diag.Problem{Code: CodeNothingSelected,
				Message: fmt.Sprintf("nothing is selected by %q", only), Hint: hintFor(scenarios, only)})
		}
	}
	if len(sel.Only) == 0 {
		each(scenarios, func(ch *check) { ch.selected = true })
	}
	return problems
}

func mark(scenarios []*scenario, only string) (any bool) {
	each(scenarios, func(ch *check) {
		if ch.fits(only) {
			ch.selected, any = true, true
		}
	})
	return any
}

// fits says whether an entry of a selection fits a check.
func (ch *check) fits(only string) bool {
	words := fold(only)
	switch {
	case words == "":
		return false
	case strings.HasPrefix(words, "@"):
		return slices.ContainsFunc(ch.tags, func(tag string) bool { return strings.EqualFold(tag, strings.TrimSpace(only)) })
	case words == fold(string(ch.result.Stage)):
		return true
	}
	return holds(ch.result.Scenario, words) || holds(ch.subject, words)
}

// holds is true if a name holds words whole and in a row.
func holds(name, words string) bool {
	return strings.Contains(" "+fold(name)+" ", " "+words+" ")
}

// fold is a text in lower case with single spaces between its words.
func fold(text string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return strings.ContainsRune(" \t-_,.()", r) }), " ")
}

func hintFor(scenarios []*scenario, only string) string {
	var among []string
	known := map[string]bool{}
	each(scenarios, func(ch *check) {
		for _, name := range slices.Concat(ch.tags, []string{string(ch.result.Stage), ch.subject, ch.result.Scenario}) {
			if !known[name] {
				among, known[name] = append(among, name), true
			}
		}
	})
	if best, ok := diag.Closest(strings.TrimSpace(only), among); ok {
		return fmt.Sprintf("did you mean %q?", best)
	}
	return "name a tag such as @wing, a stage such as tail, or words of a scenario's name or of a part"
}

// each visits every check in the order of the script.
func each(scenarios []*scenario, visit func(*check)) {
	for _, s := range scenarios {
		for i := range s.steps {
			for _, ch := range s.steps[i].checks {
				visit(ch)
			}
		}
	}
}
