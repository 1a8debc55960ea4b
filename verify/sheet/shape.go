package sheet

import (
	"math"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// Shape is the model as it can be drawn, from what the airframe file says and what is
// usual for the rest.
func Shape(m *airframes.Model) result.Shape {
	d := drafter{m: m, s: &m.Setup, air: effect.New(&m.Setup)}
	d.semi = float64(d.air.Semispan())
	d.wing()
	parts := make([]result.Outline, len(d.s.Parts))
	for i := range parts {
		parts[i] = d.outline(i)
	}
	for n, i := range script.PartOrder(d.s) {
		parts[i].Number = n + 1
	}
	d.spread(parts)
	for i := range parts {
		o := &parts[i]
		for _, x := range []*float64{&o.Inner.Out, &o.Inner.Aft, &o.Inner.Up, &o.Outer.Out, &o.Outer.Aft, &o.Outer.Up, &o.Chord, &o.Tilt, &o.Most} {
			*x = neat(*x)
		}
	}
	return result.Shape{Semispan: d.semi, Chords: d.chords, Measured: d.s.Wing != nil, Parts: parts}
}

// drafter places parts.
type drafter struct {
	m      *airframes.Model
	s      *mixcore.Setup
	air    *effect.Airframe
	semi   float64
	chords [2]float64 // of the wing, at the centre line and at the tip
}

// A usual wing: common practice, no source.
const (
	usualAspect = 7.0  // span over mean chord, as package effect takes it
	usualTaper  = 0.75 // tip chord over root chord
)

func (d *drafter) wing() {
	if w := d.s.Wing; w != nil {
		d.chords = [2]float64{float64(w.RootChord), float64(w.TipChord)}
		return
	}
	mean := 2 * d.semi / usualAspect
	root := mean * 2 / (1 + usualTaper)
	d.chords = [2]float64{root, root * usualTaper}
}

// chordAt is the wing's chord so far out.
func (d *drafter) chordAt(out float64) float64 {
	return d.chords[0] + (d.chords[1]-d.chords[0])*math.Min(math.Abs(out)/d.semi, 1)
}

// hinged is how much of what they are hinged to surfaces usually are, as a part of its
// chord: of the wing, and of tails. Common practice, no source.
const (
	hingedWing = 0.22
	hingedTail = 0.4
)

var sideWords = map[mixcore.Side]string{mixcore.Port: "port", mixcore.Starboard: "starboard", mixcore.Centre: "centre"}

var motions = map[mixcore.Motion]result.Motion{
	mixcore.UpDown: result.UpDown, mixcore.LeftRight: result.LeftRight, mixcore.Power: result.Power, mixcore.OutIn: result.OutIn,
}

// outward is plus for starboard, 0 at the centre.
func outward(s mixcore.Side) float64 {
	return map[mixcore.Side]float64{mixcore.Port: -1, mixcore.Starboard: 1}[s]
}

func (d *drafter) outline(i int) result.Outline {
	p := &d.s.Parts[i]
	o := result.Outline{
		Name: p.Name, Kind: string(p.Kind), Side: sideWords[p.Side], Stage: script.PartStage(p), Motion: motions[p.Motion],
		Most: d.most(i),
	}
	placed, acts := d.air.Placed(i)
	if !acts || placed.Length == 0 {
		d.point(p, placed, acts, &o)
		return o
	}
	d.surface(p, placed, &o)
	return o
}

// surface places a hinge line.
func (d *drafter) surface(p *mixcore.Part, at effect.Placed, o *result.Outline) {
	side, half := outward(p.Side), at.Length*d.semi/2
	o.Tilt = float64(at.Tilt)
	sin, cos := math.Sincos(o.Tilt * math.Pi / 180)
	middle := result.Point{Out: at.Out * d.semi, Aft: at.Aft * d.semi, Up: at.Up * d.semi}
	spanSaid := p.Span[1] > p.Span[0]
	if side == 0 && spanSaid && p.Motion != mixcore.LeftRight {
		half = float64(p.Span[1])
	}
	if p.Motion == mixcore.LeftRight && side != 0 && middle.Out == 0 {
		middle.Out = side * d.fin()
	}
	o.ChordSaid = p.Chord > 0
	o.Chord = float64(p.Chord)
	onWing := isOnWing(p.Kind)
	if !o.ChordSaid {
		o.Chord = at.Chord * d.semi * hingedTail
		if onWing {
			o.Chord = d.chordAt(middle.Out) * hingedWing
		}
	}
	o.PlaceSaid = p.Place.AftSaid && (spanSaid || p.Motion == mixcore.LeftRight)
	way := side // along the span outward; of a part at the centre to starboard
	if side == 0 {
		way = 1
	}
	if over := cos*half - math.Abs(middle.Out); side != 0 && p.Motion == mixcore.UpDown && over > 0 && !spanSaid && cos > 0 {
		middle.Out += side * over // one side's begins at the centre line
		middle.Up += over * sin / cos
	}
	end := func(along float64) result.Point {
		at := result.Point{Out: middle.Out + way*cos*along, Aft: middle.Aft, Up: middle.Up + sin*along}
		if !p.Place.AftSaid && onWing {
			at.Aft = d.usualAft(p, at.Out, o.Chord)
		}
		return at
	}
	o.Inner, o.Outer = end(-half), end(half)
}

func isOnWing(k mixcore.Kind) bool {
	info, _ := k.Info()
	return info.Wing && info.Motion == mixcore.UpDown
}

// Where the wing is, fore and aft, for what sits on it and has not said: its quarter
// chord at the balance point; brakes sit on it and not at its trailing edge. Common
// practice, no source.
const (
	balance   = 0.25 // of the chord
	brakesSit = 0.5  // of the chord
)

// usualAft is where the hinge line of a part of the wing is.
func (d *drafter) usualAft(p *mixcore.Part, out, chord float64) float64 {
	if p.Kind == "spoiler" || p.Kind == "airbrake" {
		return (brakesSit - balance) * d.chordAt(out)
	}
	return (1-balance)*d.chordAt(out) - chord
}

// most is the largest angle that a part reaches either way, whatever its channels put
// out; 0 for those that do not turn.
func (d *drafter) most(part int) float64 {
	p := &d.s.Parts[part]
	if !p.Motion.Hinged() {
		return 0
	}
	most := 0.0
	outs := make([]mixcore.ChannelOutput, len(d.s.Channels))
	for corner := range 1 << min(len(p.Drives), mostCorners) {
		for k, drive := range p.Drives {
			low, high := d.s.Channels[drive.Channel].Reach()
			outs[drive.Channel].Output = low
			if corner>>min(k, mostCorners-1)&1 == 1 {
				outs[drive.Channel].Output = high
			}
		}
		most = max(most, math.Abs(float64(d.m.Plan.PartAt(part, outs).Angle)))
	}
	return most
}

// mostCorners is how many servos of one part are tried apart; all others go with the
// last.
const mostCorners = 4
