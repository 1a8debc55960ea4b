package phrase

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/wording"
)

// keeps is true for a verb that must hold all the way, not at its ends only: a
// motor that runs for a second on its way from stopped to stopped did not stay
// stopped.
func (v Verb) keeps() bool { return v == Still || v == StaysStopped }

// missedOnTheWay looks at every moment between the movement and rest, or the
// time asked for, and finds one at which the outcome does not hold: of a verb
// that keeps the one at which it is missed furthest, of "within" the first
// behind the time. It looks only where the ends hold.
func (j *judge) missedOnTheWay(part int, see func(instant) seen) (when mixcore.Seconds, missed bool) {
	if !j.moved || !j.o.Verb.keeps() && j.o.Clock != Within {
		return 0, false
	}
	until := LongestTime
	if j.o.Clock == After {
		until = j.o.Time
	}
	furthest := 0.0
	before, now := j.at.Before.Input(), j.at.Now.Input()
	if j.o.Verb.keeps() && j.model.Plan.Steady(part, &before, &now) {
		return 0, false // it stays between its two ends, which were looked at
	}
	quick := j.mute
	j.mute = true
	defer func() { j.mute = quick }()
	j.model.Plan.During(&before, &now, until, func(at mixcore.Seconds, out *mixcore.Output) bool {
		if j.o.Verb.keeps() {
			if holds, by := j.kept(part, out); !holds && by > furthest {
				when, missed, furthest = at, true, by
			}
			return !quick || !missed
		}
		if at < j.o.Time || see(instant{out, true, at}).passed {
			return true
		}
		when, missed = at, true
		return false
	})
	return when, missed
}

// kept is whether a verb that keeps holds, and how far the part is from where
// it should have stayed.
func (j *judge) kept(part int, out *mixcore.Output) (holds bool, by float64) {
	p := &j.setup.Parts[part]
	from, to := j.before.Parts[part], out.Parts[part]
	if j.o.Verb == StaysStopped {
		return p.Motor.Stopped(to.Amount), float64(to.Amount)
	}
	by = math.Abs(to.Place() - from.Place())
	return by < j.still(p), by
}

// onTheWay begins what was seen at a moment before rest.
func onTheWay(when mixcore.Seconds) string {
	if when < mixcore.TimeStep {
		return "on the way, at once: "
	}
	return "on the way, after " + wording.Time(when) + ": "
}
