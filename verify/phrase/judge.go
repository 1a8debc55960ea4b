package phrase

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/wording"
)

// The least that counts.
const (
	// StillPercent is the least movement of a motor or extra that does not
	// count as still, in percent of its travel.
	StillPercent = 1.0
	// ClearlyMore is the least difference between two movements that makes one
	// of them more, in degrees or percent.
	ClearlyMore = 0.1
	// StopReach is how near its stop a part counts as being at it, in degrees.
	StopReach = 0.05
	// EndReach is how near its end an extra counts as in or out, in percent.
	EndReach = 1.0
	// Rounding is what arithmetic in binary may add to or take from a value
	// that stands exactly at a bound.
	Rounding = 1e-6
)

// Verdict is one subject held against an outcome.
type Verdict struct {
	Part    int // index, or -1
	Channel int // index, or -1
	Subject string
	Wanted  string
	Got     string
	Passed  bool

	Timed bool // judged at Time after the movement, else once at rest
	Time  mixcore.Seconds
}

// Judge holds an outcome against a situation: one verdict for each part or
// channel of its subject. It never passes what it could not compare.
func (v *Vocabulary) Judge(o *Outcome, at Situation) []Verdict {
	j := judge{Vocabulary: v, o: o, moved: at.Moved, before: v.model.Plan.NewOutput()}
	before, now := at.Before.Input(), at.Now.Input()
	if at.Moved {
		v.model.Plan.Eval(&before, j.before)
	}
	if o.Clock != AtRest && at.Moved {
		early := v.model.Plan.NewOutput()
		v.model.Plan.EvalAfter(&before, &now, o.Time, early)
		j.instants = append(j.instants, instant{early, true})
	}
	if o.Clock != After || !at.Moved {
		rest := v.model.Plan.NewOutput()
		v.model.Plan.Eval(&now, rest)
		j.instants = append(j.instants, instant{rest, false})
	}
	return j.all()
}

// instant is what the model does at one time.
type instant struct {
	out   *mixcore.Output
	timed bool
}

type judge struct {
	*Vocabulary
	o        *Outcome
	moved    bool
	before   *mixcore.Output // where moved
	instants []instant       // one, or for within: at the time, then at rest
}

func (j *judge) all() []Verdict {
	var list []Verdict
	for _, i := range j.o.Subject.Parts {
		list = append(list, j.one(Verdict{Part: i, Channel: -1, Subject: j.setup.Parts[i].Name}, func(in instant) (bool, string) {
			return j.part(i, in.out)
		}))
	}
	for _, i := range j.o.Subject.Channels {
		list = append(list, j.one(Verdict{Part: -1, Channel: i, Subject: channelTitle(&j.setup.Channels[i])}, func(in instant) (bool, string) {
			return j.channel(&in.out.Channels[i])
		}))
	}
	return list
}

// one fills a verdict from the first instant that fails, else from the first.
func (j *judge) one(v Verdict, see func(instant) (bool, string)) Verdict {
	v.Wanted = j.wanted()
	if j.o.NeedsMovement() && !j.moved {
		v.Got = "nothing was moved"
		return v
	}
	v.Passed = true
	for i, in := range j.instants {
		passed, got := see(in)
		if i > 0 && passed {
			continue
		}
		v.Passed, v.Timed, v.Time = passed, in.timed, 0
		v.Got = got
		switch {
		case in.timed:
			v.Time = j.o.Time
			v.Got = "after " + wording.Time(j.o.Time) + ": " + got
		case j.o.Clock == Within:
			v.Got = "at rest: " + got
		}
		if !passed {
			break
		}
	}
	return v
}

// still is the least change that counts as a movement of a part.
func (j *judge) still(p *mixcore.Part) float64 {
	if isHinged(p) {
		return float64(j.model.Still)
	}
	return StillPercent
}

// place is where a part stands, in degrees or percent, plus as mixcore's.
func place(p *mixcore.Part, o mixcore.PartOutput) float64 {
	if isHinged(p) {
		return float64(o.Angle)
	}
	return float64(o.Amount)
}

// part judges one part and says what it did.
func (j *judge) part(i int, out *mixcore.Output) (bool, string) {
	p, to := &j.setup.Parts[i], out.Parts[i]
	if !j.o.Verb.NeedsMovement() {
		return j.stands(p, to), j.standsWords(p, to)
	}
	from := j.before.Parts[i]
	change := place(p, to) - place(p, from)
	words := wording.Movement(p, from, to, j.model.Still)
	switch j.o.Verb {
	case Move:
		distance := change * j.o.Way.sign()
		return distance >= j.still(p) && j.holds(p, distance), j.exactly(p, words, distance)
	case Still:
		return math.Abs(change) < j.still(p), words
	case Stops:
		if p.Motor.Stopped(from.Amount) {
			return false, words + "; it was not running before, so this shows nothing"
		}
		return p.Motor.Stopped(to.Amount), words
	case StaysStopped:
		return p.Motor.Stopped(from.Amount) && p.Motor.Stopped(to.Amount), words
	}
	other := &j.setup.Parts[j.o.Other]
	otherFrom, otherTo := j.before.Parts[j.o.Other], out.Parts[j.o.Other]
	against := place(other, otherTo) - place(other, otherFrom)
	words += "; the " + other.Name + " " + wording.Movement(other, otherFrom, otherTo, j.model.Still)
	return j.compares(change, against, j.still(p), j.still(other)), words
}

