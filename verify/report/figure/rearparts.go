package figure

import (
	"math"

	"example.com/hingeline/verify/result"
)

// part draws one part where it stands.
func (v *rear) part(i int) {
	o, st := &v.model.Parts[i], &v.picture.Stands[i]
	stroke, fill := pen(v.how[i], st)
	switch where := placeOf(o); {
	case isSurface(o):
		v.surface(i, where, stroke, fill)
	case where == atTip:
		v.opening(i, stroke, fill)
	case o.Motion == result.Power:
		v.motor(i, where, stroke)
	case isWheel(o):
		v.wheel(i, stroke, fill)
	default:
		v.extra(i, stroke, fill)
	}
}

// surface draws the patch between a hinge line and the trailing edge as it is seen from
// behind.
func (v *rear) surface(i int, where place, stroke Stroke, fill Fill) {
	o, st := &v.model.Parts[i], &v.picture.Stands[i]
	inner, outer := v.hinge(o, where)
	up := square(o, inner, outer)
	height := v.height(o, st.At)
	edge := func(p Point, height float64) Point { return Point{p.X + up.X*height, p.Y + up.Y*height} }
	a, b := edge(inner, height), edge(outer, height)
	if where != onWing {
		v.line(Stroke{Width: 0.9, Ink: Grey}, inner, outer)
	}
	if height == 0 {
		half := Point{up.X * flat, up.Y * flat}
		v.shape(stroke, fill, Point{inner.X - half.X, inner.Y - half.Y}, Point{outer.X - half.X, outer.Y - half.Y},
			Point{outer.X + half.X, outer.Y + half.Y}, Point{inner.X + half.X, inner.Y + half.Y})
	} else {
		v.shape(stroke, fill, inner, outer, b, a)
	}
	if v.picture.Moves && v.how[i] != plainly && st.From != st.At && st.From != 0 {
		was := v.height(o, st.From)
		from, to := edge(inner, was), edge(outer, was)
		v.line(dotted, from, to)
		v.ground = append(v.ground, bounds([]Point{from, to}).grown(0.3))
		v.ghosts = true
	}
	v.at[i] = pointed(o, inner, outer, b, a)
}

// height is how far the trailing edge is from the hinge line on paper at an angle, plus
// where square points to: plus of an angle is DOWN or LEFT, and square is UP or LEFT.
func (v *rear) height(o *result.Outline, angle float64) float64 {
	height := o.Chord * v.liftOf(o) * math.Sin(angle*math.Pi/180)
	if height != 0 {
		height = math.Copysign(max(math.Abs(height), flat), height)
	}
	if o.Motion == result.UpDown {
		return -height
	}
	return height
}

// pointed is where words point to on a surface: its middle, or of one that lies across the
// centre line, the middle of its port half, clear of the body.
func pointed(o *result.Outline, inner, outer, farOuter, farInner Point) Point {
	near := 0.5
	if o.Motion == result.UpDown && o.Inner.Out < 0 && o.Outer.Out > 0 {
		near = 0.75
	}
	return Point{
		((inner.X+farInner.X)*near + (outer.X+farOuter.X)*(1-near)) / 2,
		((inner.Y+farInner.Y)*near + (outer.Y+farOuter.Y)*(1-near)) / 2,
	}
}

// flat is the least height, in millimetres of paper, that a surface is drawn with, and half
// of that of one that is seen edge on.
const flat = 0.35

// hinge is the hinge line on paper. What is on the wing is on its line.
func (v *rear) hinge(o *result.Outline, where place) (inner, outer Point) {
	inner, outer = Point{v.x(o.Inner.Out), v.wing}, Point{v.x(o.Outer.Out), v.wing}
	switch where {
	case onTail:
		inner.Y, outer.Y = v.tail-o.Inner.Up*v.scale, v.tail-o.Outer.Up*v.scale
	case finOnTip:
		low := min(o.Inner.Up, o.Outer.Up)
		inner.Y, outer.Y = v.wing-(o.Inner.Up-low)*v.scale, v.wing-(o.Outer.Up-low)*v.scale
	case ahead:
		inner.Y, outer.Y = v.hang, v.hang
	}
	if math.Hypot(outer.X-inner.X, outer.Y-inner.Y) < shortest {
		sin, cos := 0.0, 1.0
		if where == onTail || where == finOnTip {
			sin, cos = math.Sincos(o.Tilt * math.Pi / 180)
		}
		if o.Inner.Out+o.Outer.Out < 0 {
			cos = -cos
		}
		outer = Point{inner.X + shortest*cos, inner.Y - shortest*sin}
	}
	return inner, outer
}

// shortest is the least length of a hinge line on paper, in millimetres.
const shortest = 1.5

// square is the direction across a hinge line that is UP, or of what moves left and right,
// LEFT.
func square(o *result.Outline, inner, outer Point) Point {
	dx, dy := outer.X-inner.X, outer.Y-inner.Y
	length := math.Hypot(dx, dy)
	up := Point{dy / length, -dx / length}
	turned := up.Y > 0 || up.Y == 0 && up.X > 0
	if o.Motion == result.LeftRight {
		turned = up.X > 0 || up.X == 0 && up.Y > 0
	}
	if turned {
		return Point{-up.X, -up.Y}
	}
	return up
}

