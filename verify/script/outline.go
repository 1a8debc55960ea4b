package script

import (
	"strings"
	"unicode/utf8"

	messages "github.com/cucumber/messages/go/v34"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/phrase"
)

// stepText is the text of a step as it runs, with where each piece of it
// stands in the file: in the step's line, or in a cell of an outline's row.
type stepText struct {
	text   string
	pieces []piece
}

// piece is a run of characters that stand together in the file.
type piece struct {
	from, to int // in characters of the text, from 0
	place    diag.Place
}

// writeOut fills a step's placeholders from a row; row is nil outside of
// outlines.
func (d *document) writeOut(step *messages.Step, columns []string, row *messages.TableRow) stepText {
	line := int(step.Location.Line)
	column := int(step.Location.Column) + utf8.RuneCountInString(step.Keyword)
	for i, r := range []rune(d.line(line)) {
		if i+1 >= column {
			if r != ' ' && r != '\t' {
				break
			}
			column++
		}
	}
	var t stepText
	at := 0
	add := func(text string, place diag.Place) {
		width := utf8.RuneCountInString(text)
		if width == 0 {
			return
		}
		t.text += text
		t.pieces = append(t.pieces, piece{at, at + width, place})
		at += width
	}
	fixed := func(text string) {
		add(text, diag.Place{File: d.name, Line: line, Column: column})
		column += utf8.RuneCountInString(text)
	}
	rest := step.Text
	for row != nil {
		start, end, cell := nextPlaceholder(rest, columns, row)
		if cell == nil {
			break
		}
		fixed(rest[:start])
		add(cell.Value, d.cell(cell))
		column += utf8.RuneCountInString(rest[start:end])
		rest = rest[end:]
	}
	fixed(rest)
	if len(t.pieces) == 0 {
		t.pieces = []piece{{0, 0, diag.Place{File: d.name, Line: line, Column: column}}}
	}
	return t
}

// nextPlaceholder finds the first placeholder that a row fills.
func nextPlaceholder(text string, columns []string, row *messages.TableRow) (start, end int, cell *messages.TableCell) {
	for _, found := range placeholder.FindAllStringSubmatchIndex(text, -1) {
		for i, column := range columns {
			if i < len(row.Cells) && column == text[found[2]:found[3]] {
				return found[0], found[1], row.Cells[i]
			}
		}
	}
	return 0, 0, nil
}

// fill is a text with its placeholders filled from a row.
func fill(text string, columns []string, row *messages.TableRow) string {
	var filled strings.Builder
	for row != nil {
		start, end, cell := nextPlaceholder(text, columns, row)
		if cell == nil {
			break
		}
		filled.WriteString(text[:start] + cell.Value)
		text = text[end:]
	}
	return filled.String() + text
}

// place is where a span of the text stands in the file; what runs on into
// another piece is cut off.
func (t *stepText) place(span phrase.Span) diag.Place {
	at := span.Column - 1
	for i, p := range t.pieces {
		if at >= p.to && i < len(t.pieces)-1 {
			continue
		}
		place := p.place
		place.Column += at - p.from
		place.Width = max(min(span.Width, p.to-at), 1)
		return place
	}
	return diag.Place{}
}

func (t *stepText) problem(p *phrase.Problem) diag.Problem {
	return diag.Problem{Place: t.place(phrase.Span{Column: p.Column, Width: p.Width}), Code: p.Code, Message: p.Message, Hint: p.Hint}
}
