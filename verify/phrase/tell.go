package phrase

import (
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

// Holding is whether an outcome holds.
type Holding uint8

// The answers. Undecided is said of an outcome about every position only: a check does
// not pass with it, but it shows nothing either.
const (
	Fails Holding = iota
	Holds
	Undecided
)

// Tell says whether an outcome of one part or channel, or of the model, holds in a
// situation: what Judge says, as quickly as that can be said. before and now are what the
// model does before the movement and once it is at rest, of the parts at least that the
// outcome looks at; an outcome about every position needs neither.
func (v *Vocabulary) Tell(o *Outcome, at Situation, before, now *mixcore.Output) Holding {
	if o.Every != nil {
		switch v.rule(v.needs(o, &at), true).Answer {
		case prove.Proved:
			return Holds
		case prove.Undecided:
			return Undecided
		}
		return Fails
	}
	j := v.judgeOutputs(o, at, before, now)
	j.mute = true
	if j.passes() {
		return Holds
	}
	return Fails
}

// passes is whether one would pass, without its words.
func (j *judge) passes() bool {
	if j.o.NeedsMovement() && !j.moved {
		return false
	}
	part, channel := -1, -1
	switch s := &j.o.Subject; {
	case j.o.together():
	case len(s.Parts) > 0:
		part = s.Parts[0]
	default:
		channel = s.Channels[0]
	}
	see := func(in instant) seen { return j.see(part, channel, in) }
	for _, in := range j.instants {
		if !see(in).passed {
			return false
		}
	}
	_, missed := j.missedOnTheWay(part, see)
	return !missed
}

// LooksAt says whether an outcome of one part or channel, or of the model, can hang on
// what some parts do, by index. It may say yes too often.
func (o *Outcome) LooksAt(parts []int) bool {
	switch o.Verb {
	case Move, Still, Neutral, Stand, PowerAt, Stopped, Running, Stops, StaysStopped, AtStop, NotAtStop, Rising, DependsOn:
		return slices.Contains(parts, o.Subject.Parts[0])
	case Together, Opposite, AsFar, LessThan, MoreThan:
		return slices.Contains(parts, o.Subject.Parts[0]) || slices.Contains(parts, o.Other)
	}
	return len(parts) > 0 || len(o.Subject.Channels) > 0 // a channel may do something else though no part hangs on it
}

// OnTheWay says whether an outcome follows the model on its way, which takes longer than
// to look where it comes to rest.
func (o *Outcome) OnTheWay() bool { return o.Clock != AtRest || o.Verb.keeps() }
