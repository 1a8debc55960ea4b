//go:build vortex

package airframes_test

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
)

// What the lattice needs and a set-up does not say, in semispans. Common
// practice, no source; no sign hangs on them.
const (
	usualWingChord   = 2.0 / 7 // an aspect ratio of 7
	usualWingHinged  = 0.25    // of the chord
	usualTailHinged  = 0.40    // of the chord
	centreGap        = 0.005   // from the centre line to the root of a tail plane
	twinFinsOut      = 0.20    // where twin fins stand if the builder has not said
	steepestSweep    = 1.2     // tangent of the quarter line's sweep
	deltaTaper       = 0.4     // with elevons and less tip chord than this, the trailing edge is straight
	latticeIncidence = 4.0     // degrees
)

// The description that vortex.py reads; places are semispans from the balance
// point.
type vortexShape struct {
	Span      float64       `json:"span"`
	Area      float64       `json:"area"`
	Incidence float64       `json:"incidence_deg"`
	Halves    []vortexHalf  `json:"halves"`
	Points    []vortexPoint `json:"points"`
	Movements []amounts     `json:"movements"`
}

// amounts are degrees or percent, by part.
type amounts map[string]float64

type vortexHalf struct {
	Name     string          `json:"name"`
	Group    string          `json:"group"`
	Sections []vortexSection `json:"sections"`
	Controls []vortexStretch `json:"controls"`
	Spoilers []vortexStretch `json:"spoilers"`
}

// vortexSection is a leading edge with its chord.
type vortexSection struct {
	Aft   float64 `json:"aft"`
	Out   float64 `json:"out"`
	Up    float64 `json:"up"`
	Chord float64 `json:"chord"`
}

// vortexStretch is a control or spoiler between two stations of a half.
type vortexStretch struct {
	Part  string  `json:"part"`
	From  float64 `json:"from"`
	To    float64 `json:"to"`
	Chord float64 `json:"chord,omitempty"`
	Moves string  `json:"moves,omitempty"`
}

type vortexPoint struct {
	Part   string  `json:"part"`
	Aft    float64 `json:"aft"`
	Out    float64 `json:"out"`
	Up     float64 `json:"up"`
	Pushes string  `json:"pushes"`
}

// shaper makes the lattice of a set-up.
type shaper struct {
	t     *testing.T
	setup *mixcore.Setup
	air   *effect.Airframe
	semi  float64
	shape *vortexShape
}

func shapeOf(t *testing.T, setup *mixcore.Setup) *vortexShape {
	t.Helper()
	air := effect.New(setup)
	s := shaper{t: t, setup: setup, air: air, semi: float64(air.Semispan()),
		shape: &vortexShape{Span: 2, Incidence: latticeIncidence, Points: []vortexPoint{}}}
	s.shape.Area = s.chordAt(0) + s.chordAt(1)
	for _, side := range []mixcore.Side{mixcore.Port, mixcore.Starboard} {
		s.wing(side)
	}
	for i := range setup.Parts {
		placed, acts := air.Placed(i)
		if !acts || s.onWing(i) {
			continue
		}
		switch setup.Parts[i].Motion {
		case mixcore.UpDown:
			s.flat(i, placed)
		case mixcore.LeftRight:
			s.upright(i, placed)
		default:
			s.point(i, placed)
		}
	}
	return s.shape
}

func (s *shaper) chordAt(out float64) float64 {
	if w := s.setup.Wing; w != nil {
		root, tip := float64(w.RootChord)/s.semi, float64(w.TipChord)/s.semi
		return root + (tip-root)*math.Min(out, 1)
	}
	return usualWingChord
}

// onWing is true for a hinged part of the wing.
func (s *shaper) onWing(part int) bool {
	p := &s.setup.Parts[part]
	info, _ := p.Kind.Info()
	return info.Wing && p.Motion == mixcore.UpDown && s.air.Acts(part)
}

func spoils(kind mixcore.Kind) bool { return kind == "spoiler" || kind == "airbrake" }

// wingPart is a hinged part on one half of the wing.
type wingPart struct {
	index    int
	from, to float64 // along the half's span
	hinged   float64 // hinge to trailing edge
	aft      float64
	aftKnown bool
}

func (p *wingPart) middle() float64 { return (p.from + p.to) / 2 }

