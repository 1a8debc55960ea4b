package script

import (
	"strings"

	messages "github.com/cucumber/messages/go/v34"

	"example.com/hingeline/airframes/diag"
)

// heading is a line that descriptions may follow.
type heading struct {
	line int
	near bool // below a scenario, a background or examples, where steps or rows are expected
}

// layout says what Gherkin made of each line of a file.
type layout struct {
	used     map[int]bool // lines that are headings, steps, tags, rows or text blocks
	headings []heading
}

func (d *document) layout() *layout {
	l := &layout{used: map[int]bool{}}
	l.add(d.feature.Location, false)
	l.tags(d.feature.Tags)
	for _, child := range d.feature.Children {
		l.parts(child.Background, child.Scenario)
		if child.Rule != nil {
			l.add(child.Rule.Location, false)
			l.tags(child.Rule.Tags)
			for _, c := range child.Rule.Children {
				l.parts(c.Background, c.Scenario)
			}
		}
	}
	return l
}

func (l *layout) add(at *messages.Location, near bool) {
	l.used[int(at.Line)] = true
	l.headings = append(l.headings, heading{int(at.Line), near})
}

func (l *layout) tags(tags []*messages.Tag) {
	for _, tag := range tags {
		l.used[int(tag.Location.Line)] = true
	}
}

func (l *layout) parts(b *messages.Background, s *messages.Scenario) {
	if b != nil {
		l.add(b.Location, true)
		l.steps(b.Steps)
	}
	if s == nil {
		return
	}
	l.add(s.Location, true)
	l.tags(s.Tags)
	l.steps(s.Steps)
	for _, examples := range s.Examples {
		l.add(examples.Location, true)
		l.tags(examples.Tags)
		if examples.TableHeader != nil {
			l.rows([]*messages.TableRow{examples.TableHeader})
		}
		l.rows(examples.TableBody)
	}
}

func (l *layout) steps(steps []*messages.Step) {
	for _, step := range steps {
		l.used[int(step.Location.Line)] = true
		if step.DataTable != nil {
			l.rows(step.DataTable.Rows)
		}
		if block := step.DocString; block != nil {
			for i := 0; i <= strings.Count(block.Content, "\n")+2; i++ {
				l.used[int(block.Location.Line)+i] = true
			}
		}
	}
}

func (l *layout) rows(rows []*messages.TableRow) {
	for _, row := range rows {
		l.used[int(row.Location.Line)] = true
	}
}

// near is true if the heading above a line is one that steps follow.
func (l *layout) near(line int) bool {
	above := heading{}
	for _, h := range l.headings {
		if h.line < line && h.line >= above.line {
			above = h
		}
	}
	return above.near
}

// checkDescriptions finds what Gherkin takes for descriptions and must not.
func (d *document) checkDescriptions(c *compiler) (problems []diag.Problem) {
	if d.feature == nil {
		return nil
	}
	l := d.layout()
	for i, line := range d.lines {
		number, trimmed := i+1, strings.TrimSpace(line)
		if l.used[number] || d.errors[number] || trimmed == "" || strings.HasPrefix(trimmed, "#") {
			continue
		}
		if message, hint, is := d.lost(c, line, l.near(number)); is {
			problems = append(problems, diag.Problem{Place: d.at(number), Code: codeMisspeltKeyword, Message: message, Hint: hint})
		}
	}
	return problems
}
