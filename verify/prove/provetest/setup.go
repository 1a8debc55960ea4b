package provetest

import (
	"fmt"
	"math"

	"example.com/hingeline/mixcore"
	"pgregory.net/rapid"
)

// maker draws one set-up.
type maker struct {
	drawing
	s     mixcore.Setup
	trims map[int]int // by axis control: its trim control
}

// sizes are how many things there are at most.
type sizes struct{ axes, levers, switches, demands, channels, lines, parts int }

// Setup draws a set-up that Compile accepts.
func Setup(t *rapid.T) mixcore.Setup {
	return draw(t, sizes{axes: 3, levers: 2, switches: 3, demands: 6, channels: 4, lines: 5, parts: 4})
}

// Tiny draws a set-up with one or two things that move.
func Tiny(t *rapid.T) mixcore.Setup {
	return draw(t, sizes{axes: 1, levers: 1, switches: 1, demands: 3, channels: 2, lines: 4, parts: 2})
}

func draw(t *rapid.T, most sizes) mixcore.Setup {
	m := &maker{drawing: drawing{t}, trims: map[int]int{}}
	m.s.Name = "drawn"
	m.controls(most)
	m.phases()
	m.demands(most)
	m.channels(most)
	m.parts(most)
	if _, faults := mixcore.Compile(m.s); faults != nil {
		t.Fatalf("drew a set-up with faults: %+v", faults)
	}
	return m.s
}

func (m *maker) name(what string, number int) string { return fmt.Sprintf("%s %d", what, number) }

func (m *maker) controls(most sizes) {
	add := func(c mixcore.Control) int {
		c.Name = m.name("control", len(m.s.Controls))
		m.s.Controls = append(m.s.Controls, c)
		return len(m.s.Controls) - 1
	}
	for axis := range m.between(1, most.axes) {
		c := mixcore.Control{Kind: mixcore.AxisControl, Axis: mixcore.Roll + mixcore.Axis(axis)}
		at := add(c)
		if m.maybe() {
			c.Kind = mixcore.TrimControl
			m.trims[at] = add(c)
		}
	}
	for range m.between(0, most.levers) {
		c := mixcore.Control{Kind: mixcore.LeverControl}
		at := 0.0
		for i := range m.between(0, 3) {
			at = m.setting(at, float64(30*(i+1)))
			c.Detents = append(c.Detents, mixcore.Detent{Name: m.name("detent", i), At: mixcore.Percent(at)})
			at++
		}
		add(c)
	}
	for range m.between(0, most.switches) {
		c := mixcore.Control{Kind: mixcore.SwitchControl}
		for i := range m.between(2, 4) {
			c.Positions = append(c.Positions, m.name("position", i))
		}
		add(c)
	}
}

func (m *maker) phases() {
	for i := range m.some(0, 2) {
		p := mixcore.Phase{Name: m.name("phase", i), When: m.condition(2)}
		if m.one(3) {
			p.Fade = mixcore.Seconds(m.setting(0, 5))
		}
		m.s.Phases = append(m.s.Phases, p)
	}
}

// when is a condition, or none once in so many.
func (m *maker) when(none int) *mixcore.Condition {
	if m.one(none) {
		return nil
	}
	c := m.condition(2)
	return &c
}

// condition draws a condition on the controls and phases so far.
func (m *maker) condition(depth int) mixcore.Condition {
	if depth > 0 {
		switch m.between(0, 7) {
		case 0:
			return mixcore.Condition{Op: mixcore.And, Args: []mixcore.Condition{m.condition(depth - 1), m.condition(depth - 1)}}
		case 1:
			return mixcore.Condition{Op: mixcore.Or, Args: []mixcore.Condition{m.condition(depth - 1), m.condition(depth - 1)}}
		case 2:
			return mixcore.Condition{Op: mixcore.Not, Args: []mixcore.Condition{m.condition(depth - 1)}}
		}
	}
	if len(m.s.Phases) > 0 && m.one(4) {
		return mixcore.Condition{Op: mixcore.InPhase, Phase: m.between(0, len(m.s.Phases)-1)}
	}
	return m.test(m.between(0, len(m.s.Controls)-1))
}

func (m *maker) test(control int) mixcore.Condition {
	c := &m.s.Controls[control]
	low, high := c.Range()
	if c.Kind == mixcore.SwitchControl {
		return mixcore.Condition{Op: mixcore.AtPosition, Control: control, Position: m.between(0, int(high))}
	}
	if len(c.Detents) > 0 && m.one(3) {
		low, high := pick(m.drawing, c.Detents...).Stretch()
		return mixcore.Condition{Op: mixcore.Within, Control: control, Low: low, High: high}
	}
	op := pick(m.drawing, mixcore.Above, mixcore.AtLeast, mixcore.Below, mixcore.AtMost, mixcore.Within)
	a, b := mixcore.Percent(m.setting(low, high)), mixcore.Percent(m.setting(low, high))
	if m.one(3) {
		b = mixcore.Percent(math.Round(float64(a)*1000)/1000 + 0.1) // a tenth of a percent wide
		b = min(b, mixcore.Percent(high))
	}
	return mixcore.Condition{Op: op, Control: control, Low: min(a, b), High: max(a, b)}
}
