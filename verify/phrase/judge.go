package phrase

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// The least that counts.
const (
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
	Explain []Explained // where neither Part nor Channel is one: the parts that tell most of a failure

	// Of an outcome about every position: how it was decided, and of one that does not
	// hold the position where that was found; of one that is proved the position at which
	// it has least to spare, where that was looked for.
	Proof *result.Proof
	Found *Situation
	Worst *Situation

	Timed bool // judged at Time after the movement, else once at rest
	Time  mixcore.Seconds
}

// Explained is a part whose cause chain tells why an outcome about the model, or
// about several parts together, failed.
type Explained struct {
	Part  int
	Doubt chain.Doubt
}

// MostExplained is how many parts a failure is explained by at most.
const MostExplained = 2

// Judge holds an outcome against a situation: one verdict for each part or
// channel of its subject, or one for the whole of it (see [Outcome.Apart]). It
// never passes what it could not compare.
func (v *Vocabulary) Judge(o *Outcome, at Situation) []Verdict {
	if o.Every != nil {
		var list []Verdict
		for _, single := range o.Apart() {
			list = append(list, v.prove(&single, &at))
		}
		return list
	}
	return v.judgeHere(o, at).all()
}

// judgeHere makes ready to hold an outcome against one situation, whatever it says of
// others.
func (v *Vocabulary) judgeHere(o *Outcome, at Situation) *judge {
	evaluated := func(p Pose) *mixcore.Output {
		in, out := p.Input(), v.model.Plan.NewOutput()
		v.model.Plan.Eval(&in, out)
		return out
	}
	before, now := v.model.Plan.NewOutput(), (*mixcore.Output)(nil)
	if at.Moved {
		before = evaluated(at.Before)
	}
	if judgedAtRest(o, &at) {
		now = evaluated(at.Now)
	}
	return v.judgeOutputs(o, at, before, now)
}

// judgedAtRest says whether an outcome looks at where everything comes to rest, and not
// only at a time on the way.
func judgedAtRest(o *Outcome, at *Situation) bool { return o.Clock != After || !at.Moved }

// judgeOutputs makes ready with what the model does before the movement and at rest.
func (v *Vocabulary) judgeOutputs(o *Outcome, at Situation, before, now *mixcore.Output) *judge {
	j := &judge{Vocabulary: v, o: o, at: at, moved: at.Moved, before: before}
	if o.Clock != AtRest && at.Moved {
		from, to, early := at.Before.Input(), at.Now.Input(), v.model.Plan.NewOutput()
		v.model.Plan.EvalAfter(&from, &to, o.Time, early)
		j.instants = append(j.instants, instant{early, true, o.Time})
	}
	if judgedAtRest(o, &at) {
		j.instants = append(j.instants, instant{now, false, 0})
	}
	return j
}

// instant is what the model does at one time after the movement, or at rest.
type instant struct {
	out   *mixcore.Output
	timed bool
	at    mixcore.Seconds // where timed
}

type judge struct {
	*Vocabulary
	o        *Outcome
	at       Situation
	moved    bool
	before   *mixcore.Output // where moved
	instants []instant       // one, or for within: at the time, then at rest
	mute     bool            // only whether it holds is asked, not what is seen
}

// seen is what was found at one instant.
type seen struct {
	passed  bool
	got     string
	explain []Explained
}

func (j *judge) all() []Verdict {
	if j.o.together() {
		return []Verdict{j.one(Verdict{Part: -1, Channel: -1, Subject: j.Title(j.o)})}
	}
	var list []Verdict
	for _, i := range j.o.Subject.Parts {
		list = append(list, j.one(Verdict{Part: i, Channel: -1, Subject: j.partTitle(i, j.o)}))
	}
	for _, i := range j.o.Subject.Channels {
		list = append(list, j.one(Verdict{Part: -1, Channel: i, Subject: channelTitle(&j.setup.Channels[i])}))
	}
	return list
}

