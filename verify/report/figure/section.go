package figure

import (
	"fmt"
	"math"

	"example.com/hingeline/verify/result"
)

// Section is one part at its hinge: a surface cut across, from the side with the nose to
// the left, or what moves left and right from above; of what does not turn, how far it is
// along its travel. The angle is the true one. The stretch that is wanted is hatched, with
// its ends; w may be nil.
func Section(o *result.Outline, st *result.Stand, w *result.Want, title string) Drawing {
	if why := unsoundSection(o, st, w); why != "" {
		return cannot(sectionWidth, why, title)
	}
	var s sheet
	c := newCut(o, st, w)
	c.showAt = true
	bottom := c.draw(&s, 0)
	return s.finish(sectionWidth, bottom, title, c.described())
}

// WantedGot is two sections of one part side by side at one scale: as it is wanted, and as
// it is. Where no place is wanted there is only the second.
func WantedGot(o *result.Outline, st *result.Stand, w *result.Want, title string) Drawing {
	if why := unsoundSection(o, st, w); why != "" {
		return cannot(sheetWidth, why, title)
	}
	var s sheet
	got := newCut(o, st, w)
	got.showAt, got.head, got.mark = true, "got", Cross
	if w == nil {
		bottom := got.draw(&s, 0)
		return s.finish(sectionWidth, bottom, title, got.described())
	}
	wanted := newCut(o, st, w)
	wanted.head, wanted.mark, wanted.ink = "wanted", nil, Black
	const half = sheetWidth / 2
	bottom := max(wanted.draw(&s, 0), got.draw(&s, half))
	s.line(faint, Point{half, margin}, Point{half, bottom - margin})
	return s.finish(sheetWidth, bottom, title, fmt.Sprintf("Two pictures side by side. Wanted: %s. Got, which is wrong: %s",
		plain(w.Says), got.described()))
}

func unsoundSection(o *result.Outline, st *result.Stand, w *result.Want) string {
	if why := unsoundPart(o, st); why != "" {
		return why
	}
	if turns := o.Motion == result.UpDown || o.Motion == result.LeftRight; turns &&
		(math.Abs(st.At) > 180 || math.Abs(st.From) > 180 || o.Most > 180) {
		return "an angle of more than half a turn of " + o.Name
	}
	if w == nil {
		return ""
	}
	numbers := []float64{w.Low, w.High}
	if w.LowOpen {
		numbers[0] = 0
	}
	if w.HighOpen {
		numbers[1] = 0
	}
	if numbers[0] > numbers[1] && !w.LowOpen && !w.HighOpen {
		return "where " + o.Name + " should be"
	}
	return unsound("where "+o.Name+" should be", numbers...)
}

// Lengths of a section, in millimetres of paper.
const (
	sectionWidth  = 45.0
	sectionHinge  = 14.0 // from the left to the hinge
	sectionChord  = 19.0 // of the surface, whatever its own is
	sectionBefore = 11.0 // of what it hangs on
	sectionThick  = 2.6  // at the hinge
	sectionBand   = 2.2  // of the stretch that is wanted, beyond the trailing edge
	sectionNarrow = 0.3  // the least that it is drawn wide
	sectionArc    = 0.78 // of the chord: where the arc of the movement is
	sectionMost   = 30.0 // degrees that are drawn open where nothing says how far a part goes
)

// section is a part cut across at its hinge, in the making.
type section struct {
	o      *result.Outline
	st     *result.Stand
	w      *result.Want
	showAt bool // where it stands; else where it should
	head   string
	mark   func(Point, float64, Ink) []Item
	ink    Ink
}

func newCut(o *result.Outline, st *result.Stand, w *result.Want) *section {
	return &section{o: o, st: st, w: w, ink: Bad}
}

// draw puts it on a sheet, so far from its left, and returns how far down it reaches.
func (c *section) draw(s *sheet, left float64) float64 {
	y := 1.5
	if c.head != "" {
		y = c.heading(s, left)
	}
	if c.o.Motion == result.Power || c.o.Motion == result.OutIn {
		y = c.gauge(s, left, y)
	} else {
		y = c.hinged(s, left, y)
	}
	return c.words(s, left, y)
}

