package figure

import (
	"math"
	"slices"
	"strconv"
)

// callout is what is said about one part in a picture.
type callout struct {
	number int   // of the part; 0 where it has none, and numbers are given as they come
	part   int   // as Shape.Parts; noPart where it is of something else
	at     Point // on the part
	above  bool  // words are better above it than below
	way    string
	words  string
	name   string
}

const noPart = -1

const (
	calloutName  = 32.0 // the widest line of a name beside its part, and of its words where one line is too wide
	calloutStep  = 1.0  // of the places that are tried
	calloutGap   = 0.7  // around words
	symbolRoom   = 3.4  // of the symbol before the words
	leaderWidth  = 0.18
	leaderShort  = 1.2  // to here no line is needed from the words to the part
	tagRadius    = 1.55 // of a legend number
	wrongSide    = 9.0  // how much further away words may be to stand on the better side of a part
	acrossCentre = 14.0 // and on their own side of the model
	acrossDrawn  = 6.0  // and with no line across what is drawn
	tooFar       = 24.0 // from here a number is clearer
	saysLines    = 6    // the most lines that words with numbers in them take, so that no number is cut
	wordsAtMost  = 6    // so many parts may have their words beside them; of more, only the first
)

// block is words about a part, laid out from its top left corner.
type block struct {
	callout
	lines, names  []string
	width, height float64
}

// newBlock lays words out within a width. A name may be cut, but never what is said of it.
func newBlock(c callout, width float64) block {
	indent := 0.0
	if c.way != "" {
		indent = symbolRoom
	}
	b := block{callout: c, lines: wrapped(c.words, width-indent, wordSize, true, saysLines), names: wrapped(c.name, calloutName, nameSize, false, 2)}
	if len(b.lines) == 0 {
		b.lines = []string{""}
	}
	for _, line := range b.lines {
		b.width = max(b.width, indent+TextWidth(line, wordSize, true))
	}
	for _, name := range b.names {
		b.width = max(b.width, TextWidth(name, nameSize, false))
	}
	b.height = wordSize*(ascent+descent) + float64(len(b.lines)-1)*wordSize*lineHeight + float64(len(b.names))*nameSize*lineHeight
	return b
}

func (b block) draw(s *sheet, x, y float64) {
	base := y + wordSize*ascent
	start := x
	if b.way != "" {
		s.add(Arrow(b.way, Point{x + 1.3, base - wordSize*0.36}, 2.3, Black)...)
		start += symbolRoom
	}
	for i, line := range b.lines {
		if i > 0 {
			base += wordSize * lineHeight
		}
		s.write(Point{start, base}, line, wordSize, Start, true, Black)
	}
	base += wordSize * descent
	for _, name := range b.names {
		base += nameSize * lineHeight
		s.write(Point{x, base - nameSize*descent}, name, nameSize, Start, false, Black)
	}
	s.words = append(s.words, box{x, y, x + b.width, y + b.height})
}

// callOut puts words beside the parts that they are about, in a zone of the sheet, where
// nothing else is. Where there is no room it puts a number, and the words below all else.
// It returns how far down the sheet then reaches.
func (s *sheet) callOut(list []callout, zone box) float64 {
	var numbered []callout
	for i, c := range list {
		if (i == 0 || len(list) <= wordsAtMost) && s.beside(c, zone) {
			continue
		}
		if c.number == 0 {
			c.number = len(numbered) + 1
		}
		numbered = append(numbered, c)
		s.tag(c, strconv.Itoa(c.number), zone)
	}
	down := 0.0
	for _, boxes := range [][]box{s.taken, s.ground, s.words} {
		for _, b := range boxes {
			down = max(down, b.y1)
		}
	}
	slices.SortStableFunc(numbered, func(a, b callout) int { return a.number - b.number })
	return s.legend(numbered, down+0.8)
}

