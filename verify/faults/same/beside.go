package same

import (
	"reflect"
	"slices"

	"example.com/hingeline/mixcore"
)

// pairing puts what bears on one part in two set-ups side by side in one. Phases and
// demands that are the same in both are there once, so that what two forms have in common
// falls out of their difference.
type pairing struct {
	was, is *mixcore.Setup
	both    mixcore.Setup
	phases  []int       // of is: their index in both
	demands []int       // of is
	known   map[int]int // of was: channels, by their index in both
}

// beside is a set-up in which part 0 is the part of the one, and part 1 that of the
// other; same is true where the two are one.
func beside(was, is *mixcore.Setup, part int) (both mixcore.Setup, same bool) {
	p := &pairing{was: was, is: is, known: map[int]int{}}
	p.both = mixcore.Setup{Name: was.Name, Controls: was.Controls, Phases: slices.Clone(was.Phases), Demands: slices.Clone(was.Demands)}
	p.shareConditions()
	first, second := was.Parts[part], is.Parts[part]
	first.Drives, second.Drives = slices.Clone(first.Drives), slices.Clone(second.Drives)
	mine := map[int]int{}
	for i := range first.Drives {
		d := &first.Drives[i]
		d.Channel = p.channel(d.Channel, p.known, func() mixcore.Channel { return was.Channels[d.Channel] })
	}
	for i := range second.Drives {
		d := &second.Drives[i]
		d.Channel = p.other(d.Channel, mine)
	}
	first.Name, second.Name = first.Name+", one", second.Name+", other"
	p.both.Parts = []mixcore.Part{withoutPromise(first), withoutPromise(second)}
	a, b := p.both.Parts[0], p.both.Parts[1]
	a.Name, b.Name = "", ""
	return p.both, reflect.DeepEqual(a, b)
}

// withoutPromise drops a motor's promise, which is no arithmetic.
func withoutPromise(p mixcore.Part) mixcore.Part {
	if p.Motor != nil {
		m := *p.Motor
		m.StoppedWhen = nil
		p.Motor = &m
	}
	return p
}

// shareConditions finds which phases and demands of the other set-up are those of the
// one, and adds those that are not.
func (p *pairing) shareConditions() {
	for i := range p.is.Phases {
		phase := p.is.Phases[i]
		phase.When = *p.rewritten(&phase.When)
		if i < len(p.was.Phases) && reflect.DeepEqual(phase, p.was.Phases[i]) {
			p.phases = append(p.phases, i)
			continue
		}
		p.phases = append(p.phases, len(p.both.Phases))
		p.both.Phases = append(p.both.Phases, phase)
	}
	for i := range p.is.Demands {
		d := p.is.Demands[i]
		d.Rates = slices.Clone(d.Rates)
		for k := range d.Rates {
			d.Rates[k].When = p.rewritten(d.Rates[k].When)
		}
		if i < len(p.was.Demands) && reflect.DeepEqual(d, p.was.Demands[i]) {
			p.demands = append(p.demands, i)
			continue
		}
		p.demands = append(p.demands, len(p.both.Demands))
		p.both.Demands = append(p.both.Demands, d)
	}
}

// rewritten is a condition of the other set-up with its phases where they are in both.
func (p *pairing) rewritten(c *mixcore.Condition) *mixcore.Condition {
	if c == nil {
		return nil
	}
	out := *c
	if c.Op == mixcore.InPhase {
		out.Phase = p.phases[c.Phase]
	}
	if len(c.Args) > 0 {
		out.Args = make([]mixcore.Condition, len(c.Args))
		for i := range c.Args {
			out.Args[i] = *p.rewritten(&c.Args[i])
		}
	}
	return &out
}

// channel adds a channel once and returns its index in both.
func (p *pairing) channel(index int, added map[int]int, make func() mixcore.Channel) int {
	if at, ok := added[index]; ok {
		return at
	}
	c := make()
	at := len(p.both.Channels)
	c.Number = at + 1
	p.both.Channels = append(p.both.Channels, c)
	added[index] = at
	return at
}

// other is the index in both of a channel of the other set-up: that of one of the first
// which is the same, or one of its own.
func (p *pairing) other(index int, mine map[int]int) int {
	c := p.is.Channels[index]
	c.Mix = slices.Clone(c.Mix)
	for i := range c.Mix {
		m := &c.Mix[i]
		m.When = p.rewritten(m.When)
		if m.Op == mixcore.Add || m.Op == mixcore.ScaleBy {
			m.Demand = p.demands[m.Demand]
		}
	}
	for _, at := range p.known {
		first := p.both.Channels[at]
		first.Number, first.Name = c.Number, c.Name
		if len(c.Mix) == 0 && len(first.Mix) == 0 {
			first.Mix = c.Mix
		}
		if reflect.DeepEqual(first, c) {
			return at
		}
	}
	return p.channel(index, mine, func() mixcore.Channel { return c })
}
