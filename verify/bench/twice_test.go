package bench_test

import (
	"strings"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/bench/benchtest"
	"example.com/hingeline/verify/faults/sight"
)

// byHand is a guide for somebody with the model in front of them, at the second step.
func byHand(t *testing.T, move func(*mixcore.Input)) (*bench.Guide, *memory) {
	t.Helper()
	j := &memory{}
	g := bench.NewGuide(walkOf(t, sorrelModel(t), sight.Eye, move), j, at)
	g.ByHand()
	for _, line := range append(benchtest.Begin(), "y") {
		if r, err := g.Take(line); err != nil || !r.Understood {
			t.Fatal(line, r, err)
		}
	}
	return g, j
}

// Where a motor runs or may, or the transmitter is off, no yes and no Enter ends the step, but
// one key more; elsewhere one yes does.
func TestStepWithAMotorIsAskedAboutOnceMore(t *testing.T) {
	live := func(in *mixcore.Input) { in.Position[2], in.Position[4] = 50, 1 }
	for name, c := range map[string]struct {
		move  func(*mixcore.Input)
		lines string // with commas; the last ends the step
		asks  string // in the question; empty where none is asked
	}{
		"a stick":                  {set(0, -100), "y", ""},
		"the motor runs":           {live, "y,x", "motor runs"},
		"in a word":                {live, "all,seen", "motor runs"},
		"a yes is none":            {live, "y,y,yes,as expected,x", "motor runs"},
		"nor is Enter":             {live, "y,,y,x", "motor runs"},
		"back to the step":         {live, "y,b,y,x", "motor runs"},
		"no, and then it does":     {live, "y,no,y,x", "motor runs"},
		"help":                     {live, "y,h,x", "motor runs"},
		"it was said already":      {live, "motor runs,y", ""},
		"something else was said":  {live, "port aileron up,y,x", "motor runs"},
		"only the motor switch":    {set(4, 1), "y,x", "motor stays stopped"},
		"the transmitter goes off": {func(in *mixcore.Input) { in.SignalLost = true }, "y,x", "motor stays stopped"},
	} {
		g, _ := byHand(t, c.move)
		lines := strings.Split(c.lines, ",")
		for i, line := range lines {
			if g.Present().Last {
				t.Errorf("%s: it is over before %q", name, line)
			}
			if _, err := g.Take(line); err != nil {
				t.Fatal(err)
			}
			if asked := g.Ask(); c.asks != "" && i == len(lines)-2 && line != "h" &&
				(!strings.Contains(asked.Said, c.asks) || !strings.Contains(asked.Prompt, "x: ")) {
				t.Errorf("%s: after %q it asks %q, wanted %q", name, line, asked.Said+asked.Prompt, c.asks)
			}
		}
		if !g.Present().Last {
			t.Errorf("%s: the step is not done: %+v", name, g.Ask())
		}
	}
	// What was seen instead is taken there as it is at the step.
	g, _ := byHand(t, live)
	g.Take("y")
	if r, err := g.Take("motor stopped"); err != nil || !r.Understood {
		t.Fatal(r, err)
	}
	if p := g.Present(); !p.Touched || p.Again != nil || !p.Step.Part("motor").Differs {
		t.Errorf("%+v", p)
	}
	if r, err := g.Take("x"); err != nil || r.Understood || !strings.Contains(r.Text, "behind a yes") {
		t.Errorf("x that nobody asked for: %+v, %v", r, err)
	}
	// A file of answers is not asked, and neither is who did not say that they look.
	w := walkOf(t, sorrelModel(t), sight.Eye, live)
	if g := through(t, w, "y", "y"); !g.Present().Last {
		t.Error("asked twice")
	}
}

// What comes sooner than anybody can look is no answer, to whatever is asked, however often;
// what answers nothing is done at once.
func TestLineThatComesTooSoonIsNoAnswer(t *testing.T) {
	live := func(in *mixcore.Input) { in.Position[2], in.Position[4] = 50, 1 }
	soon := func(g *bench.Guide, j *memory, lines ...string) {
		t.Helper()
		before := len(j.lines)
		for _, line := range lines {
			if r, err := g.TakeSoon(line); err != nil || r.Understood || !strings.HasPrefix(r.Text, "Too soon") {
				t.Errorf("%q: %+v, %v", line, r, err)
			}
		}
		if len(j.lines) != before {
			t.Errorf("kept: %s", j.text())
		}
	}
	j := &memory{}
	fresh := bench.NewGuide(walkOf(t, sorrelModel(t), sight.Eye, live), j, at)
	soon(fresh, j, "yes", "y", "no")
	g, j := byHand(t, live)
	soon(g, j, "y", "all", "motor stopped", "3 12 up", "s no time", "e", "no")
	g.Take("y")
	soon(g, j, "x", "seen", "y", "motor stopped")
	g.Take("x")
	soon(g, j, "y", "f")
	for line, text := range map[string]string{"h": "Enter alone says nothing", "b": "", "r": "", "": "Enter alone", "p": "paused"} {
		g, _ := byHand(t, live)
		if r, err := g.TakeSoon(line); err != nil || strings.Contains(r.Text, "Too soon") || !strings.Contains(r.Text, text) {
			t.Errorf("%q: %+v, %v", line, r, err)
		}
	}
	// Which part it was, and why a step is skipped, follows from what was looked at already.
	for _, lines := range [][]string{{"o", "1"}, {"1", "up"}, {"e", "2"}, {"s", "no time left"}} {
		g, _ := byHand(t, set(0, -100))
		g.Take(lines[0])
		if r, err := g.TakeSoon(lines[1]); err != nil || !r.Understood {
			t.Errorf("%q: %+v, %v", lines, r, err)
		}
	}
}
