package phrase

import (
	"math"

	"example.com/hingeline/mixcore"
)

// Stretch is where a part should be: degrees, plus as mixcore's, or percent. An end is
// inside, to within Rounding; an infinite end is one that nobody asked for.
type Stretch struct{ Low, High float64 }

// asWritten is the slip of ends that are shown and not judged by.
const asWritten = 0

// StandWanted is the stretch in which an outcome of one part wants it, at the situation
// that it was judged at: before is what the model did before the movement, nil where
// nothing was moved, now what it does. It is false where no stretch can be told: of a
// channel, the model or several parts together, of what is not about a place, and where
// wherever the part stood the outcome could not hold.
func (v *Vocabulary) StandWanted(o *Outcome, before, now *mixcore.Output) (Stretch, bool) {
	if len(o.Subject.Parts) != 1 || o.together() {
		return Stretch{}, false
	}
	part := o.Subject.Parts[0]
	p := &v.setup.Parts[part]
	var low, high float64
	switch o.Verb {
	case Move, Still, DependsOn, Rising, Together, Opposite, AsFar, LessThan, MoreThan:
		if before == nil {
			return Stretch{}, false
		}
		from := before.Parts[part].Place()
		by, told := v.wayWanted(o, before, now)
		if !told {
			return Stretch{}, false
		}
		low, high = from+by.Low, from+by.High
	case AtStop:
		low, high = stopWanted(p, float64(now.Parts[part].Angle))
	case Neutral, Stand, Stopped, StaysStopped, Stops, Running, PowerAt, NotAtStop:
		if before != nil && (o.Verb == Stops || o.Verb == StaysStopped) && p.Motor.Stopped(before.Parts[part].Amount) == (o.Verb == Stops) {
			return Stretch{}, false // what it did before is wrong already
		}
		low, high = v.stretchOf(o, p, asWritten)
	default:
		return Stretch{}, false
	}
	s := Stretch{tidy(low), tidy(high)}
	return s, s.Low <= s.High && s.Low < never && s.High > -never
}

// fine is to what part of a degree or percent the ends of a stretch are given.
const fine = 1e9

// tidy takes off what arithmetic in binary added, and what made an end that does not
// count the nearest one that does.
func tidy(x float64) float64 {
	if math.IsInf(x, 0) {
		return x
	}
	return math.Round(x*fine)/fine + 0
}

// wayWanted is how far a part should have moved, plus as mixcore's.
func (v *Vocabulary) wayWanted(o *Outcome, before, now *mixcore.Output) (by Stretch, told bool) {
	part := o.Subject.Parts[0]
	p := &v.setup.Parts[part]
	still := v.still(p)
	switch o.Verb {
	case Move:
		by.Low, by.High = v.distances(o, p, asWritten)
		by.Low, by.High = signed(by.Low, by.High, o.Way.sign())
		return by, true
	case Still, DependsOn:
		return Stretch{-still, still}, true
	case Rising:
		by.Low, by.High = signed(0, math.Inf(1), o.Way.sign())
		return by, true
	}
	other := &v.setup.Parts[o.Other]
	against := now.Parts[o.Other].Place() - before.Parts[o.Other].Place()
	if math.Abs(against) < v.still(other) {
		return Stretch{}, false // nothing to compare with
	}
	way := against
	switch o.Verb {
	case Opposite:
		way = -against
	case AsFar, LessThan, MoreThan: // either way will do: the one that it goes
		if change := now.Parts[part].Place() - before.Parts[part].Place(); math.Abs(change) >= still {
			way = change
		}
	}
	by.Low, by.High = still, math.Inf(1)
	switch size := math.Abs(against); o.Verb {
	case AsFar:
		by.Low, by.High = math.Max(still, size-o.Amount.Slack), size+o.Amount.Slack
	case LessThan:
		by.High = size - ClearlyMore
	case MoreThan:
		by.Low = math.Max(still, size+ClearlyMore)
	}
	told = by.Low <= by.High
	by.Low, by.High = signed(by.Low, by.High, math.Copysign(1, way))
	return by, told
}

// stopWanted is at the stop that a part is nearer to.
func stopWanted(p *mixcore.Part, angle float64) (low, high float64) {
	plus, minus := float64(p.Stops.Plus)-StopReach, StopReach-float64(p.Stops.Minus)
	if math.IsInf(minus, -1) || plus-angle <= angle-minus {
		return plus, math.Inf(1)
	}
	return math.Inf(-1), minus
}
