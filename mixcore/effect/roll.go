package effect

import (
	"math"

	"example.com/hingeline/mixcore"
)

// Helix is how steeply a wing rolls, as the helix angle pb/2V of its tips in
// radians, plus to the right. By strips with a finite-wing slope: within 5 % of
// lifting line for ailerons near the tips, low by up to 25 % for surfaces further
// in; the wing is taken as rigid and unstalled.
type Helix struct {
	Total float64
	Parts []float64 // what each part adds; 0 for parts that are not on the wing
}

// Missing is what a builder has not said and a number needs.
type Missing struct {
	Wing  bool  // wing span and chords
	Parts []int // parts without span and chord
}

// None is true if nothing is missing.
func (m Missing) None() bool { return !m.Wing && len(m.Parts) == 0 }

// Helix is the steady roll that the wing surfaces at out would give, or what is
// missing to tell.
func (a *Airframe) Helix(out *mixcore.Output) (Helix, Missing) {
	var missing Missing
	missing.Wing = a.wing == nil
	h := Helix{Parts: make([]float64, len(a.places))}
	for i := range a.setup.Parts {
		p := &a.setup.Parts[i]
		if !rolls(p) {
			continue
		}
		if p.Span[1] <= p.Span[0] || p.Chord <= 0 {
			missing.Parts = append(missing.Parts, i)
			continue
		}
		if a.wing != nil {
			h.Parts[i] = a.helixOf(p, float64(out.Parts[i].Angle))
			h.Total += h.Parts[i]
		}
	}
	if !missing.None() {
		return Helix{}, missing
	}
	return h, missing
}

// Counted says whether Helix covers a part: a hinged surface on one half of the
// wing whose lift follows its angle both ways.
func (a *Airframe) Counted(part int) bool { return rolls(&a.setup.Parts[part]) }

func rolls(p *mixcore.Part) bool {
	if p.Side == mixcore.Centre {
		return false
	}
	switch p.Kind {
	case "aileron", "flap", "flaperon", "elevon":
		return true
	}
	return false
}

func (a *Airframe) helixOf(p *mixcore.Part, angle float64) float64 {
	w := a.wing
	slope := HelmboldSlope(w.Aspect())
	from, to := math.Min(float64(p.Span[0]), w.Span/2), math.Min(float64(p.Span[1]), w.Span/2)
	part := math.Min(float64(p.Chord)/w.ChordAt((from+to)/2), 1)
	both := w.StripRoll(slope, ThinFlap(part).Effectiveness, from, to)
	side := 1.0
	if p.Side == mixcore.Port {
		side = -1
	}
	// A trailing edge down lifts its own side: to port that rolls right.
	return -side * both / 2 * angle * math.Pi / 180 / -w.StripDamping(slope)
}

// GoodHelix is the pb/2V that full roll should reach at least: NACA Report 715
// (Gilruth and Turner) suggests such a lower limit; the value 0.07 from memory.
const GoodHelix = 0.07

// LinearTo is up to what angle, in degrees, the lift of a plain flap grows with
// it. Common practice, no source.
const LinearTo = 20

// Rate is the roll rate in degrees a second at an airspeed in metres a second,
// plus to the right, once it is steady.
func (a *Airframe) Rate(helix, speed float64) float64 {
	span := 2 * a.semi / 1000
	return helix * 2 * speed / span * 180 / math.Pi
}
