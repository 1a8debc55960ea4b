package phrase

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

// need is one thing that has to be decided for an outcome about every position.
type need struct {
	claim prove.Claim
	// idle needs are there to fail: they say that nothing ever moves, of which no
	// comparison could be made.
	idle bool
	unit string  // of the margin; empty where it tells nothing
	per  float64 // margin units for one of the claim's
}

// needs are what has to be decided for an outcome of one part or channel, or of the
// model. All must hold.
func (v *Vocabulary) needs(o *Outcome, at *Situation) []need {
	now := prove.Claim{Lost: at.Now.Lost, When: o.Every.When}
	before, stood := at.Now.Input(), at.Now.Input()
	now.OtherLost = at.Now.Lost
	if at.Moved {
		before = at.Before.Input()
		now.OtherLost = at.Before.Lost
	}
	now.Now, now.Other = prove.AtPose(v.setup, &stood), prove.Beside(v.setup)
	for i, r := range o.Every.roams(v.setup, at) {
		switch c := &v.setup.Controls[i]; {
		case r.Free:
			now.Now[i] = r.Over
			if r.Moves {
				now.Other[i] = prove.Stands(c, stood.Position[i])
			}
		case before.Position[i] != stood.Position[i]:
			now.Other[i] = prove.Stands(c, before.Position[i])
		}
	}
	switch {
	case o.Subject.Model:
		now.Want = v.turnWant(o)
		return []need{{claim: now}}
	case len(o.Subject.Channels) > 0:
		return v.channelNeeds(o, now)
	}
	return v.partNeeds(o, at, now)
}

// turnWant is what is asked of the model.
func (v *Vocabulary) turnWant(o *Outcome) prove.Want {
	plus, _ := waysAbout(o.Axis)
	return prove.Turn{Axis: o.Axis, Plus: o.Way == plus, Not: o.Not, None: o.Verb == NoTurn}
}

func (v *Vocabulary) channelNeeds(o *Outcome, now prove.Claim) []need {
	channel := o.Subject.Channels[0]
	now.Other = nil
	n := need{claim: now, unit: "%", per: 1}
	switch o.Verb {
	case InTravel:
		n.claim.Want = prove.Travel{Channel: channel}
	case OutputAt:
		low, high := o.wanted(Rounding)
		n.claim.Want = prove.Output{Channel: channel, Low: low, High: high}
	default:
		low, high := o.wanted(Rounding)
		n.unit, n.per = "µs", float64(mixcore.PulseOf(1)-mixcore.PulseOf(0))
		n.claim.Want = prove.Output{Channel: channel, Low: float64(mixcore.OutputOf(mixcore.Microseconds(low))), High: float64(mixcore.OutputOf(mixcore.Microseconds(high)))}
	}
	return []need{n}
}

// wanted is the values that the amount, or never the amount, lets through, as
// [Amount.holds] takes them with a slip of Rounding.
func (o *Outcome) wanted(slip float64) (low, high float64) {
	from, to := o.Amount.span(slip)
	if !o.Not {
		return from, to
	}
	if math.IsInf(to, 1) { // never that much or more
		return math.Inf(-1), math.Nextafter(from, math.Inf(-1))
	}
	return math.Nextafter(to, math.Inf(1)), math.Inf(1)
}

// span is what an amount lets through, ends included, with a slip for the rounding of
// arithmetic: 0 gives the ends as they are written.
func (a Amount) span(slip float64) (low, high float64) {
	low, high = math.Inf(-1), math.Inf(1)
	switch a.Kind {
	case About:
		low, high = a.Value-(a.Slack+slip), a.Value+(a.Slack+slip)
	case AtLeast:
		low = a.Value - slip
	case AtMost:
		high = a.Value + slip
	case Between:
		low, high = a.Low-slip, a.High+slip
	case Over:
		low = math.Nextafter(a.Value+slip, math.Inf(1))
	case Under:
		high = math.Nextafter(a.Value-slip, math.Inf(-1))
	}
	return low, high
}

