package figure

import (
	"math"

	"example.com/hingeline/verify/result"
)

// wing is the wing from above: straight edges, swept as its hinge lines say.
type wing struct {
	semispan   float64
	root, tip  float64 // chords
	back, rake float64 // the trailing edge: aft of the balance point at the centre line, and aft for every unit out
}

// steepest is the most that a trailing edge is raked, aft for every unit out.
const steepest = 1.0

// wingOf lays the trailing edge through those of the surfaces on the wing, by least
// squares. A wing without any has its balance point at a quarter of the chord.
func wingOf(s *result.Shape) wing {
	w := wing{semispan: max(s.Semispan, 1), root: s.Chords[0], tip: s.Chords[1]}
	var n, x, y, xx, xy float64
	for i := range s.Parts {
		o := &s.Parts[i]
		if placeOf(o) != onWing || o.Kind == "spoiler" || o.Kind == "airbrake" {
			continue
		}
		for _, p := range []result.Point{o.Inner, o.Outer} {
			out, aft := math.Abs(p.Out), p.Aft+o.Chord
			n, x, y, xx, xy = n+1, x+out, y+aft, xx+out*out, xy+out*aft
		}
	}
	if n == 0 {
		w.back = w.root * 0.75
		w.rake = (w.tip - w.root) * 0.75 / w.semispan
		return w
	}
	if spread := n*xx - x*x; spread > 1 {
		w.rake = min(max((n*xy-x*y)/spread, -steepest), steepest)
	}
	w.back = (y - w.rake*x) / n
	return w
}

// trailing is how far aft of the balance point the trailing edge is, so far out; beyond
// the tip, that of the tip.
func (w wing) trailing(out float64) float64 { return w.back + w.rake*min(out, w.semispan) }

// leading is the same for the leading edge.
func (w wing) leading(out float64) float64 {
	return w.trailing(out) - (w.root + (w.tip-w.root)*min(out/w.semispan, 1))
}