func (s *shaper) wing(side mixcore.Side) {
	var parts []wingPart
	dihedral := 0.0
	up := 0.0
	for i := range s.setup.Parts {
		p := &s.setup.Parts[i]
		if !s.onWing(i) || (p.Side != side && p.Side != mixcore.Centre) {
			continue
		}
		placed, _ := s.air.Placed(i)
		turn := float64(placed.Tilt) * math.Pi / 180
		middle := math.Abs(placed.Out) / math.Cos(turn)
		w := wingPart{index: i, from: middle - placed.Length/2, to: middle + placed.Length/2,
			aft: placed.Aft, aftKnown: placed.AftKnown}
		if p.Side == mixcore.Centre {
			w.from = 0
		}
		w.from, w.to = max(w.from, 0), min(w.to, 1)
		w.hinged = usualWingHinged * s.chordAt(w.middle())
		if p.Chord > 0 {
			w.hinged = min(float64(p.Chord)/s.semi, s.chordAt(w.middle()))
		}
		if math.Abs(turn) > math.Abs(dihedral) {
			dihedral = turn
		}
		if p.Place.UpSaid {
			up = placed.Up - middle*math.Sin(turn)
		}
		parts = append(parts, w)
	}
	quarter := s.quarterLine(parts)
	out := map[mixcore.Side]float64{mixcore.Port: -1, mixcore.Starboard: 1}[side]
	half := vortexHalf{Name: map[mixcore.Side]string{mixcore.Port: "port wing", mixcore.Starboard: "starboard wing"}[side],
		Group: "wing", Controls: []vortexStretch{}, Spoilers: []vortexStretch{}}
	stations := []float64{0, 1}
	for _, p := range parts {
		if p.aftKnown && !slices.Contains(stations, p.middle()) {
			stations = append(stations, p.middle())
		}
	}
	slices.Sort(stations)
	for _, y := range stations {
		half.Sections = append(half.Sections, vortexSection{Aft: quarter(y) - s.chordAt(y)/4,
			Out: out * y * math.Cos(dihedral), Up: up + y*math.Sin(dihedral), Chord: s.chordAt(y)})
	}
	var hinged []wingPart
	for _, p := range parts {
		if part := &s.setup.Parts[p.index]; spoils(part.Kind) {
			half.Spoilers = append(half.Spoilers, vortexStretch{Part: part.Name, From: p.from, To: p.to})
		} else {
			hinged = append(hinged, p)
		}
	}
	for _, p := range s.apart(hinged) {
		half.Controls = append(half.Controls, vortexStretch{Part: s.setup.Parts[p.index].Name,
			From: p.from, To: p.to, Chord: p.hinged, Moves: "down"})
	}
	s.shape.Halves = append(s.shape.Halves, half)
}

// apart lays parts side by side that stand at one place, for want of stations in
// the file, and trims those that overlap.
func (s *shaper) apart(parts []wingPart) []wingPart {
	slices.SortStableFunc(parts, func(a, b wingPart) int { return cmp.Compare(a.from, b.from) })
	for i := 0; i < len(parts); {
		same := i + 1
		for same < len(parts) && parts[same].from == parts[i].from && parts[same].to == parts[i].to {
			same++
		}
		from, each := parts[i].from, (parts[i].to-parts[i].from)/float64(same-i)
		for k := i; k < same; k++ {
			parts[k].from, parts[k].to = from+each*float64(k-i), from+each*float64(k-i+1)
		}
		if i > 0 {
			parts[i].from = max(parts[i].from, parts[i-1].to)
		}
		if parts[i].from >= parts[i].to {
			s.t.Fatalf("%s leaves no span for %s", s.setup.Parts[parts[i-1].index].Name, s.setup.Parts[parts[i].index].Name)
		}
		i = same
	}
	return parts
}

// quarterLine is how far aft the wing's quarter line lies along its span, so
// that the hinged surfaces stand where they have been placed.
func (s *shaper) quarterLine(parts []wingPart) func(float64) float64 {
	type station struct{ at, aft float64 }
	var known []station
	elevon := false
	for _, p := range parts {
		if !p.aftKnown {
			continue
		}
		kind := s.setup.Parts[p.index].Kind
		c := s.chordAt(p.middle())
		aft := p.aft - 0.75*c + p.hinged/2
		if spoils(kind) {
			aft = p.aft - c/4 // a spoiler acts at half chord
		}
		elevon = elevon || kind == "elevon"
		if at := p.middle(); !slices.ContainsFunc(known, func(k station) bool { return k.at == at }) {
			known = append(known, station{at, aft})
		}
	}
	slices.SortFunc(known, func(a, b station) int { return cmp.Compare(a.at, b.at) })
	switch {
	case len(known) == 0:
		aft := s.behindCanard()
		return func(float64) float64 { return aft }
	case len(known) == 1 && elevon:
		k := known[0]
		root, tip := s.chordAt(0), s.chordAt(1)
		if tip <= deltaTaper*root {
			return func(y float64) float64 { return k.aft + 0.75*(s.chordAt(k.at)-s.chordAt(y)) }
		}
		// A swept wing balances near the quarter point of its mean chord.
		mean := (root + 2*tip) / (3 * (root + tip))
		sweep := 0.0
		if reach := k.at - mean; reach > 0.02 {
			sweep = min(max(k.aft/reach, 0), steepestSweep)
		}
		return func(y float64) float64 { return k.aft + sweep*(y-k.at) }
	}
	return func(y float64) float64 {
		i := 0
		for i < len(known) && known[i].at < y {
			i++
		}
		if i == 0 {
			return known[0].aft
		}
		if i == len(known) {
			return known[i-1].aft
		}
		a, b := known[i-1], known[i]
		return a.aft + (b.aft-a.aft)*(y-a.at)/(b.at-a.at)
	}
}

