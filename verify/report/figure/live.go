package figure

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/hingeline/verify/result"
)

// Live is a model that is drawn again and again as it moves. Each part has its number, and
// each number its place, whatever the pose, and every drawing is as high as the one before:
// nothing jumps. How far a part goes is not written, only which way; but of a motor whether
// it runs, and how much.
type Live struct {
	shape         *result.Shape
	tags          []Tag
	behind, above tagged
}

// Tag is how a part is marked in a picture that moves.
type Tag struct {
	Number int
	Fails  bool   // a check that fails is about it
	Doubt  string // why a check that fails names it and need not be about it, with its sign: "? OR 7"; else empty
}

// beside is what is written below the number; it is empty where no check that fails names
// the part.
func (t *Tag) beside() string {
	if t.Fails {
		return failsWord
	}
	return t.Doubt
}

// besideWidth is the room for that.
func (t *Tag) besideWidth() float64 {
	if t.Fails {
		return tagArrow + TextWidth(failsWord, tagWord, true)
	}
	return TextWidth(t.Doubt, tagWord, true)
}

// tagged is where the tags of one view are.
type tagged struct {
	from   []Point // on each part
	at     []box
	height float64
}

// Sizes of tags in millimetres of paper.
const (
	tagSize    = 2.1 // radius
	tagArrow   = 3.0
	besideTag  = 2*tagSize + 0.5 // to the symbol
	tagNumeral = 3.0
	tagWord    = 2.7
	tagLine    = 3.2
	tailLift   = 5.0 // of the largest movement of what has a height of its own
)

const failsWord = "FAILS"

// mostRuns is the longest that is written of a motor.
const mostRuns = "RUNS 100 %"

// NewLive finds a place for the tag of every part, clear of all that its surfaces ever do.
func NewLive(s *result.Shape, tags []Tag) *Live {
	l := &Live{shape: s, tags: tags}
	if unsoundPicture(s, l.pose(0)) != "" || len(tags) != len(s.Parts) {
		return l
	}
	var rears, plans []*sheet
	for _, turn := range []float64{0, 1, -1} {
		p := l.pose(turn)
		rear, plan := l.rear(p), l.plan(p)
		rears, plans = append(rears, &rear.sheet), append(plans, &plan.sheet)
		if turn == 0 {
			l.behind.from, l.above.from = rear.at, plan.at
			l.behind.height, l.above.height = rear.bottom, plan.bottom
		}
	}
	l.place(&l.behind, rears)
	l.place(&l.above, plans)
	return l
}

// pose has every part at its furthest one way or the other, or at neutral; what does not
// turn is all the way out.
func (l *Live) pose(turn float64) *result.Picture {
	p := &result.Picture{}
	for i := range l.shape.Parts {
		o := &l.shape.Parts[i]
		at := 100.0
		if o.Motion == result.UpDown || o.Motion == result.LeftRight {
			at = turn * o.Most
		}
		p.Stands = append(p.Stands, result.Stand{From: at, At: at, Says: neutral})
	}
	return p
}

// place finds the places of a view from what is taken of it in some poses.
func (l *Live) place(view *tagged, poses []*sheet) {
	var all sheet
	for _, s := range poses {
		all.taken, all.ground, all.words = append(all.taken, s.taken...), append(all.ground, s.ground...), append(all.words, s.words...)
	}
	zone := box{margin, 4.2, sheetWidth - margin, view.height}
	down := 0.0
	for _, boxes := range [][]box{all.taken, all.ground} {
		for _, b := range boxes {
			down = max(down, b.y1)
		}
	}
	view.at = make([]box, len(l.tags))
	for i := range l.tags {
		c := callout{at: view.from[i], above: placeOf(&l.shape.Parts[i]) != hanging}
		width, height := l.size(i)
		at, ok := all.room(c, width, height, zone)
		for _, crowded := range []bool{false, true} {
			if !ok {
				over := sheet{words: all.words, lines: all.lines, crowded: crowded}
				at, ok = over.room(c, width, height, zone)
			}
		}
		if !ok {
			at = box{c.at.X - width/2, c.at.Y - height/2, c.at.X + width/2, c.at.Y + height/2}
		}
		view.at[i] = at
		all.words = append(all.words, at)
		all.lines = append(all.lines, [2]Point{c.at, at.nearest(c.at)})
		down = max(down, at.y1)
	}
	view.height = down + 0.8
}

