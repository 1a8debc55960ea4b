package effect

import (
	"math"

	"example.com/hingeline/mixcore"
)

// Wing is a straight-tapered wing as the roll formulas see it. Lengths are in
// any one unit, chords along the flight direction.
type Wing struct{ Span, RootChord, TipChord float64 }

func wingOf(w *mixcore.Wing) *Wing {
	if w == nil {
		return nil
	}
	return &Wing{float64(w.Span), float64(w.RootChord), float64(w.TipChord)}
}

// Area is the wing's plan area.
func (w *Wing) Area() float64 { return w.Span * (w.RootChord + w.TipChord) / 2 }

// Aspect is the aspect ratio, span²/area.
func (w *Wing) Aspect() float64 { return w.Span * w.Span / w.Area() }

// Taper is tip chord over root chord.
func (w *Wing) Taper() float64 { return w.TipChord / w.RootChord }

// ChordAt is the chord at a distance out from the centre line.
func (w *Wing) ChordAt(out float64) float64 {
	return w.RootChord + (w.TipChord-w.RootChord)*math.Min(math.Abs(out)/(w.Span/2), 1)
}

// HelmboldSlope is the lift slope per radian of a straight wing of an aspect
// ratio, 2πA/(2+√(A²+4)): Helmbold's equation (formula from memory).
func HelmboldSlope(aspect float64) float64 {
	return 2 * math.Pi * aspect / (2 + math.Sqrt(aspect*aspect+4))
}

// StripRoll is the rolling moment coefficient Cl per radian of one surface on
// each half wing going up on the one side and down on the other, by strips:
// 2·slope·τ/(S·b)·∫ c(y)·y dy over its span (Nelson, Flight Stability and
// Automatic Control; formula from memory). effectiveness is τ.
func (w *Wing) StripRoll(slope, effectiveness, from, to float64) float64 {
	integral := func(y float64) float64 { // of c(y)·y with c(y) = root·(1 − k·y)
		k := (1 - w.Taper()) / (w.Span / 2)
		return w.RootChord * (y*y/2 - k*y*y*y/3)
	}
	return 2 * slope * effectiveness * (integral(to) - integral(from)) / (w.Area() * w.Span)
}

// StripDamping is the roll damping Clp per unit of pb/2V by strips,
// −(slope/12)·(1+3λ)/(1+λ); always negative (formula from memory).
func (w *Wing) StripDamping(slope float64) float64 {
	taper := w.Taper()
	return -slope / 12 * (1 + 3*taper) / (1 + taper)
}
