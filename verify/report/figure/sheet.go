package figure

import "math"

// Sizes on paper, in millimetres.
const (
	sheetWidth = 90.0
	margin     = 1.5
	sheetAside = 3.4 // free on either side of the model
	wordSize   = 2.7 // of the words about a movement
	nameSize   = 2.4 // of everything else
	noteSize   = 2.1 // of what is below it all
	lineHeight = 1.3 // of a text's size, from one base line to the next
	ascent     = 0.85
	descent    = 0.25
)

// The lines of a drawing.
var (
	bold   = Stroke{Width: 0.5, Ink: Black}
	thin   = Stroke{Width: 0.25, Ink: Black}
	faint  = Stroke{Width: 0.2, Ink: Grey}
	dashed = Stroke{Width: 0.25, Dash: Dashed, Ink: Grey}
	dotted = Stroke{Width: 0.3, Dash: Dotted, Ink: Black}
	pale   = Fill{Pattern: Solid, Ink: Pale}
	white  = Fill{Pattern: Solid, Ink: White}
	black  = Fill{Pattern: Solid, Ink: Black}
)

// box is a rectangle on paper.
type box struct{ x0, y0, x1, y1 float64 }

func (a box) meets(b box) bool {
	return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1
}

func (a box) grown(by float64) box { return box{a.x0 - by, a.y0 - by, a.x1 + by, a.y1 + by} }

func (a box) centre() Point { return Point{(a.x0 + a.x1) / 2, (a.y0 + a.y1) / 2} }

// nearest is the point of a box that is nearest to another.
func (a box) nearest(p Point) Point {
	return Point{min(max(p.X, a.x0), a.x1), min(max(p.Y, a.y0), a.y1)}
}

func bounds(points []Point) box {
	b := box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, p := range points {
		b.x0, b.y0 = min(b.x0, p.X), min(b.y0, p.Y)
		b.x1, b.y1 = max(b.x1, p.X), max(b.y1, p.Y)
	}
	return b
}

// sheet is a drawing in the making, and what of its room is taken.
type sheet struct {
	items   []Item
	runs    []Run // of items, ascending, none within another
	taken   []box // by what is drawn: words keep off, and lines to words should
	ground  []box // by what is drawn beneath: words keep off
	words   []box // by words: nothing may run over them
	lines   [][2]Point
	crowded bool // lines to words may run across other words
}

func (s *sheet) add(items ...Item) { s.items = append(s.items, items...) }

// of draws what belongs to a part.
func (s *sheet) of(part int, draw func()) {
	from := len(s.items)
	draw()
	if to := len(s.items); to > from && part != noPart {
		s.runs = append(s.runs, Run{Part: part, From: from, To: to})
	}
}

// line draws a line that words may run across.
func (s *sheet) line(stroke Stroke, points ...Point) {
	s.add(Path{Points: points, Stroke: stroke})
}

// shape draws a closed path whose room is taken.
func (s *sheet) shape(stroke Stroke, fill Fill, points ...Point) {
	s.add(Path{Points: points, Closed: true, Stroke: stroke, Fill: fill})
	s.taken = append(s.taken, bounds(points).grown(stroke.Width/2))
}

// round draws a circle whose room is taken.
func (s *sheet) round(stroke Stroke, fill Fill, centre Point, radius float64) {
	s.shape(stroke, fill, circle(centre, radius)...)
}

// write puts words on the sheet at a base line.
func (s *sheet) write(at Point, words string, size float64, anchor Anchor, strong bool, ink Ink) {
	if words == "" {
		return
	}
	t := Text{At: at, Size: size, Anchor: anchor, Bold: strong, Ink: ink, Words: words}
	s.add(t)
	s.words = append(s.words, t.box())
}

// note is small words below everything else, in two lines at most. It returns how far down
// the sheet then reaches.
func (s *sheet) note(words string, down float64) float64 {
	for _, w := range s.words {
		down = max(down, w.y1)
	}
	for _, line := range wrapped(words, sheetWidth-2*margin, noteSize, false, 2) {
		down += noteSize * lineHeight
		s.write(Point{sheetWidth / 2, down - 0.13}, line, noteSize, Middle, false, Grey)
	}
	return down + 0.5
}

// box is about the room that a text takes.
func (t Text) box() box {
	w := TextWidth(t.Words, t.Size, t.Bold)
	x := t.At.X
	switch t.Anchor {
	case Middle:
		x -= w / 2
	case End:
		x -= w
	}
	return box{x, t.At.Y - t.Size*ascent, x + w, t.At.Y + t.Size*descent}
}

// finish makes a drawing of the sheet.
func (s *sheet) finish(width, height float64, title, description string) Drawing {
	return Drawing{Width: width, Height: height, Title: plain(title), Description: plain(description), Items: s.items, Of: s.runs}
}