// size is the room of a part's tag, whatever it shows.
func (l *Live) size(i int) (width, height float64) {
	width, height = besideTag+tagArrow, 2*tagSize
	if l.shape.Parts[i].Motion == result.Power {
		width, height = max(width, TextWidth(mostRuns, tagWord, true)), height+tagLine
	}
	if tag := &l.tags[i]; tag.beside() != "" {
		width, height = max(width, tag.besideWidth()), height+tagLine
	}
	return width, height
}

// Behind is the model from behind, port on the left, with every part where it stands.
func (l *Live) Behind(p *result.Picture, title string) Drawing {
	if why := l.unsound(p); why != "" {
		return cannot(sheetWidth, why, title)
	}
	v := l.rear(p)
	l.mark(&v.sheet, &l.behind, p, v.how)
	sides(&v.sheet, "from behind")
	bottom := v.note(liftSaid(v), l.behind.height)
	return v.finish(sheetWidth, bottom, title, l.describe("The model seen from behind, as its pilot stands, port (left) on the left.", p, v.how))
}

// Above is the model from above, nose at the top and port on the left.
func (l *Live) Above(p *result.Picture, title string) Drawing {
	if why := l.unsound(p); why != "" {
		return cannot(sheetWidth, why, title)
	}
	v := l.plan(p)
	l.mark(&v.sheet, &l.above, p, v.how)
	sides(&v.sheet, "from above")
	return v.finish(sheetWidth, l.above.height+1, title, l.describe("The model seen from above, nose at the top, port (left) on the left.", p, v.how))
}

func (l *Live) unsound(p *result.Picture) string {
	if len(l.tags) != len(l.shape.Parts) {
		return fmt.Sprintf("the numbers of the parts: there are %d parts, and %d numbers", len(l.shape.Parts), len(l.tags))
	}
	return unsoundPicture(l.shape, p)
}

// rear is the view from behind without its words. What is on the tail is as high as can be
// seen, however far the flaps go.
func (l *Live) rear(p *result.Picture) *rear {
	v := newRear(l.shape, p)
	v.lifts = map[place]float64{}
	for _, where := range []place{onTail, finOnTip, ahead} {
		v.lifts[where] = v.lifted(tailLift, func(o *result.Outline) bool { return placeOf(o) == where })
	}
	v.lifts[onWing] = v.lifted(rearLift, func(o *result.Outline) bool { return placeOf(o) == onWing })
	v.layOut()
	v.backdrop()
	for _, below := range []bool{true, false} {
		for i := range l.shape.Parts {
			if where := placeOf(&l.shape.Parts[i]); below == (where == hanging || where == nacelle) {
				v.of(i, func() { v.part(i) })
			}
		}
	}
	return v
}

func (l *Live) plan(p *result.Picture) *above {
	v := newAbove(l.shape, p)
	v.backdrop()
	for i := range l.shape.Parts {
		v.of(i, func() { v.part(i) })
	}
	return v
}

// liftSaid is how much higher than to scale movements are drawn.
func liftSaid(v *rear) string {
	var list []string
	for _, one := range []struct {
		where place
		name  string
	}{{onWing, "wing"}, {finOnTip, "fins"}, {onTail, "tail"}, {ahead, "canard"}} {
		if slices.ContainsFunc(v.model.Parts, func(o result.Outline) bool { return isSurface(&o) && placeOf(&o) == one.where }) {
			list = append(list, fmt.Sprintf("%.3g times (%s)", v.lifts[one.where]/v.scale, one.name))
		}
	}
	if len(list) == 0 {
		return ""
	}
	return "movements drawn " + strings.Join(list, ", ") + " as high as to scale"
}

