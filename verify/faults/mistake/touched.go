package mistake

import (
	"reflect"
	"slices"

	"example.com/hingeline/mixcore"
)

// changes is what differs between two set-ups, stage by stage.
type changes struct {
	was, is *mixcore.Setup
	phases  []bool // of was; a phase that differs, or rests on one that does
	demands []bool
}

func touched(was, is *mixcore.Setup) (parts []int) {
	c := &changes{was: was, is: is, phases: make([]bool, len(was.Phases)), demands: make([]bool, len(was.Demands))}
	for i := range was.Phases {
		a, b := &was.Phases[i], &is.Phases[i]
		c.phases[i] = a.Fade != b.Fade || c.conditions(&a.When, &b.When)
	}
	for i := range was.Demands {
		c.demands[i] = c.demand(&was.Demands[i], &is.Demands[i])
	}
	channels := make([]bool, len(was.Channels))
	for i := range was.Channels {
		channels[i] = c.channel(&was.Channels[i], &is.Channels[i])
	}
	for i := range was.Parts {
		if c.part(&was.Parts[i], &is.Parts[i]) || slices.ContainsFunc(is.Parts[i].Drives, func(d mixcore.Drive) bool { return channels[d.Channel] }) {
			parts = append(parts, i)
		}
	}
	return parts
}

// conditions says whether two conditions may differ: where they are not the same, or rest
// on a phase that differs.
func (c *changes) conditions(a, b *mixcore.Condition) bool {
	switch {
	case a == nil || b == nil:
		return a != b
	case a != b && !reflect.DeepEqual(a, b):
		return true
	case a.Op == mixcore.InPhase:
		return c.phases[a.Phase]
	}
	for i := range a.Args {
		if c.conditions(&a.Args[i], &b.Args[i]) {
			return true
		}
	}
	return false
}

func (c *changes) demand(a, b *mixcore.Demand) bool {
	if a.From != b.From || a.Trim != b.Trim || a.TrimRange != b.TrimRange || len(a.Rates) != len(b.Rates) ||
		!slices.Equal(a.Values, b.Values) || a.Curve != b.Curve && !reflect.DeepEqual(a.Curve, b.Curve) {
		return true
	}
	for i := range a.Rates {
		x, y := &a.Rates[i], &b.Rates[i]
		if x.Throw != y.Throw || x.Expo != y.Expo || c.conditions(x.When, y.When) {
			return true
		}
	}
	return false
}

func (c *changes) channel(a, b *mixcore.Channel) bool {
	if len(a.Mix) != len(b.Mix) || a.Limit != b.Limit || a.Reversed != b.Reversed || a.EndPoints != b.EndPoints ||
		a.SubTrim != b.SubTrim || a.PulseMin != b.PulseMin || a.PulseMax != b.PulseMax || a.Slow != b.Slow || a.Failsafe != b.Failsafe {
		return true
	}
	for i := range a.Mix {
		x, y := &a.Mix[i], &b.Mix[i]
		follows := x.Op == mixcore.Add || x.Op == mixcore.ScaleBy
		if x.Op != y.Op || x.Share != y.Share || x.Value != y.Value || follows && (x.Demand != y.Demand || c.demands[x.Demand]) ||
			c.conditions(x.When, y.When) {
			return true
		}
	}
	return false
}

func (c *changes) part(a, b *mixcore.Part) bool {
	if len(a.Drives) != len(b.Drives) || a.Stops != b.Stops || a.PlusIn != b.PlusIn || !reflect.DeepEqual(a.Motor, b.Motor) {
		return true
	}
	for i := range a.Drives {
		x, y := &a.Drives[i], &b.Drives[i]
		if x.Channel != y.Channel || x.Servo != y.Servo || x.Sign != y.Sign || !slices.Equal(x.Table, y.Table) ||
			!reflect.DeepEqual(x.Linkage, y.Linkage) {
			return true
		}
	}
	return false
}
