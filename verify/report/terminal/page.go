package terminal

import (
	"io"
	"strings"
	"unicode"

	"github.com/fatih/color"

	"example.com/hingeline/verify/result/said"
)

// page is the text being laid out. Widths are counted on plain text; colour is
// put on afterwards, one line at a time.
type page struct {
	out   strings.Builder
	width int
	ascii bool
	named string // the model as a command line names it

	good, bad, warn, strong, faint paint

	checks *said.Checks // of the report
}

// paint is a colour to put on text; the nil paint is none.
type paint func(string) string

// plain leaves text as it is.
var plain paint

func newPage(o Options) *page {
	p := &page{width: o.Width, ascii: o.ASCII, named: o.Airframe}
	if p.width <= 0 || p.width > MaxWidth {
		p.width = MaxWidth
	}
	p.width = max(p.width, MinWidth)
	p.good = painter(o.Color, color.FgGreen)
	p.bad = painter(o.Color, color.FgRed, color.Bold)
	p.warn = painter(o.Color, color.FgYellow)
	p.strong = painter(o.Color, color.Bold)
	p.faint = painter(o.Color, color.Faint)
	return p
}

func painter(on bool, attributes ...color.Attribute) paint {
	if !on {
		return plain
	}
	c := color.New(attributes...)
	c.EnableColor()
	return func(text string) string { return c.Sprint(text) }
}

func (p *page) flush(w io.Writer) error {
	_, err := io.WriteString(w, p.out.String())
	return err
}

// blank is an empty line, but never two, and none at the top.
func (p *page) blank() {
	if s := p.out.String(); s != "" && !strings.HasSuffix(s, "\n\n") {
		p.out.WriteByte('\n')
	}
}

// para writes text under an indent, wrapped.
func (p *page) para(indent int, text string, c paint) {
	p.hang(spaces(indent), plain, text, c)
}

// hang writes text after a label on its first line; further lines stand under
// the text, not under the label.
func (p *page) hang(label string, onLabel paint, text string, onText paint) {
	label = p.say(label)
	under := columns(label)
	if under > p.width/2 {
		p.row(inked{label, onLabel})
		under = 6
		label = spaces(under)
		onLabel = plain
	}
	for i, line := range wrap(p.say(text), p.width-under) {
		if i > 0 {
			label, onLabel = spaces(under), plain
		}
		p.row(inked{label, onLabel}, inked{line, onText})
	}
}

// inked is text and its colour.
type inked struct {
	text  string
	paint paint
}

// row writes pieces as one line, without the spaces at its end. Spaces around a
// piece are never coloured.
func (p *page) row(pieces ...inked) {
	for len(pieces) > 0 {
		last := &pieces[len(pieces)-1]
		if last.text = strings.TrimRight(last.text, " "); last.text != "" {
			break
		}
		pieces = pieces[:len(pieces)-1]
	}
	for _, piece := range pieces {
		p.ink(piece)
	}
	p.out.WriteByte('\n')
}

func (p *page) ink(piece inked) {
	if piece.paint == nil {
		p.out.WriteString(piece.text)
		return
	}
	body := strings.TrimLeft(piece.text, " ")
	ink := strings.TrimRight(body, " ")
	p.out.WriteString(piece.text[:len(piece.text)-len(body)])
	if ink != "" {
		p.out.WriteString(piece.paint(ink))
	}
	p.out.WriteString(body[len(ink):])
}

// excerpt shows one line of a file, cut and not wrapped, so that it looks as it
// does in the file; what stands at the column, from 1, stays in sight.
func (p *page) excerpt(indent int, label, text string, column int) {
	head := spaces(indent) + label
	line := p.window(strings.TrimRight(text, " \t\r\n"), column, p.width-columns(head))
	p.row(inked{head, p.faint}, inked{line, plain})
}

// inSight is how much behind its column an excerpt shows at least, in columns.
const inSight = 16

// window is a line cut to width columns around a column of the text.
func (p *page) window(text string, column, width int) string {
	more := p.say("…")
	runes := []rune(text)
	at := min(max(column-1, 0), len(runes))
	before := p.say(string(runes[:at]))
	if columns(p.say(text)) <= width || columns(before)+inSight+columns(more) <= width {
		return cut(p.say(text), width, more)
	}
	start := at
	for start > 0 && (columns(p.say(string(runes[start-1:at]))) <= width/3 ||
		columns(p.say(string(runes[start-1:])))+columns(more) <= width) {
		start--
	}
	return cut(more+p.say(string(runes[start:])), width, more)
}

// ascii are the signs that the report itself uses, and their stand-ins.
var ascii = strings.NewReplacer(
	"N·cm", "N cm",
	"✓", "ok", "✗", "X", "▲", "!", "·", "-",
	"±", "+/-", "°", " deg", "µ", "u", "×", "x", "−", "-", "–", "-", "—", "-",
	"…", "...", "≥", ">=", "≤", "<=", "→", "->", "“", `"`, "”", `"`, "‘", "'", "’", "'",
	"½", "1/2", "⅓", "1/3", "¼", "1/4",
)

// say makes text fit for the terminal: signs that it lacks are replaced, and
// control characters, which could move the cursor or change colours, are shown
// as a question mark.
func (p *page) say(text string) string {
	if isPrintableASCII(text) {
		return text
	}
	text = strings.Map(func(r rune) rune {
		switch {
		case ' ' <= r && r < 0x7f:
			return r
		case r == '\t' || r == '\u00a0' || r == '\u202f':
			return ' '
		case unicode.IsControl(r) || r == unicode.ReplacementChar || unicode.Is(unicode.Bidi_Control, r):
			return '?'
		}
		return r
	}, text)
	if p.ascii {
		text = ascii.Replace(text)
	}
	return text
}

func isPrintableASCII(text string) bool {
	for i := 0; i < len(text); i++ {
		if text[i] < ' ' || text[i] > '~' {
			return false
		}
	}
	return true
}
