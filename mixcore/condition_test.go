package mixcore_test

import (
	"testing"

	"example.com/hingeline/mixcore"
)

func TestConditionTests(t *testing.T) {
	p := mustCompile(t, oneChannel(nil))
	lever := func(op mixcore.ConditionOp, low, high mixcore.Percent) *mixcore.Condition {
		return &mixcore.Condition{Op: op, Control: 1, Low: low, High: high}
	}
	for _, c := range []struct {
		condition *mixcore.Condition
		at        float64
		want      bool
	}{
		{lever(mixcore.Above, 20, 0), 20, false},
		{lever(mixcore.Above, 20, 0), 20.000000000000004, true},
		{lever(mixcore.AtLeast, 20, 0), 20, true},
		{lever(mixcore.AtLeast, 20, 0), 19.999999999999996, false},
		{lever(mixcore.Below, 0, 20), 20, false},
		{lever(mixcore.Below, 0, 20), 19.999999999999996, true},
		{lever(mixcore.AtMost, 0, 20), 20, true},
		{lever(mixcore.AtMost, 0, 20), 20.000000000000004, false},
		{lever(mixcore.Within, 20, 60), 20, true},
		{lever(mixcore.Within, 20, 60), 60, true},
		{lever(mixcore.Within, 20, 60), 61, false},
	} {
		if got := p.Holds(c.condition, at(p, 1, c.at)); got != c.want {
			t.Errorf("%+v at %v: %v", *c.condition, c.at, got)
		}
	}
}

// (A and B) or C, every row of its truth table, and the same with not.
func TestConditionJoins(t *testing.T) {
	s := oneChannel(func(s *mixcore.Setup) {
		for _, name := range []string{"A", "B", "C"} {
			s.Controls = append(s.Controls, mixcore.Control{Name: name, Kind: mixcore.SwitchControl, Positions: []string{"no", "yes"}})
		}
	})
	p := mustCompile(t, s)
	a, b, c := *switchIs(4, 1), *switchIs(5, 1), *switchIs(6, 1)
	join := func(op mixcore.ConditionOp, args ...mixcore.Condition) mixcore.Condition {
		return mixcore.Condition{Op: op, Args: args}
	}
	whole := join(mixcore.Or, join(mixcore.And, a, b), c)
	turned := join(mixcore.Not, join(mixcore.And, join(mixcore.Not, c), join(mixcore.Not, join(mixcore.And, a, b))))
	for row := range 8 {
		in := at(p, 4, float64(row>>2&1), 5, float64(row>>1&1), 6, float64(row&1))
		want := row>>2&1 == 1 && row>>1&1 == 1 || row&1 == 1
		if got := p.Holds(&whole, in); got != want {
			t.Errorf("row %03b: %v", row, got)
		}
		if got := p.Holds(&turned, in); got != want {
			t.Errorf("row %03b turned round: %v", row, got)
		}
	}
}

func TestPhasesMayBuildOnEarlierOnes(t *testing.T) {
	s := oneChannel(func(s *mixcore.Setup) {
		s.Phases = []mixcore.Phase{
			{Name: "slow", When: mixcore.Condition{Op: mixcore.Above, Control: 1, Low: 50}},
			{Name: "landing", When: mixcore.Condition{Op: mixcore.And, Args: []mixcore.Condition{
				{Op: mixcore.InPhase, Phase: 0}, *switchIs(2, 1)}}},
		}
		s.Channels[0].Mix = []mixcore.MixLine{{Op: mixcore.Fixed, Value: 30, When: &mixcore.Condition{Op: mixcore.InPhase, Phase: 1}}}
	})
	for _, c := range []struct{ lever, position, want float64 }{{60, 1, 30}, {60, 0, 0}, {40, 1, 0}} {
		_, got := evalOne(t, s, 1, c.lever, 2, c.position)
		near(t, "landing", float64(got.Sum), c.want, 0)
	}
}
