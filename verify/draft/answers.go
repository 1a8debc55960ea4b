package draft

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/wording"
)

// strength is how far a part answers a step.
type strength uint8

const (
	dead   strength = iota // not at all
	weak                   // less than what counts as a movement
	moving                 // it moves
)

// deadPercent is how much of its travel a motor or extra may move and still
// count as dead.
const deadPercent = 0.1

// answer is how far a part went between two outputs.
func (d *drafter) answer(part int, from, to *mixcore.Output) strength {
	p := &d.s.Parts[part]
	went, none := math.Abs(to.Parts[part].Place()-from.Parts[part].Place()), float64(wording.NeutralBelow)
	if !p.Motion.Hinged() {
		none = deadPercent
	}
	switch {
	case went >= d.m.StillOf(p)-phrase.Rounding:
		return moving
	case went >= none:
		return weak
	}
	return dead
}

// computed is the way in which the set-up moved a part.
func (d *drafter) computed(part int, from, to *mixcore.Output) phrase.Way {
	return phrase.WayOf(d.s.Parts[part].Motion, to.Parts[part].Place() > from.Parts[part].Place())
}

// play evaluates a step in a state into d.before and d.after.
func (d *drafter) play(st step, in *mixcore.Input) {
	from, to := d.ends(st, in)
	d.plan.Eval(&from, d.before)
	d.plan.Eval(&to, d.after)
}

func (d *drafter) ends(st step, in *mixcore.Input) (from, to mixcore.Input) {
	from, to = in.Clone(), in.Clone()
	from.Position[st.control], to.Position[st.control] = st.from, st.to
	return from, to
}

// answering says of each part whether it ever answers a control, in any state.
func (d *drafter) answering(steps []step, states []state) []bool {
	ever := make([]bool, len(d.s.Parts))
	for i := range states {
		for _, st := range steps {
			d.play(st, &states[i].in)
			for p := range ever {
				ever[p] = ever[p] || d.answer(p, d.before, d.after) != dead
			}
		}
	}
	return ever
}

// mirrored is the step that the other side answers as this side answers st.
func (d *drafter) mirrored(st step) step {
	if axis := d.s.Controls[st.control].Axis; axis == mixcore.Roll || axis == mixcore.Yaw {
		st.to = -st.to
	}
	return st
}

// partnersAnswer says of each part whether its partner answers the mirror image
// of a step. It leaves the step itself played.
func (d *drafter) partnersAnswer(st step, in *mixcore.Input) []bool {
	answers := make([]bool, len(d.s.Parts))
	mirror := d.mirrored(st)
	d.play(mirror, in)
	for i, partner := range d.partner {
		answers[i] = partner != alone && d.answer(partner, d.before, d.after) == moving
	}
	if mirror != st {
		d.play(st, in)
	}
	return answers
}

// asked is what a draft says of one part after a step.
type asked struct {
	part int
	verb phrase.Verb // Move, Still, Stops or StaysStopped
	way  phrase.Way  // of Move
	open bool        // left to the pilot: the set-up does it, sense has no say
}

// ask is what each part should do in a step from a state. What the control does
// not bear on in any state is not spoken of: see untouched.
func (d *drafter) ask(st step, in *mixcore.Input, ever []bool) []asked {
	partner := d.partnersAnswer(st, in)
	bears := func(part int) bool { return d.reach[part][st.control] }
	var list []asked
	for i := range d.s.Parts {
		p := &d.s.Parts[i]
		if p.Motion == mixcore.Power && d.promised(i, st, in) != noPromise {
			if bears(i) {
				list = append(list, d.askSafe(i, st, in))
			}
			continue
		}
		if p.Motion == mixcore.Power && !d.runs(i, d.before) && !d.mayStart(i, st.control) {
			if bears(i) {
				list = append(list, asked{part: i, verb: phrase.StaysStopped})
			}
			continue
		}
		went, way := d.answer(i, d.before, d.after), d.way(i, st)
		must := d.mustAnswer(i, st.control, func(part int) bool { return ever[part] })
		switch {
		case way != phrase.NoWay && (went == moving || !d.seated(i, way) && (must && !ever[i] || partner[i])):
			list = append(list, asked{part: i, verb: phrase.Move, way: way})
		case went == moving:
			list = append(list, asked{part: i, verb: phrase.Move, way: d.computed(i, d.before, d.after), open: true})
		case went == dead && p.Motion != mixcore.Power && bears(i):
			open := must && way != phrase.NoWay && !d.seated(i, way)
			list = append(list, asked{part: i, verb: phrase.Still, open: open})
		}
	}
	return list
}

// promise is what stopped_when says of a motor before and after a step.
type promise uint8

const (
	noPromise promise = iota // nothing
	madeSafe                 // it is stopped after the step
	released                 // it was stopped before the step, and need not be after it
)

func (d *drafter) promised(part int, st step, in *mixcore.Input) promise {
	when := d.s.Parts[part].Motor.StoppedWhen
	if when == nil {
		return noPromise
	}
	from, to := d.ends(st, in)
	switch {
	case d.plan.Holds(when, &to):
		return madeSafe
	case d.plan.Holds(when, &from) && d.runs(part, d.after):
		return released
	}
	return noPromise
}

func (d *drafter) runs(part int, out *mixcore.Output) bool {
	return !d.s.Parts[part].Motor.Stopped(out.Parts[part].Amount)
}

// askSafe is what a motor does whose promise is made or ends: a safe motor
// stands still, and one that runs when it is released has started.
func (d *drafter) askSafe(part int, st step, in *mixcore.Input) asked {
	switch {
	case d.promised(part, st, in) == released:
		return asked{part: part, verb: phrase.Move, way: phrase.Faster}
	case d.ranBefore(part, st, in):
		return asked{part: part, verb: phrase.Stops}
	}
	return asked{part: part, verb: phrase.StaysStopped}
}

// ranBefore is true where the motor ran before a step that makes it safe. One
// that ran although it was safe then too should not have.
func (d *drafter) ranBefore(part int, st step, in *mixcore.Input) bool {
	from, _ := d.ends(st, in)
	return d.runs(part, d.before) && !d.plan.Holds(d.s.Parts[part].Motor.StoppedWhen, &from)
}
