package script

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	messages "github.com/cucumber/messages/go/v34"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/phrase"
)

// entry is one scenario of a file with what stands around it.
type entry struct {
	feature    string
	tags       []string
	background []*messages.Step
	scenario   *messages.Scenario
}

// entries are the scenarios of a file, in the order in which they run.
func (d *document) entries() (list []entry) {
	if d.feature == nil {
		return nil
	}
	var background []*messages.Step
	for _, child := range d.feature.Children {
		switch {
		case child.Background != nil:
			background = child.Background.Steps
		case child.Scenario != nil:
			list = append(list, entry{d.feature.Name, tagNames(d.feature.Tags), background, child.Scenario})
		case child.Rule != nil:
			inside := background
			for _, c := range child.Rule.Children {
				switch {
				case c.Background != nil:
					inside = slices.Concat(background, c.Background.Steps)
				case c.Scenario != nil:
					list = append(list, entry{d.feature.Name, tagNames(d.feature.Tags, child.Rule.Tags), inside, c.Scenario})
				}
			}
		}
	}
	return list
}

func tagNames(lists ...[]*messages.Tag) (names []string) {
	for _, list := range lists {
		for _, tag := range list {
			names = append(names, tag.Name)
		}
	}
	return names
}

// checkStructure finds what Gherkin would pass over in silence.
func (d *document) checkStructure(v *phrase.Vocabulary) (problems []diag.Problem) {
	add := func(place diag.Place, code, message, hint string) {
		problems = append(problems, diag.Problem{Place: place, Code: code, Message: message, Hint: hint})
	}
	entries := d.entries()
	if len(entries) == 0 && !d.broken {
		add(diag.Place{File: d.name}, CodeNoScenarios, "the script has no scenario: nothing would be checked", "write a Feature with a Scenario in it")
	}
	names := map[string]int64{}
	for _, e := range entries {
		s := e.scenario
		heading := d.at(int(s.Location.Line))
		if first, twice := names[s.Name]; twice {
			add(heading, CodeSameScenario, fmt.Sprintf("the scenario of line %d has this name too", first), "give each scenario a name of its own")
		} else {
			names[s.Name] = s.Location.Line
		}
		if len(s.Steps) == 0 && !d.broken {
			add(heading, CodeEmptyScenario, "the scenario has no steps: nothing would be checked", "write what should happen, such as \"Then the elevator rises\"")
		}
		d.checkExamples(s, add)
	}
	d.eachBackground(func(step *messages.Step) {
		d.checkPlaceholders(int(step.Location.Line), nil, add)
	})
	d.eachStep(func(step *messages.Step) {
		if step.DocString != nil {
			add(d.at(int(step.DocString.Location.Line)), CodeStepArgument, "a sentence takes no text block", "write it all in the sentence")
		}
		if step.DataTable != nil {
			add(d.at(int(step.DataTable.Location.Line)), CodeStepArgument, "a sentence takes no table", "for one scenario with several values write a Scenario Outline with Examples")
		}
	})
	return append(problems, d.checkDescriptions(v)...)
}

// eachBackground visits every step of the file's backgrounds once.
func (d *document) eachBackground(visit func(*messages.Step)) {
	if d.feature == nil {
		return
	}
	for _, child := range d.feature.Children {
		for _, b := range backgrounds(child) {
			for _, step := range b.Steps {
				visit(step)
			}
		}
	}
}

// backgrounds are those of a feature's child: itself, or those of a rule.
func backgrounds(child *messages.FeatureChild) (list []*messages.Background) {
	if child.Background != nil {
		list = append(list, child.Background)
	}
	if child.Rule != nil {
		for _, c := range child.Rule.Children {
			if c.Background != nil {
				list = append(list, c.Background)
			}
		}
	}
	return list
}

// eachStep visits every step of the file once.
func (d *document) eachStep(visit func(*messages.Step)) {
	d.eachBackground(visit)
	for _, e := range d.entries() {
		for _, step := range e.scenario.Steps {
			visit(step)
		}
	}
}

var placeholder = regexp.MustCompile(`<([^<>]*)>`)

// checkExamples finds outlines without rows, and placeholders without a column.
func (d *document) checkExamples(s *messages.Scenario, add func(diag.Place, string, string, string)) {
	outline := slices.Contains(d.dialect.ScenarioOutlineKeywords(), s.Keyword) && !slices.Contains(d.dialect.ScenarioKeywords(), s.Keyword)
	if outline && len(s.Examples) == 0 {
		add(d.at(int(s.Location.Line)), CodeEmptyExamples, "an outline without Examples would check nothing", "write Examples with a table below the steps, or make it a Scenario")
	}
	columns := [][]string{}
	for _, examples := range s.Examples {
		if examples.TableHeader == nil || len(examples.TableBody) == 0 {
			if !d.broken {
				add(d.at(int(examples.Location.Line)), CodeEmptyExamples, "these Examples have no rows: nothing would be checked", "write a heading row and at least one row below it")
			}
			if examples.TableHeader == nil {
				continue
			}
		}
		columns = append(columns, cellValues(examples.TableHeader))
		d.checkCells(examples, add)
	}
	for _, step := range s.Steps {
		d.checkPlaceholders(int(step.Location.Line), columns, add)
	}
	d.checkPlaceholders(int(s.Location.Line), columns, add)
}

func cellValues(row *messages.TableRow) []string {
	values := make([]string, len(row.Cells))
	for i, cell := range row.Cells {
		values[i] = cell.Value
	}
	return values
}

// checkCells refuses a placeholder inside a cell, and a column twice.
func (d *document) checkCells(examples *messages.Examples, add func(diag.Place, string, string, string)) {
	columns := cellValues(examples.TableHeader)
	for i, cell := range examples.TableHeader.Cells {
		if slices.Contains(columns[:i], cell.Value) {
			add(d.cell(cell), CodeUnknownColumn, fmt.Sprintf("the column %q is there twice", cell.Value), "give each column a name of its own")
		}
	}
	for _, row := range examples.TableBody {
		for _, cell := range row.Cells {
			if placeholder.MatchString(cell.Value) {
				add(d.cell(cell), CodeUnknownColumn, "a cell cannot hold a placeholder", "write the words themselves")
			}
		}
	}
}

// cell is the place of a table cell.
func (d *document) cell(cell *messages.TableCell) diag.Place {
	return diag.Place{File: d.name, Line: int(cell.Location.Line), Column: int(cell.Location.Column), Width: max(len([]rune(cell.Value)), 1)}
}

func (d *document) checkPlaceholders(line int, columns [][]string, add func(diag.Place, string, string, string)) {
	text := d.line(line)
	for _, found := range placeholder.FindAllStringSubmatchIndex(text, -1) {
		name := text[found[2]:found[3]]
		place := diag.Place{File: d.name, Line: line, Column: len([]rune(text[:found[0]])) + 1, Width: len([]rune(text[found[0]:found[1]]))}
		if len(columns) == 0 {
			add(place, CodeUnknownColumn, fmt.Sprintf("no Examples fill <%s> here", name), "only the steps of a Scenario Outline with Examples can have placeholders")
			continue
		}
		for _, list := range columns {
			if !slices.Contains(list, name) {
				hint := "the columns are " + strings.Join(list, ", ")
				if best, ok := diag.Closest(name, list); ok {
					hint = fmt.Sprintf("did you mean <%s>?", best)
				}
				add(place, CodeUnknownColumn, fmt.Sprintf("no column of the Examples is called %q", name), hint)
				break
			}
		}
	}
}