// hinged draws a part that turns.
func (c *section) hinged(s *sheet, left, top float64) float64 {
	up, down := c.reach()
	hinge := Point{left + sectionHinge, top + up + 3}
	if isWheel(c.o) || c.folds() {
		hinge.X = left + sectionWidth/2
	}
	bottom := hinge.Y + down + 1.5
	// The neutral line goes on beyond the part.
	end := c.on(hinge, c.length()+sectionBand+3, 0)
	s.line(dashed, hinge, end)
	if c.w != nil {
		c.sector(s, hinge)
	}
	c.stand(s, hinge)
	c.seen(s, left, top, bottom)
	return bottom
}

// aft is 1 where the part lies to the right of its hinge, and −1 for a nose wheel, which
// turns by its front.
func (c *section) aft() float64 {
	if c.o.Kind == "nose wheel" {
		return -1
	}
	return 1
}

func (c *section) length() float64 {
	switch {
	case isWheel(c.o):
		return sectionChord * 0.55
	case c.folds():
		return sectionChord * 0.75
	}
	return sectionChord
}

// folds is true for a surface that is drawn folded back over what it hangs on, for which
// there must be room.
func (c *section) folds() bool {
	for _, a := range c.angles() {
		if math.Abs(a) > 105 {
			return true
		}
	}
	return false
}

// on is a point of a ray from the hinge at an angle of the part, plus DOWN or LEFT. With
// the nose to the left, port is down as seen from above.
func (c *section) on(hinge Point, far, angle float64) Point {
	return onward(hinge, far, c.paper(angle))
}

// paper is an angle of the part as the direction on paper, in degrees clockwise from that
// of X.
func (c *section) paper(angle float64) float64 {
	if c.aft() < 0 {
		return 180 - angle
	}
	return angle
}

// angles are all those that are drawn.
func (c *section) angles() []float64 {
	angles := []float64{0, c.st.At, c.st.From}
	if c.w != nil {
		low, high := c.stretch()
		angles = append(angles, low, high)
	}
	return angles
}

// reach is how far the drawing goes above and below the hinge.
func (c *section) reach() (up, down float64) {
	up, down = sectionThick+2, sectionThick+2
	outside := c.length() + sectionBand + 1
	low, high := 0.0, 0.0
	for _, a := range c.angles() {
		low, high = min(low, a), max(high, a)
	}
	up = max(up, outside*sine(-low))
	down = max(down, outside*sine(high))
	if c.aft() < 0 {
		up, down = max(up, down), max(up, down)
	}
	return up, down
}

// stretch is what is wanted, as it is drawn: an end that is open is where the part stops.
func (c *section) stretch() (low, high float64) {
	most := c.o.Most
	if most == 0 {
		most = sectionMost
	}
	if c.o.Motion == result.Power || c.o.Motion == result.OutIn {
		most = 100
	}
	low, high = c.w.Low, c.w.High
	if c.w.LowOpen {
		low = min(-most, high, c.st.At)
		if c.o.Motion == result.Power {
			low = 0
		}
	}
	if c.w.HighOpen {
		high = max(most, low, c.st.At)
	}
	if c.o.Motion == result.UpDown || c.o.Motion == result.LeftRight {
		low, high = min(max(low, -180), 180), min(max(high, -180), 180)
	}
	return low, max(low, high)
}

// sector draws the stretch that is wanted, as a hatched band beyond the trailing edge and
// a dotted line to each of its ends.
func (c *section) sector(s *sheet, hinge Point) {
	low, high := c.stretch()
	inside := c.length() + 0.5
	outside := inside + sectionBand
	a, b := low, high
	if least := sectionNarrow / outside * 180 / math.Pi; b-a < least {
		middle := (a + b) / 2
		a, b = middle-least/2, middle+least/2
	}
	steps := int(math.Ceil((b-a)/3)) + 1
	var band []Point
	for i := range steps + 1 {
		band = append(band, c.on(hinge, outside, a+(b-a)*float64(i)/float64(steps)))
	}
	for i := range steps + 1 {
		band = append(band, c.on(hinge, inside, b-(b-a)*float64(i)/float64(steps)))
	}
	s.add(Path{Points: band, Closed: true, Stroke: Stroke{Width: 0.2, Ink: Black}, Fill: Fill{Pattern: Rising, Ink: Good}})
	for _, edge := range []struct {
		at   float64
		open bool
	}{{low, c.w.LowOpen}, {high, c.w.HighOpen}} {
		if !edge.open {
			s.line(Stroke{Width: 0.25, Dash: Dotted, Ink: Good}, hinge, c.on(hinge, outside+0.8, edge.at))
		}
	}
}

