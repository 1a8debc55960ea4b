package pdf

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"example.com/hingeline/verify/report/figure"
)

// writer puts marks onto the pages of a document.
type writer struct {
	doc   *fpdf.Fpdf
	fonts *fonts
	added map[string]bool // faces that are in the document
	room  []byte          // for a path

	set struct { // what the page was last told, so that it is not told again
		face  string
		size  float64
		draw  figure.Ink
		fill  figure.Ink
		text  figure.Ink
		width float64
		dash  figure.Dash
	}
}

// unset is no ink, no dash.
const unset = 255

func colour(ink figure.Ink) (r, g, b int) {
	red, green, blue := ink.RGB()
	return int(red), int(green), int(blue)
}

// epoch is the date of documents of checks without one, so that they are the same every time.
var epoch = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// dated is the date of a check as a time.
func dated(date string) time.Time {
	for _, layout := range []string{time.RFC3339, time.DateOnly} {
		if t, err := time.Parse(layout, date); err == nil {
			return t.UTC()
		}
	}
	return epoch
}

// write makes the document of pages that are laid out. Fonts that were given may be such
// that the document cannot hold them: that is an error, whatever they do on the way.
func (d *document) write(w io.Writer) (err error) {
	defer func() {
		if d.fonts.given() && err == nil {
			if trouble := recover(); trouble != nil {
				err = fmt.Errorf("a font that was given cannot be put into the document: %v", trouble)
			}
		}
	}()
	doc := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: fpdf.SizeType{Wd: d.width, Ht: d.height}})
	doc.SetCatalogSort(true)
	doc.SetCreationDate(dated(d.report.Date))
	doc.SetModificationDate(dated(d.report.Date))
	doc.SetProducer(maker+d.report.Tool, true)
	doc.SetTitle(d.report.Model.Name+": "+d.title, true)
	doc.SetLang("en")
	doc.SetAutoPageBreak(false, 0)
	doc.SetLineCapStyle("butt")
	out := &writer{doc: doc, fonts: d.fonts, added: map[string]bool{}}
	for _, leaf := range d.leaves {
		out.page(leaf)
	}
	return doc.Output(w)
}

func (f *fonts) given() bool { return f.extra[regular] != nil || f.extra[bold] != nil }

func (w *writer) page(l *leaf) {
	w.doc.AddPage()
	w.set.face, w.set.size, w.set.width = "", 0, 0
	w.set.draw, w.set.fill, w.set.text, w.set.dash = unset, unset, unset, unset
	for _, o := range l.outline {
		w.font(w.fonts.faces[regular], normal)
		w.doc.Bookmark(o.title, 0, o.y)
	}
	for _, m := range l.marks {
		w.mark(m)
	}
}

func (w *writer) mark(m mark) {
	switch m := m.(type) {
	case words:
		w.words(m)
	case stroke:
		w.line(figure.Stroke{Width: m.width, Dash: m.dash, Ink: m.ink})
		w.doc.Line(m.x1, m.y1, m.x2, m.y2)
	case box:
		w.box(m)
	case drawn:
		w.figure(m)
	}
}

// words sets a line, letter by letter in the face that has it.
func (w *writer) words(m words) {
	x := m.x
	rest := m.text
	for rest != "" {
		var face *typeface
		wide, end := 0.0, len(rest)
		for i, r := range rest {
			g := w.fonts.glyph(r, m.style)
			if i > 0 && g.face != face {
				end = i
				break
			}
			face = g.face
			wide += g.advance * m.size
		}
		if face != nil && strings.Trim(rest[:end], " ") != "" {
			w.font(face, m.size)
			if w.set.text != m.ink {
				w.doc.SetTextColor(colour(m.ink))
				w.set.text = m.ink
			}
			w.doc.Text(x, m.y, rest[:end])
		}
		x, rest = x+wide, rest[end:]
	}
}

func (w *writer) font(face *typeface, size float64) {
	if !w.added[face.name] {
		// A copy: the library writes into the font of letters that are all of one width.
		w.doc.AddUTF8FontFromBytes(face.name, "", slices.Clone(face.data))
		w.added[face.name] = true
	}
	switch {
	case w.set.face != face.name:
		w.doc.SetFont(face.name, "", w.doc.UnitToPointConvert(size))
	case w.set.size != size:
		w.doc.SetFontUnitSize(size)
	}
	w.set.face, w.set.size = face.name, size
}

func (w *writer) line(s figure.Stroke) {
	if w.set.draw != s.Ink {
		w.doc.SetDrawColor(colour(s.Ink))
		w.set.draw = s.Ink
	}
	if w.set.width != s.Width {
		w.doc.SetLineWidth(s.Width)
		w.set.width = s.Width
	}
	if w.set.dash != s.Dash {
		w.doc.SetDashPattern(s.Dash.Lengths(), 0)
		w.set.dash = s.Dash
	}
}

func (w *writer) ink(ink figure.Ink) {
	if w.set.fill != ink {
		w.doc.SetFillColor(colour(ink))
		w.set.fill = ink
	}
}

func (w *writer) box(m box) {
	corners := []figure.Point{{X: m.x, Y: m.y}, {X: m.x + m.w, Y: m.y}, {X: m.x + m.w, Y: m.y + m.h}, {X: m.x, Y: m.y + m.h}}
	w.path(figure.Path{Points: corners, Closed: true, Stroke: figure.Stroke{Width: m.line, Ink: m.ink}, Fill: m.fill})
}
