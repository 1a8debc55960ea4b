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
	setup   *mixcore.Setup
	places  []place
	acts    []bool // by part: it does something to the aeroplane in flight
	wing    *Wing
	semi    float64 // semispan, millimetres
	rollers bool    // some part is there to roll it
	duties  [][mixcore.Yaw + 1]int
}

// New places every part of a set-up.
func New(s *mixcore.Setup) *Airframe {
	a := &Airframe{setup: s, wing: wingOf(s.Wing)}
	var scaled bool
	a.semi, scaled = semispan(s)
	for i := range s.Parts {
		at, acts := placeOf(&s.Parts[i], a.wing, a.semi, scaled)
		a.places, a.acts = append(a.places, at), append(a.acts, acts)
	}
	for i := range s.Parts {
		var duty [mixcore.Yaw + 1]int
		for axis := mixcore.Roll; axis <= mixcore.Yaw; axis++ {
			duty[axis] = a.dutyOf(i, axis)
		}
		a.duties = append(a.duties, duty)
	}
	for i := range s.Parts {
		a.rollers = a.rollers || a.isRoller(i)
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
	side := outward(p.Side)
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

// outward is plus for starboard, 0 at the centre.
func outward(s mixcore.Side) float64 {
	switch s {
	case mixcore.Port:
		return -1
	case mixcore.Starboard:
		return 1
	}
	return 0
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

	rollers bool // Airframe.Rollers
}

// UnplacedArm is how far before or behind where it sits a part of the wing may
// act in pitch, in semispans: half a chord, and as much again for its downwash
// at the tail. Common practice, no source; the vortex lattice in testdata stays
// within it.
const UnplacedArm = 0.3

// Change compares two outputs of one plan.
func (a *Airframe) Change(from, to *mixcore.Output) Change {
	c := Change{Parts: make([]Moment, len(a.places)), rollers: a.rollers}
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
