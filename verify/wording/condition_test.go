package wording

import (
	"testing"

	"example.com/hingeline/mixcore"
)

func TestConditionIsSaidAsTheFileWould(t *testing.T) {
	s := setup
	s.Phases = []mixcore.Phase{{Name: "landing"}}
	is := func(position int) mixcore.Condition {
		return mixcore.Condition{Op: mixcore.AtPosition, Control: 5, Position: position}
	}
	join := func(op mixcore.ConditionOp, args ...mixcore.Condition) mixcore.Condition {
		return mixcore.Condition{Op: op, Args: args}
	}
	landing := mixcore.Condition{Op: mixcore.InPhase}
	above := mixcore.Condition{Op: mixcore.Above, Control: 3, Low: 20}
	for _, row := range []struct {
		c    mixcore.Condition
		want string
	}{
		{is(1), "rate switch is high"},
		{join(mixcore.Or, is(0), is(1)), "rate switch is low or high"},
		{join(mixcore.And, is(1), above), "rate switch is high and flap lever is above 20 %"},
		{join(mixcore.And, join(mixcore.Or, is(1), landing), above),
			"(rate switch is high or landing) and flap lever is above 20 %"},
		{join(mixcore.Or, join(mixcore.And, is(1), above), landing),
			"rate switch is high and flap lever is above 20 % or landing"},
		{join(mixcore.Not, join(mixcore.Or, landing, above)), "not (landing or flap lever is above 20 %)"},
		{join(mixcore.Not, landing), "not landing"},
		{mixcore.Condition{Op: mixcore.Above, Control: 0, Low: 5}, "roll stick is right of 5 %"},
		{mixcore.Condition{Op: mixcore.Below, Control: 1, High: -5}, "pitch stick is forward of 5 %"},
		{mixcore.Condition{Op: mixcore.Below, Control: 1, High: 5}, "pitch stick is below 5 %"},
		{mixcore.Condition{Op: mixcore.AtLeast, Control: 4, Low: 30}, "throttle is at least 30 %"},
		{mixcore.Condition{Op: mixcore.AtMost, Control: 4, High: 30}, "throttle is at most 30 %"},
		{mixcore.Condition{Op: mixcore.Within, Control: 4, Low: 10, High: 30}, "throttle is between 10 % and 30 %"},
		{mixcore.Condition{Op: mixcore.Within, Control: 3, Low: 99, High: 100}, "flap lever is landing"},
		{mixcore.Condition{Op: mixcore.Within, Control: 3, Low: 9, High: 11}, "flap lever is parked"},
	} {
		if got := Condition(&s, &row.c); got != row.want {
			t.Errorf("got %q, want %q", got, row.want)
		}
	}
}
