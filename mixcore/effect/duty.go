package effect

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore"
)

// duties are the kinds that turn the model about an axis when they answer its
// control. What other kinds do with it (a flap that follows the pitch stick) is
// for the wing's sake, and which way is the pilot's choice. 14 CFR 23.779 for
// ailerons, elevator and rudder, common practice for the rest.
var duties = map[mixcore.Axis][]mixcore.Kind{
	mixcore.Roll:  {"aileron", "flap", "flaperon", "spoiler", "elevon", "taileron"},
	mixcore.Pitch: {"elevator", "elevon", "canard", "taileron", "v-tail"},
	mixcore.Yaw:   {"rudder", "v-tail", "drag rudder", "motor", "nose wheel", "tail wheel"},
}

const (
	// plainly is a movement, in degrees or percent, that shows what a part does.
	plainly = 10
	// leastShare is how much of the strongest of a part's three moments the one
	// about an axis must be for its sign to mean anything, of a part whose kind is
	// there for that axis. A modelling choice, no source.
	leastShare = 0.03
)

// Duty is which way a part turns the model about an axis as it moves the plus
// way: +1 rolls right, pitches up or yaws right, −1 the other way, 0 where its kind
// is not there for that or where nobody can say. A wheel turns the rolling model.
func (a *Airframe) Duty(part int, axis mixcore.Axis) int { return a.duties[part][axis] }

func (a *Airframe) dutyOf(part int, axis mixcore.Axis) int {
	kind := a.setup.Parts[part].Kind
	if !slices.Contains(duties[axis], kind) {
		return 0
	}
	if Steers(kind) {
		return -1 // left is left
	}
	moment := a.Alone(part, plainly).Parts[part]
	strongest := max(math.Abs(moment.Roll), math.Abs(moment.Pitch), math.Abs(moment.Yaw))
	switch m := moment.About(axis); {
	case !(math.Abs(m) > leastShare*strongest):
		return 0
	case m > 0:
		return 1
	}
	return -1
}

// Rollers says whether the roll stick has something that rolls the model: a part
// whose kind is there for that and no more, or a flap or spoiler that it moves.
// Without, the roll stick is there to turn the model by the rudder, and what a yaw
// brings by the dihedral is all the roll there is.
func (a *Airframe) Rollers() bool { return a.rollers }

// bornRollers are the kinds that are on a model to roll it; flaps and spoilers may
// be there for the landing only.
var bornRollers = []mixcore.Kind{"aileron", "flaperon", "elevon", "taileron"}

func (a *Airframe) isRoller(part int) bool {
	p := &a.setup.Parts[part]
	return a.Duty(part, mixcore.Roll) != 0 &&
		(slices.Contains(bornRollers, p.Kind) || slices.ContainsFunc(p.Drives, func(d mixcore.Drive) bool { return a.takesRoll(d.Channel) }))
}

// takesRoll is true for a channel that the roll stick has a share in.
func (a *Airframe) takesRoll(channel int) bool {
	return slices.ContainsFunc(a.setup.Channels[channel].Mix, func(line mixcore.MixLine) bool {
		if line.Op != mixcore.Add && line.Op != mixcore.ScaleBy {
			return false
		}
		from := &a.setup.Controls[a.setup.Demands[line.Demand].From]
		return from.Kind == mixcore.AxisControl && from.Axis == mixcore.Roll
	})
}

// Steers is true for wheels, which turn the model on the ground only.
func Steers(k mixcore.Kind) bool { return k == "nose wheel" || k == "tail wheel" }
