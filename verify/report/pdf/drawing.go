package pdf

import (
	"math"
	"strconv"

	"example.com/hingeline/verify/report/figure"
)

// figure puts a drawing onto the page. Its title and description are what pages that can be
// read out have; here the words beside it say the same.
func (w *writer) figure(m drawn) {
	to := func(p figure.Point) figure.Point { return figure.Point{X: m.x + p.X*m.scale, Y: m.y + p.Y*m.scale} }
	for _, item := range m.figure.Items {
		switch item := item.(type) {
		case figure.Path:
			points := make([]figure.Point, len(item.Points))
			for i, p := range item.Points {
				points[i] = to(p)
			}
			item.Points = points
			item.Stroke.Width *= m.scale
			w.path(item)
		case figure.Arc:
			item.Centre, item.Radius = to(item.Centre), item.Radius*m.scale
			item.Stroke.Width *= m.scale
			w.arc(item)
		case figure.Text:
			w.figureText(item, to(item.At), m.scale)
		}
	}
}

func (w *writer) figureText(t figure.Text, at figure.Point, scale float64) {
	as := regular
	if t.Bold {
		as = bold
	}
	plain, size := w.fonts.plain(t.Words, as), t.Size*scale
	// The drawing has left room for the letters, not for the numbers of those that are missing.
	if room, wide := figure.TextWidth(t.Words, size, t.Bold), w.fonts.width(plain, as, size); wide > room && plain != t.Words {
		size *= room / wide
	}
	switch t.Anchor {
	case figure.Middle:
		at.X -= w.fonts.width(plain, as, size) / 2
	case figure.End:
		at.X -= w.fonts.width(plain, as, size)
	}
	w.words(words{at.X, at.Y, size, as, t.Ink, plain})
}

// path draws a path, its fill first.
func (w *writer) path(p figure.Path) {
	if len(p.Points) < 2 {
		return
	}
	if p.Closed && len(p.Points) > 2 {
		w.fill(p)
	}
	if p.Stroke.Width <= 0 {
		return
	}
	w.line(p.Stroke)
	w.trace(p)
	w.doc.DrawPath("D")
}

// trace makes a path without drawing it. It is written in one go: there are thousands.
func (w *writer) trace(p figure.Path) {
	_, tall := w.doc.GetPageSize()
	scale := w.doc.GetConversionRatio()
	b := w.room[:0]
	for i, q := range p.Points {
		b = strconv.AppendFloat(b, q.X*scale, 'f', 2, 64)
		b = append(b, ' ')
		b = strconv.AppendFloat(b, (tall-q.Y)*scale, 'f', 2, 64)
		if i == 0 {
			b = append(b, " m "...)
		} else {
			b = append(b, " l "...)
		}
	}
	if p.Closed {
		b = append(b, 'h')
	}
	w.doc.RawWriteStr(string(b))
	w.room = b
}

func (w *writer) fill(p figure.Path) {
	switch p.Fill.Pattern {
	case figure.Solid:
		w.ink(p.Fill.Ink)
		w.trace(p)
		w.doc.DrawPath("F")
	default:
		lines := figure.Hatch(p.Points, p.Fill.Pattern)
		if len(lines) == 0 {
			return
		}
		w.line(figure.Stroke{Width: figure.HatchWidth, Ink: p.Fill.Ink})
		for _, l := range lines {
			w.trace(figure.Path{Points: l[:]})
		}
		w.doc.DrawPath("D")
	}
}

// arc draws a part of a circle.
func (w *writer) arc(a figure.Arc) {
	if a.Radius <= 0 || a.Stroke.Width <= 0 || a.From == a.To {
		return
	}
	w.line(a.Stroke)
	// The document counts angles the other way round.
	low, high := -math.Max(a.From, a.To), -math.Min(a.From, a.To)
	w.doc.Arc(a.Centre.X, a.Centre.Y, a.Radius, a.Radius, 0, low, high, "D")
}
