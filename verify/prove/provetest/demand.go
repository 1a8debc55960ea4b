package provetest

import (
	"math"

	"example.com/hingeline/mixcore"
)

func (m *maker) demands(most sizes) {
	for range m.between(1, most.demands) {
		if n := len(m.s.Demands); n > 0 && m.one(6) { // one just like the one before it
			m.s.Demands = append(m.s.Demands, m.s.Demands[n-1])
			continue
		}
		from := m.between(0, len(m.s.Controls)-1)
		if m.s.Controls[from].Kind == mixcore.TrimControl {
			from--
		}
		m.s.Demands = append(m.s.Demands, m.demand(from))
	}
	for i := range m.s.Demands {
		m.s.Demands[i].Name = m.name("demand", i)
	}
}

func (m *maker) demand(from int) mixcore.Demand {
	c := &m.s.Controls[from]
	d := mixcore.Demand{From: from, Trim: mixcore.NoTrim}
	low, high := c.Range()
	switch {
	case c.Kind == mixcore.SwitchControl:
		least := pick(m.drawing, -100.0, 0)
		for range c.Positions {
			d.Values = append(d.Values, mixcore.Percent(m.setting(least, 100)))
		}
	case m.maybe():
		d.Curve = m.curve(low, high)
	}
	if trim, ok := m.trims[from]; ok && !m.one(4) {
		d.Trim, d.TrimRange = trim, mixcore.Percent(m.setting(0, 30))
		if m.one(3) {
			d.TrimRange = -d.TrimRange
		}
	}
	for range m.some(0, 2) {
		r := m.rate()
		r.When = m.when(1000)
		d.Rates = append(d.Rates, r)
	}
	d.Rates = append(d.Rates, m.rate())
	return d
}

func (m *maker) rate() mixcore.Rate {
	r := mixcore.Rate{Throw: mixcore.Both(mixcore.Percent(m.setting(0, 100)))}
	if m.maybe() {
		r.Throw = mixcore.Both(100)
	}
	if m.one(4) {
		r.Throw.Minus = mixcore.Percent(m.setting(0, 100))
	}
	if m.maybe() {
		r.Expo = mixcore.Percent(m.setting(-100, 100))
	}
	return r
}

func (m *maker) curve(low, high float64) *mixcore.Curve {
	c := &mixcore.Curve{Smooth: m.maybe()}
	steps := m.between(1, 6)
	least := pick(m.drawing, -100.0, 0)
	odd := low < 0 && least < 0 && m.one(3)
	for i := range steps + 1 {
		at := low + (high-low)*float64(i)/float64(steps)
		if i > 0 && i < steps && !odd {
			room := (high - low) / float64(steps) / 2
			at = m.setting(at-room+0.001, at+room-0.001)
		}
		y := m.setting(least, 100)
		if i > 0 && m.one(5) {
			y = c.Points[i-1].Y
		}
		c.Points = append(c.Points, mixcore.Point{X: math.Round(at*1000) / 1000, Y: y})
	}
	if odd {
		for i := range c.Points {
			last := steps - i
			if i < last {
				c.Points[last] = mixcore.Point{X: -c.Points[i].X, Y: -c.Points[i].Y}
			} else if i == last {
				c.Points[i] = mixcore.Point{}
			}
		}
	}
	return c
}
