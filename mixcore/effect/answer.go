package effect

import (
	"math"

	"example.com/hingeline/mixcore"
)

// Answer is what can honestly be said of a movement about one axis.
type Answer uint8

// The answers. Plus is rolls right, pitches up, yaws right.
const (
	None   Answer = iota // it does not turn: less than LeastMoment, whatever it does about the other axes
	Plus                 // it turns the plus way
	Minus                // it turns the minus way
	Unsure               // it may turn either way, or not: the builder has not said enough
	Slight               // it turns a little, too little beside the other axes to be said to
)

// Significant is the part of the strongest of the three moments that a moment
// must reach to count: every surface turns an aeroplane a little about every
// axis. A modelling choice, no source.
const Significant = 0.2

// LeastMoment is the smallest moment that counts at all: about that of a tenth
// of a degree of one aileron. Only less than this is no turn, for what is small
// beside a strong pitch may be a fast roll.
const LeastMoment = 0.015

// Dihedral is how much roll, either way, each unit of yaw may bring: of a wing
// that yaws the leading half rises by its dihedral and sweep, and neither is in
// the file. A modelling choice, no source.
const Dihedral = 1.0

// Answer says which way the movement turns the aeroplane about an axis.
func (c Change) Answer(axis mixcore.Axis) Answer {
	switch {
	case c.Clear(axis, true) >= 0:
		return Plus
	case c.Clear(axis, false) >= 0:
		return Minus
	case c.Quiet(axis) > 0:
		return None
	case math.Abs(c.About(axis))+c.doubt(axis) < c.enough():
		return Slight
	}
	return Unsure
}

// Clear is how much more moment about an axis there is, plus or minus, than it takes
// to say for sure that the model turns that way; negative where there is too little.
func (c Change) Clear(axis mixcore.Axis, plus bool) float64 {
	m := c.About(axis)
	if !plus {
		m = -m
	}
	unsure := c.doubt(axis)
	if axis == mixcore.Roll && c.rollers {
		unsure = 0 // what is there for roll outdoes the dihedral
	}
	return m - unsure - c.enough()
}

// Quiet is how much less moment about an axis there is than what counts as turning at
// all; 0 or negative where the model may turn. Where it is over 0 no Clear is 0 or
// more, and where both are below, nobody can say.
func (c Change) Quiet(axis mixcore.Axis) float64 {
	return LeastMoment - math.Abs(c.About(axis)) - c.doubt(axis)
}

// Away is how much less moment about an axis there is, plus or minus, than what counts
// as turning that way at all, whatever the doubt; 0 or negative where the model may turn
// that way. It is over 0 wherever Quiet is.
func (c Change) Away(axis mixcore.Axis, plus bool) float64 {
	m := c.About(axis)
	if !plus {
		m = -m
	}
	return LeastMoment - m - c.doubt(axis)
}

// enough is the moment that counts beside the strongest of the three.
func (c Change) enough() float64 {
	strongest := math.Max(math.Abs(c.Roll), math.Max(math.Abs(c.Pitch)-c.PitchUnsure, math.Abs(c.Yaw)))
	return math.Max(Significant*strongest, LeastMoment)
}

// doubt is by how much a moment may be off either way.
func (c Change) doubt(axis mixcore.Axis) float64 {
	switch axis {
	case mixcore.Roll:
		return Dihedral * math.Abs(c.Yaw)
	case mixcore.Pitch:
		return c.PitchUnsure
	}
	return 0
}

// Strongest is the axis of the strongest of the three moments, as far as it is
// sure: what a Slight turn is slight beside.
func (c Change) Strongest() mixcore.Axis {
	size := map[mixcore.Axis]float64{
		mixcore.Roll: math.Abs(c.Roll), mixcore.Pitch: math.Abs(c.Pitch) - c.PitchUnsure, mixcore.Yaw: math.Abs(c.Yaw),
	}
	strongest := mixcore.Roll
	for _, axis := range []mixcore.Axis{mixcore.Pitch, mixcore.Yaw} {
		if size[axis] > size[strongest] {
			strongest = axis
		}
	}
	return strongest
}

// PartAnswer says which way one part's movement turns the aeroplane about an
// axis: what it is there for, not what it does besides. It is Plus, Minus or None.
func (c Change) PartAnswer(part int, axis mixcore.Axis) Answer {
	own := Change{Moment: c.Parts[part]}
	m, enough := own.About(axis), own.enough()
	switch {
	case m >= enough:
		return Plus
	case -m >= enough:
		return Minus
	}
	return None
}
