package figure

import (
	"fmt"
	"math"

	"example.com/hingeline/verify/result"
)

// furthest is how large a number on a model may be to be drawn, in its own unit: more
// than any file may say.
const furthest = 1e5

// unsound is what is wrong with numbers that cannot be drawn, empty for none. A picture of
// a number that is none would be a wrong one, so there is none then.
func unsound(what string, numbers ...float64) string {
	for _, n := range numbers {
		if math.IsNaN(n) || math.Abs(n) > furthest {
			return what
		}
	}
	return ""
}

// unsoundPicture is what is wrong with a model in a position.
func unsoundPicture(s *result.Shape, p *result.Picture) string {
	if why := unsound("the wing", s.Semispan, s.Chords[0], s.Chords[1]); why != "" {
		return why
	}
	if s.Semispan < 0 || s.Chords[0] < 0 || s.Chords[1] < 0 {
		return "the wing"
	}
	if len(p.Stands) != len(s.Parts) {
		return fmt.Sprintf("where the parts stand: there are %d parts, and %d of them stand somewhere", len(s.Parts), len(p.Stands))
	}
	for i := range s.Parts {
		if why := unsoundPart(&s.Parts[i], &p.Stands[i]); why != "" {
			return why
		}
	}
	for _, i := range p.Of {
		if i < 0 || i >= len(s.Parts) {
			return "what the check is about"
		}
	}
	return ""
}

func unsoundPart(o *result.Outline, st *result.Stand) string {
	if why := unsound("the place of "+o.Name, o.Inner.Out, o.Inner.Aft, o.Inner.Up,
		o.Outer.Out, o.Outer.Aft, o.Outer.Up, o.Chord, o.Tilt); why != "" {
		return why
	}
	if o.Chord < 0 {
		return "the chord of " + o.Name
	}
	return unsound("where "+o.Name+" stands", st.From, st.At, o.Most)
}

// cannot is the drawing that says that something cannot be drawn.
func cannot(width float64, why, title string) Drawing {
	var s sheet
	words := "Cannot be drawn: " + plain(why) + "."
	s.add(Cross(Point{margin + 2, 5}, 3, Bad)...)
	y := 6.0
	for _, line := range wrapped(words, width-2*margin-5, wordSize, true, 3) {
		s.write(Point{margin + 5, y}, line, wordSize, Start, true, Bad)
		y += wordSize * lineHeight
	}
	return s.finish(width, y+2, title, words)
}
