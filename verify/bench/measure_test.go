package bench_test

import (
	"context"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/bench/benchtest"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/result"
)

// Too little or too much without a measurement is no cause, and no yes.
func TestSizesAreNoYes(t *testing.T) {
	m := sorrelModel(t)
	w := walkOf(t, m, sight.Eye, set(0, -100), set(1, 100))
	r := walked(t, w, append(benchtest.Begin(), "y", "1 l", "y", "m", "y", "y")).Report(context.Background(), nil)
	if r.Verdict != result.SeenDiffers || r.Sizes != 2 || len(r.Causes.Suspects) > 0 {
		t.Errorf("%s, %d sizes, %+v", r.Verdict, r.Sizes, r.Causes)
	}
}

// stops is Sorrel with a stop, and ailerons that the pitch stick lifts from where the gear
// switch has put them.
const stops = `hingeline: 1
name: Stops
controls: {pitch stick: pitch, flap lever: lever}
demands: {pitch: pitch stick, flap: flap lever}
channels:
  1: {name: port flap, mix: [{add: pitch, share: -50%}, {add: flap, share: 50%}]}
  2: {name: elevator, mix: pitch}
surfaces:
  port flap: {channel: 1, chord_mm: 40, measured: {100%: 40° down}, stops: {up: 25°, down: 45°}}
  elevator: {channel: 2, measured: {100%: 20° up}}
`

// A reading beyond what a surface can do, or one that is how far it should move and not
// where it should be, is asked about again.
func TestDoubtedReadings(t *testing.T) {
	m, problems := airframes.Load("stops.yaml", []byte(stops))
	if m == nil {
		t.Fatalf("%+v", problems)
	}
	c := bench.Chosen{How: "by hand", Watch: make([][]int, 1)}
	s := sight.Step{From: m.Plan.Rest(), To: m.Plan.Rest()}
	s.From.Position[1], s.To.Position[1], s.To.Position[0] = 50, 50, 60 // the flap half down, then up again, with the elevator
	c.Steps = []sight.Step{s}
	w := bench.NewWalk(m, c, sight.Eye)
	flap := w.Steps[0].Expect[0]
	if part := bench.NewGuide(w, nil, at).Steps()[0].Parts[0]; part.Way != "UP" || part.Amount != "12° (8.4 mm)" || part.To != "2° UP (1.4 mm)" {
		t.Errorf("what must be seen is told as %+v", part)
	}
	for _, c := range []struct{ line, says string }{
		{"port flap 30 up", "30° UP (21 mm) is beyond the stop of the port flap, 25° as the airframe file says"},
		{"port flap 30 up sure", "noted: port flap 30° UP"},
		{"port flap 25.5 up", "noted"},
		{"port flap 46.5 down", "is beyond the stop of the port flap, 45°"},
		{"port flap 12 up", "measured is where it is then, from neutral. If it is 12° UP (8.4 mm) there, write \"from neutral\" behind it"},
		{"port flap 12 up from neutral", "noted: port flap 12° UP (8.4 mm). Not as expected."},
		{"port flap before 12 up", "noted: port flap 12° UP (8.4 mm) before the movement"},
	} {
		g := bench.NewGuide(w, &memory{}, at)
		for _, line := range benchtest.Begin() {
			g.Take(line)
		}
		if r, _ := g.Take(c.line); !strings.Contains(r.Text, c.says) || r.Understood != strings.Contains(c.says, "noted") {
			t.Errorf("%q (from %v to %v): got %+v, wanted %q", c.line, flap.Move.From, flap.Move.To, r, c.says)
		}
	}
}

// With a ruler at hand, what is as expected and was not measured is seen by eye: no yes, and
// no place to 1°.
func TestUnmeasuredIsByEye(t *testing.T) {
	m, _ := airframes.Load("stops.yaml", []byte(stops))
	w := walkOf(t, m, sight.Measured, set(0, 100))
	g := bench.NewGuide(w, &memory{}, at)
	var reply bench.Reply
	for _, line := range append(benchtest.Begin(), "y") {
		reply, _ = g.Take(line)
	}
	if reply.Text != "step 1 counts as seen by eye; not measured: port flap, elevator" {
		t.Errorf("%+v", reply)
	}
	for _, line := range []string{"1 20 up", "y"} {
		reply, _ = g.Take(line)
	}
	if reply.Text != "step 2 counts as seen by eye; not measured: elevator" {
		t.Errorf("%+v", reply)
	}
	g.Take("y")
	r := g.Report(context.Background(), nil)
	if !g.Ended() || r.Verdict != result.NotFinished || r.Steps[0].State != result.StepByEye || r.Steps[1].State != result.StepByEye {
		t.Errorf("%s, %s", r.Verdict, r.Steps[1].State)
	}
	h := bench.NewHeader("test", noon, w, nil, "by hand")
	for _, c := range []struct {
		said  []string
		says  string
		right bool
	}{
		{[]string{"1 0, 2 0", "y", "1 20 up", "y", "y"}, "seen on the model: 1 of 2 steps as expected, 1 by eye and not measured, 2026-11-25", false},
		{[]string{"port flap 0 and elevator 0", "y", "port flap 20 up", "elevator 20 up", "y", "y"}, "seen on the model: 2 of 2 steps as expected, 2026-11-25", true},
	} {
		s, err := bench.SealOf(play(t, w, h, append(benchtest.Begin(), c.said...)).record)
		if err != nil || s.Summary != c.says || s.AsExpected != c.right {
			t.Errorf("%+v, %v", s, err)
		}
	}
}
