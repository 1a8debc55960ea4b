package mixcore

import "math"

// Condition is true or false at a position of the controls; while a phase it
// names fades, its weight is between 0 and 1.
type Condition struct {
	Op   ConditionOp
	Args []Condition // of And and Or two or more, of Not one

	Control  int     // of the tests: index of the control
	Position int     // of AtPosition: index of the switch position
	Low      Percent // of AtLeast, Above and Within
	High     Percent // of AtMost, Below and Within

	Phase int // of InPhase: index of the phase
}

// ConditionOp is the kind of a condition.
type ConditionOp uint8

// The conditions. Tests read the control itself, before expo and throw.
const (
	And        ConditionOp = iota + 1
	Or                     // the larger weight
	Not                    // 1 − the weight
	InPhase                // the phase's own weight
	AtPosition             // the switch stands at Position
	Above                  // the control is above Low
	AtLeast                // the control is at Low or above
	Below                  // the control is below High
	AtMost                 // the control is at High or below
	Within                 // the control is at Low, at High or between
)

// Bounds is the closed range of control positions that satisfies a test: a
// strict end is moved in by one representable number, so that every test is low
// ≤ position ≤ high.
func (c *Condition) Bounds() (low, high float64) {
	low, high = math.Inf(-1), math.Inf(1)
	switch c.Op {
	case AtPosition:
		low, high = float64(c.Position), float64(c.Position)
	case Above:
		low = math.Nextafter(float64(c.Low), high)
	case AtLeast:
		low = float64(c.Low)
	case Below:
		high = math.Nextafter(float64(c.High), low)
	case AtMost:
		high = float64(c.High)
	case Within:
		low, high = float64(c.Low), float64(c.High)
	}
	return low, high
}

// condition is a compiled Condition: tests have their bounds worked out.
type condition struct {
	op        ConditionOp // And, Or, Not, InPhase, or Within for every test
	args      []condition
	index     int // of the control or phase
	low, high float64
}

func compileCondition(c *Condition) condition {
	out := condition{op: c.Op}
	switch c.Op {
	case And, Or, Not:
		for i := range c.Args {
			out.args = append(out.args, compileCondition(&c.Args[i]))
		}
	case InPhase:
		out.index = c.Phase
	default:
		out.op, out.index = Within, c.Control
		out.low, out.high = c.Bounds()
	}
	return out
}

// weight is 1 where the condition holds and 0 where it does not; between while
// a phase it names fades.
func (c *condition) weight(position, phases []float64) float64 {
	switch c.op {
	case Within:
		if x := position[c.index]; x >= c.low && x <= c.high {
			return 1
		}
		return 0
	case InPhase:
		return phases[c.index]
	case Not:
		return 1 - c.args[0].weight(position, phases)
	}
	w := c.args[0].weight(position, phases)
	for i := 1; i < len(c.args); i++ {
		if c.op == And {
			w = min(w, c.args[i].weight(position, phases))
		} else {
			w = max(w, c.args[i].weight(position, phases))
		}
	}
	return w
}

// EachTest visits every test of a control that a condition rests on, those of the
// phases it names too. The condition may be nil.
func (s *Setup) EachTest(c *Condition, visit func(*Condition)) {
	if c == nil {
		return
	}
	switch c.Op {
	case And, Or, Not:
		for i := range c.Args {
			s.EachTest(&c.Args[i], visit)
		}
	case InPhase:
		s.EachTest(&s.Phases[c.Phase].When, visit)
	default:
		visit(c)
	}
}

// Fades says whether a condition rests on a phase that takes time to come or go. The
// condition may be nil.
func (s *Setup) Fades(c *Condition) bool {
	if c == nil {
		return false
	}
	for i := range c.Args {
		if s.Fades(&c.Args[i]) {
			return true
		}
	}
	return c.Op == InPhase && (s.Phases[c.Phase].Fade > 0 || s.Fades(&s.Phases[c.Phase].When))
}
