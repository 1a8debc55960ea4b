package draft

import (
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
)

// step is one movement of one control.
type step struct {
	control  int
	from, to float64
}

// turners are the kinds that are there to turn the model about an axis, or do so
// when they answer its control. Whatever else answers (a flap that goes with the
// elevator) does it for the wing's sake, and which way is the pilot's choice.
var turners = map[mixcore.Axis][]mixcore.Kind{
	mixcore.Roll:  {"aileron", "flaperon", "elevon", "taileron", "flap", "spoiler", "airbrake"},
	mixcore.Pitch: {"elevator", "elevon", "v-tail", "canard", "taileron"},
	mixcore.Yaw:   {"rudder", "v-tail", "drag rudder", "motor", "nose wheel", "tail wheel"},
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

// turningWay is the way in which a part helps the model turn about an axis. A
// rudder that goes with the roll stick goes into the turn (common practice, no
// source).
func (d *drafter) turningWay(part int, axis mixcore.Axis, plus bool) phrase.Way {
	p := &d.s.Parts[part]
	about := axis
	if axis == mixcore.Roll && p.Motion != mixcore.Power && !slices.Contains(turners[axis], p.Kind) {
		about = mixcore.Yaw
	}
	if !slices.Contains(turners[about], p.Kind) {
		return phrase.NoWay
	}
	if d.isWheel(part) {
		return wayOf(p.Motion, !plus)
	}
	const some = 10 // degrees or percent
	turn := d.air.Alone(part, some).Parts[part].About(about)
	if turn == 0 {
		return phrase.NoWay
	}
	return wayOf(p.Motion, (turn > 0) == plus)
}

func (d *drafter) isWheel(part int) bool {
	kind := d.s.Parts[part].Kind
	return kind == "nose wheel" || kind == "tail wheel"
}

// wayOf is the plus or minus way of a motion.
func wayOf(m mixcore.Motion, plus bool) phrase.Way {
	ways := map[mixcore.Motion][2]phrase.Way{
		mixcore.UpDown:    {phrase.Down, phrase.Up},
		mixcore.LeftRight: {phrase.Left, phrase.Right},
		mixcore.Power:     {phrase.Faster, phrase.Slower},
		mixcore.OutIn:     {phrase.Out, phrase.In},
	}[m]
	if plus {
		return ways[0]
	}
	return ways[1]
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
		return slices.Contains(d.served(control), part)
	}
	if c.Kind == mixcore.TrimControl && d.isWheel(part) {
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
