package figure

import (
	"math"

	"example.com/hingeline/verify/result"
)

// Plan is the model from above, nose at the top and port on the left, with what moved
// marked.
func Plan(s *result.Shape, p *result.Picture, title string) Drawing {
	if why := unsoundPicture(s, p); why != "" {
		return cannot(sheetWidth, why, title)
	}
	v := newAbove(s, p)
	v.backdrop()
	for i := range s.Parts {
		v.of(i, func() { v.part(i) })
	}
	bottom := v.callOut(callouts(s, p, v.how, v.at), box{margin, 4.2, sheetWidth - margin, v.bottom})
	v.write(Point{margin, 3}, "port", 2.2, Start, false, Grey)
	v.write(Point{sheetWidth / 2, 3}, "from above", 2.2, Middle, false, Grey)
	v.write(Point{sheetWidth - margin, 3}, "starboard", 2.2, End, false, Grey)
	if from := measured(s, p, v.how); from != "" {
		bottom = v.note(from, bottom)
	}
	seen := "The model seen from above, nose at the top, port on the left."
	return v.finish(sheetWidth, bottom+1, title, describe(seen, s, p, v.how))
}

// Lengths in the view from above, in millimetres of paper.
const (
	planTop    = 7.5  // to the nose
	planLong   = 54.0 // the longest model
	planWords  = 7.0  // room for words behind the tail
	planFront  = 10.0 // at least this much in front of the wing, for words
	planBehind = 12.0 // and behind it

	fixedBefore = 1.3 // how much longer the fixed part of a tail is than the surface behind it
)

// above is the view from above.
type above struct {
	sheet
	model   *result.Shape
	picture *result.Picture
	how     []shown
	at      []Point
	wing    wing
	scale   float64
	top     float64 // Y of the balance point
	nose    float64 // Y of the nose
	tail    float64 // Y of the tail's end
	bottom  float64
	centre  int // motors on the centre line so far
}

func newAbove(s *result.Shape, p *result.Picture) *above {
	v := &above{model: s, picture: p, how: showing(p), at: make([]Point, len(s.Parts)), wing: wingOf(s)}
	extent := max(s.Semispan, 1)
	front, back := v.wing.leading(0), v.wing.trailing(0)
	front, back = min(front, v.wing.leading(s.Semispan)), max(back, v.wing.trailing(s.Semispan))
	fore, aft := min(front, v.wing.leading(0)-0.5*s.Chords[0]), back
	for i := range s.Parts {
		o := &s.Parts[i]
		before, aside := fixedBefore*o.Chord, 0.0
		if o.Motion == result.LeftRight {
			before, aside = o.Chord, o.Chord
		}
		extent = max(extent, math.Abs(o.Inner.Out)+aside, math.Abs(o.Outer.Out)+aside)
		aft = max(aft, o.Inner.Aft+o.Chord, o.Outer.Aft+o.Chord)
		if placeOf(o) == onWing {
			before = 0
		}
		fore = min(fore, o.Inner.Aft-before, o.Outer.Aft-before)
	}
	v.scale = (sheetWidth/2 - sheetAside) / extent
	if (aft-fore)*v.scale > planLong {
		v.scale = planLong / (aft - fore)
	}
	v.top = max(planTop-fore*v.scale, planTop+planFront-front*v.scale)
	v.nose, v.tail = v.y(fore), v.y(aft)
	v.bottom = max(v.tail+planWords, v.y(back)+planBehind)
	return v
}

func (v *above) x(out float64) float64 { return sheetWidth/2 + out*v.scale }
func (v *above) y(aft float64) float64 { return v.top + aft*v.scale }

func (v *above) point(p result.Point) Point { return Point{v.x(p.Out), v.y(p.Aft)} }

// backdrop is what does not move: wing, body and fixed tail.
func (v *above) backdrop() {
	span := v.model.Semispan
	v.add(Path{Closed: true, Stroke: faint, Fill: pale, Points: []Point{
		{v.x(-span), v.y(v.wing.leading(span))}, {v.x(0), v.y(v.wing.leading(0))}, {v.x(span), v.y(v.wing.leading(span))},
		{v.x(span), v.y(v.wing.trailing(span))}, {v.x(0), v.y(v.wing.trailing(0))}, {v.x(-span), v.y(v.wing.trailing(span))},
	}})
	// Words keep off the wing in strips, as it is not a rectangle.
	const strips = 24
	for i := range strips {
		a, b := span*(float64(i)/strips*2-1), span*(float64(i+1)/strips*2-1)
		v.ground = append(v.ground, bounds([]Point{
			{v.x(a), v.y(v.wing.leading(math.Abs(a)))}, {v.x(b), v.y(v.wing.leading(math.Abs(b)))},
			{v.x(a), v.y(v.wing.trailing(math.Abs(a)))}, {v.x(b), v.y(v.wing.trailing(math.Abs(b)))},
		}))
	}
	for i := range v.model.Parts {
		v.fixed(&v.model.Parts[i])
	}
	v.body()
}

