package effect

import (
	"math"

	"example.com/hingeline/mixcore"
)

// Placed is where a part acts on the air, whatever the builder has said and the
// rest by its kind and side. Lengths are in semispans of the wing, places from
// the balance point. It is what moments are taken with, for those who draw it or
// compute it another way.
type Placed struct {
	Out, Aft, Up float64         // the part's middle; out plus to starboard
	Tilt         mixcore.Degrees // of its span from level, tip up, −90…90
	Length       float64         // along its span, both halves of a part at the centre; 0 for motors and drag rudders
	Chord        float64         // of the whole surface that it is hinged to; 0 for motors and drag rudders
	AftKnown     bool            // false for a part of the wing that the builder has not placed fore and aft
}

// Placed is where a part acts; false if it does nothing in flight.
func (a *Airframe) Placed(part int) (Placed, bool) {
	if !a.acts[part] {
		return Placed{}, false
	}
	at := &a.places[part]
	return Placed{
		Out: at.out, Aft: at.aft, Up: at.up,
		Tilt:   mixcore.Degrees(math.Atan2(at.tiltSin, at.tiltCos) * 180 / math.Pi),
		Length: at.length, Chord: at.chord,
		AftKnown: !at.aftUnknown,
	}, true
}

// Semispan is the length that places are measured in: half the wing's span, or,
// where the builder has not measured the wing, a guess from its parts.
func (a *Airframe) Semispan() mixcore.Millimetres { return mixcore.Millimetres(a.semi) }
