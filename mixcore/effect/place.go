package effect

import (
	"math"

	"example.com/hingeline/mixcore"
)

// place is where a part acts, in semispans from the balance point, and how
// strongly.
type place struct {
	out, aft, up float64 // semispans; out plus to starboard
	tiltSin      float64 // of the surface's span from level, tip up positive
	tiltCos      float64
	area         float64 // relative
	works        float64 // lift of a degree of the part against a degree of the whole surface
	strength     float64 // area × works: lift for one degree, relative
	drag         float64 // drag for one degree or percent, relative
	length       float64 // along its span, semispans; both halves of a part at the centre
	chord        float64 // of the whole surface that it is hinged to, semispans
	aftUnknown   bool    // a wing part whose lever arm in pitch the builder has not said
}

// usual is where a kind of part usually sits, in semispans: enough for the
// signs, and for sizes within a factor. Common practice, no source.
type usual struct {
	out, length   float64 // of a part at port or starboard; a part at the centre is at 0, twice as long
	aft, up, tilt float64 // tilt in degrees
	chord         float64 // of the whole surface, in mean wing chords
	effectiveness float64 // lift of a degree of the part against a degree of the whole surface
	drag          float64 // against the lift of a degree of the whole surface
	wing          bool    // sits on the wing: its pitch is known only if its place is given
}

var usually = map[mixcore.Kind]usual{
	"aileron":     {out: 0.75, length: 0.40, chord: 0.9, effectiveness: 0.6, wing: true},
	"flap":        {out: 0.33, length: 0.40, chord: 1.1, effectiveness: 0.6, wing: true},
	"flaperon":    {out: 0.55, length: 0.80, chord: 1, effectiveness: 0.6, wing: true},
	"elevon":      {out: 0.60, length: 0.60, aft: 0.30, chord: 1, effectiveness: 0.6},
	"spoiler":     {out: 0.45, length: 0.25, chord: 1, effectiveness: 0.4, drag: 0.3, wing: true},
	"airbrake":    {out: 0.35, length: 0.25, chord: 1, effectiveness: 0.2, drag: 0.3, wing: true},
	"elevator":    {out: 0.15, length: 0.25, aft: 0.75, chord: 0.7, effectiveness: 0.7},
	"taileron":    {out: 0.20, length: 0.30, aft: 0.75, chord: 0.7, effectiveness: 1},
	"v-tail":      {out: 0.13, length: 0.30, aft: 0.75, up: 0.1, tilt: 38, chord: 0.7, effectiveness: 0.7},
	"rudder":      {length: 0.24, aft: 0.8, up: 0.1, tilt: 90, chord: 0.7, effectiveness: 0.7},
	"canard":      {out: 0.15, length: 0.25, aft: -0.7, chord: 0.7, effectiveness: 0.8},
	"motor":       {out: 0.35, drag: -1},
	"drag rudder": {out: 0.85, drag: 1},
}

// meanChord is the mean wing chord in semispans of a model that has not said
// its own: an aspect ratio of 7. Common practice, no source.
const meanChord = 2.0 / 7

// onWing is true for a kind whose chord is a part of the wing's.
func onWing(k mixcore.Kind) bool {
	info, _ := k.Info()
	return info.Wing && info.Motion == mixcore.UpDown
}

// placeOf is where a part acts; false if it does nothing in flight. Without a
// scale, lengths are not counted: millimetres of one model and semispans of
// another make no aeroplane.
func placeOf(p *mixcore.Part, wing *Wing, semi float64, scaled bool) (place, bool) {
	u, known := usually[p.Kind]
	if !known {
		return place{}, false
	}
	side := outward(p.Side)
	out, length := u.out, u.length
	if scaled && p.Span[1] > p.Span[0] {
		out, length = float64(p.Span[0]+p.Span[1])/2/semi, float64(p.Span[1]-p.Span[0])/semi
	}
	at := p.Place
	tilt := u.tilt
	if at.TiltSaid {
		tilt = float64(at.Tilt)
	}
	sin, cos := math.Sincos(tilt * math.Pi / 180)
	l := place{out: side * out * cos, aft: u.aft, up: u.up + out*sin, tiltSin: sin, tiltCos: cos, aftUnknown: u.wing}
	if p.Motion == mixcore.LeftRight {
		l.out, l.up = side*out, math.Copysign(u.up, sin) // one that hangs is below
	}
	if scaled && at.OutSaid {
		l.out = side * float64(at.Out) / semi
	}
	if scaled && at.AftSaid {
		l.aft, l.aftUnknown = float64(at.Aft)/semi, false
	}
	if scaled && at.UpSaid {
		l.up = float64(at.Up) / semi
	}
	if side == 0 && p.Motion != mixcore.LeftRight {
		length *= 2
	}
	chord, effectiveness := u.chord*meanChord, u.effectiveness
	if wing != nil && onWing(p.Kind) {
		chord = wing.ChordAt(out*semi) / semi
		if p.Chord > 0 {
			effectiveness = ThinFlap(math.Min(float64(p.Chord)/(chord*semi), 1)).Effectiveness
		}
	}
	l.length, l.chord = length, chord
	l.area, l.works = length*chord/meanChord, effectiveness
	l.strength = l.area * l.works
	l.drag = u.drag
	return l, true
}