// fixed is what a tail surface, a canard or a fin on a wing hangs on.
func (v *above) fixed(o *result.Outline) {
	where := placeOf(o)
	if where == finOnTip || where == atTip {
		at := v.point(o.Inner)
		v.line(Stroke{Width: 0.5, Ink: Grey}, Point{at.X, v.y(v.wing.trailing(math.Abs(o.Inner.Out)))}, at)
		return
	}
	if where != onTail && where != ahead || o.Motion != result.UpDown {
		return
	}
	a, b := v.point(o.Inner), v.point(o.Outer)
	long := o.Chord * v.scale * fixedBefore
	v.shape(faint, pale, Point{a.X, a.Y - long}, Point{b.X, b.Y - long*0.75}, b, a)
}

// body is the fuselage, from the nose to the tail.
func (v *above) body() {
	half := max(min(v.model.Chords[0]*0.16*v.scale, 2.6), 1.1)
	x := float64(sheetWidth) / 2
	long := v.tail - v.nose
	v.shape(faint, pale,
		Point{x - half*0.5, v.nose}, Point{x + half*0.5, v.nose}, Point{x + half, v.nose + long*0.12},
		Point{x + half, v.nose + long*0.5}, Point{x + half*0.35, v.tail}, Point{x - half*0.35, v.tail},
		Point{x - half, v.nose + long*0.5}, Point{x - half, v.nose + long*0.12})
}

// part draws one part.
func (v *above) part(i int) {
	o, st := &v.model.Parts[i], &v.picture.Stands[i]
	stroke, fill := pen(v.how[i], st)
	at := v.point(o.Inner)
	switch {
	case isSurface(o) && o.Motion == result.UpDown:
		b := v.point(o.Outer)
		long := max(o.Chord*v.scale, flat)
		farOuter, farInner := Point{b.X, b.Y + long}, Point{at.X, at.Y + long}
		v.shape(stroke, fill, at, b, farOuter, farInner)
		at = pointed(o, at, b, farOuter, farInner)
	case isSurface(o):
		long := max(o.Chord*v.scale, 2)
		end := v.point(o.Outer)
		at = Point{(at.X + end.X) / 2, (at.Y + end.Y) / 2}
		v.shape(stroke, fill, turned(at, long, 0.5, 90+st.At)...)
		at = onward(at, long/2, 90+st.At)
	case o.Motion == result.Power:
		if placeOf(o) == atBody {
			at.Y += float64(v.centre) * (2*discRadius + 0.5)
			v.centre++
		}
		v.propeller(at, st.At, stroke)
	case isWheel(o):
		// Plus turns the model LEFT: the front of a nose wheel and the back of a tail
		// wheel go to port.
		turn := -st.At
		if o.Inner.Aft > 0 {
			turn = st.At
		}
		const radius, half = 1.9, 0.65
		v.shape(stroke, fill, turned(onward(at, -radius, 90+turn), 2*radius, half, 90+turn)...)
	case o.Kind == "drag rudder":
		const half, most = 1.2, 3.0
		long := max(most*share(st.At), 0.8)
		v.shape(stroke, fill, Point{at.X - half, at.Y}, Point{at.X + half, at.Y}, Point{at.X + half, at.Y + long}, Point{at.X - half, at.Y + long})
		at.Y += long / 2
	default:
		const half = 1.1
		v.shape(stroke, fill, Point{at.X - half, at.Y - half}, Point{at.X + half, at.Y - half}, Point{at.X + half, at.Y + half}, Point{at.X - half, at.Y + half})
	}
	v.at[i] = at
}

// onward is the point that lies so far from another in a direction, in degrees clockwise
// from that of X.
func onward(p Point, far, degrees float64) Point {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return Point{p.X + far*cos, p.Y + far*sin}
}

// turned is a bar that begins at a point and goes so far in a direction.
func turned(p Point, far, half, degrees float64) []Point {
	end := onward(p, far, degrees)
	return []Point{onward(p, half, degrees-90), onward(end, half, degrees-90), onward(end, half, degrees+90), onward(p, half, degrees+90)}
}
