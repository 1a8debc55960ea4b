package figure

import (
	"fmt"
	"math"

	"example.com/hingeline/verify/result"
)

// Behind is the model as the pilot sees it who stands behind it, port on the left, with
// every part where it stands. Heights of movements are enlarged by a factor that is said.
func Behind(s *result.Shape, p *result.Picture, title string) Drawing {
	if why := unsoundPicture(s, p); why != "" {
		return cannot(sheetWidth, why, title)
	}
	v := newRear(s, p)
	v.backdrop()
	// What hangs below the wing, or is in front of it, is seen behind what goes down from it.
	for _, below := range []bool{true, false} {
		for i := range s.Parts {
			if where := placeOf(&s.Parts[i]); below == (where == hanging || where == nacelle) {
				v.of(i, func() { v.part(i) })
			}
		}
	}
	bottom := v.callOut(callouts(s, p, v.how, v.at), box{margin, 4.2, sheetWidth - margin, v.bottom})
	v.sides()
	for _, words := range v.notes() {
		bottom = v.note(words, bottom)
	}
	seen := "The model seen from behind, as its pilot stands, port on the left."
	return v.finish(sheetWidth, bottom, title, describe(seen, s, p, v.how))
}

// Heights in the view from behind, in millimetres of paper.
const (
	rearLift   = 8.0  // of the largest movement of any surface above the wing's line
	rearTail   = 24.0 // the most that the tail's own height takes
	rearWords  = 8.5  // room for words where there is no tail
	rearBelow  = 10.5 // below the line of what hangs, for words
	rearGap    = 2.0
	tipOpen    = 4.0 // of what opens at a wing tip, either way
	discRadius = 2.9

	rearEnlarged = 100 // times that a movement is drawn as high as to scale, at most
)

// rear is the view from behind.
type rear struct {
	sheet
	model   *result.Shape
	picture *result.Picture
	how     []shown
	at      []Point // on each part, where words point to
	scale   float64 // of the model on paper
	lift    float64 // of movements on paper: enlarged
	tail    float64 // Y of the tail's balance height
	wing    float64 // Y of the wing's line
	bottom  float64
	hang    float64           // Y of what hangs below the wing
	hung    []float64         // and its X
	motors  int               // on the body so far
	ghosts  bool              // it is drawn where something was before
	lifts   map[place]float64 // as lift, of what has its own; nil where all have one
}

func newRear(s *result.Shape, p *result.Picture) *rear {
	v := &rear{model: s, picture: p, how: showing(p), at: make([]Point, len(s.Parts))}
	v.fit()
	v.lift = v.lifted(rearLift, func(*result.Outline) bool { return true })
	v.layOut()
	return v
}

// lifted is the scale of movements at which the largest of some surfaces is so high.
func (v *rear) lifted(high float64, of func(*result.Outline) bool) float64 {
	deepest := 0.0
	for i := range v.model.Parts {
		if o := &v.model.Parts[i]; isSurface(o) && of(o) {
			deepest = max(deepest, o.Chord*sine(v.most(i)))
		}
	}
	if deepest > 0 {
		return v.scale * min(handy(high/deepest/v.scale), rearEnlarged)
	}
	return v.scale
}

// liftOf is the scale of the movements of a surface.
func (v *rear) liftOf(o *result.Outline) float64 {
	if own, ok := v.lifts[placeOf(o)]; ok {
		return own
	}
	return v.lift
}

// fit finds the scale at which the model is as wide as the sheet, with room beside what
// moves sideways, and no part of it too high.
func (v *rear) fit() {
	const half = sheetWidth/2 - sheetAside
	v.scale = half / max(v.model.Semispan, 1)
	for i := range v.model.Parts {
		o := &v.model.Parts[i]
		room := half
		if where := placeOf(o); where == onTail || where == finOnTip {
			room -= rearLift
		}
		if out := max(math.Abs(o.Inner.Out), math.Abs(o.Outer.Out)); out*v.scale > room {
			v.scale = room / out
		}
		if high := math.Abs(o.Inner.Up - o.Outer.Up); high*v.scale > rearTail {
			v.scale = rearTail / high
		}
	}
	if low, high, any := v.tailEnds(); any && (high-low)*v.scale > rearTail {
		v.scale = rearTail / (high - low)
	}
}

// tailEnds is how high the lowest and the highest end of a hinge line at the tail is.
func (v *rear) tailEnds() (low, high float64, any bool) {
	low, high = math.Inf(1), math.Inf(-1)
	for i := range v.model.Parts {
		if o := &v.model.Parts[i]; placeOf(o) == onTail {
			low, high, any = min(low, o.Inner.Up, o.Outer.Up), max(high, o.Inner.Up, o.Outer.Up), true
		}
	}
	return low, high, any
}

