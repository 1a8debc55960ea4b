package sense

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

// turns is which way a part turns the model about an axis as it moves the plus
// way: +1 right or up, −1 left or down, 0 where its kind is not there for that or
// where nobody can say.
func (l *looker) turns(part int, axis mixcore.Axis) int {
	kind := l.s.Parts[part].Kind
	if !slices.Contains(duties[axis], kind) {
		return 0
	}
	if isWheel(kind) {
		return -1 // left is left
	}
	moment := l.air.Alone(part, plainly).Parts[part]
	strongest := max(math.Abs(moment.Roll), math.Abs(moment.Pitch), math.Abs(moment.Yaw))
	switch m := moment.About(axis); {
	case math.Abs(m) <= leastShare*strongest:
		return 0
	case m > 0:
		return 1
	}
	return -1
}

func isWheel(k mixcore.Kind) bool { return k == "nose wheel" || k == "tail wheel" }

func (l *looker) hasRollers() bool {
	for i := range l.s.Parts {
		if l.turns(i, mixcore.Roll) != 0 {
			return true
		}
	}
	return false
}

// axisOf is the axis about which a stick or trim turns the model; NoAxis for
// other controls. On a model without anything that rolls it, the roll stick is
// there to turn it by the rudder.
func (l *looker) axisOf(control int) mixcore.Axis {
	axis := l.s.Controls[control].Axis
	if axis == mixcore.Roll && !l.rollers {
		return mixcore.Yaw
	}
	return axis
}
