package figure

import (
	"bytes"
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
	Parts bool   // what shows a part of the model is a group with its index: <g data-part="3">
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
	id := ident(o.ID)
	b := &svg{}
	b.put(`<svg xmlns="http://www.w3.org/2000/svg" id="`, id, `"`)
	if o.Class != "" {
		b.put(` class="`, escape(o.Class), `"`)
	}
	b.put(` width="`).number(d.Width).put(`mm" height="`).number(d.Height).put(`mm" viewBox="0 0 `).number(d.Width).put(" ").number(d.Height)
	b.put(`" role="img" aria-labelledby="`, id, `-title" aria-describedby="`, id, `-desc" font-family="sans-serif" stroke-linejoin="round" stroke-linecap="round">`, "\n")
	b.put(`<title id="`, id, `-title">`, escape(d.Title), "</title>\n")
	b.put(`<desc id="`, id, `-desc">`, escape(d.Description), "</desc>\n")
	b.put(`<rect class="fill-white" width="`).number(d.Width).put(`" height="`).number(d.Height).put(`" fill="#ffffff"/>`, "\n")
	runs := d.Of
	if !o.Parts {
		runs = nil
	}
	for i, item := range d.Items {
		if len(runs) > 0 && runs[0].From == i {
			b.put(`<g data-part="`, strconv.Itoa(runs[0].Part), `">`, "\n")
		}
		switch item := item.(type) {
		case Path:
			b.path(&item)
		case Arc:
			b.arc(&item)
		case Text:
			b.text(&item)
		}
		if len(runs) > 0 && runs[0].To == i+1 {
			b.put("</g>\n")
			runs = runs[1:]
		}
	}
	b.put("</svg>\n")
	_, err := w.Write(b.bytes)
	return err
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

type svg struct{ bytes []byte }

func (b *svg) put(parts ...string) *svg {
	for _, part := range parts {
		b.bytes = append(b.bytes, part...)
	}
	return b
}

// number has two decimals at most, and no sign on nothing.
func (b *svg) number(n float64) *svg {
	start := len(b.bytes)
	b.bytes = strconv.AppendFloat(b.bytes, n, 'f', 2, 64)
	b.bytes = bytes.TrimRight(bytes.TrimRight(b.bytes, "0"), ".") // there is a point in it
	if string(b.bytes[start:]) == "-0" {
		b.bytes = append(b.bytes[:start], '0')
	}
	return b
}

func (b *svg) pair(p Point) *svg { return b.number(p.X).put(" ").number(p.Y) }

func (b *svg) path(p *Path) {
	if len(p.Points) == 0 {
		return
	}
	hatched := p.Closed && (p.Fill.Pattern == Rising || p.Fill.Pattern == Falling)
	var lines [][2]Point
	if hatched {
		lines = Hatch(p.Points, p.Fill.Pattern)
	}
	fill, ink := noFill, p.Stroke
	switch {
	case hatched:
		fill = White
	case p.Closed && p.Fill.Pattern == Solid:
		fill = p.Fill.Ink
	}
	if len(lines) > 0 {
		ink.Width = 0 // it is drawn over the lines
	}
	b.open(fill, ink).outline(p).close()
	if len(lines) == 0 {
		return
	}
	b.open(noFill, Stroke{Width: HatchWidth, Ink: p.Fill.Ink})
	for _, l := range lines {
		b.put("M").pair(l[0]).put("L").pair(l[1])
	}
	b.close()
	if p.Stroke.Width > 0 {
		b.open(noFill, p.Stroke).outline(p).close()
	}
}

func (b *svg) outline(p *Path) *svg {
	for i, at := range p.Points {
		if i == 0 {
			b.put("M").pair(at)
		} else {
			b.put("L").pair(at)
		}
	}
	if p.Closed {
		b.put("Z")
	}
	return b
}

// noFill is the ink of what is not filled.
const noFill Ink = 255

// open begins a path, up to its points.
func (b *svg) open(fill Ink, s Stroke) *svg {
	b.put("<path")
	switch {
	case fill != noFill && s.Width > 0:
		b.put(` class="fill-`, fill.name(), " ink-", s.Ink.name(), `"`)
	case fill != noFill:
		b.put(` class="fill-`, fill.name(), `"`)
	case s.Width > 0:
		b.put(` class="ink-`, s.Ink.name(), `"`)
	}
	if fill == noFill {
		b.put(` fill="none"`)
	} else {
		b.put(` fill="`, colour(fill), `"`)
	}
	if s.Width > 0 {
		b.put(` stroke="`, colour(s.Ink), `" stroke-width="`).number(s.Width).put(`"`)
		if lengths := s.Dash.Lengths(); lengths != nil {
			b.put(` stroke-linecap="butt" stroke-dasharray="`).number(lengths[0]).put(" ").number(lengths[1]).put(`"`)
		}
	}
	return b.put(` d="`)
}

func (b *svg) close() { b.put(`"/>`, "\n") }

// arc is written as two halves, since an arc with one end for both is none.
func (b *svg) arc(a *Arc) {
	if a.Stroke.Width <= 0 {
		return
	}
	sweep := " 0 0 0 "
	if a.To > a.From {
		sweep = " 0 0 1 "
	}
	b.open(noFill, a.Stroke).put("M").pair(a.on(a.From))
	for _, end := range []float64{(a.From + a.To) / 2, a.To} {
		b.put("A").number(a.Radius).put(" ").number(a.Radius).put(sweep).pair(a.on(end))
	}
	b.close()
}

// on is the point of an arc at an angle.
func (a *Arc) on(degrees float64) Point {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return Point{a.Centre.X + a.Radius*cos, a.Centre.Y + a.Radius*sin}
}

func (b *svg) text(t *Text) {
	b.put(`<text class="fill-`, t.Ink.name(), `" x="`).number(t.At.X).put(`" y="`).number(t.At.Y).put(`" font-size="`).number(t.Size).put(`"`)
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

// colours are the inks as SVG writes them.
var colours = func() map[Ink]string {
	all := map[Ink]string{}
	for i := Black; i <= Bad; i++ {
		r, g, b := i.RGB()
		all[i] = fmt.Sprintf("#%02x%02x%02x", r, g, b)
	}
	return all
}()

func colour(i Ink) string { return colours[i] }

var entities = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")

func escape(words string) string { return entities.Replace(plain(words)) }

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
