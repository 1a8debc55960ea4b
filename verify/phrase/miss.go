package phrase

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain"
	"example.com/hingeline/verify/wording"
)

// Miss says in one plain phrase how an outcome about one part or channel was
// missed: "WRONG WAY: wanted UP, it goes DOWN", "RIGHT WAY, but 9.5° too little",
// "DID NOT MOVE: wanted UP". It is empty where what was wanted and what was got
// say it as plainly. The arguments are those of [Vocabulary.Doubt].
func (v *Vocabulary) Miss(o *Outcome, failed *Verdict, before, now *mixcore.Output) string {
	j := judge{Vocabulary: v, o: o, before: before, moved: before != nil}
	doubt := v.Doubt(o, failed, before, now)
	if failed.Part < 0 {
		return j.missOfChannel(&now.Channels[failed.Channel])
	}
	p, to := &j.setup.Parts[failed.Part], now.Parts[failed.Part]
	switch {
	case o.Verb == Rising:
		return "WRONG WAY as the " + v.setup.Controls[o.Control].Name + " moves " + v.along(o)
	case o.Verb == DependsOn:
		return "MOVES, and none of the controls named does"
	case o.Not:
		return "IT DOES, never was wanted"
	}
	switch o.Verb {
	case Move:
		if !j.moved {
			return ""
		}
		change := (to.Place() - before.Parts[failed.Part].Place()) * o.Way.sign()
		return j.missOfWay(p, doubt, change, "it goes", "DID NOT MOVE")
	case Stand:
		distance := float64(to.Angle) * o.Way.sign()
		if p.Motion == mixcore.OutIn {
			distance = float64(to.Amount)
			if o.Way == In {
				distance = 100 - distance
			}
		}
		return j.missOfWay(p, doubt, distance, "it is", "AT NEUTRAL")
	case PowerAt:
		return j.missOfAmount(float64(to.Amount), "too low", "too high")
	case Neutral:
		return "NOT AT NEUTRAL"
	case Still:
		return "MOVES, wanted still"
	case Running:
		return "DOES NOT RUN"
	case Stopped, Stops, StaysStopped:
		if !p.Motor.Stopped(to.Amount) {
			return "THE MOTOR RUNS"
		}
	case Together, Opposite, AsFar, LessThan, MoreThan:
		return j.missOfComparison(failed.Part, now, doubt)
	}
	return ""
}

// missOfWay speaks of a distance in the direction wanted; verb stands before
// the direction that was got, stuck is what to say where there is none.
func (j *judge) missOfWay(p *mixcore.Part, doubt chain.Doubt, distance float64, verb, stuck string) string {
	wanted := wording.Direction(p.Motion, j.o.Way.sign() > 0)
	switch doubt {
	case chain.Direction:
		return "WRONG WAY: wanted " + wanted + ", " + verb + " " + wording.Direction(p.Motion, j.o.Way.sign() < 0)
	case chain.Stuck:
		return stuck + ": wanted " + wanted
	}
	if off := j.missOfAmount(inUnit(p, distance, j.o.Amount.Unit), "too little", "too much"); off != "" {
		return "RIGHT WAY, but " + off
	}
	return ""
}

// missOfAmount is how far a value is off: from the value wanted, or from the
// nearest one that would have done.
func (j *judge) missOfAmount(x float64, under, over string) string {
	a := j.o.Amount
	wanted := a.Value
	switch a.Kind {
	case NoAmount:
		return ""
	case Between:
		wanted = a.bound(x)
	}
	size := math.Abs(x - wanted)
	if size <= Rounding {
		return ""
	}
	words := ""
	switch a.Unit {
	case "°":
		words = wording.AngleBeside(mixcore.Degrees(size), 0)
	case "mm":
		words = wording.LengthBeside(mixcore.Millimetres(size), 0)
	case "%":
		words = wording.PercentBeside(mixcore.Percent(size), 0)
	case "µs":
		words = wording.PulseBeside(mixcore.Microseconds(size), 0)
	default:
		return ""
	}
	if x < wanted {
		return words + " " + under
	}
	return words + " " + over
}

func (j *judge) missOfChannel(c *mixcore.ChannelOutput) string {
	switch j.o.Verb {
	case PulseAt:
		return j.missOfAmount(float64(c.Pulse), "too low", "too high")
	case OutputAt:
		return j.missOfAmount(float64(c.Output), "too low", "too high")
	}
	return ""
}

func (j *judge) missOfComparison(part int, now *mixcore.Output, doubt chain.Doubt) string {
	switch {
	case doubt == chain.Direction && j.o.Verb == Together:
		return "WRONG WAY: they move opposite ways"
	case doubt == chain.Direction && j.o.Verb == Opposite:
		return "WRONG WAY: they move the same way"
	case doubt != chain.Stuck:
		return ""
	}
	for _, i := range []int{part, j.o.Other} {
		p := &j.setup.Parts[i]
		if math.Abs(now.Parts[i].Place()-j.before.Parts[i].Place()) < j.still(p) {
			return "DID NOT MOVE: the " + p.Name
		}
	}
	return ""
}
