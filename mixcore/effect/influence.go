package effect

import "example.com/hingeline/mixcore"

// Influence is what one part does to the aeroplane, as numbers that a movement is
// multiplied by: its moment is Each·place + Size·|place|, with the place in degrees,
// plus down or left, or in percent.
type Influence struct {
	Each, Size Moment
	// Unplaced is how much an uncertain lift each unit of place adds to what makes
	// the pitch unsure, with its sign; 0 for a part off the wing.
	Unplaced float64
}

// Influence is that of a part: Change is linear in it.
func (a *Airframe) Influence(part int) Influence {
	at := &a.places[part]
	moment := func(place float64) (Moment, force) {
		o := mixcore.PartOutput{Angle: mixcore.Degrees(place), Amount: mixcore.Percent(place)}
		f := a.force(part, &o)
		m := f.about(at)
		if at.aftUnknown {
			m.Pitch = 0
		}
		return m, f
	}
	plus, push := moment(1)
	minus, _ := moment(-1)
	in := Influence{Each: plus.plus(minus.times(-1)).times(0.5), Size: plus.plus(minus).times(0.5)}
	if usually[a.setup.Parts[part].Kind].wing {
		in.Unplaced = push.up
	}
	return in
}

func (m Moment) times(k float64) Moment { return Moment{m.Roll * k, m.Pitch * k, m.Yaw * k} }