// opening is a surface at a wing tip that opens upwards and downwards at once.
func (v *rear) opening(i int, stroke Stroke, fill Fill) {
	o, st := &v.model.Parts[i], &v.picture.Stands[i]
	const wide = 3.0
	x := v.x(o.Inner.Out)
	inner := x + wide
	if o.Inner.Out > 0 {
		inner = x - wide
	}
	half := max(share(st.At)*tipOpen, flat)
	v.shape(stroke, fill, Point{inner, v.wing}, Point{x, v.wing - half}, Point{x, v.wing + half})
	v.at[i] = Point{(inner + 2*x) / 3, v.wing}
}

// share is percent as a part of one, held to it.
func share(percent float64) float64 { return min(max(percent/100, 0), 1) }

// motor is seen through its propeller: on the body, or in its nacelle on the wing.
func (v *rear) motor(i int, where place, stroke Stroke) {
	o := &v.model.Parts[i]
	at := Point{sheetWidth / 2, v.wing + float64(v.motors)*(2*discRadius+0.5)}
	if where == atBody {
		v.motors++
	} else {
		at = Point{v.x(o.Inner.Out), v.wing}
	}
	v.propeller(at, v.picture.Stands[i].At, stroke)
	v.at[i] = at
}

// propeller is the thin circle that its two blades go round in, with the nacelle in the
// middle, and inside the circle a ring that is filled as far as the motor has power.
func (s *sheet) propeller(at Point, power float64, stroke Stroke) {
	const (
		ring  = 0.8
		hub   = 1.05
		blade = 0.6 // half of its width
		lean  = -60 // degrees
	)
	s.taken = append(s.taken, bounds(circle(at, discRadius)).grown(stroke.Width/2))
	s.add(Path{Points: circle(at, discRadius), Closed: true, Stroke: stroke})
	if part := share(power); part > 0 {
		s.add(Arc{Centre: at, Radius: discRadius - ring/2, From: -90, To: -90 + 360*part, Stroke: Stroke{Width: ring, Ink: Black}})
	}
	tip, root := onward(at, discRadius-0.2, lean), onward(at, discRadius-0.2, lean+180)
	s.add(Path{Closed: true, Stroke: thin, Fill: white, Points: []Point{
		tip, onward(at, blade, lean+90), root, onward(at, blade, lean-90)}})
	s.add(Path{Points: circle(at, hub), Closed: true, Stroke: thin, Fill: pale})
}

// wheel is a wheel in its fork below the body: the more it is turned, the more of its side
// is seen. One at the tail is smaller.
func (v *rear) wheel(i int, stroke Stroke, fill Fill) {
	o, st := &v.model.Parts[i], &v.picture.Stands[i]
	at := Point{v.aside(v.x(o.Inner.Out), 5), v.hang}
	radius, tyre := 1.7, 0.6
	if o.Inner.Aft > 0 {
		radius, tyre = 1.25, 0.5
	}
	if under := v.wing + v.body() + radius + wheelLeg; math.Abs(at.X-sheetWidth/2) < v.body() {
		at.Y = min(at.Y, under)
	}
	sin, cos := math.Sincos(st.At * math.Pi / 180)
	half := tyre*math.Abs(cos) + radius*math.Abs(sin)
	leg := Stroke{Width: 0.3, Ink: Grey}
	aside, top := half+0.45, at.Y-radius-0.5
	v.line(leg, Point{at.X, v.wing + v.body()*0.8}, Point{at.X, top})
	v.line(leg, Point{at.X - aside, at.Y}, Point{at.X - aside, top}, Point{at.X + aside, top}, Point{at.X + aside, at.Y})
	v.line(leg, Point{at.X - aside, at.Y}, Point{at.X + aside, at.Y})
	tread := circle(Point{}, 1)
	for i, p := range tread {
		tread[i] = Point{at.X + p.X*half, at.Y + p.Y*radius}
	}
	v.shape(stroke, fill, tread...)
	v.at[i] = at
}

// wheelLeg is from the body to a wheel below it, in millimetres of paper.
const wheelLeg = 1.5

// extra is what is out or in: a tab below the model, as long as it is out.
func (v *rear) extra(i int, stroke Stroke, fill Fill) {
	o, st := &v.model.Parts[i], &v.picture.Stands[i]
	const half, most, least = 1.0, 4.0, 0.7
	x := v.aside(v.x(o.Inner.Out), 5)
	top := v.hang - 2
	v.line(Stroke{Width: 0.3, Ink: Grey}, Point{x, v.wing}, Point{x, top})
	long := max(most*share(st.At), least)
	v.shape(stroke, fill, Point{x - half, top}, Point{x + half, top}, Point{x + half, top + long}, Point{x - half, top + long})
	v.at[i] = Point{x, top + long/2}
}

// aside is the place nearest to x at which nothing hangs yet.
func (v *rear) aside(x, room float64) float64 {
	for n := range 2 * len(v.model.Parts) {
		at := x + float64((n+1)/2)*room*float64(1-2*(n%2))
		clear := at > 2*margin && at < sheetWidth-2*margin
		for _, other := range v.hung {
			clear = clear && math.Abs(other-at) >= room
		}
		if clear {
			v.hung = append(v.hung, at)
			return at
		}
	}
	return x
}