// inDegrees is a length along the trailing edge as the angle that makes it: the
// inverse of mixcore.ChordTravel. Beyond what any angle makes it is infinite.
func inDegrees(chord mixcore.Millimetres, mm float64) float64 {
	half := mm / (2 * float64(chord))
	switch {
	case math.IsInf(mm, 0) || half > 1:
		return math.Inf(int(math.Copysign(1, mm)))
	case half <= 0:
		return math.Min(half, 0) // a distance is never negative
	}
	return 360 / math.Pi * math.Asin(half)
}

// never is an angle or percent beyond anything.
const never = 1000

// distances are the distances in the direction wanted that an outcome of a part lets
// through, in degrees or percent. Less than still is no movement that way.
func (v *Vocabulary) distances(o *Outcome, p *mixcore.Part, slip float64) (low, high float64) {
	still := v.still(p)
	from, to := o.Amount.span(slip)
	if o.Amount.Unit == "mm" {
		from, to = inDegrees(p.Chord, from), inDegrees(p.Chord, to)
	}
	from = max(from, still)
	if math.IsInf(from, 1) {
		from = never
	}
	if !o.Not {
		return from, to
	}
	return math.Inf(-1), math.Nextafter(from, math.Inf(-1))
}

// signed turns distances in a direction into angles or percent as mixcore counts.
func signed(low, high, sign float64) (float64, float64) {
	if sign < 0 {
		return -high, -low
	}
	return low, high
}

// under is the largest number under another.
func under(x float64) float64 { return math.Nextafter(x, math.Inf(-1)) }

func (v *Vocabulary) partNeeds(o *Outcome, at *Situation, now prove.Claim) []need {
	part := o.Subject.Parts[0]
	p := &v.setup.Parts[part]
	n := need{claim: now, unit: "%", per: 1}
	if p.Motion.Hinged() {
		n.unit = "°"
	}
	quiet := under(v.still(p))
	switch o.Verb {
	case Move:
		low, high := v.distances(o, p, Rounding)
		low, high = signed(low, high, o.Way.sign())
		n.claim.Want = prove.Change(part, low, high)
		return []need{n}
	case Still:
		n.claim.Want = prove.Change(part, -quiet, quiet)
		return []need{n}
	case DependsOn:
		n.claim = v.apartOn(o, at, now)
		n.claim.Want = prove.Change(part, -quiet, quiet)
		return []need{n}
	case Rising:
		return v.risingNeeds(o, now)
	case Together, Opposite, AsFar, LessThan, MoreThan:
		return v.pairNeeds(o, now, n)
	}
	low, high := v.stretchOf(o, p, Rounding)
	n.claim.Other = nil
	n.claim.Want = prove.Place{Part: part, Low: low, High: high}
	if o.Verb != StaysStopped || !at.Moved && o.Every.When == nil {
		return []need{n} // where it stood before is one of the positions
	}
	first := n
	first.claim.When, first.claim.Lost = nil, now.OtherLost
	first.claim.Now = make([]prove.Span, len(now.Now))
	for i := range now.Now {
		first.claim.Now[i] = now.Now[i]
		if now.Other[i].Kind == prove.Apart {
			first.claim.Now[i] = now.Other[i].Span
		}
	}
	return []need{n, first}
}

