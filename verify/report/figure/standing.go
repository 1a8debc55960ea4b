package figure

import (
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
		if st.Moved || !p.Moves && st.Way != "" && st.At != 0 {
			how[i] = marked
		}
	}
	for _, i := range p.Of {
		how[i] = subject
	}
	return how
}

// told is in words where a part stands, and which way it went there where the place alone
// does not say so.
func told(st *result.Stand, moves bool) string {
	place := short(st.Says)
	if !moves || !st.Moved || st.Way == "" {
		return place
	}
	rest, same := strings.CutPrefix(place, st.Way+" ")
	switch {
	case same && st.From == 0:
		return place
	case same:
		return st.Way + " to " + rest
	case strings.HasSuffix(place, " "+st.Way):
		return place
	}
	return st.Way + ", to " + place
}

// short leaves out what a picture shows anyway.
func short(says string) string { return strings.TrimPrefix(plain(says), "trailing edge ") }

// pen is the line and the fill of a part.
func pen(how shown, st *result.Stand) (Stroke, Fill) {
	switch how {
	case subject:
		return bold, Fill{Pattern: hatching(st.Way), Ink: Black}
	case marked:
		return thin, Fill{Pattern: hatching(st.Way), Ink: Black}
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
	hanging  // below the wing: wheels, motors on a wing, doors
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
			way := st.Way
			list = append(list, callout{
				at: at[i], way: way, words: told(st, p.Moves), name: plain(s.Parts[i].Name),
				above: way == "UP" || way != "DOWN" && placeOf(&s.Parts[i]) == onTail,
			})
		}
	}
	return list
}
