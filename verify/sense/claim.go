package sense

import (
	"fmt"
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
)

// claim is that one quantity has one of some values. Two claims of the same
// quantity at the same position that share no value cannot both hold.
type claim struct {
	of     string // the quantity, unique within a model
	values []span
	moves  bool // it compares before and after
}

// quantities that have a direction or none.
var (
	plusOnly  = []span{{1, 1}}
	minusOnly = []span{{-1, -1}}
	zeroOnly  = []span{{0, 0}}
)

// claims are what an outcome says, as far as it can be held against others. An
// outcome about air loads, adverse yaw or shares of roll claims nothing here.
func (l *looker) claims(o *phrase.Outcome) []claim {
	switch {
	case o.Every != nil:
		return nil // it is held against the model at every position, not at one
	case o.Verb == phrase.Turn, o.Verb == phrase.NoTurn:
		return []claim{{fmt.Sprint("turn ", o.Axis), turnValues(o), true}}
	case len(o.Subject.Channels) == 1:
		return l.channelClaims(o.Subject.Channels[0], o)
	case len(o.Subject.Parts) == 1 && !o.Subject.Servos:
		part := o.Subject.Parts[0]
		if o.Verb.Compares() {
			return l.pairClaims(part, o)
		}
		return l.partClaims(part, o)
	}
	return nil
}

func turnValues(o *phrase.Outcome) []span {
	switch {
	case o.Verb == phrase.NoTurn:
		return zeroOnly
	case o.Way == phrase.Right, o.Way == phrase.Up:
		return plusOnly
	}
	return minusOnly
}

func (l *looker) channelClaims(channel int, o *phrase.Outcome) []claim {
	switch o.Verb {
	case phrase.PulseAt:
		return []claim{{fmt.Sprint("pulse ", channel), []span{spanOf(&o.Amount)}, false}}
	case phrase.OutputAt:
		return []claim{{fmt.Sprint("output ", channel), []span{spanOf(&o.Amount)}, false}}
	}
	return nil
}

func (l *looker) partClaims(part int, o *phrase.Outcome) []claim {
	p := &l.s.Parts[part]
	change, place, stop := fmt.Sprint("change ", part), fmt.Sprint("place ", part), fmt.Sprint("stop ", part)
	switch o.Verb {
	case phrase.Move:
		return []claim{{change, []span{l.towards(p, o.Way, &o.Amount)}, true}}
	case phrase.Still:
		return []claim{{change, []span{l.quiet(p)}, true}}
	case phrase.Neutral:
		return []claim{{place, []span{l.quiet(p)}, false}}
	case phrase.Stand:
		return []claim{{place, []span{l.stand(p, o)}, false}}
	case phrase.PowerAt:
		return []claim{{place, []span{spanOf(&o.Amount)}, false}}
	case phrase.Stopped, phrase.StaysStopped:
		return []claim{{place, []span{{0, float64(p.Motor.StoppedBelow)}}, false}}
	case phrase.Stops:
		return []claim{
			{place, []span{{0, float64(p.Motor.StoppedBelow)}}, false},
			{change, []span{{math.Inf(-1), -3 * hair}}, true},
		}
	case phrase.Running:
		return []claim{{place, []span{{float64(p.Motor.StoppedBelow) + 3*hair, 100}}, false}}
	case phrase.AtStop:
		return []claim{{stop, plusOnly, false}}
	case phrase.NotAtStop:
		return []claim{{stop, zeroOnly, false}}
	}
	return nil
}

// stand is where a part stands that is up, down, out or in, perhaps by an amount.
func (l *looker) stand(p *mixcore.Part, o *phrase.Outcome) span {
	if p.Motion != mixcore.OutIn {
		return l.towards(p, o.Way, &o.Amount)
	}
	s := span{100 - phrase.EndReach, 100}
	if o.Amount.Kind != phrase.NoAmount {
		s = spanOf(&o.Amount)
	}
	if o.Way == phrase.In {
		s = span{100 - s.high, 100 - s.low}
	}
	return s
}

// pairClaims are those of a comparison: both parts move, and how.
func (l *looker) pairClaims(part int, o *phrase.Outcome) []claim {
	list := []claim{
		{fmt.Sprint("change ", part), l.astir(&l.s.Parts[part]), true},
		{fmt.Sprint("change ", o.Other), l.astir(&l.s.Parts[o.Other]), true},
	}
	first, second, sign := part, o.Other, 1.0
	if first > second {
		first, second, sign = second, first, -1
	}
	pair := fmt.Sprint(first, " and ", second)
	way, further := "way of "+pair, "how much further "+pair
	switch o.Verb {
	case phrase.Together:
		list = append(list, claim{way, plusOnly, true})
	case phrase.Opposite:
		list = append(list, claim{way, minusOnly, true})
	case phrase.AsFar:
		list = append(list, claim{further, []span{{-o.Amount.Slack, o.Amount.Slack}}, true})
	case phrase.MoreThan, phrase.LessThan:
		if (o.Verb == phrase.MoreThan) == (sign > 0) {
			list = append(list, claim{further, []span{{phrase.ClearlyMore, math.Inf(1)}}, true})
		} else {
			list = append(list, claim{further, []span{{math.Inf(-1), -phrase.ClearlyMore}}, true})
		}
	}
	return list
}
