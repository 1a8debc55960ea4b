package figure

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
)

// SVGOptions say how a drawing is written.
type SVGOptions struct {
	ID    string // the drawing's id, of letters, digits and "-"; those of its title and description begin with it
	Class string // of the svg element; may be empty
}

// SVG writes a drawing as an svg element in its own namespace, fit to stand alone or in a
// page. Lengths are millimetres. Inks are classes (ink-black, fill-pale) beside plain
// attributes, so that a page may restyle them and a viewer without style sheets needs
// none. The same drawing and options give the same bytes. The error is the writer's, or
// says that the drawing holds a number that is none; then nothing is written.
func SVG(w io.Writer, d *Drawing, o SVGOptions) error {
	if err := d.sound(); err != nil {
		return err
	}
	b := &svg{Writer: bufio.NewWriter(w)}
	id := ident(o.ID)
	b.put(`<svg xmlns="http://www.w3.org/2000/svg"`)
	b.put(` id="`, id, `"`)
	if o.Class != "" {
		b.put(` class="`, escape(o.Class), `"`)
	}
	b.put(` width="`, number(d.Width), `mm" height="`, number(d.Height), `mm" viewBox="0 0 `, number(d.Width), " ", number(d.Height), `"`)
	b.put(` role="img" aria-labelledby="`, id, `-title" aria-describedby="`, id, `-desc" font-family="sans-serif" stroke-linejoin="round" stroke-linecap="round">`, "\n")
	b.put(`<title id="`, id, `-title">`, escape(d.Title), "</title>\n")
	b.put(`<desc id="`, id, `-desc">`, escape(d.Description), "</desc>\n")
	b.put(`<rect class="fill-white" width="`, number(d.Width), `" height="`, number(d.Height), `" fill="#ffffff"/>`, "\n")
	for _, item := range d.Items {
		switch item := item.(type) {
		case Path:
			b.path(&item)
		case Arc:
			b.arc(&item)
		case Text:
			b.text(&item)
		}
	}
	b.put("</svg>\n")
	return b.Flush()
}

// sound is an error for a drawing that cannot be written.
func (d *Drawing) sound() error {
	numbers := []float64{d.Width, d.Height}
	for _, item := range d.Items {
		switch item := item.(type) {
		case Path:
			for _, p := range item.Points {
				numbers = append(numbers, p.X, p.Y)
			}
			numbers = append(numbers, item.Stroke.Width)
		case Arc:
			numbers = append(numbers, item.Centre.X, item.Centre.Y, item.Radius, item.From, item.To, item.Stroke.Width)
		case Text:
			numbers = append(numbers, item.At.X, item.At.Y, item.Size)
		}
	}
	if unsound("number", numbers...) != "" {
		return fmt.Errorf("figure %q holds a number that cannot be drawn", d.Title)
	}
	return nil
}

type svg struct{ *bufio.Writer }

// put writes text; the writer keeps its first error for the end.
func (b *svg) put(parts ...string) {
	for _, part := range parts {
		b.WriteString(part)
	}
}

func (b *svg) path(p *Path) {
	if len(p.Points) == 0 {
		return
	}
	outline := strings.Builder{}
	for i, at := range p.Points {
		outline.WriteString(step(i))
		outline.WriteString(pair(at))
	}
	if p.Closed {
		outline.WriteString("Z")
	}
	var classes []string
	attributes := ` fill="none"`
	if p.Closed && p.Fill.Pattern == Solid {
		classes = append(classes, "fill-"+p.Fill.Ink.name())
		attributes = ` fill="` + colour(p.Fill.Ink) + `"`
	}
	lines := Hatch(p.Points, p.Fill.Pattern)
	if p.Closed && (p.Fill.Pattern == Rising || p.Fill.Pattern == Falling) {
		classes = append(classes, "fill-white")
		attributes = ` fill="#ffffff"`
	}
	strokeClass, stroke := stroked(p.Stroke)
	if strokeClass != "" && len(lines) == 0 {
		classes = append(classes, strokeClass)
		attributes += stroke
	}
	b.element(classes, outline.String(), attributes)
	if !p.Closed || len(lines) == 0 {
		return
	}
	hatch := strings.Builder{}
	for _, l := range lines {
		hatch.WriteString("M" + pair(l[0]) + "L" + pair(l[1]))
	}
	class, attributes := stroked(Stroke{Width: HatchWidth, Ink: p.Fill.Ink})
	b.element([]string{class}, hatch.String(), ` fill="none"`+attributes)
	if strokeClass != "" {
		b.element([]string{strokeClass}, outline.String(), ` fill="none"`+stroke)
	}
}

func step(i int) string {
	if i == 0 {
		return "M"
	}
	return "L"
}

func (b *svg) element(classes []string, d, attributes string) {
	b.put("<path")
	if len(classes) > 0 {
		b.put(` class="`, strings.Join(classes, " "), `"`)
	}
	b.put(attributes, ` d="`, d, `"/>`, "\n")
}

func stroked(s Stroke) (class, attributes string) {
	if s.Width <= 0 {
		return "", ""
	}
	attributes = ` stroke="` + colour(s.Ink) + `" stroke-width="` + number(s.Width) + `"`
	if lengths := s.Dash.Lengths(); lengths != nil {
		attributes += ` stroke-linecap="butt" stroke-dasharray="` + number(lengths[0]) + " " + number(lengths[1]) + `"`
	}
	return "ink-" + s.Ink.name(), attributes
}

// arc is written as two halves, since an arc with one end for both is none.
func (b *svg) arc(a *Arc) {
	middle := (a.From + a.To) / 2
	sweep := "0"
	if a.To > a.From {
		sweep = "1"
	}
	radius := number(a.Radius) + " " + number(a.Radius) + " 0 0 " + sweep + " "
	class, stroke := stroked(a.Stroke)
	if class == "" {
		return
	}
	b.element([]string{class}, "M"+pair(a.on(a.From))+"A"+radius+pair(a.on(middle))+"A"+radius+pair(a.on(a.To)), ` fill="none"`+stroke)
}

// on is the point of an arc at an angle.
func (a *Arc) on(degrees float64) Point {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return Point{a.Centre.X + a.Radius*cos, a.Centre.Y + a.Radius*sin}
}

func (b *svg) text(t *Text) {
	b.put(`<text class="fill-`, t.Ink.name(), `" x="`, number(t.At.X), `" y="`, number(t.At.Y), `" font-size="`, number(t.Size), `"`)
	switch t.Anchor {
	case Middle:
		b.put(` text-anchor="middle"`)
	case End:
		b.put(` text-anchor="end"`)
	}
	if t.Bold {
		b.put(` font-weight="bold"`)
	}
	b.put(` fill="`, colour(t.Ink), `">`, escape(t.Words), "</text>\n")
}

func pair(p Point) string { return number(p.X) + " " + number(p.Y) }

// number has two decimals at most, and no sign on nothing.
func number(n float64) string {
	text := strconv.FormatFloat(n, 'f', 2, 64)
	text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	if text == "-0" {
		return "0"
	}
	return text
}

func colour(i Ink) string {
	r, g, b := i.RGB()
	return fmt.Sprintf("#%02x%02x%02x", r, g, b)
}

func escape(words string) string {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;").Replace(plain(words))
}

// ident is an id without what cannot be in one.
func ident(id string) string {
	clean := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', r == '-', r == '_':
			return r
		}
		return '-'
	}, id)
	if clean == "" || clean[0] >= '0' && clean[0] <= '9' || clean[0] == '-' {
		return "figure" + clean
	}
	return clean
}
