package figure

import (
	"fmt"
	"math"
	"strings"

	"example.com/hingeline/verify/result"
)

// Linkage is a servo, pushrod and horn to scale: one panel for each end that the channel
// comes to, each with neutral dashed behind it.
func Linkage(l *result.Linkage, title string) Drawing {
	if why := unsoundLinkage(l); why != "" {
		return cannot(sheetWidth, why, title)
	}
	var s sheet
	y := 3.6
	v := newRods(l)
	heading := plain(l.Part) + ": " + plain(l.Seen)
	if v.flipped {
		heading += ", starboard at the top"
	}
	for _, line := range wrapped(heading, sheetWidth-2*margin, nameSize, true, 2) {
		s.write(Point{margin, y}, line, nameSize, Start, true, Black)
		y += nameSize * lineHeight
	}
	facts := strings.Join(append(append([]string{}, l.Lengths...), l.Horn), ", ")
	for _, line := range wrapped(plain(facts), sheetWidth-2*margin, nameSize, false, saysLines) {
		s.write(Point{margin, y}, line, nameSize, Start, false, Black)
		y += nameSize * lineHeight
	}
	for _, line := range wrapped(plain(l.Goes), sheetWidth-2*margin, nameSize, false, saysLines) {
		s.write(Point{margin, y}, line, nameSize, Start, false, Black)
		y += nameSize * lineHeight
	}
	neutral, ends := &l.Stands[0], l.Stands[1:]
	if len(ends) == 0 {
		ends = l.Stands
	}
	for i := range ends {
		y = v.panel(&s, y, neutral, &ends[i])
		if i == 0 {
			v.name(&s, y, &ends[i], neutral)
		}
	}
	return s.finish(sheetWidth, y+0.5, title, describeLinkage(l))
}

func unsoundLinkage(l *result.Linkage) string {
	if len(l.Stands) == 0 {
		return "the linkage of " + l.Part
	}
	for i := range l.Stands {
		for _, p := range points(&l.Stands[i]) {
			if why := unsound("the linkage of "+l.Part, p[0], p[1]); why != "" {
				return why
			}
		}
	}
	return ""
}

func points(a *result.LinkageAt) [5][2]float64 {
	return [5][2]float64{a.Shaft, a.Arm, a.Horn, a.Hinge, a.TrailingEdge}
}

func describeLinkage(l *result.Linkage) string {
	var b strings.Builder
	fmt.Fprintf(&b, "Servo arm, pushrod, horn and %s to scale, %s; %s", l.Part, l.Seen, l.Channel)
	for _, length := range l.Lengths {
		b.WriteString(", " + length)
	}
	b.WriteString(", " + l.Horn)
	if l.Goes != "" {
		b.WriteString(", " + l.Goes)
	}
	b.WriteString(".")
	for i := range l.Stands {
		fmt.Fprintf(&b, " %s.", capital(l.Stands[i].Says))
	}
	return b.String()
}

// Lengths of a linkage's panel, in millimetres of paper.
const (
	rodsHigh  = 40.0 // the most that one panel takes
	rodsAside = 5.0  // free on either side
	rodsFree  = 2.5  // above and below
)

// rods is how a linkage lies on paper.
type rods struct {
	scale    float64
	flipped  bool // Y runs down on paper: port, seen from above with the nose to the left
	model    box  // what it takes, in millimetres of the model
	paperTop float64
}

func newRods(l *result.Linkage) *rods {
	v := &rods{flipped: strings.HasPrefix(l.Seen, "from above")}
	var all []Point
	for i := range l.Stands {
		for _, p := range points(&l.Stands[i]) {
			all = append(all, v.turned(p))
		}
	}
	v.model = bounds(all)
	wide, high := v.model.x1-v.model.x0, v.model.y1-v.model.y0
	v.scale = min((sheetWidth-2*rodsAside)/max(wide, 1), rodsHigh/max(high, 1))
	return v
}

// turned is a place on the model as it lies on paper, not yet to scale.
func (v *rods) turned(p [2]float64) Point {
	if v.flipped {
		return Point{p[0], p[1]}
	}
	return Point{p[0], -p[1]}
}

func (v *rods) on(p [2]float64) Point {
	at := v.turned(p)
	spare := (sheetWidth - (v.model.x1-v.model.x0)*v.scale) / 2
	return Point{spare + (at.X-v.model.x0)*v.scale, v.paperTop + (at.Y-v.model.y0)*v.scale}
}

