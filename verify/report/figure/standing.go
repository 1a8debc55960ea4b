package figure

import (
	"math"
	"strings"

	"example.com/hingeline/verify/result"
)

// shown is how a part is drawn in a picture.
type shown uint8

const (
	plainly shown = iota // where it stands, as background
	marked               // with a pattern, a symbol and words
	subject              // and with a bold line: the check is about it
)

// showing is how each part is drawn. In a picture of a place, what is off neutral is
// marked; in one of a movement, what has moved.
func showing(p *result.Picture) []shown {
	how := make([]shown, len(p.Stands))
	for i := range p.Stands {
		st := &p.Stands[i]
		if wayOf(st) != "" && (st.Moved || !p.Moves && st.At != 0) {
			how[i] = marked
		}
	}
	for _, i := range p.Of {
		how[i] = subject
	}
	return how
}

// leastMoved is the angle, in degrees, from which a part that ends at neutral is said to have
// moved: less is neither drawn nor said.
const leastMoved = 0.5

// neutral is what a part is said to be that stands where it should at rest.
const neutral = "neutral"

// neutralBelow is the angle, in degrees, up to which a part was at neutral.
const neutralBelow = 0.05

// wayOf is the way that is shown of a part: none for one that is at neutral and hardly was
// anywhere else.
func wayOf(st *result.Stand) string {
	if st.Says == neutral && math.Abs(st.At-st.From) < leastMoved {
		return ""
	}
	return st.Way
}

// told is in words where a part stands, and which way it went there where the place alone
// does not say so.
func told(st *result.Stand, moves bool) string {
	place, way := short(st.Says), wayOf(st)
	if !moves || !st.Moved || way == "" {
		return place
	}
	plainly := place == way || strings.HasPrefix(place, way+" ") || strings.HasSuffix(place, " "+way)
	switch {
	case way == "LESS" && place == "stopped":
		return "stops"
	case strings.HasPrefix(place, "power "):
		return "power " + map[string]string{"MORE": "rises", "LESS": "falls"}[way] + " to " + strings.TrimPrefix(place, "power ")
	case plainly && (math.Abs(st.From) < neutralBelow || place == way):
		return place
	case place == neutral:
		return "goes " + way + " to neutral"
	}
	return "goes " + way + ", stands " + place
}

// short leaves out what a picture shows anyway.
func short(says string) string { return strings.TrimPrefix(plain(says), "trailing edge ") }

// pen is the line and the fill of a part.
func pen(how shown, st *result.Stand) (Stroke, Fill) {
	switch how {
	case subject:
		return bold, Fill{Pattern: hatching(wayOf(st)), Ink: Black}
	case marked:
		return thin, Fill{Pattern: hatching(wayOf(st)), Ink: Black}
	}
	return faint, pale
}

// place is the part of the model that a part is drawn with.
type place uint8

const (
	onWing place = iota
	onTail
	ahead    // a canard
	atBody   // a motor on the centre line
	atTip    // opens up and down at a wing tip
	finOnTip // an upright surface on a wing
	nacelle  // a motor on the wing
	hanging  // below the wing: wheels, doors
)

func isWheel(o *result.Outline) bool { return strings.HasSuffix(o.Kind, "wheel") }

func isSurface(o *result.Outline) bool {
	return (o.Motion == result.UpDown || o.Motion == result.LeftRight) && !isWheel(o)
}

// placeOf says where a part is drawn.
func placeOf(o *result.Outline) place {
	sided := o.Side != "centre"
	switch {
	case o.Kind == "drag rudder" && sided:
		return atTip
	case o.Motion == result.Power && !sided:
		return atBody
	case o.Motion == result.Power:
		return nacelle
	case !isSurface(o):
		return hanging
	case o.Kind == "canard":
		return ahead
	case o.Kind == "rudder" && sided:
		return finOnTip
	case o.Stage == result.Tail:
		return onTail
	}
	return onWing
}

// callouts are the words about the parts that are not drawn plainly, what the check is
// about first.
func callouts(s *result.Shape, p *result.Picture, how []shown, at []Point) []callout {
	var list []callout
	for _, want := range []shown{subject, marked} {
		for i := range s.Parts {
			if how[i] != want {
				continue
			}
			st := &p.Stands[i]
			way := wayOf(st)
			list = append(list, callout{
				part: i, number: s.Parts[i].Number, at: at[i], way: way, words: told(st, p.Moves), name: plain(s.Parts[i].Name),
				above: way == "UP" || way != "DOWN" && placeOf(&s.Parts[i]) == onTail,
			})
		}
	}
	return list
}

// measured is what is to be known about the numbers of a picture; empty where none is an
// angle. Words of a check may count from where a part was before.
func measured(s *result.Shape, p *result.Picture, how []shown) string {
	for i := range s.Parts {
		o := &s.Parts[i]
		if how[i] != plainly && (isSurface(o) || isWheel(o)) && p.Stands[i].Says != neutral {
			return fromNeutral
		}
	}
	return ""
}

const fromNeutral = "degrees and mm from neutral"
