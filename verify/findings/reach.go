package findings

import (
	"slices"

	"example.com/hingeline/mixcore"
)

// reach is the set of controls that bear on something, by index.
type reach []bool

func (r reach) controls() []int {
	var list []int
	for i, in := range r {
		if in {
			list = append(list, i)
		}
	}
	return list
}

func (f *finder) nothing() reach { return make(reach, len(f.s.Controls)) }

func (r reach) addAll(other reach) {
	for i, in := range other {
		r[i] = r[i] || in
	}
}

func (f *finder) addCondition(r reach, c *mixcore.Condition) {
	if c == nil {
		return
	}
	switch c.Op {
	case mixcore.And, mixcore.Or, mixcore.Not:
		for i := range c.Args {
			f.addCondition(r, &c.Args[i])
		}
	case mixcore.InPhase:
		f.addCondition(r, &f.s.Phases[c.Phase].When)
	default:
		r[c.Control] = true
	}
}

func (f *finder) addDemand(r reach, demand int) {
	d := &f.s.Demands[demand]
	r[d.From] = true
	if d.Trim != mixcore.NoTrim {
		r[d.Trim] = true
	}
	for i := range d.Rates {
		f.addCondition(r, d.Rates[i].When)
	}
}

// channelReach is what bears on a channel through its mix.
func (f *finder) channelReach(channel int) reach {
	r := f.nothing()
	for i := range f.s.Channels[channel].Mix {
		line := &f.s.Channels[channel].Mix[i]
		if line.Op == mixcore.Add || line.Op == mixcore.ScaleBy {
			f.addDemand(r, line.Demand)
		}
		f.addCondition(r, line.When)
	}
	return r
}

// partReach is what bears on a part: on its channels and, for a motor, on the
// condition in which it is to stand still.
func (f *finder) partReach(part int) reach {
	r := f.nothing()
	p := &f.s.Parts[part]
	for i := range p.Drives {
		r.addAll(f.channelReach(p.Drives[i].Channel))
	}
	if p.Motor != nil {
		f.addCondition(r, p.Motor.StoppedWhen)
	}
	return r
}

// group is the channels and parts that the same controls bear on.
type group struct {
	reach    reach
	channels []int
	parts    []int
}

func (f *finder) groups() []group {
	var groups []group
	of := func(r reach) *group {
		for i := range groups {
			if slices.Equal(groups[i].reach, r) {
				return &groups[i]
			}
		}
		groups = append(groups, group{reach: r})
		return &groups[len(groups)-1]
	}
	for i := range f.s.Channels {
		g := of(f.channelReach(i))
		g.channels = append(g.channels, i)
	}
	for i := range f.s.Parts {
		g := of(f.partReach(i))
		g.parts = append(g.parts, i)
	}
	return groups
}