// panel draws one end of the travel, with its words, and returns how far down it reaches.
func (v *rods) panel(s *sheet, y float64, neutral, end *result.LinkageAt) float64 {
	s.line(Stroke{Width: 0.15, Ink: Grey}, Point{margin, y - 1.2}, Point{sheetWidth - margin, y - 1.2})
	y += wordSize
	for _, line := range wrapped(plain(end.Says), sheetWidth-2*margin, wordSize, true, saysLines) {
		s.write(Point{margin, y}, line, wordSize, Start, true, Black)
		y += wordSize * lineHeight
	}
	low, high := v.reach(neutral, end)
	v.paperTop = y + rodsFree - 1 - (low-v.model.y0)*v.scale
	if neutral != end {
		v.set(s, neutral, dashed, dashed, dashed)
	}
	v.set(s, end, Stroke{Width: 0.9, Ink: Black}, Stroke{Width: 0.35, Ink: Black}, bold)
	for _, joint := range [][2]float64{end.Arm, end.Horn} {
		s.add(Path{Points: circle(v.on(joint), 0.6), Closed: true, Stroke: thin, Fill: white})
	}
	shaft, hinge := v.on(end.Shaft), v.on(end.Hinge)
	s.add(Path{Points: circle(shaft, 1.3), Closed: true, Stroke: bold, Fill: white})
	s.add(Disc(shaft, 0.4, Black)...)
	s.add(Disc(hinge, 0.9, Black)...)
	return v.paperTop + (high-v.model.y0)*v.scale + rodsFree + 3
}

// name puts the names of the three rods beside them where there is room.
func (v *rods) name(s *sheet, down float64, a, neutral *result.LinkageAt) {
	for _, at := range []*result.LinkageAt{a, neutral} {
		for _, l := range [][2][2]float64{{at.Shaft, at.Arm}, {at.Arm, at.Horn}, {at.Hinge, at.Horn}, {at.Hinge, at.TrailingEdge}} {
			s.lines = append(s.lines, [2]Point{v.on(l[0]), v.on(l[1])})
		}
	}
	const size = 2.2
	for _, rod := range []struct {
		name     string
		from, to [2]float64
	}{{"arm", a.Shaft, a.Arm}, {"pushrod", a.Arm, a.Horn}, {"horn", a.Hinge, a.Horn}} {
		from, to := v.on(rod.from), v.on(rod.to)
		c := callout{part: noPart, at: Point{(from.X + to.X) / 2, (from.Y + to.Y) / 2}}
		at, ok := s.room(c, TextWidth(rod.name, size, false), size, box{margin, v.paperTop, sheetWidth - margin, down - 1})
		if ok && math.Hypot(at.centre().X-c.at.X, at.centre().Y-c.at.Y) < rodName {
			s.write(Point{at.x0, at.y1 - size*descent}, rod.name, size, Start, false, Grey)
		}
	}
}

// rodName is how far a rod's name may be from it, in millimetres.
const rodName = 9.0

// reach is how far up and down two positions go, in millimetres of the model on paper.
func (v *rods) reach(both ...*result.LinkageAt) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, at := range both {
		for _, p := range points(at) {
			y := v.turned(p).Y
			low, high = min(low, y), max(high, y)
		}
	}
	return low, high
}

// set draws arm, pushrod, horn and surface.
func (v *rods) set(s *sheet, a *result.LinkageAt, arm, rod, surface Stroke) {
	hinge, edge := v.on(a.Hinge), v.on(a.TrailingEdge)
	dx, dy := edge.X-hinge.X, edge.Y-hinge.Y
	if long := math.Hypot(dx, dy); long > 0 {
		half := min(1.2, long/4)
		across := Point{-dy / long * half, dx / long * half}
		fill := Fill{}
		if surface.Dash == Whole {
			fill = pale
		}
		s.add(Path{Closed: true, Stroke: surface, Fill: fill, Points: []Point{
			{hinge.X + across.X, hinge.Y + across.Y}, edge, {hinge.X - across.X, hinge.Y - across.Y}}})
	}
	s.line(arm, v.on(a.Shaft), v.on(a.Arm))
	s.line(arm, hinge, v.on(a.Horn))
	s.line(rod, v.on(a.Arm), v.on(a.Horn))
}
