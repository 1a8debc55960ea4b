package draft

import (
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/purpose"
)

// step is one movement of one control.
type step struct {
	control  int
	from, to float64
}

// bound are the kinds that must answer an axis: one that never does is dead.
var bound = map[mixcore.Axis][]mixcore.Kind{
	mixcore.Roll:  {"aileron", "flaperon", "elevon", "taileron"},
	mixcore.Pitch: {"elevator", "elevon", "v-tail", "canard", "taileron"},
	mixcore.Yaw:   {"rudder", "v-tail", "drag rudder", "nose wheel", "tail wheel"},
}

// way is which way a part goes with a step; NoWay where sense cannot tell. What
// a motor does when it is made safe is not its business.
func (d *drafter) way(part int, st step) phrase.Way {
	switch c := &d.s.Controls[st.control]; c.Kind {
	case mixcore.AxisControl, mixcore.TrimControl:
		return d.turningWay(part, c.Axis, st.to > st.from)
	}
	return d.purposeWay(part, st)
}

// startsMotors is true for a control that may be there to start a motor: not a
// stick, a trim or a lever that is named for something else.
func (d *drafter) startsMotors(control int) bool {
	switch c := &d.s.Controls[control]; c.Kind {
	case mixcore.AxisControl, mixcore.TrimControl:
		return false
	case mixcore.LeverControl:
		return d.purposes[control] == purpose.Power || d.purposes[control] == purpose.Other
	}
	return true
}

// mayStart is true for a motor that nothing but such a control as this could ever
// start, or that this one may.
func (d *drafter) mayStart(motor, control int) bool {
	return d.startsMotors(control) || !slices.ContainsFunc(d.reach[motor].Controls(), d.startsMotors)
}

// turningWay is the way in which a part helps the model turn about an axis. A
// rudder that goes with the roll stick goes into the turn (common practice, no
// source).
func (d *drafter) turningWay(part int, axis mixcore.Axis, plus bool) phrase.Way {
	p := &d.s.Parts[part]
	turns := d.air.Duty(part, axis)
	if turns == 0 && axis == mixcore.Roll && p.Motion != mixcore.Power {
		turns = d.air.Duty(part, mixcore.Yaw)
	}
	if turns == 0 {
		return phrase.NoWay
	}
	return phrase.WayOf(p.Motion, (turns > 0) == plus)
}

// seated is true for a part that rests against a seat, and one that goes further
// that way does not: a shut spoiler.
func (d *drafter) seated(part int, way phrase.Way) bool {
	switch d.s.Parts[part].Kind {
	case "spoiler", "airbrake":
		return way == phrase.Down
	case "drag rudder":
		return way == phrase.In
	}
	return false
}

// mustAnswer is true for a part that has to answer a control: if it never does,
// it is dead.
func (d *drafter) mustAnswer(part, control int, answers func(part int) bool) bool {
	c, kind := &d.s.Controls[control], d.s.Parts[part].Kind
	if c.Kind != mixcore.AxisControl && c.Kind != mixcore.TrimControl {
		return slices.Contains(d.served[control], part)
	}
	if c.Kind == mixcore.TrimControl && effect.Steers(kind) {
		return false // a wheel may well be left out of the trim
	}
	if c.Axis != mixcore.Roll {
		return slices.Contains(bound[c.Axis], kind)
	}
	for _, kinds := range d.rollers(answers) {
		if d.has(kinds, func(int) bool { return true }) {
			return slices.Contains(kinds, kind)
		}
	}
	return false
}

// rollers are the kinds that must answer roll, most likely first; of the first
// that the model has, all must.
func (d *drafter) rollers(answers func(part int) bool) [][]mixcore.Kind {
	order := [][]mixcore.Kind{bound[mixcore.Roll]}
	spoilers, tail := []mixcore.Kind{"spoiler"}, []mixcore.Kind{"rudder", "v-tail", "nose wheel", "tail wheel"}
	yaws := slices.ContainsFunc(d.s.Controls, func(c mixcore.Control) bool {
		return c.Kind == mixcore.AxisControl && c.Axis == mixcore.Yaw
	})
	switch {
	case d.has(spoilers, answers):
		order = append(order, spoilers)
	case !yaws:
		order = append(order, tail)
	case !d.has(tail, answers):
		order = append(order, spoilers)
	}
	return order
}

func (d *drafter) has(kinds []mixcore.Kind, also func(part int) bool) bool {
	for i := range d.s.Parts {
		if slices.Contains(kinds, d.s.Parts[i].Kind) && also(i) {
			return true
		}
	}
	return false
}