// stand draws the part where it stands, or, of what is wanted, in the middle of it.
func (c *section) stand(s *sheet, hinge Point) {
	at := c.st.At
	fill := Fill{Pattern: hatching(wayOf(c.st)), Ink: Black}
	stroke := bold
	if !c.showAt {
		low, high := c.stretch()
		at = (low + high) / 2
		fill, stroke = white, thin
	}
	if isWheel(c.o) {
		c.wheel(s, hinge, at, stroke, fill)
	} else {
		c.fixed(s, hinge)
		c.surface(s, hinge, at, stroke, fill)
	}
	from := c.start()
	if from != 0 {
		s.line(dotted, hinge, c.on(hinge, c.length(), from))
	}
	s.add(Disc(hinge, 0.75, Black)...)
	s.add(Disc(hinge, 0.3, White)...)
	c.swing(s, hinge, from, at)
}

// fixed is what the surface hangs on.
func (c *section) fixed(s *sheet, hinge Point) {
	const half = sectionThick / 2
	x := hinge.X - 0.9
	front := hinge.X - sectionBefore
	s.add(Path{Closed: true, Stroke: thin, Fill: pale, Points: []Point{
		{x, hinge.Y - half}, {x, hinge.Y + half}, {front + 2, hinge.Y + half + 0.5}, {front + 0.5, hinge.Y + half},
		{front, hinge.Y}, {front + 0.5, hinge.Y - half - 0.2}, {front + 2, hinge.Y - half - 0.8},
	}})
}

// surface draws the wedge from the hinge to the trailing edge. Its middle line begins at
// the hinge and has the angle; its hatching turns with it.
func (c *section) surface(s *sheet, hinge Point, at float64, stroke Stroke, fill Fill) {
	const half = sectionThick / 2
	sin, cos := math.Sincos(at * math.Pi / 180)
	place := func(p Point) Point { return Point{hinge.X + p.X*cos - p.Y*sin, hinge.Y + p.X*sin + p.Y*cos} }
	wedge := []Point{{0.5, -half}, {c.length(), 0}, {0.5, half}}
	lines := Hatch(wedge, fill.Pattern)
	for i, p := range wedge {
		wedge[i] = place(p)
	}
	s.add(Path{Points: wedge, Closed: true, Fill: white})
	for _, l := range lines {
		s.line(Stroke{Width: HatchWidth, Ink: fill.Ink}, place(l[0]), place(l[1]))
	}
	s.add(Path{Points: wedge, Closed: true, Stroke: stroke})
}

// wheel is a wheel from above, turned about its pivot, and a line that shows how far.
func (c *section) wheel(s *sheet, hinge Point, at float64, stroke Stroke, fill Fill) {
	const half = 5.0
	s.line(thin, hinge, c.on(hinge, c.length(), at))
	s.add(Path{Points: turned(c.on(hinge, -half, at), 2*half, 1.6, c.paper(at)), Closed: true, Stroke: stroke, Fill: fill})
}

// swing is the arc of the movement, with an arrow head.
func (c *section) swing(s *sheet, hinge Point, from, at float64) {
	if math.Abs(at-from) < leastSwing {
		return
	}
	radius := c.length() * sectionArc
	if c.aft() < 0 {
		radius = c.length() * 0.85
	}
	a, b := c.paper(from), c.paper(at)
	s.add(Arc{Centre: hinge, Radius: radius, From: a, To: b, Stroke: Stroke{Width: 0.35, Ink: Black}})
	tip := onward(hinge, radius, b)
	back := b + math.Copysign(math.Min(9, math.Abs(at-from)), a-b)
	s.add(Path{Points: []Point{tip, onward(hinge, radius+0.9, back), onward(hinge, radius-0.9, back)}, Closed: true, Fill: black})
}

// leastSwing is up to which angle, in degrees, a movement has no arc.
const leastSwing = 0.5

// start is where a movement began, or neutral where there was none.
func (c *section) start() float64 {
	if c.st.From != c.st.At {
		return c.st.From
	}
	return 0
}