// behindCanard is how far the wing must stand aft of the balance point to
// balance canards ahead of it, with a twentieth of its chord to spare.
func (s *shaper) behindCanard() float64 {
	aft := 0.0
	for i := range s.setup.Parts {
		if p, acts := s.air.Placed(i); acts && s.setup.Parts[i].Kind == "canard" && p.Aft < 0 {
			aft -= p.Aft * p.Length * p.Chord / s.shape.Area
		}
	}
	if aft > 0 {
		aft += s.chordAt(0.5) / 20
	}
	return aft
}

// flat is a tail plane, a canard or a half of a V-tail.
func (s *shaper) flat(part int, placed effect.Placed) {
	p := &s.setup.Parts[part]
	side := map[mixcore.Side]float64{mixcore.Port: -1, mixcore.Starboard: 1}[p.Side]
	sin, cos := math.Sincos(float64(placed.Tilt) * math.Pi / 180)
	inward := min(placed.Length/2, (math.Abs(placed.Out)-centreGap)/cos)
	sides := []float64{side}
	if side == 0 {
		sides, inward = []float64{-1, 1}, -centreGap
	}
	whole, hinged := s.tailChords(part, placed)
	for _, side := range sides {
		section := func(along float64) vortexSection {
			return vortexSection{Aft: placed.Aft - whole/4, Out: side * (math.Abs(placed.Out) + along*cos),
				Up: placed.Up + along*sin, Chord: whole}
		}
		s.half(part, hinged, "down", section(-inward), section(placed.Length/2))
	}
}

// upright is a fin with its rudder.
func (s *shaper) upright(part int, placed effect.Placed) {
	p := &s.setup.Parts[part]
	side := map[mixcore.Side]float64{mixcore.Port: -1, mixcore.Starboard: 1}[p.Side]
	sin, cos := math.Sincos(float64(placed.Tilt) * math.Pi / 180)
	out := placed.Out
	if side != 0 && math.Abs(out) < twinFinsOut/2 {
		out = side * twinFinsOut
	}
	whole, hinged := s.tailChords(part, placed)
	section := func(along float64) vortexSection {
		return vortexSection{Aft: placed.Aft - whole/4, Out: out + side*along*cos, Up: placed.Up + along*sin, Chord: whole}
	}
	s.half(part, hinged, "left", section(-placed.Length/2), section(placed.Length/2))
}

// tailChords are the chord of a surface that is not on the wing and, of that,
// what is hinged.
func (s *shaper) tailChords(part int, placed effect.Placed) (whole, hinged float64) {
	p := &s.setup.Parts[part]
	whole, hinged = placed.Chord, usualTailHinged*placed.Chord
	if p.Kind == "taileron" || p.Kind == "canard" {
		hinged = whole // all of it turns
	}
	if p.Chord > 0 {
		hinged = float64(p.Chord) / s.semi
		whole = max(whole, hinged)
	}
	return whole, hinged
}

func (s *shaper) half(part int, hinged float64, moves string, root, tip vortexSection) {
	p := &s.setup.Parts[part]
	length := math.Hypot(tip.Out-root.Out, tip.Up-root.Up)
	s.shape.Halves = append(s.shape.Halves, vortexHalf{Name: p.Name, Group: string(p.Kind),
		Sections: []vortexSection{root, tip}, Spoilers: []vortexStretch{},
		Controls: []vortexStretch{{Part: p.Name, From: 0, To: length, Chord: hinged, Moves: moves}}})
}

func (s *shaper) point(part int, placed effect.Placed) {
	p := &s.setup.Parts[part]
	pushes := "drag"
	if p.Motion == mixcore.Power {
		pushes = "thrust"
	}
	s.shape.Points = append(s.shape.Points, vortexPoint{Part: p.Name,
		Aft: placed.Aft, Out: placed.Out, Up: placed.Up, Pushes: pushes})
}
