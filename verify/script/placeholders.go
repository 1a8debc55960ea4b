package script

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	messages "github.com/cucumber/messages/go/v34"

	"example.com/hingeline/airframes/diag"
)

// placeholder is a name in the brackets that a row of Examples fills.
var placeholder = regexp.MustCompile(`<([^<>]*)>`)

// brackets are those of placeholders. Where one stands alone it may become half
// of a placeholder once a row is filled in, so none may.
const brackets = "<>"

// checkExamples finds outlines without rows, and placeholders without a column.
func (d *document) checkExamples(s *messages.Scenario, add func(diag.Place, string, string, string)) {
	outline := slices.Contains(d.dialect.ScenarioOutlineKeywords(), s.Keyword) && !slices.Contains(d.dialect.ScenarioKeywords(), s.Keyword)
	if outline && len(s.Examples) == 0 {
		add(d.at(int(s.Location.Line)), codeEmptyExamples, "an outline without Examples would check nothing", "write Examples with a table below the steps, or make it a Scenario")
	}
	columns := [][]string{}
	for _, examples := range s.Examples {
		if examples.TableHeader == nil || len(examples.TableBody) == 0 {
			if !d.broken {
				add(d.at(int(examples.Location.Line)), codeEmptyExamples, "these Examples have no rows: nothing would be checked", "write a heading row and at least one row below it")
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

// checkCells refuses a bracket inside a cell, and a column twice.
func (d *document) checkCells(examples *messages.Examples, add func(diag.Place, string, string, string)) {
	columns := cellValues(examples.TableHeader)
	for i, cell := range examples.TableHeader.Cells {
		if slices.Contains(columns[:i], cell.Value) {
			add(d.cell(cell), codeUnknownColumn, fmt.Sprintf("the column %q is there twice", cell.Value), "give each column a name of its own")
		}
	}
	for _, row := range append([]*messages.TableRow{examples.TableHeader}, examples.TableBody...) {
		for _, cell := range row.Cells {
			if strings.ContainsAny(cell.Value, brackets) {
				add(d.cell(cell), codeUnknownColumn, "a cell cannot hold < or >", "write the words themselves: only steps and the outline's name hold placeholders")
			}
		}
	}
}

// cell is the place of a table cell.
func (d *document) cell(cell *messages.TableCell) diag.Place {
	return diag.Place{File: d.name, Line: int(cell.Location.Line), Column: int(cell.Location.Column), Width: max(len([]rune(cell.Value)), 1)}
}

// checkPlaceholders refuses the placeholders of a line that no column fills and,
// where columns do fill some, a bracket that belongs to none.
func (d *document) checkPlaceholders(line int, columns [][]string, add func(diag.Place, string, string, string)) {
	text := d.line(line)
	for _, found := range placeholder.FindAllStringSubmatchIndex(text, -1) {
		name := text[found[2]:found[3]]
		place := diag.Place{File: d.name, Line: line, Column: len([]rune(text[:found[0]])) + 1, Width: len([]rune(text[found[0]:found[1]]))}
		if len(columns) == 0 {
			add(place, codeUnknownColumn, fmt.Sprintf("no Examples fill <%s> here", name), "only the steps of a Scenario Outline with Examples can have placeholders")
			continue
		}
		for _, list := range columns {
			if !slices.Contains(list, name) {
				hint := "the columns are " + strings.Join(list, ", ")
				if best, ok := diag.Closest(name, list); ok {
					hint = fmt.Sprintf("did you mean <%s>?", best)
				}
				add(place, codeUnknownColumn, fmt.Sprintf("no column of the Examples is called %q", name), hint)
				break
			}
		}
	}
	rest := placeholder.ReplaceAllStringFunc(text, func(found string) string { return strings.Repeat(" ", len(found)) })
	if at := strings.IndexAny(rest, brackets); at >= 0 && len(columns) > 0 {
		add(diag.Place{File: d.name, Line: line, Column: len([]rune(text[:at])) + 1, Width: 1}, codeUnknownColumn,
			fmt.Sprintf("this %c belongs to no placeholder", rest[at]), "a placeholder is the name of a column between < and >, with no other bracket in it")
	}
}
