package bench_test

import (
	"strings"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/bench/benchtest"
	"example.com/hingeline/verify/faults/sight"
)

// Whoever pauses, breaks off or finishes where the throttle is open, the motor live or the
// signal lost is told to make the motor safe; elsewhere nothing is said.
func TestMotorIsMadeSafeBeforeOneLeaves(t *testing.T) {
	m := sorrelModel(t)
	const letGo, back = "before anybody lets go of the model", "before the transmitter is on again"
	for name, c := range map[string]struct {
		move func(*mixcore.Input)
		says string
	}{
		"a stick":      {set(0, -100), ""},
		"the throttle": {set(2, 100), letGo},
		"the switch":   {set(4, 1), letGo},
		"the signal":   {func(in *mixcore.Input) { in.SignalLost = true }, back},
		"both":         {func(in *mixcore.Input) { in.SignalLost, in.Position[2] = true, 100 }, back},
	} {
		w := walkOf(t, m, sight.Eye, c.move)
		says := func(at, text string) {
			t.Helper()
			if c.says == "" && strings.Contains(text, "motor safe") || !strings.Contains(text, c.says) {
				t.Errorf("%s, %s: %q, wanted %q", name, at, text, c.says)
			}
		}
		for _, done := range [][]string{{"y"}, {"y", "y"}} {
			g := through(t, w, done...)
			says("broken off", g.Leave())
			r, err := g.Take("p")
			if err != nil || !strings.HasPrefix(r.Text, "paused") {
				t.Fatal(r, err)
			}
			says("paused", r.Text)
		}
		g := through(t, w, "y", "y")
		says("asked to finish", g.Ask().Said)
		r, err := g.Take("y")
		if err != nil || !g.Ended() {
			t.Fatal(r, err)
		}
		says("finished", r.Text)
	}
	if g := bench.NewGuide(walkOf(t, m, sight.Eye, set(2, 100)), bench.Nowhere{}, at); g.Leave() != "" {
		t.Errorf("before anything moved: %s", g.Leave())
	}
}

func through(t *testing.T, w *bench.Walk, lines ...string) *bench.Guide {
	t.Helper()
	g := bench.NewGuide(w, bench.Nowhere{}, at)
	for _, line := range append(benchtest.Begin(), lines...) {
		if r, err := g.Take(line); err != nil || !r.Understood {
			t.Fatal(line, r, err)
		}
	}
	return g
}

// Behind a step that leaves the transmitter off, a step that is to decide, or one that is
// gone back to, says what to do before it is on again.
func TestStepBehindALostSignalSaysHowToSwitchOn(t *testing.T) {
	m := sorrelModel(t)
	lost := func(in *mixcore.Input) { in.SignalLost, in.Position[2], in.Position[4] = true, 100, 1 }
	w := walkOf(t, m, sight.Eye, set(0, -100), lost)
	g := through(t, w, "y", "1 o", "y", "y")
	if _, err := g.Take("y"); err != nil {
		t.Fatal(err)
	}
	step := g.Ask().Step
	if step == nil || !step.Further {
		t.Fatalf("no step is to decide: %+v", step)
	}
	if says := strings.Join(step.Beware, "; "); !strings.Contains(says, "while the transmitter is switched on again") {
		t.Errorf("the step that is to decide: %q", says)
	}
	g = through(t, w, "y", "y")
	r, err := g.Take("b")
	if err != nil || !strings.Contains(r.Text, "before the transmitter is on again") {
		t.Errorf("gone back: %+v, %v", r, err)
	}
	if r, err = g.Take("b"); err != nil || r.Text != "" {
		t.Errorf("gone back again: %+v, %v", r, err)
	}
}
