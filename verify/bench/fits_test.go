package bench_test

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"slices"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/bench/benchtest"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/result"
)

// An arm that is longer on the model than in the file, measured in steps of the stick, is
// offered, and written: the new file fits the model, and nothing else in it is different.
func TestLongerArmIsOffered(t *testing.T) {
	m := load(t, "bracken-20")
	const name, longer = "port aileron", 11.5
	part := slices.IndexFunc(m.Setup.Parts, func(p mixcore.Part) bool { return p.Name == name })
	hand, faults := m.Plan.Vary(func(s *mixcore.Setup) {
		g := *s.Parts[part].Drives[0].Linkage
		g.Arm = longer
		s.Parts[part].Drives = slices.Clone(s.Parts[part].Drives)
		s.Parts[part].Drives[0].Linkage = &g
	})
	if faults != nil {
		t.Fatal(faults)
	}
	var moves []func(*mixcore.Input)
	for _, at := range []float64{-100, -75, -50, 50, 75, 100} {
		moves = append(moves, set(0, at))
	}
	w := walkOf(t, m, sight.Measured, moves...)
	out := hand.NewOutput()
	lines := append(benchtest.Begin(), name+" 0", "y")
	for i := 1; i < len(w.Steps); i++ {
		hand.Eval(&w.Steps[i].To, out)
		angle := float64(out.Parts[part].Angle)
		lines = append(lines, fmt.Sprintf("%s %.1f %s", name, math.Abs(angle), map[bool]string{true: "down", false: "up"}[angle > 0]), "y")
	}
	g := walked(t, w, append(lines, "y"))
	r := g.Report(context.Background(), nil)
	if r.Verdict != result.SeenDiffers || len(r.Fits) != 1 || !r.Fits[0].Offered || r.Fits[0].Part != name || r.Fits[0].After > 0.2 {
		t.Fatalf("%s, %+v", r.Verdict, r.Fits)
	}
	text, problem := g.Corrected()
	if problem != "" {
		t.Fatal(problem)
	}
	now, problems := airframes.Load("new.yaml", text)
	if now == nil {
		t.Fatal(problems)
	}
	got := now.Setup.Parts[part].Drives[0].Linkage
	if math.Abs(got.Arm-longer) > 0.15 || math.Abs(got.ArmDeg-90) > 2 {
		t.Errorf("%+v, wanted an arm of %v mm at 90°", got, longer)
	}
	was, is := bytes.Split(m.Source.Text, []byte("\n")), bytes.Split(text, []byte("\n"))
	changed := 0
	for i := range was {
		if !bytes.Equal(was[i], is[i]) {
			changed++
		}
	}
	if len(was) != len(is) || changed != 1 {
		t.Errorf("%d of %d lines changed, to %d", changed, len(was), len(is))
	}
	if again := bench.NewWalk(now, bench.Chosen{Steps: []sight.Step{w.Steps[6].Step}, Watch: make([][]int, 1)}, sight.Measured); math.Abs(again.Steps[0].Expect[0].Move.To-float64(out.Parts[part].Angle)) > 0.3 {
		t.Errorf("the new file has it at %v, the model at %v", again.Steps[0].Expect[0].Move.To, out.Parts[part].Angle)
	}
}