// beside puts words beside a part, in one line or else in two, if there is room.
func (s *sheet) beside(c callout, zone box) bool {
	for _, width := range []float64{zone.x1 - zone.x0, calloutName} {
		b := newBlock(c, width)
		if at, ok := s.room(c, b.width, b.height, zone); ok {
			s.of(c.part, func() {
				s.lead(c.at, at)
				b.draw(s, at.x0, at.y0)
			})
			return true
		}
	}
	return false
}

// tag marks a part with a number: where there is room, else over what is drawn.
func (s *sheet) tag(c callout, number string, zone box) {
	at, ok := s.room(c, 2*tagRadius, 2*tagRadius, zone)
	// Then over what is drawn, but not over other words, and with no line across them; only
	// where there is no room at all with a line across them.
	for _, crowded := range []bool{false, true} {
		if !ok {
			over := sheet{words: s.words, lines: s.lines, crowded: crowded}
			at, ok = over.room(c, 2*tagRadius, 2*tagRadius, zone)
		}
	}
	if !ok {
		at = box{c.at.X - tagRadius, c.at.Y - tagRadius, c.at.X + tagRadius, c.at.Y + tagRadius}
	}
	s.of(c.part, func() {
		s.lead(c.at, at)
		s.numeral(at.centre(), number)
	})
}

func (s *sheet) numeral(at Point, number string) {
	s.add(Path{Points: circle(at, tagRadius), Closed: true, Fill: white, Stroke: thin})
	size := nameSize * 0.9
	if len(number) > 1 {
		size = nameSize * 0.7
	}
	s.write(Point{at.X, at.Y + size*0.36}, number, size, Middle, true, Black)
	s.words = append(s.words, box{at.X - tagRadius, at.Y - tagRadius, at.X + tagRadius, at.Y + tagRadius})
}

// legend is a line for every number, in two columns where all are short enough; a name
// that finds no room behind its words is below them.
func (s *sheet) legend(numbered []callout, down float64) float64 {
	if len(numbered) == 0 {
		return down
	}
	const number, row = 2*tagRadius + 1, 3.9
	columns := 2
	for _, c := range numbered {
		if legendWidth(c)+number > sheetWidth/2-margin-1 {
			columns = 1
		}
	}
	rows := (len(numbered) + columns - 1) / columns
	top := down
	for i, c := range numbered {
		if i%rows == 0 {
			down = top
		}
		x, y := margin+float64(i/rows)*sheetWidth/2, down+row/2
		down += row
		s.numeral(Point{x + tagRadius, y}, strconv.Itoa(c.number))
		x += number
		below := legendWidth(c)+x > sheetWidth-margin
		nameAt := Point{x, y + nameSize*(0.36+lineHeight)}
		if c.way != "" {
			s.add(Arrow(c.way, Point{x + 1.3, y}, 2.3, Black)...)
			x += symbolRoom
		}
		words := cut(c.words, sheetWidth-margin-x, nameSize, true)
		s.write(Point{x, y + nameSize*0.36}, words, nameSize, Start, true, Black)
		if below {
			down += nameSize * lineHeight
		} else {
			nameAt = Point{x + TextWidth(words, nameSize, true) + 1.2, y + nameSize*0.36}
		}
		s.write(nameAt, cut(c.name, sheetWidth-margin-nameAt.X, nameSize, false), nameSize, Start, false, Black)
	}
	if columns == 2 {
		return top + float64(rows)*row
	}
	return down
}

func legendWidth(c callout) float64 {
	return symbolRoom + TextWidth(c.words, nameSize, true) + 1.2 + TextWidth(c.name, nameSize, false)
}

