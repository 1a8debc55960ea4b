package effect

import (
	"math"

	"example.com/hingeline/mixcore"
)

// CruiseLift is the lift coefficient of every part of the wing before a
// movement, in the reckoning of adverse yaw. A modelling choice, no source: the
// slower a model flies, the higher it is, the more adverse yaw there is and the
// less differential takes out of it.
const CruiseLift = 0.5

// usualAspect is the aspect ratio of a wing that has not been measured.
const usualAspect = 2 / meanChord

// AdverseYaw is the adverse yaw that comes with a roll, for as much roll,
// against that of equal up and down throws: 1 is as much, less is better, under
// 0 the model is turned into its roll. It is an estimate. It is not ok where the
// wing's surfaces do not roll the model.
//
// The drag of a strip of wing goes with the square of its lift coefficient c,
// k·c². Before the movement c is c0 everywhere; a surface that moves adds Δ
// (trailing edge down is plus) and so the drag
//
//	k·(c0+Δ)² − k·c0² = k·(2·c0·Δ + Δ²)
//
// Of a pair of area S at an arm y the side that goes up by U has Δ = −U, the
// other Δ = +D. The roll is S·y·(U+D), the yaw against it
//
//	S·y·k·(2·c0·D + D² + 2·c0·U − U²) = S·y·(U+D) · k·(2·c0 − (U−D))
//
// and so the adverse yaw for each unit of roll k·(2·c0 − (U−D)): equal throws
// leave 2·k·c0, whatever their size, and more up than down takes it away. Over
// any surfaces with arms y, plus to starboard, it is against equal throws, where
// k falls out,
//
//	Σ S·y·(2·c0·Δ + Δ²) / Σ S·y·2·c0·Δ = 1 + Σ S·y·Δ² / (2·c0·Σ S·y·Δ)
//
// What the turn of the rolling wing itself adds is the same for both, and the
// fin answers to both alike.
func (a *Airframe) AdverseYaw(from, to *mixcore.Output) (ratio float64, ok bool) {
	aspect := usualAspect
	if a.wing != nil {
		aspect = a.wing.Aspect()
	}
	slope := HelmboldSlope(aspect) * math.Pi / 180
	first, second := 0.0, 0.0
	for i := range a.places {
		if !a.Counted(i) {
			continue
		}
		at := &a.places[i]
		rise := slope * at.works * float64(to.Parts[i].Angle-from.Parts[i].Angle)
		first += at.area * at.out * rise
		second += at.area * at.out * rise * rise
	}
	all := a.Change(from, to)
	wing := -first / slope // the part of all.Roll that the wing's surfaces give
	if answer := all.Answer(mixcore.Roll); answer != Plus && answer != Minus || wing*all.Roll <= 0 || math.Abs(wing) < Significant*math.Abs(all.Roll) {
		return 0, false
	}
	return 1 + second/(2*CruiseLift*first), true
}
