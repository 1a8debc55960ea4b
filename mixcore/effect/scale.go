package effect

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore"
)

// someSemispan is the semispan of a model of which nobody has said how large any
// part of it is, in millimetres.
const someSemispan = 1000

// semispan is the length that everything is measured in, in millimetres: half the
// wing's span, or a guess from what has been said of the parts held against what
// is usual. It is the outermost end of a part of the wing or else, since tails
// come in all sizes, the median of all guesses. False if nothing tells.
func semispan(s *mixcore.Setup) (float64, bool) {
	if s.Wing != nil {
		return float64(s.Wing.Span) / 2, true
	}
	outermost, guesses := 0.0, []float64(nil)
	for i := range s.Parts {
		p := &s.Parts[i]
		u, known := usually[p.Kind]
		switch {
		case !known:
		case onWing(p.Kind):
			if p.Side != mixcore.Centre && p.Span[1] > p.Span[0] {
				outermost = math.Max(outermost, float64(p.Span[1])/(u.out+u.length/2))
			}
			guesses = guess(guesses, p.Place.Aft, p.Place.AftSaid, u.aft)
		default:
			guesses = guess(guesses, p.Span[1]-p.Span[0], p.Span[1] > p.Span[0], u.length)
			guesses = guess(guesses, p.Place.Aft, p.Place.AftSaid, u.aft)
			guesses = guess(guesses, p.Place.Out, p.Place.OutSaid, u.out)
		}
	}
	switch {
	case outermost > 0:
		return outermost, true
	case guesses != nil:
		return median(guesses), true
	}
	return someSemispan, false
}

// guess adds the semispan of a model whose part has a usual length, in semispans,
// where it has been said in millimetres.
func guess(guesses []float64, said mixcore.Millimetres, is bool, usual float64) []float64 {
	if !is || said == 0 || usual == 0 {
		return guesses
	}
	return append(guesses, math.Abs(float64(said)/usual))
}

// median is the middle one, or the geometric mean of the two in the middle.
func median(list []float64) float64 {
	slices.Sort(list)
	return math.Sqrt(list[(len(list)-1)/2] * list[len(list)/2])
}