// see judges one part, one channel or, with neither, the whole at one instant.
func (j *judge) see(part, channel int, in instant) seen {
	switch {
	case part >= 0 && j.o.Verb == HoldsAir:
		return j.holdsAir(part, in)
	case part >= 0 && j.o.Verb == ServosAgree:
		return j.servosAgree(part, in)
	case part >= 0:
		passed, got := j.part(part, in.out)
		return seen{passed: passed, got: got}
	case channel >= 0:
		passed, got := j.channel(&in.out.Channels[channel])
		return seen{passed: passed, got: got}
	}
	return j.whole(in)
}

// whole judges what is asked of the model or of several parts together.
func (j *judge) whole(in instant) seen {
	switch j.o.Verb {
	case AddsToRoll:
		return j.addsToRoll(in.out)
	case NoMoreAdverse:
		return j.adverse(in.out)
	}
	return j.turns(in.out)
}

// one fills a verdict from the first instant that fails, else from the first.
func (j *judge) one(v Verdict) Verdict {
	see := func(in instant) seen { return j.see(v.Part, v.Channel, in) }
	v.Wanted = j.wanted()
	if j.o.NeedsMovement() && !j.moved {
		v.Got = "nothing was moved"
		return v
	}
	for i, in := range j.instants {
		found := see(in)
		if i > 0 && found.passed {
			continue
		}
		j.note(&v, in, found)
		switch {
		case in.timed:
			v.Got = "after " + wording.Time(in.at) + ": " + found.got
		case j.o.Clock == Within:
			v.Got = "at rest: " + found.got
		}
		if !found.passed {
			return v
		}
	}
	if when, missed := j.missedOnTheWay(v.Part, see); missed {
		out := j.model.Plan.NewOutput()
		before, now := j.at.Before.Input(), j.at.Now.Input()
		j.model.Plan.EvalAfter(&before, &now, when, out)
		in := instant{out, true, when}
		found := see(in)
		found.passed = false
		j.note(&v, in, found)
		v.Got = onTheWay(when) + found.got
	}
	return v
}

// note writes down what was found at an instant.
func (j *judge) note(v *Verdict, in instant, found seen) {
	v.Passed, v.Explain, v.Timed, v.Time = found.passed, found.explain, in.timed, in.at
	v.Got = found.got
}

// still is the least change that counts as a movement of a part, as it is watched.
func (v *Vocabulary) still(p *mixcore.Part) float64 {
	least := v.model.StillOf(p)
	if p.Motion.Hinged() {
		return least
	}
	return max(least, v.unseen)
}

// part judges one part and says what it did.
func (j *judge) part(i int, out *mixcore.Output) (bool, string) {
	p, to := &j.setup.Parts[i], out.Parts[i]
	if !j.o.Verb.NeedsMovement() {
		passed := j.stands(p, to)
		if j.mute {
			return passed, ""
		}
		return passed, j.standsWords(p, to)
	}
	from := j.before.Parts[i]
	passed := j.moves(p, from, to, out)
	if j.mute {
		return passed, ""
	}
	return passed, j.movesWords(p, from, to, out)
}

// moves judges what a part did since before the movement.
func (j *judge) moves(p *mixcore.Part, from, to mixcore.PartOutput, out *mixcore.Output) bool {
	change := to.Place() - from.Place()
	switch j.o.Verb {
	case Move:
		distance := change * j.o.Way.sign()
		return distance >= j.still(p) && j.holds(p, distance)
	case Still:
		return math.Abs(change) < j.still(p)
	case Stops:
		return !p.Motor.Stopped(from.Amount) && p.Motor.Stopped(to.Amount)
	case StaysStopped:
		return p.Motor.Stopped(from.Amount) && p.Motor.Stopped(to.Amount)
	}
	other := &j.setup.Parts[j.o.Other]
	against := out.Parts[j.o.Other].Place() - j.before.Parts[j.o.Other].Place()
	return j.compares(change, against, j.still(p), j.still(other))
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
			return out >= 100-max(EndReach, j.unseen)
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
		return false, wording.OneOf(wording.Limits(limits)) + ", " + wording.Percent(c.Output)
	}
	return false, wording.Percent(c.Output)
}