// compares judges two movements. Both must be movements: with one of them
// still there is nothing to compare.
func (j *judge) compares(change, against, still, otherStill float64) bool {
	if math.Abs(change) < still || math.Abs(against) < otherStill {
		return false
	}
	same := change > 0 == (against > 0)
	difference := math.Abs(change) - math.Abs(against)
	switch j.o.Verb {
	case Together:
		return same
	case Opposite:
		return !same
	case AsFar:
		return math.Abs(difference) <= j.o.Amount.Slack+Rounding
	case LessThan:
		return difference <= -ClearlyMore
	case MoreThan:
		return difference >= ClearlyMore
	}
	return false
}

// stands judges where a part is.
func (j *judge) stands(p *mixcore.Part, o mixcore.PartOutput) bool {
	switch j.o.Verb {
	case Neutral:
		return math.Abs(float64(o.Angle)) < j.still(p)
	case Stopped:
		return p.Motor.Stopped(o.Amount)
	case Running:
		return !p.Motor.Stopped(o.Amount)
	case PowerAt:
		return j.o.Amount.holds(float64(o.Amount))
	case AtStop:
		return atStop(p, o)
	case NotAtStop:
		return !atStop(p, o)
	case Stand:
		return j.standsWay(p, o)
	}
	return false
}

// standsWay judges "is 12° down", "is out".
func (j *judge) standsWay(p *mixcore.Part, o mixcore.PartOutput) bool {
	if p.Motion == mixcore.OutIn {
		out := float64(o.Amount)
		if j.o.Way == In {
			out = 100 - out
		}
		if j.o.Amount.Kind == NoAmount {
			return out >= 100-EndReach
		}
		return j.o.Amount.holds(out)
	}
	distance := float64(o.Angle) * j.o.Way.sign()
	return distance >= j.still(p) && j.holds(p, distance)
}

// holds says whether a distance in degrees or percent, in the direction
// wanted, is the amount wanted.
func (j *judge) holds(p *mixcore.Part, distance float64) bool {
	if j.o.Amount.Kind == NoAmount {
		return true
	}
	return j.o.Amount.holds(inUnit(p, distance, j.o.Amount.Unit))
}

// inUnit turns degrees into millimetres along the trailing edge where those
// are wanted.
func inUnit(p *mixcore.Part, distance float64, unit string) float64 {
	if unit != "mm" {
		return distance
	}
	return float64(mixcore.ChordTravel(p.Chord, mixcore.Degrees(math.Abs(distance))))
}

func (a Amount) holds(x float64) bool {
	switch a.Kind {
	case About:
		return math.Abs(x-a.Value) <= a.Slack+Rounding
	case AtLeast:
		return x >= a.Value-Rounding
	case AtMost:
		return x <= a.Value+Rounding
	case Between:
		return x >= a.Low-Rounding && x <= a.High+Rounding
	case Over:
		return x > a.Value+Rounding
	case Under:
		return x < a.Value-Rounding
	}
	return false
}

// atStop is true if the part was driven beyond its stop or stands at it.
func atStop(p *mixcore.Part, o mixcore.PartOutput) bool {
	if o.Limits&mixcore.AtStop != 0 {
		return true
	}
	angle := float64(o.Angle)
	return angle >= float64(p.Stops.Plus)-StopReach || -angle >= float64(p.Stops.Minus)-StopReach
}

// channel judges one channel.
func (j *judge) channel(c *mixcore.ChannelOutput) (bool, string) {
	a := j.o.Amount
	switch j.o.Verb {
	case PulseAt:
		return a.holds(float64(c.Pulse)), wording.PulseBeside(c.Pulse, mixcore.Microseconds(a.bound(float64(c.Pulse))))
	case OutputAt:
		return a.holds(float64(c.Output)), wording.PercentBeside(c.Output, mixcore.Percent(a.bound(float64(c.Output))))
	case InTravel:
		limits := c.Limits & (mixcore.TravelLimit | mixcore.PulseLimit)
		if limits == 0 {
			return true, "within its travel, " + wording.Percent(c.Output)
		}
		return false, oneOf(wording.Limits(limits)) + ", " + wording.Percent(c.Output)
	}
	return false, wording.Percent(c.Output)
}
