package terminal

import (
	"io"

	"example.com/hingeline/verify/result/said"
)

// Text is plain running text laid out as reports are: for commands that
// explain. Make one with NewText.
type Text struct{ p *page }

// NewText starts a text.
func NewText(o Options) *Text { return &Text{newPage(o)} }

// Title is a line that stands out.
func (t *Text) Title(words string) { t.p.para(0, words, t.p.strong) }

// Paragraph is words wrapped under an indent, in columns.
func (t *Text) Paragraph(indent int, words string) { t.p.para(indent, words, plain) }

// Entry is a label with words beside it; the label says how wide it is by the
// spaces at its end.
func (t *Text) Entry(label, words string) { t.p.hang(label, t.p.strong, words, plain) }

// Gap is an empty line.
func (t *Text) Gap() { t.p.blank() }

// Render writes the text. The error is the writer's.
func (t *Text) Render(w io.Writer) error { return t.p.flush(w) }

// OneLine is text made fit for one line of a terminal, cut to its width.
func OneLine(text string, o Options) string {
	p := newPage(o)
	width := o.Width
	if width <= 0 {
		width = MaxWidth
	}
	return cut(p.say(text), width, p.say("…"))
}

// Grouped is a number with its thousands marked: 200,000.
func Grouped(n int) string { return said.Grouped(n) }
