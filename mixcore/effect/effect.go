package effect

import (
	"math"

	"example.com/hingeline/mixcore"
)

// Moment is which way and how strongly the aeroplane is turned, in one arbitrary
// unit for all three: plus is right wing down, nose up, nose right.
type Moment struct{ Roll, Pitch, Yaw float64 }

func (m Moment) plus(o Moment) Moment {
	return Moment{m.Roll + o.Roll, m.Pitch + o.Pitch, m.Yaw + o.Yaw}
}

// About is the moment about one axis; 0 for NoAxis.
func (m Moment) About(axis mixcore.Axis) float64 {
	switch axis {
	case mixcore.Roll:
		return m.Roll
	case mixcore.Pitch:
		return m.Pitch
	case mixcore.Yaw:
		return m.Yaw
	}
	return 0
}

// Airframe is a Setup as the air sees it. It is immutable.
type Airframe struct {
	setup  *mixcore.Setup
	places []place
	acts   []bool // by part: it does something to the aeroplane in flight
	wing   *Wing
	semi   float64
}

// New places every part of a set-up.
func New(s *mixcore.Setup) *Airframe {
	a := &Airframe{setup: s, wing: wingOf(s.Wing), semi: semispan(s)}
	for i := range s.Parts {
		at, acts := placeOf(&s.Parts[i], a.wing, a.semi)
		a.places, a.acts = append(a.places, at), append(a.acts, acts)
	}
	return a
}

// Acts says whether a part does anything to the aeroplane in flight: wheels,
// retracts and hooks do not.
func (a *Airframe) Acts(part int) bool { return a.acts[part] }

// force is a push on the aeroplane, aft, out to starboard and up.
type force struct{ aft, out, up float64 }

func (a *Airframe) force(part int, o *mixcore.PartOutput) force {
	p, at := &a.setup.Parts[part], &a.places[part]
	if !a.acts[part] {
		return force{}
	}
	side := map[mixcore.Side]float64{mixcore.Port: -1, mixcore.Starboard: 1}[p.Side]
	switch p.Motion {
	case mixcore.UpDown:
		lift := at.strength * float64(o.Angle)
		return force{
			aft: at.drag * math.Abs(lift),
			out: -side * at.tiltSin * lift,
			up:  at.tiltCos * lift,
		}
	case mixcore.LeftRight:
		lift := at.strength * float64(o.Angle)
		// A trailing edge left pushes to starboard whether its fin stands or hangs.
		hangs := math.Copysign(1, at.tiltSin)
		return force{out: hangs * at.tiltSin * lift, up: -side * hangs * at.tiltCos * lift}
	}
	return force{aft: at.drag * float64(o.Amount) / 100}
}

func (f force) about(at *place) Moment {
	return Moment{
		Roll:  at.up*f.out - at.out*f.up,
		Pitch: at.up*f.aft - at.aft*f.up,
		Yaw:   at.out*f.aft - at.aft*f.out,
	}
}

// Change is what a movement of surfaces does to the aeroplane.
type Change struct {
	Moment
	// PitchUnsure is how far the pitch may be off either way, because parts of
	// the wing moved, whose downwash at the tail nobody has measured.
	PitchUnsure float64
	Parts       []Moment // by part; the pitch of an unplaced part is 0
	Unplaced    []int    // the parts behind PitchUnsure
}

// UnplacedArm is how far before or behind where it sits a part of the wing may
// act in pitch, in semispans: half a chord, and as much again for its downwash
// at the tail. Common practice, no source; the vortex lattice in testdata stays
// within it.
const UnplacedArm = 0.3

// Change compares two outputs of one plan.
func (a *Airframe) Change(from, to *mixcore.Output) Change {
	c := Change{Parts: make([]Moment, len(a.places))}
	unplaced := 0.0
	for i := range a.places {
		was, is := a.force(i, &from.Parts[i]), a.force(i, &to.Parts[i])
		f := force{is.aft - was.aft, is.out - was.out, is.up - was.up}
		m := f.about(&a.places[i])
		if a.places[i].aftUnknown {
			m.Pitch = 0
		}
		if usually[a.setup.Parts[i].Kind].wing {
			unplaced += f.up
			if f.up != 0 {
				c.Unplaced = append(c.Unplaced, i)
			}
		}
		c.Parts[i] = m
		c.Moment = c.Moment.plus(m)
	}
	c.PitchUnsure = math.Abs(unplaced) * UnplacedArm
	return c
}

// Alone is what one part alone does as it moves from neutral by degrees, plus
// down or left, or by percent of power or travel. [Change.PartAnswer] of it says
// what the part is there for.
func (a *Airframe) Alone(part int, by float64) Change {
	from := &mixcore.Output{Parts: make([]mixcore.PartOutput, len(a.places))}
	to := &mixcore.Output{Parts: make([]mixcore.PartOutput, len(a.places))}
	to.Parts[part] = mixcore.PartOutput{Angle: mixcore.Degrees(by), Amount: mixcore.Percent(by)}
	return a.Change(from, to)
}

// Answer is what can honestly be said of a movement about one axis.
type Answer uint8

// The answers. Plus is rolls right, pitches up, yaws right.
const (
	None   Answer = iota // too little beside the other axes to count
	Plus                 // it turns the plus way
	Minus                // it turns the minus way
	Unsure               // it may turn either way, or not: the builder has not said enough
)

// Significant is the part of the strongest of the three moments that a moment
// must reach to count: every surface turns an aeroplane a little about every
// axis. A modelling choice, no source.
const Significant = 0.2

// LeastMoment is the smallest moment that counts at all: about that of a tenth
// of a degree of one aileron.
const LeastMoment = 0.015

// Answer says which way the movement turns the aeroplane about an axis.
func (c Change) Answer(axis mixcore.Axis) Answer {
	enough, unsure := c.enough(), c.unsure(axis)
	switch m := math.Abs(c.About(axis)); {
	case c.Clear(axis, true) >= 0:
		return Plus
	case c.Clear(axis, false) >= 0:
		return Minus
	case m+unsure < enough:
		return None
	case unsure > 0:
		return Unsure
	}
	return None
}

// Clear is how much more moment about an axis there is, plus or minus, than it takes
// to say for sure that the model turns that way; negative where there is too little.
func (c Change) Clear(axis mixcore.Axis, plus bool) float64 {
	m := c.About(axis)
	if !plus {
		m = -m
	}
	return m - c.unsure(axis) - c.enough()
}

// Quiet is how much less moment about an axis there is than what counts as turning at
// all; negative where there is more.
func (c Change) Quiet(axis mixcore.Axis) float64 {
	return c.enough() - math.Abs(c.About(axis)) - c.unsure(axis)
}

// enough is the moment that counts beside the strongest of the three.
func (c Change) enough() float64 {
	strongest := math.Max(math.Abs(c.Roll), math.Max(math.Abs(c.Pitch)-c.PitchUnsure, math.Abs(c.Yaw)))
	return math.Max(Significant*strongest, LeastMoment)
}

func (c Change) unsure(axis mixcore.Axis) float64 {
	if axis == mixcore.Pitch {
		return c.PitchUnsure
	}
	return 0
}

// PartAnswer says which way one part's movement turns the aeroplane about an
// axis: what it is there for, not what it does besides.
func (c Change) PartAnswer(part int, axis mixcore.Axis) Answer {
	return Change{Moment: c.Parts[part]}.Answer(axis)
}
