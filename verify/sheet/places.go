package sheet

import (
	"math"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
	"example.com/hingeline/verify/result"
)

// spot is where something that is no surface usually is, in semispans from the balance
// point. Common practice, no source.
type spot struct{ out, aft, up float64 }

// spots are by kind; out counts where the part has a side.
var spots = map[mixcore.Kind]spot{
	"nose wheel":  {aft: -0.3, up: -0.14},
	"tail wheel":  {aft: 0.72, up: -0.05},
	"motor":       {out: 0.35, aft: -0.15, up: 0},
	"retract":     {out: 0.25, aft: 0.03, up: -0.1},
	"hook":        {out: 0.1, aft: 0.06, up: -0.07},
	"door":        {out: 0.2, aft: -0.06, up: -0.07},
	"brake":       {out: 0.2, aft: 0.12, up: -0.07},
	"release":     {out: 0.1, aft: -0.12, up: -0.07},
	"drag rudder": {out: 0.9, aft: 0.1},
	"other":       {out: 0.1, aft: 0.2, up: -0.07},
}

// noseMotor is where a motor at the centre usually is, in semispans.
const noseMotor = -0.4

// point places what is no surface.
func (d *drafter) point(p *mixcore.Part, placed effect.Placed, acts bool, o *result.Outline) {
	usual := d.usualSpot(p)
	side := outward(p.Side)
	at := result.Point{Out: side * usual.out * d.semi, Aft: usual.aft * d.semi, Up: usual.up * d.semi}
	if acts { // what the air knows of, where the file says
		if p.Place.OutSaid {
			at.Out = placed.Out * d.semi
		}
		if p.Place.AftSaid {
			at.Aft = placed.Aft * d.semi
		}
		if p.Place.UpSaid {
			at.Up = placed.Up * d.semi
		}
	} else {
		if p.Place.OutSaid {
			at.Out = side * float64(p.Place.Out)
		}
		if p.Place.AftSaid {
			at.Aft = float64(p.Place.Aft)
		}
		if p.Place.UpSaid {
			at.Up = float64(p.Place.Up)
		}
	}
	o.PlaceSaid = p.Place.AftSaid && (p.Place.OutSaid || side == 0)
	o.Inner, o.Outer = at, at
}

// usualSpot is where a part usually is by its kind, and a retract or door by its name.
func (d *drafter) usualSpot(p *mixcore.Part) spot {
	u := spots[p.Kind]
	if p.Side != mixcore.Centre {
		return u
	}
	switch words := strings.Fields(strings.ToLower(p.Name)); {
	case p.Kind == "motor":
		u.aft = noseMotor
	case p.Kind != "retract" && p.Kind != "door" && p.Kind != "brake":
	case has(words, "nose"):
		u.aft, u.up = spots["nose wheel"].aft, spots["nose wheel"].up
	case has(words, "tail"):
		u.aft, u.up = spots["tail wheel"].aft, spots["tail wheel"].up
	}
	return u
}

func has(words []string, word string) bool {
	for _, w := range words {
		if w == word {
			return true
		}
	}
	return false
}

// Fins that come in pairs stand at the ends of the tail, or, where there is no tail, at
// the tips of the wing: in semispans. Common practice, no source.
const (
	finAtTail = 0.25
	finAtTip  = 1.0
)

// fin is how far out a fin of a pair stands, in millimetres.
func (d *drafter) fin() float64 {
	for i := range d.s.Parts {
		switch d.s.Parts[i].Kind {
		case "elevator", "taileron", "v-tail":
			return finAtTail * d.semi
		}
	}
	return finAtTip * d.semi
}

// near is how close two parts may be drawn, in semispans, before one of them is moved.
const near = 0.01

func apart(a, b result.Point) float64 {
	return math.Sqrt((a.Out-b.Out)*(a.Out-b.Out) + (a.Aft-b.Aft)*(a.Aft-b.Aft) + (a.Up-b.Up)*(a.Up-b.Up))
}