// layOut puts the tail above the wing, clear of all that goes up from it.
func (v *rear) layOut() {
	const top = 4.5
	low, high, hasTail := v.tailEnds()
	rise, fins, tailUp, tailDown := 0.0, 0.0, 0.0, 0.0
	for i := range v.model.Parts {
		o := &v.model.Parts[i]
		moves := v.rises(i)
		switch placeOf(o) {
		case onWing:
			rise = max(rise, moves)
		case atTip:
			rise = max(rise, tipOpen)
		case nacelle:
			rise = max(rise, discRadius)
		case finOnTip:
			fins = max(fins, math.Abs(o.Outer.Up-o.Inner.Up)*v.scale+moves)
		case onTail:
			tailUp = max(tailUp, moves-(high-max(o.Inner.Up, o.Outer.Up))*v.scale)
			tailDown = max(tailDown, moves)
		}
	}
	v.wing = top + max(rearWords+rise, fins+rearGap)
	if hasTail {
		v.tail = top + tailUp + rearGap + high*v.scale
		v.wing = max(v.wing, v.tail-low*v.scale+tailDown+rise+rearGap)
	}
	v.hang = v.wing + max(rise, v.body()) + rearGap + discRadius
	v.bottom = v.hang + rearBelow
}

// rises is how far up or down a surface ever goes from its hinge line, on paper.
func (v *rear) rises(i int) float64 {
	o := &v.model.Parts[i]
	if !isSurface(o) {
		return 0
	}
	inner, outer := v.hinge(o, placeOf(o))
	return max(o.Chord*v.liftOf(o)*sine(v.most(i)), flat) * math.Abs(square(o, inner, outer).Y)
}

// most is the largest angle at which a part is ever drawn.
func (v *rear) most(i int) float64 {
	st := &v.picture.Stands[i]
	return max(v.model.Parts[i].Most, math.Abs(st.From), math.Abs(st.At))
}

// sine is the largest that a surface stands out on its way to an angle, in degrees.
func sine(most float64) float64 { return math.Sin(min(most, 90) * math.Pi / 180) }

// handy is the next smaller number that is easily said.
func handy(n float64) float64 {
	if !(n > 0) || math.IsInf(n, 0) {
		return 1
	}
	power := math.Pow(10, math.Floor(math.Log10(n)))
	for _, step := range []float64{8, 6, 5, 4, 3, 2.5, 2, 1.5} {
		if step*power <= n {
			return step * power
		}
	}
	return power
}

// scaleSaid is what is to be known about how movements are drawn.
func (v *rear) scaleSaid() string {
	words := "movements to scale"
	if times := v.lift / v.scale; math.Abs(times-1) > 1e-6 {
		words = fmt.Sprintf("movements drawn %.3g times as high as to scale", times)
	}
	if v.ghosts {
		words += "; dotted: before"
	}
	return words
}

// notes are the words below a picture, in one line where there is room.
func (v *rear) notes() []string {
	scale, from := v.scaleSaid(), measured(v.model, v.picture, v.how)
	both := scale + "; " + from
	switch {
	case from == "":
		return []string{scale}
	case TextWidth(both, noteSize, false) > sheetWidth-2*margin:
		return []string{scale, from}
	}
	return []string{both}
}

// sides says which side is which, in the corners.
func (v *rear) sides() {
	v.write(Point{margin, 3}, "port", 2.2, Start, false, Grey)
	v.write(Point{sheetWidth / 2, 3}, "from behind", 2.2, Middle, false, Grey)
	v.write(Point{sheetWidth - margin, 3}, "starboard", 2.2, End, false, Grey)
}

// x is where a place out from the centre line is on paper.
func (v *rear) x(out float64) float64 { return sheetWidth/2 + out*v.scale }

// backdrop is what does not move: wing, body and the boom to the tail.
func (v *rear) backdrop() {
	root, tip := v.thick(v.model.Chords[0], 1.1), v.thick(v.model.Chords[1], 0.6)
	left, right := v.x(-v.model.Semispan), v.x(v.model.Semispan)
	v.add(Path{Closed: true, Stroke: faint, Fill: pale, Points: []Point{
		Point{left, v.wing - tip/2}, Point{sheetWidth / 2, v.wing - root/2}, Point{right, v.wing - tip/2},
		Point{right, v.wing + tip/2}, Point{sheetWidth / 2, v.wing + root/2}, Point{left, v.wing + tip/2},
	}})
	v.ground = append(v.ground, box{left, v.wing - root, right, v.wing + root})
	if v.tail > 0 {
		v.boom()
	}
	v.round(faint, pale, Point{sheetWidth / 2, v.wing}, v.body())
}

// thick is how thick the wing is drawn where it has a chord.
func (v *rear) thick(chord, least float64) float64 { return min(max(chord*0.09*v.scale, least), 3) }

// body is the radius of the body.
func (v *rear) body() float64 { return max(min(v.model.Chords[0]*0.2*v.scale, 3.4), 2.2) }

// boom joins the body with the lowest part of the tail.
func (v *rear) boom() {
	foot := v.wing
	for i := range v.model.Parts {
		if o := &v.model.Parts[i]; placeOf(o) == onTail {
			foot = min(foot, v.tail-min(o.Inner.Up, o.Outer.Up)*v.scale)
		}
	}
	const wide, narrow = 1.3, 0.6
	v.shape(faint, pale, Point{sheetWidth/2 - wide, v.wing}, Point{sheetWidth/2 - narrow, foot},
		Point{sheetWidth/2 + narrow, foot}, Point{sheetWidth/2 + wide, v.wing})
}
