package wording

import (
	"strings"

	"example.com/hingeline/mixcore"
)

// Condition says a condition as an airframe file would: "rate switch is high
// and flap lever is above 20 %".
func Condition(s *mixcore.Setup, c *mixcore.Condition) string { return condition(s, c, 0) }

// How tightly the words of a condition bind.
const (
	bindOr = iota + 1
	bindAnd
	bindNot
)

func condition(s *mixcore.Setup, c *mixcore.Condition, around int) string {
	join := func(bind int, word string) string {
		said := make([]string, len(c.Args))
		for i := range c.Args {
			said[i] = condition(s, &c.Args[i], bind)
		}
		words := strings.Join(said, word)
		if bind < around {
			return "(" + words + ")"
		}
		return words
	}
	switch c.Op {
	case mixcore.And:
		return join(bindAnd, " and ")
	case mixcore.Or:
		if words, ok := positionsOfOneSwitch(s, c); ok {
			return words
		}
		return join(bindOr, " or ")
	case mixcore.Not:
		return "not " + condition(s, &c.Args[0], bindNot)
	case mixcore.InPhase:
		return s.Phases[c.Phase].Name
	}
	control := &s.Controls[c.Control]
	return control.Name + " is " + test(control, c)
}

func positionsOfOneSwitch(s *mixcore.Setup, c *mixcore.Condition) (string, bool) {
	var said []string
	for i := range c.Args {
		if c.Args[i].Op != mixcore.AtPosition || c.Args[i].Control != c.Args[0].Control {
			return "", false
		}
		said = append(said, s.Controls[c.Args[i].Control].Positions[c.Args[i].Position])
	}
	return s.Controls[c.Args[0].Control].Name + " is " + strings.Join(said, " or "), true
}

func test(control *mixcore.Control, c *mixcore.Condition) string {
	if control.Kind == mixcore.AxisControl || control.Kind == mixcore.TrimControl {
		switch {
		case c.Op == mixcore.Above && c.Low >= 0:
			return AxisSide(control.Axis, true) + " of " + Setpoint(c.Low)
		case c.Op == mixcore.Below && c.High <= 0:
			return AxisSide(control.Axis, false) + " of " + Setpoint(-c.High)
		}
	}
	switch c.Op {
	case mixcore.AtPosition:
		return control.Positions[c.Position]
	case mixcore.Above:
		return "above " + Setpoint(c.Low)
	case mixcore.AtLeast:
		return "at least " + Setpoint(c.Low)
	case mixcore.Below:
		return "below " + Setpoint(c.High)
	case mixcore.AtMost:
		return "at most " + Setpoint(c.High)
	}
	if i := control.DetentOf(c); i >= 0 {
		return control.Detents[i].Name
	}
	return "between " + Setpoint(c.Low) + " and " + Setpoint(c.High)
}
