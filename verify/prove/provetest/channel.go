package provetest

import (
	"slices"

	"example.com/hingeline/mixcore"
)

func (m *maker) channels(most sizes) {
	for range m.between(1, most.channels) {
		m.s.Channels = append(m.s.Channels, m.channel(most.lines))
		if m.maybe() {
			m.s.Channels = append(m.s.Channels, m.partner(&m.s.Channels[len(m.s.Channels)-1]))
		}
	}
	for i := range m.s.Channels {
		m.s.Channels[i].Number, m.s.Channels[i].Name = i+1, m.name("channel", i)
	}
}

func (m *maker) channel(lines int) mixcore.Channel {
	c := mixcore.Channel{Limit: 100, EndPoints: mixcore.Both(100), PulseMin: 1000, PulseMax: 2000,
		Failsafe: mixcore.Failsafe{Hold: true}, Reversed: m.maybe()}
	for range m.between(0, lines) {
		c.Mix = append(c.Mix, m.line())
	}
	if m.one(3) {
		c.Limit = mixcore.Percent(m.setting(1, 150))
	}
	if m.one(3) {
		c.EndPoints = mixcore.Sides{Plus: mixcore.Percent(m.setting(0, 150)), Minus: mixcore.Percent(m.setting(0, 150))}
	}
	if m.one(3) {
		c.SubTrim = mixcore.Percent(m.setting(-20, 20))
	}
	if m.one(4) {
		c.PulseMin, c.PulseMax = mixcore.Microseconds(m.setting(500, 1400)), mixcore.Microseconds(m.setting(1600, 2500))
	}
	if m.one(6) {
		c.Slow = mixcore.Seconds(m.setting(0, 5))
	}
	if m.one(3) {
		low, high := float64(mixcore.OutputOf(c.PulseMin)), float64(mixcore.OutputOf(c.PulseMax))
		c.Failsafe = mixcore.Failsafe{Output: mixcore.Percent(m.setting(low, high))}
	}
	return c
}

func (m *maker) line() mixcore.MixLine {
	l := mixcore.MixLine{When: m.when(2)}
	switch m.between(0, 9) {
	case 0:
		l.Op, l.Value = mixcore.Fixed, mixcore.Percent(m.setting(-50, 50))
	case 1:
		l.Op, l.Value = mixcore.ReplaceWith, mixcore.Percent(m.setting(-100, 100))
	case 2, 3:
		if d, ok := m.positive(); ok {
			l.Op, l.Demand = mixcore.ScaleBy, d
			break
		}
		fallthrough
	default:
		l.Op, l.Demand = mixcore.Add, m.between(0, len(m.s.Demands)-1)
		share := mixcore.Percent(m.setting(-200, 200))
		if m.maybe() {
			share = pick(m.drawing, mixcore.Percent(100), -100, 50, -50, 30, 20, 10, -30, -20)
		}
		l.Share = mixcore.Both(share)
		if m.one(3) {
			l.Share.Minus = mixcore.Percent(m.setting(-200, 200))
		}
	}
	return l
}

// positive is a demand that stays within 0 and 100 %.
func (m *maker) positive() (int, bool) {
	var list []int
	for i := range m.s.Demands {
		if low, high := m.s.Demands[i].Range(m.s.Controls); low >= 0 && high <= 100 {
			list = append(list, i)
		}
	}
	if list == nil {
		return 0, false
	}
	return pick(m.drawing, list...), true
}

// partner is a channel that does what another does, the same way or the other, or all
// but.
func (m *maker) partner(c *mixcore.Channel) mixcore.Channel {
	p := *c
	p.Mix = slices.Clone(c.Mix)
	switch m.between(0, 3) {
	case 0: // everything after the sum is turned about
		p.Reversed = !p.Reversed
		p.EndPoints = mixcore.Sides{Plus: c.EndPoints.Minus, Minus: c.EndPoints.Plus}
		p.SubTrim = -c.SubTrim
		p.PulseMin, p.PulseMax = 3000-c.PulseMax, 3000-c.PulseMin
		p.Failsafe.Output = -c.Failsafe.Output
	case 1: // its demands turned about: left is right
		for i := range p.Mix {
			p.Mix[i].Share = mixcore.Sides{Plus: -c.Mix[i].Share.Minus, Minus: -c.Mix[i].Share.Plus}
		}
	case 2: // its sum turned about
		for i := range p.Mix {
			p.Mix[i].Share = mixcore.Sides{Plus: -c.Mix[i].Share.Plus, Minus: -c.Mix[i].Share.Minus}
			p.Mix[i].Value = -c.Mix[i].Value
		}
	}
	if len(p.Mix) > 0 && m.one(4) {
		l := &p.Mix[m.between(0, len(p.Mix)-1)]
		l.Share.Plus = min(l.Share.Plus+mixcore.Percent(m.setting(0, 1)), 200)
	}
	return p
}
