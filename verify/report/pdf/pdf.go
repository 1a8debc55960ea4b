// Package pdf renders a control check as a document to print, take to the model, fill in
// and sign: the verdict first, then the walk-around with a box to tick in every row, the
// tables for the bench, and the signatures; and as a card for the pocket.
//
// It knows packages result and figure only and decides nothing. Whatever it shows can be
// read in black and white: a state is a word and a sign, never a colour alone. A letter
// that no font has is written as its number, never left out; letters that are joined or
// written right to left are set one by one, as they come. The documents are not tagged, so
// they make no claim for screen readers: the page in HTML is for them.
// The same report gives the same bytes.
//
// Start at [Lay] and [RenderCard]; compose lays out, the writer puts on paper.
package pdf

import (
	"io"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result"
)

// Paper is a size of paper.
type Paper uint8

// The sizes.
const (
	A4 Paper = iota
	Letter
)

// Options say how a report is printed.
type Options struct {
	Paper Paper
	Font  []byte // a TrueType font for letters that the fonts of the program lack; nil for none
	Bold  []byte // the same in bold; nil: Font
}

// size is width and height in millimetres.
func (p Paper) size() (width, height float64) {
	if p == Letter {
		return 215.9, 279.4
	}
	return 210, 297
}

// Sheet is a whole report laid out: for who asks about it before it is written, so that it
// is laid out once.
type Sheet struct{ d *document }

// Lay lays a whole report out. Report.Paper may be nil: what it holds is then left out. The
// error says why a font of Options cannot be used.
func Lay(r *result.Report, o Options) (*Sheet, error) {
	d, err := compose(r, o)
	if err != nil {
		return nil, err
	}
	return &Sheet{d}, nil
}

// Missing are the letters of the report that no font has, each once, in order; the pages
// show them as numbers.
func (s *Sheet) Missing() []rune { return s.d.fonts.lacked() }

// Write writes the document. The error is the writer's, or the font's.
func (s *Sheet) Write(w io.Writer) error { return s.d.write(w) }

// compose lays the whole report out.
func compose(r *result.Report, o Options) (*document, error) {
	d, err := newDocument(r, o)
	if err != nil {
		return nil, err
	}
	d.title = sheetTitled
	d.front()
	d.offer()
	d.failures()
	d.leftToDo()
	d.aboutScript()
	d.warnings()
	d.walkAround()
	d.asked()
	d.everyPosition()
	d.bench()
	d.signatures()
	d.finish()
	return d, nil
}

// whole is a solid fill.
func whole(ink figure.Ink) figure.Fill { return figure.Fill{Pattern: figure.Solid, Ink: ink} }