func sides(s *sheet, view string) {
	s.write(Point{margin, 3}, "port (left)", 2.4, Start, false, Grey)
	s.write(Point{sheetWidth / 2, 3}, view, 2.4, Middle, false, Grey)
	s.write(Point{sheetWidth - margin, 3}, "starboard (right)", 2.4, End, false, Grey)
}

// mark draws the tags.
func (l *Live) mark(s *sheet, view *tagged, p *result.Picture, how []shown) {
	for i := range l.tags {
		s.lead(view.from[i], l.seen(i, view.at[i], &p.Stands[i]))
	}
	for i := range l.tags {
		s.of(i, func() { l.tag(s, i, view.at[i], &p.Stands[i], how[i]) })
	}
}

// seen is what is to be seen of a tag, but for the symbol of its way.
func (l *Live) seen(i int, at box, st *result.Stand) box {
	width := 2 * tagSize
	if l.shape.Parts[i].Motion == result.Power {
		words, strong, _ := runs(st)
		width = max(width, TextWidth(words, tagWord, strong))
	}
	width = max(width, l.tags[i].besideWidth())
	at.x1 = at.x0 + width
	return at
}

// tag draws the number of a part in a circle, or in a square with a cross where a check of
// it fails, with the symbol of its way. The square is dashed where it may not be the part
// that is wrong.
func (l *Live) tag(s *sheet, i int, at box, st *result.Stand, how shown) {
	middle := Point{at.x0 + tagSize, at.y0 + tagSize}
	ring := Path{Points: circle(middle, tagSize), Closed: true, Fill: white, Stroke: thin}
	tag := &l.tags[i]
	if tag.beside() != "" {
		r := tagSize - 0.3
		ring.Points = []Point{{middle.X - r, middle.Y - r}, {middle.X + r, middle.Y - r}, {middle.X + r, middle.Y + r}, {middle.X - r, middle.Y + r}}
		ring.Stroke = Stroke{Width: 0.6, Ink: Bad}
		if !tag.Fails {
			ring.Stroke = Stroke{Width: 0.35, Dash: Dashed}
		}
	}
	s.add(ring)
	number, size := strconv.Itoa(tag.Number), tagNumeral
	if len(number) > 1 {
		size *= 0.75
	}
	s.write(Point{middle.X, middle.Y + size*0.36}, number, size, Middle, true, Black)
	if how != plainly {
		s.add(Arrow(wayOf(st), Point{at.x0 + besideTag + tagArrow/2, middle.Y}, tagArrow, Black)...)
	}
	base := at.y0 + 2*tagSize + tagWord
	if l.shape.Parts[i].Motion == result.Power {
		words, strong, ink := runs(st)
		s.write(Point{at.x0, base}, words, tagWord, Start, strong, ink)
		base += tagLine
	}
	switch {
	case tag.Fails:
		s.add(Cross(Point{at.x0 + 1.3, base - tagWord*0.36}, 2.2, Bad)...)
		s.write(Point{at.x0 + tagArrow, base}, failsWord, tagWord, Start, true, Bad)
	case tag.Doubt != "":
		s.write(Point{at.x0, base}, tag.Doubt, tagWord, Start, true, Black)
	}
}

// runs is what is written of a motor.
func runs(st *result.Stand) (words string, strong bool, ink Ink) {
	if power, ok := strings.CutPrefix(st.Says, "power "); ok {
		return "RUNS " + power, true, Black
	}
	return "stopped", false, Grey
}

func (l *Live) describe(seen string, p *result.Picture, how []shown) string {
	words := describe(seen, l.shape, p, how)
	for i := range l.tags {
		switch tag := &l.tags[i]; {
		case tag.Fails:
			words += " A check of the " + l.shape.Parts[i].Name + " fails."
		case tag.Doubt != "":
			words += " A check that fails names the " + l.shape.Parts[i].Name + ": " + tag.Doubt + "."
		}
	}
	return words
}
