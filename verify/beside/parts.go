package beside

import (
	"reflect"
	"slices"

	"example.com/hingeline/mixcore"
)

// Halves are two set-ups to be put side by side, and their controls.
type Halves struct {
	Was, Is  *mixcore.Setup
	Controls *Controls
}

// pairing puts what bears on one part in each of two set-ups into one.
type pairing struct {
	*Halves
	both    mixcore.Setup
	phases  []int       // of Is: their index in both
	demands []int       // of Is
	known   map[int]int // of Was: channels, by their index in both
}

// Parts is a set-up in which part 0 is a part of the one, and part 1 a part of the other;
// same is true where the two are one.
func (h *Halves) Parts(was, is int) (both mixcore.Setup, same bool) {
	p := &pairing{Halves: h, known: map[int]int{}}
	p.both = mixcore.Setup{Name: h.Was.Name, Controls: h.Controls.Both, Phases: slices.Clone(h.Was.Phases), Demands: slices.Clone(h.Was.Demands)}
	for i := range p.both.Demands {
		p.fill(&p.both.Demands[i])
	}
	p.shareConditions()
	first, second := h.Was.Parts[was], h.Is.Parts[is]
	first.Drives, second.Drives = slices.Clone(first.Drives), slices.Clone(second.Drives)
	mine := map[int]int{}
	for i := range first.Drives {
		d := &first.Drives[i]
		d.Channel = p.channel(d.Channel, p.known, func() mixcore.Channel { return h.Was.Channels[d.Channel] })
	}
	for i := range second.Drives {
		d := &second.Drives[i]
		d.Channel = p.other(d.Channel, mine)
	}
	first.Name, second.Name = first.Name+", one", second.Name+", other"
	p.both.Parts = []mixcore.Part{withoutPromise(first), withoutPromise(second)}
	return p.both, moveAlike(p.both.Parts[0], p.both.Parts[1])
}

// moveAlike says whether two parts do the same with the same channels: all but what they
// are called and where they are.
func moveAlike(a, b mixcore.Part) bool {
	for _, p := range []*mixcore.Part{&a, &b} {
		p.Name, p.Kind, p.Side, p.Chord, p.Span, p.Place = "", "", mixcore.Centre, 0, [2]mixcore.Millimetres{}, mixcore.Placement{}
		p.Drives = slices.Clone(p.Drives)
		for i := range p.Drives {
			p.Drives[i].Servo.SecondsPer60Deg, p.Drives[i].Servo.TorqueNcm = 0, 0
		}
	}
	return reflect.DeepEqual(a, b)
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

// fill gives a demand from a switch a value at the positions that only the other set-up
// has, where nobody looks: that of its first position.
func (p *pairing) fill(d *mixcore.Demand) {
	if d.Values == nil {
		return
	}
	values := slices.Clone(d.Values)
	for len(values) < len(p.both.Controls[d.From].Positions) {
		values = append(values, values[0])
	}
	d.Values = values
}

// shareConditions finds which phases and demands of the other set-up are those of the one,
// whatever they are called, and adds those that are not.
func (p *pairing) shareConditions() {
	for i := range p.Is.Phases {
		phase := p.Is.Phases[i]
		phase.When = *p.rewritten(&phase.When)
		p.phases = append(p.phases, shared(&p.both.Phases, phase, len(p.Was.Phases), i, func(a, b *mixcore.Phase) bool {
			return a.Fade == b.Fade && reflect.DeepEqual(a.When, b.When)
		}))
	}
	for i := range p.Is.Demands {
		p.demands = append(p.demands, shared(&p.both.Demands, p.demand(i), len(p.Was.Demands), i, func(a, b *mixcore.Demand) bool {
			c := *a
			c.Name = b.Name
			return reflect.DeepEqual(&c, b)
		}))
	}
}

// shared is the index of something in a list, where only the first so many may be the same:
// that at the index it had first. What is not there is added.
func shared[T any](list *[]T, item T, first, likely int, same func(a, b *T) bool) int {
	if likely < first && same(&(*list)[likely], &item) {
		return likely
	}
	for i := range first {
		if same(&(*list)[i], &item) {
			return i
		}
	}
	*list = append(*list, item)
	return len(*list) - 1
}

// demand is one of the other set-up with its controls where they are in both.
func (p *pairing) demand(i int) mixcore.Demand {
	d := p.Is.Demands[i]
	places := p.Controls.isPlaces[d.From]
	d.From = p.Controls.is[d.From]
	if d.Trim != mixcore.NoTrim {
		d.Trim = p.Controls.is[d.Trim]
	}
	if d.Values != nil {
		values := make([]mixcore.Percent, len(p.both.Controls[d.From].Positions))
		for k := range values {
			values[k] = d.Values[0]
		}
		for k, at := range places {
			values[at] = d.Values[k]
		}
		d.Values = values
	}
	d.Rates = slices.Clone(d.Rates)
	for k := range d.Rates {
		d.Rates[k].When = p.rewritten(d.Rates[k].When)
	}
	return d
}

// rewritten is a condition of the other set-up with its controls and phases where they
// are in both.
func (p *pairing) rewritten(c *mixcore.Condition) *mixcore.Condition {
	if c == nil {
		return nil
	}
	out := *c
	switch {
	case c.Op == mixcore.InPhase:
		out.Phase = p.phases[c.Phase]
	case len(c.Args) > 0:
		out.Args = make([]mixcore.Condition, len(c.Args))
		for i := range c.Args {
			out.Args[i] = *p.rewritten(&c.Args[i])
		}
	default:
		out.Control = p.Controls.is[c.Control]
		if c.Op == mixcore.AtPosition {
			out.Position = p.Controls.isPlaces[c.Control][c.Position]
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
	c := p.Is.Channels[index]
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
