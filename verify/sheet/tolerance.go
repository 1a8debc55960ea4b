package sheet

import (
	"math"

	"example.com/hingeline/mixcore"
)

// By how much a throw may be off when it is measured: 14 CFR 60, Appendix A, for
// elevator, aileron and rudder ± 2° and for spoilers ± 3°. All other parts: common
// practice, no source.
const (
	usualOff mixcore.Degrees = 2
	brakeOff mixcore.Degrees = 3
)

// mostOff is how much of a throw its tolerance takes at most, so that no part that stands
// still, and none that goes the other way, is ever within it. Common practice, no source.
const mostOff = 0.5

// offStep is to what a tolerance of a small throw is rounded down: what is shown of it.
const offStep mixcore.Degrees = 0.1

// offOf is by how much the throw of a kind of part may be off: what is usual, and never
// more than half of the throw.
func offOf(k mixcore.Kind, throw mixcore.Degrees) mixcore.Degrees {
	off := usualOff
	if k == "spoiler" || k == "airbrake" {
		off = brakeOff
	}
	if most := throw * mostOff; most < off {
		return mixcore.Degrees(neat(math.Floor(float64(most/offStep)+same) * float64(offStep)))
	}
	return off
}

// tolerance is by how much the straight way of a trailing edge is off when the angle of
// its throw is off by so much: c·cos(δ/2)·Δδ, the derivative of [mixcore.ChordTravel].
// Never negative; angles of any sign, off 0 or more.
func tolerance(chord mixcore.Millimetres, angle, off mixcore.Degrees) mixcore.Millimetres {
	return chord * mixcore.Millimetres(math.Abs(math.Cos(float64(angle)*math.Pi/360))*float64(off)*math.Pi/180)
}
