package poses

import "example.com/hingeline/mixcore"

// Reach is the set of controls that bear on something, by index.
type Reach []bool

// Controls are the indexes of those in reach, ascending.
func (r Reach) Controls() []int {
	var list []int
	for i, in := range r {
		if in {
			list = append(list, i)
		}
	}
	return list
}

// Bearing is a probe that tells what bears on what and has no positions to try: all
// that a set-up which is not compiled can be asked.
func Bearing(s *mixcore.Setup) *Probe { return &Probe{setup: s} }

// Nothing is a reach of no control.
func (p *Probe) Nothing() Reach { return make(Reach, len(p.setup.Controls)) }

// AddAll adds what another reach holds.
func (r Reach) AddAll(other Reach) {
	for i, in := range other {
		r[i] = r[i] || in
	}
}

// AddCondition adds what a condition looks at; it may be nil.
func (p *Probe) AddCondition(r Reach, c *mixcore.Condition) {
	if c == nil {
		return
	}
	switch c.Op {
	case mixcore.And, mixcore.Or, mixcore.Not:
		for i := range c.Args {
			p.AddCondition(r, &c.Args[i])
		}
	case mixcore.InPhase:
		p.AddCondition(r, &p.setup.Phases[c.Phase].When)
	default:
		r[c.Control] = true
	}
}

// AddDemand adds what bears on a demand, by its index.
func (p *Probe) AddDemand(r Reach, demand int) {
	d := &p.setup.Demands[demand]
	r[d.From] = true
	if d.Trim != mixcore.NoTrim {
		r[d.Trim] = true
	}
	for i := range d.Rates {
		p.AddCondition(r, d.Rates[i].When)
	}
}

// ChannelReach is what bears on a channel through its mix.
func (p *Probe) ChannelReach(channel int) Reach {
	r := p.Nothing()
	for i := range p.setup.Channels[channel].Mix {
		line := &p.setup.Channels[channel].Mix[i]
		if line.Op == mixcore.Add || line.Op == mixcore.ScaleBy {
			p.AddDemand(r, line.Demand)
		}
		p.AddCondition(r, line.When)
	}
	return r
}

// PartReach is what bears on a part: on its channels and, for a motor, on the
// condition in which it is to stand still.
func (p *Probe) PartReach(part int) Reach {
	r := p.Nothing()
	pt := &p.setup.Parts[part]
	for i := range pt.Drives {
		r.AddAll(p.ChannelReach(pt.Drives[i].Channel))
	}
	if pt.Motor != nil {
		p.AddCondition(r, pt.Motor.StoppedWhen)
	}
	return r
}