// room finds the place nearest to a part that takes a block of words.
func (s *sheet) room(c callout, width, height float64, zone box) (box, bool) {
	best, found, least := box{}, false, tooFar
	rows := int((zone.y1 - zone.y0 - height) / calloutStep)
	nearest := min(max(int((c.at.Y-zone.y0-height/2)/calloutStep), 0), rows)
	for n := range 2 * (rows + 1) {
		// From the nearest row outwards, up and down in turn.
		row := nearest + (n+1)/2*(1-2*(n%2))
		if row < 0 || row > rows {
			continue
		}
		y := zone.y0 + float64(row)*calloutStep
		if beyond := max(y-c.at.Y, c.at.Y-y-height); beyond >= least {
			continue
		}
		for x := zone.x0; x+width <= zone.x1; x += calloutStep {
			// Port is tried from the left and starboard from the right: alike for both.
			at := box{x, y, x + width, y + height}
			if c.at.X > sheetWidth/2 {
				at.x0, at.x1 = sheetWidth-at.x1, sheetWidth-at.x0
			}
			cost := c.cost(at, least)
			if cost >= least || !s.free(at.grown(calloutGap)) {
				continue
			}
			reach := [2]Point{c.at, at.nearest(c.at)}
			if !s.crowded && s.acrossWords(reach) {
				continue
			}
			if cost += acrossDrawn * float64(s.acrossTaken(reach)); cost < least {
				best, found, least = at, true, cost
			}
		}
	}
	return best, found
}

// cost is how good a place for words is, the less the better. From most on it need not be
// exact.
func (c callout) cost(at box, most float64) float64 {
	near, middle := at.nearest(c.at), at.centre()
	cost := 0.2 * math.Abs(middle.X-c.at.X)
	if c.above != (middle.Y < c.at.Y) {
		cost += wrongSide
	}
	if math.Abs(c.at.X-sheetWidth/2) > 1 && (c.at.X < sheetWidth/2) != (middle.X < sheetWidth/2) {
		cost += acrossCentre
	}
	dx, dy := math.Abs(near.X-c.at.X), math.Abs(near.Y-c.at.Y)
	if nearer := cost + max(dx, dy); nearer >= most {
		return nearer
	}
	return cost + math.Hypot(dx, dy)
}

func (s *sheet) free(at box) bool {
	for _, boxes := range [...][]box{s.words, s.taken, s.ground} {
		for _, b := range boxes {
			if b.meets(at) {
				return false
			}
		}
	}
	for _, l := range s.lines {
		if crosses(l, at) {
			return false
		}
	}
	return true
}

func (s *sheet) acrossWords(l [2]Point) bool {
	for _, b := range s.words {
		if crosses(l, b.grown(0.3)) {
			return true
		}
	}
	return false
}

// acrossTaken is how many of the things drawn a line runs across, beside the one that it
// begins on.
func (s *sheet) acrossTaken(l [2]Point) int {
	n := 0
	for _, b := range s.taken {
		if crosses(l, b) && !crosses([2]Point{l[0], l[0]}, b) {
			n++
		}
	}
	return n
}

// crosses is true for a line of which a part is within a box.
func crosses(l [2]Point, b box) bool {
	from, to := 0.0, 1.0
	dx, dy := l[1].X-l[0].X, l[1].Y-l[0].Y
	for _, edge := range [4][2]float64{{-dx, l[0].X - b.x0}, {dx, b.x1 - l[0].X}, {-dy, l[0].Y - b.y0}, {dy, b.y1 - l[0].Y}} {
		switch p, q := edge[0], edge[1]; {
		case p == 0 && q < 0:
			return false
		case p < 0:
			from = max(from, q/p)
		case p > 0:
			to = min(to, q/p)
		}
	}
	return from <= to
}

// lead draws the line from a part to its words.
func (s *sheet) lead(from Point, at box) {
	to := at.nearest(from)
	if math.Hypot(to.X-from.X, to.Y-from.Y) < leaderShort {
		return
	}
	s.add(Disc(from, 0.4, Black)...)
	s.line(Stroke{Width: leaderWidth, Ink: Black}, from, to)
	s.lines = append(s.lines, [2]Point{from, to})
}
