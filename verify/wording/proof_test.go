package wording

import (
	"math"
	"slices"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

func TestOverSaysWhatRuns(t *testing.T) {
	s := &mixcore.Setup{Controls: []mixcore.Control{
		{Name: "roll stick", Kind: mixcore.AxisControl, Axis: mixcore.Roll}, {Name: "flap lever", Kind: mixcore.LeverControl},
		{Name: "throttle", Kind: mixcore.LeverControl}, {Name: "rate switch", Kind: mixcore.SwitchControl, Positions: []string{"low", "high"}},
	}}
	still := prove.At(0)
	low, both := prove.Span{Places: []int{0}}, prove.Span{Places: []int{0, 1}}
	stick, lever := prove.Whole(&s.Controls[0]), prove.Whole(&s.Controls[1])
	apart := prove.Beside(s)
	apart[2] = prove.Other{Kind: prove.Apart, Span: lever}
	stands := prove.Beside(s)
	stands[0] = prove.Stands(&s.Controls[0], 0)
	for _, c := range []struct {
		now    []prove.Span
		other  []prove.Other
		states int
		want   string
	}{
		{[]prove.Span{still, still, still, low}, nil, 1, "one position"},
		{[]prove.Span{stick, still, still, low}, nil, 1, "every place of the roll stick"},
		{[]prove.Span{stick, still, still, low}, stands, 1, "every place of the roll stick"},
		{[]prove.Span{stick, lever, still, both}, nil, 2, "2 switch states and every place of the roll stick and the flap lever"},
		{[]prove.Span{stick, lever, lever, both}, nil, 2, "2 switch states and every place of 3 sticks, levers and trims"},
		{[]prove.Span{still, still, still, both}, nil, 2, "2 switch states"},
		{[]prove.Span{still, still, still, low}, apart, 1, "every place of the throttle"},
		{[]prove.Span{still, still, still, both}, nil, math.MaxInt, "countless switch states"},
	} {
		if got := Over(s, &prove.Claim{Now: c.now, Other: c.other}, c.states); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
	if got := States(1); got != "1 switch state" {
		t.Errorf("got %q", got)
	}
}

func TestToSpareSaysSmallMarginsExactly(t *testing.T) {
	for _, c := range []struct {
		margin float64
		unit   string
		want   string
	}{
		{2.34, "°", "2.3° to spare"}, {0.04, "°", "0.04° to spare"}, {0, "°", "nothing to spare"}, {1e-9, "%", "nothing to spare"},
		{21.3, "%", "21.3 % to spare"}, {50, "µs", "50 µs to spare"}, {0.25, "", "0.3 to spare"}, {0, "", "nothing to spare"},
	} {
		if got := ToSpare(c.margin, c.unit); got != c.want {
			t.Errorf("%v %s: got %q, want %q", c.margin, c.unit, got, c.want)
		}
	}
}

func TestCountersCanBeSet(t *testing.T) {
	s := &mixcore.Setup{Controls: []mixcore.Control{
		{Name: "roll stick", Kind: mixcore.AxisControl, Axis: mixcore.Roll},
		{Name: "flap lever", Kind: mixcore.LeverControl, Detents: []mixcore.Detent{{Name: "parked", At: 10}, {Name: "landing", At: 100}}},
		{Name: "throttle", Kind: mixcore.LeverControl},
		{Name: "rate switch", Kind: mixcore.SwitchControl, Positions: []string{"low", "high"}},
	}}
	rest := mixcore.Input{Position: []float64{0, 10, 0, 0}}
	now := mixcore.Input{Position: []float64{-100, 100, 37.5, 1}, SignalLost: true}
	c := Counter(s, &prove.Pose{Now: now, Other: rest})
	if want := []string{"roll stick=full left", "flap lever=landing", "throttle=37.5%", "rate switch=high", "the signal is lost"}; !slices.Equal(c.Set, want) {
		t.Errorf("set %q, want %q", c.Set, want)
	}
	if want := []string{"roll stick full left", "flap lever landing", "throttle 37.5 %", "rate switch high", "signal lost"}; !slices.Equal(c.Pose, want) || !slices.Equal(c.Moved, want) || c.Before != nil {
		t.Errorf("pose %q, moved %q from %q; want %q", c.Pose, c.Moved, c.Before, want)
	}
	if c := Counter(s, &prove.Pose{Now: rest}); c.Pose != nil || c.Set != nil || c.Moved != nil {
		t.Errorf("at rest: %+v", c)
	}
	back := mixcore.Input{Position: []float64{-100, 100, 37.5, 1}}
	if _, moved := Moves(s, &now, &back); !slices.Equal(moved, []string{"signal back"}) {
		t.Errorf("moved %q", moved)
	}
	// A stick's place that is no multiple of 0.001 % is given exactly.
	if got := Sets(s, &mixcore.Input{Position: []float64{5.0000001, 10, 0, 0}}); !slices.Equal(got, []string{"roll stick=5.0000001%"}) {
		t.Errorf("got %q", got)
	}
	if got := Sets(s, &mixcore.Input{Position: []float64{-30, 10, 0, 0}}); !slices.Equal(got, []string{"roll stick=30 % left"}) {
		t.Errorf("got %q", got)
	}
}
