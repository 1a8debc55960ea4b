package pdf

import (
	"math"

	"example.com/hingeline/verify/report/figure"
)

// piece is something laid out: marks within a width and a height, from its top left corner,
// in millimetres. A piece is never split over pages.
type piece struct {
	width, height float64
	marks         []mark
	parts         []part // drawn after the marks
}

// part is a piece within another one.
type part struct {
	piece
	x, y, scale float64
}

// mark is one thing on paper.
type mark interface {
	moved(dx, dy, scale float64) mark
}

// words are on one line, all in one style.
type words struct {
	x, y  float64 // of the base line
	size  float64
	style style
	ink   figure.Ink
	text  string
}

// stroke is a straight line.
type stroke struct {
	x1, y1, x2, y2 float64
	width          float64
	dash           figure.Dash
	ink            figure.Ink
}

// box is a rectangle; line 0 is none.
type box struct {
	x, y, w, h float64
	line       float64
	fill       figure.Fill
	ink        figure.Ink
}

// drawn is a figure at a place.
type drawn struct {
	x, y, scale float64
	figure      *figure.Drawing
}

func (m words) moved(dx, dy, scale float64) mark {
	m.x, m.y, m.size = m.x*scale+dx, m.y*scale+dy, m.size*scale
	return m
}

func (m stroke) moved(dx, dy, scale float64) mark {
	m.x1, m.y1, m.x2, m.y2, m.width = m.x1*scale+dx, m.y1*scale+dy, m.x2*scale+dx, m.y2*scale+dy, m.width*scale
	return m
}

func (m box) moved(dx, dy, scale float64) mark {
	m.x, m.y, m.w, m.h, m.line = m.x*scale+dx, m.y*scale+dy, m.w*scale, m.h*scale, m.line*scale
	return m
}

func (m drawn) moved(dx, dy, scale float64) mark {
	m.x, m.y, m.scale = m.x*scale+dx, m.y*scale+dy, m.scale*scale
	return m
}

// add puts another piece into this one and makes room for it.
func (p *piece) add(q piece, x, y float64) {
	p.parts = append(p.parts, part{q, x, y, 1})
	p.width, p.height = math.Max(p.width, x+q.width), math.Max(p.height, y+q.height)
}

// draw puts all marks of a piece onto a page at a place.
func (p *piece) draw(l *leaf, x, y, scale float64) {
	for _, m := range p.marks {
		l.marks = append(l.marks, m.moved(x, y, scale))
	}
	for i := range p.parts {
		q := &p.parts[i]
		q.draw(l, x+q.x*scale, y+q.y*scale, q.scale*scale)
	}
}

// below puts another piece under this one, after a gap.
func (p *piece) below(q piece, gap float64) {
	if q.height == 0 {
		return
	}
	if p.height == 0 {
		gap = 0
	}
	p.add(q, 0, p.height+gap)
}

// scaled is the piece made larger or smaller.
func (p piece) scaled(by float64) piece {
	return piece{width: p.width * by, height: p.height * by, parts: []part{{p, 0, 0, by}}}
}

// beside are pieces from left to right, with a gap between them.
func beside(gap float64, pieces ...piece) piece {
	var all piece
	x := 0.0
	for _, p := range pieces {
		all.add(p, x, 0)
		x += p.width + gap
	}
	return all
}

// padded is a piece with room around it, left and right, above and below.
func padded(p piece, sides, ends float64) piece {
	var all piece
	all.add(p, sides, ends)
	all.width, all.height = p.width+2*sides, p.height+2*ends
	return all
}

// framed is a piece in a box of its size.
func framed(p piece, line float64, fill figure.Fill, ink figure.Ink) piece {
	all := piece{marks: []mark{box{0, 0, p.width, p.height, line, fill, ink}}}
	all.add(p, 0, 0)
	return all
}

// rule is a line across.
func rule(width, thick float64, dash figure.Dash, ink figure.Ink) piece {
	return piece{width: width, marks: []mark{stroke{0, 0, width, 0, thick, dash, ink}}}
}

// picture is a figure as a piece, made to fit a width.
func picture(d *figure.Drawing, width float64) piece {
	if d == nil || d.Width <= 0 || d.Height <= 0 {
		return piece{width: width}
	}
	scale := math.Min(1, width/d.Width)
	return piece{width: d.Width * scale, height: d.Height * scale, marks: []mark{drawn{0, 0, scale, d}}}
}