// stretchOf is where a part has to stand, ends included, with a slip as of
// [Amount.span].
func (v *Vocabulary) stretchOf(o *Outcome, p *mixcore.Part, slip float64) (low, high float64) {
	still := v.still(p)
	switch o.Verb {
	case Neutral:
		return -under(still), under(still)
	case Stopped, StaysStopped, Stops:
		return math.Inf(-1), float64(p.Motor.StoppedBelow)
	case Running:
		return math.Nextafter(float64(p.Motor.StoppedBelow), math.Inf(1)), math.Inf(1)
	case PowerAt:
		return o.wanted(slip)
	case NotAtStop:
		return math.Nextafter(-(float64(p.Stops.Minus) - StopReach), math.Inf(1)), under(float64(p.Stops.Plus) - StopReach)
	}
	if p.Motion != mixcore.OutIn {
		low, high = v.distances(o, p, slip)
		return signed(low, high, o.Way.sign())
	}
	if low, high = 100-EndReach, math.Inf(1); o.Amount.Kind != NoAmount {
		low, high = o.wanted(slip)
	} else if o.Not {
		low, high = math.Inf(-1), under(low)
	}
	if o.Way == In {
		return 100 - high, 100 - low
	}
	return low, high
}

// apartOn is two poses that agree on the controls that an outcome names, and on those
// that its condition looks at, so that it holds at both; all others stand anywhere in
// each, but for those that the scenario has set.
func (v *Vocabulary) apartOn(o *Outcome, at *Situation, c prove.Claim) prove.Claim {
	c.OtherLost = c.Lost
	c.Other = prove.Beside(v.setup)
	c.WhenBoth = true
	for i := range v.setup.Controls {
		whole := prove.Whole(&v.setup.Controls[i])
		switch named := slices.Contains(o.On, i); {
		case named && !at.sets(i):
			c.Now[i] = whole
		case !named && !at.sets(i):
			c.Now[i] = whole
			c.Other[i] = prove.Other{Kind: prove.Apart, Span: whole}
		}
	}
	return c
}

// risingNeeds want a part never to go back as a control moves, and to move at all.
func (v *Vocabulary) risingNeeds(o *Outcome, now prove.Claim) []need {
	part := o.Subject.Parts[0]
	c := &v.setup.Controls[o.Control]
	sign := o.Way.sign()
	if !o.Plus {
		sign = -sign
	}
	now.Now[o.Control] = prove.Whole(c)
	rising := need{claim: now}
	rising.claim.Other = nil
	rising.claim.Want = prove.Rising{Part: part, Control: o.Control, Sign: sign}
	idle := need{claim: now, idle: true}
	idle.claim.Other = prove.Beside(v.setup)
	low, _ := c.Range()
	idle.claim.Other[o.Control] = prove.Stands(c, low)
	idle.claim.Want = v.quiet(part)
	return []need{rising, idle}
}

// quiet wants a part not to move.
func (v *Vocabulary) quiet(part int) prove.Want {
	still := under(v.still(&v.setup.Parts[part]))
	return prove.Change(part, -still, still)
}

// pairNeeds compare two parts. Where neither ever moves there is nothing to compare:
// of two that move alike it is enough to look at one.
func (v *Vocabulary) pairNeeds(o *Outcome, now prove.Claim, n need) []need {
	a, b := o.Subject.Parts[0], o.Other
	stillA, stillB := v.still(&v.setup.Parts[a]), v.still(&v.setup.Parts[b])
	far := prove.Far{A: a, B: b, Low: math.Inf(-1), High: math.Inf(1), StillA: stillA, StillB: stillB}
	switch o.Verb {
	case Together, Opposite:
		n.unit = ""
		n.claim.Want = prove.Pair{A: a, B: b, Opposite: o.Verb == Opposite, StillA: stillA, StillB: stillB}
	case AsFar:
		far.Low, far.High = -(o.Amount.Slack + Rounding), o.Amount.Slack+Rounding
		n.claim.Want = far
	case LessThan:
		n.unit = ""
		far.High, far.Idle = -Rounding, true
		n.claim.Want = far
	case MoreThan:
		n.unit = ""
		far.Low, far.Idle = Rounding, true
		n.claim.Want = far
	}
	idle := need{claim: now, idle: true}
	moving := a
	if o.Verb == LessThan {
		moving = b
	}
	idle.claim.Want = v.quiet(moving)
	return []need{n, idle}
}
