package smt

import (
	"fmt"

	"example.com/hingeline/mixcore"
)

// sum is what a channel's mix comes to: its lines in order, in percent.
func (v *view) sum(channel int) number {
	if a, ok := v.sums[channel]; ok {
		return a
	}
	m := &mixing{v: v, c: &v.s.setup.Channels[channel], total: whole(0)}
	for i := range m.c.Mix {
		m.line(i)
	}
	m.take(len(m.c.Mix))
	v.sums[channel] = m.total
	return m.total
}

// mixing works down the lines of one channel. What follows each other and only adds is
// written as one sum.
type mixing struct {
	v     *view
	c     *mixcore.Channel
	total number
	adds  []number
	done  int // lines that total already has
}

func (m *mixing) line(i int) {
	line := &m.c.Mix[i]
	when := m.v.holds(line.When)
	switch line.Op {
	case mixcore.Add:
		m.adds = append(m.adds, m.v.addend(line, when))
	case mixcore.Fixed:
		m.adds = append(m.adds, choose(when, setting(line.Value), whole(0)))
	case mixcore.ScaleBy:
		m.take(i)
		by := scaled(m.v.demand(line.Demand), hundredth(ratOf(1)))
		m.is(i+1, "scaled", choose(when, m.v.s.times(m.total, by), m.total))
	case mixcore.ReplaceWith:
		m.take(i)
		m.is(i+1, "replaced", choose(when, setting(line.Value), m.total))
	default:
		refuse("a mix line of kind %d is not known", line.Op)
	}
}

// take adds what is left over of the lines before one.
func (m *mixing) take(line int) {
	if len(m.adds) > 0 {
		adds := m.adds
		m.adds = nil
		m.is(line, "added up", sum(append([]number{m.total}, adds...)...))
	}
}

// is gives the sum after so many lines its name.
func (m *mixing) is(lines int, what string, total number) {
	name := fmt.Sprintf("sum of channel %d", m.c.Number)
	if lines < len(m.c.Mix) {
		name += fmt.Sprintf(" after line %d", lines)
	}
	said := fmt.Sprintf("line %d", lines)
	if lines > m.done+1 {
		said = fmt.Sprintf("lines %d to %d", m.done+1, lines)
	}
	m.done = lines
	m.total = m.v.s.define(m.v.name(name), fmt.Sprintf("Channel %d %s, %s of its mix %s, in percent.", m.c.Number, m.c.Name, said, what), total)
}

// addend is what a line adds.
func (v *view) addend(line *mixcore.MixLine, when truth) number {
	if when.known && !when.holds {
		return whole(0)
	}
	d := v.demand(line.Demand)
	plus, minus := scaled(d, hundredth(ratOf(float64(line.Share.Plus)))), scaled(d, hundredth(ratOf(float64(line.Share.Minus))))
	if line.Share.Plus != line.Share.Minus {
		plus = choose(compare(">=", d, whole(0)), plus, minus)
	}
	return choose(when, plus, whole(0))
}
