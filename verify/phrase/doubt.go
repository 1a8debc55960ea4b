package phrase

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain"
)

// Compares is true for a verb that holds a part against Outcome.Other.
func (v Verb) Compares() bool {
	switch v {
	case Together, Opposite, AsFar, LessThan, MoreThan:
		return true
	}
	return false
}

// Doubt is in what way a failed outcome about one part or channel was missed.
// before is where the movement began, nil if nothing was moved; now is what was
// judged.
func (v *Vocabulary) Doubt(o *Outcome, failed *Verdict, before, now *mixcore.Output) chain.Doubt {
	j := judge{Vocabulary: v, o: o, before: before, moved: before != nil}
	switch {
	case failed.Part < 0:
		return j.doubtOfChannel(&now.Channels[failed.Channel])
	case !j.moved && o.Verb.NeedsMovement():
		return chain.Unclear
	}
	p, to := &j.setup.Parts[failed.Part], now.Parts[failed.Part]
	switch {
	case o.Verb == Rising:
		return chain.Direction
	case o.Verb == DependsOn, o.Not:
		return chain.Astir
	}
	switch o.Verb {
	case Still, Neutral, Stopped, Stops, StaysStopped:
		return chain.Astir
	case Running:
		return chain.Stuck
	case PowerAt, AtStop, NotAtStop, HoldsAir, ServosAgree:
		return chain.Amount
	case Move:
		change := to.Place() - before.Parts[failed.Part].Place()
		return doubtOfDistance(change*o.Way.sign(), j.still(p))
	case Stand:
		return j.doubtOfStand(p, to)
	}
	if o.Verb.Compares() {
		return j.doubtOfComparison(failed.Part, now)
	}
	return chain.Unclear
}

// doubtOfDistance is the doubt about a distance in the direction wanted, where
// less than still is none.
func doubtOfDistance(distance, still float64) chain.Doubt {
	switch {
	case distance <= -still:
		return chain.Direction
	case distance < still:
		return chain.Stuck
	}
	return chain.Amount
}

// doubtOfStand takes an extra that is nearer to the other end for one that
// went the wrong way.
func (j *judge) doubtOfStand(p *mixcore.Part, o mixcore.PartOutput) chain.Doubt {
	if p.Motion == mixcore.OutIn {
		if wantsOut := j.o.Way == Out; j.o.Amount.Kind == NoAmount && wantsOut == (o.Amount < 50) {
			return chain.Direction
		}
		return chain.Amount
	}
	return doubtOfDistance(float64(o.Angle)*j.o.Way.sign(), j.still(p))
}

func (j *judge) doubtOfComparison(part int, now *mixcore.Output) chain.Doubt {
	for _, i := range []int{part, j.o.Other} {
		p := &j.setup.Parts[i]
		if math.Abs(now.Parts[i].Place()-j.before.Parts[i].Place()) < j.still(p) {
			return chain.Stuck
		}
	}
	if j.o.Verb == Together || j.o.Verb == Opposite {
		return chain.Direction
	}
	return chain.Amount
}

// doubtOfChannel takes an output on the other side of centre than wanted for
// the wrong direction.
func (j *judge) doubtOfChannel(c *mixcore.ChannelOutput) chain.Doubt {
	a, got := j.o.Amount, float64(c.Output)
	switch j.o.Verb {
	case InTravel:
		return chain.Amount
	case PulseAt:
		centre := float64(mixcore.PulseOf(0))
		got = float64(c.Pulse) - centre
		a.Value, a.Low, a.High = a.Value-centre, a.Low-centre, a.High-centre
	case OutputAt:
	default:
		return chain.Unclear
	}
	if a.bound(got)*got < 0 {
		return chain.Direction
	}
	return chain.Amount
}
