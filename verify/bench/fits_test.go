package bench_test

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/bench/benchtest"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/fit"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/verifytest"
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

// Over a whole travel a measured table in place of a linkage is offered too, and written;
// where something goes the other way neither is.
func TestTableInPlaceOfALinkageIsOffered(t *testing.T) {
	const text = `hingeline: 1
name: Twite
controls: {pitch stick: pitch}
demands: {pitch: pitch stick}
channels:
  1: {name: elevator, mix: pitch}
surfaces:
  elevator:
    channel: 1
    servo: {swing_deg: 40, plus_swings: aft}
    linkage: {arm_mm: 10, horn_mm: 16, pivots_mm: 62, horn: below}
`
	m, problems := airframes.Load("twite.yaml", []byte(text))
	if m == nil {
		t.Fatal(problems)
	}
	hand, _ := m.Plan.Vary(func(s *mixcore.Setup) {
		g := *s.Parts[0].Drives[0].Linkage
		g.Arm, g.ArmDeg = 11.5, 95
		s.Parts[0].Drives = slices.Clone(s.Parts[0].Drives)
		s.Parts[0].Drives[0].Linkage = &g
	})
	var moves []func(*mixcore.Input)
	for _, at := range []float64{-100, -50, 50, 100} {
		moves = append(moves, set(0, at))
	}
	w := walkOf(t, m, sight.Measured, moves...)
	out, got := hand.NewOutput(), m.Plan.NewOutput()
	lines := benchtest.Begin()
	for i := range w.Steps {
		hand.Eval(&w.Steps[i].To, out)
		angle := float64(out.Parts[0].Angle)
		lines = append(lines, fmt.Sprintf("elevator %.1f %s", math.Abs(angle), map[bool]string{true: "down", false: "up"}[angle > 0]), "y")
	}
	g := walked(t, w, append(lines, "f"))
	f := g.Report(context.Background(), nil).Fits
	if len(f) != 1 || !f[0].Offered || f[0].Table == "" || f[0].TableAfter > 0.1 {
		t.Fatalf("%+v", f)
	}
	written, problem := g.CorrectedAsTables()
	if problem != "" {
		t.Fatal(problem)
	}
	now, problems := airframes.Load("twite.yaml", written)
	if now == nil {
		t.Fatal(problems)
	}
	if d := now.Setup.Parts[0].Drives[0]; d.Linkage != nil || len(d.Table) < 5 {
		t.Errorf("%s", written)
	}
	for i := range w.Steps {
		hand.Eval(&w.Steps[i].To, out)
		now.Plan.Eval(&w.Steps[i].To, got)
		if off := math.Abs(float64(out.Parts[0].Angle - got.Parts[0].Angle)); off > 0.2 {
			t.Errorf("step %d: with the table it is off by %v°", i+1, off)
		}
	}
	wrong := walked(t, w, append(append(benchtest.Begin(), "y", "elevator 25 up", "y"), "y", "y", "y", "f"))
	if r := wrong.Report(context.Background(), nil); len(r.Fits) > 0 && r.Fits[0].Table != "" {
		t.Errorf("%+v", r.Fits)
	}
}

// Of a surface with two servos what was measured is told beside what is computed, and which
// servo is off is not made up.
func TestSeveralServosAreNotFitted(t *testing.T) {
	const text = `hingeline: 1
name: Twite
controls: {pitch stick: pitch}
demands: {pitch: pitch stick}
channels:
  1: {name: elevator port, mix: pitch}
  2: {name: elevator starboard, mix: pitch}
surfaces:
  elevator:
    servos:
      - {channel: 1, measured: {100%: 20° up}}
      - {channel: 2, measured: {100%: 20° up}}
`
	m, problems := airframes.Load("twite.yaml", []byte(text))
	if m == nil {
		t.Fatal(problems)
	}
	w := walkOf(t, m, sight.Measured, set(0, -100), set(0, 100))
	for _, c := range []struct {
		down, up string
		note     string
	}{{"elevator 17 down", "elevator 17 up", "2 servos move it"}, {"elevator 20.1 down", "elevator 20 up", "fits as well as can be told"}} {
		g := walked(t, w, append(benchtest.Begin(), "y", c.down, "y", c.up, "y", "f"))
		f := g.Report(context.Background(), nil).Fits
		if len(f) != 1 || f[0].Offered || f[0].Table != "" || len(f[0].Points) != 2 || !bytes.Contains([]byte(f[0].Note), []byte(c.note)) {
			t.Errorf("%s: %+v", c.down, f)
		}
		if _, problem := g.Corrected(); problem == "" {
			t.Errorf("%s: something is corrected", c.down)
		}
	}
}

// What is offered can be written: a linkage that would lock within what its channel can put
// out, though nowhere that it was measured, is not offered, and says so.
func TestWhatIsOfferedCanBeWritten(t *testing.T) {
	m := load(t, "bracken-20")
	w := bench.NewWalk(m, bench.Usual(context.Background(), m, sight.Measured, nil), sight.Measured)
	const name = "starboard flap"
	part := slices.IndexFunc(m.Setup.Parts, func(p mixcore.Part) bool { return p.Name == name })
	withheld := 0
	for _, lean := range []float64{-4, 4, 9} {
		d := m.Setup.Parts[part].Drives[0]
		g := *d.Linkage
		g.ArmDeg += lean
		d.Linkage = &g
		does, err := fit.TableOf(&d, -85, 85)
		if err != nil {
			t.Fatal(err)
		}
		does[0].X, does[len(does)-1].X = -100, 100 // further out nobody looks
		hand, faults := m.Plan.Vary(func(s *mixcore.Setup) {
			s.Parts[part].Drives = slices.Clone(s.Parts[part].Drives)
			s.Parts[part].Drives[0].Linkage, s.Parts[part].Drives[0].Table = nil, does
		})
		if faults != nil {
			t.Fatal(faults)
		}
		guide := bench.NewGuide(w, bench.Nowhere{}, at)
		(&benchtest.Modeller{Walk: w, Plan: hand}).Through(guide)
		offered := false
		for _, f := range guide.Report(context.Background(), nil).Fits {
			offered = offered || f.Offered
			if f.Part == name && strings.HasPrefix(f.Note, "not offered: the airframe file cannot be written so: ") {
				withheld++
				if f.Changes != nil || f.After != f.Before {
					t.Errorf("%+v", f)
				}
			}
		}
		if _, problem := guide.Corrected(); offered != (problem == "") {
			t.Errorf("arm leaning %g more: offered %v, and written: %s", lean, offered, problem)
		}
	}
	if withheld == 0 {
		t.Error("everything could be written")
	}
}

// A flap that goes a fifth short everywhere, measured as far as it goes: no linkage that can
// be built does so, which is said, and a measured table in its place is offered and written.
func TestTableWhereNoLinkageCanBeUsed(t *testing.T) {
	m := load(t, "bracken-20")
	w := bench.NewWalk(m, bench.Usual(context.Background(), m, sight.Measured, nil), sight.Measured)
	part := partOf(m, "port flap")
	g := walked(t, w, measuredWalk(w, part, func(computed float64) float64 { return 0.8 * computed }))
	r := g.Report(context.Background(), nil)
	if len(r.Fits) != 1 || r.Fits[0].Offered || r.Fits[0].Table == "" || !strings.Contains(r.Fits[0].Note, "; with --as-table a measured table is written") {
		t.Fatalf("%+v", r.Fits)
	}
	_, problem := g.Corrected()
	if !strings.HasPrefix(problem, "what is off cannot be corrected so (port flap, off by ") || !strings.Contains(problem, "--as-table") {
		t.Errorf("%q", problem)
	}
	text, problem := g.CorrectedAsTables()
	if problem != "" {
		t.Fatal(problem)
	}
	const readTo = 0.5 // degrees that a reading is good to
	same := bench.Chosen{Steps: stepsOf(w), Watch: make([][]int, len(w.Steps))}
	again := bench.NewWalk(verifytest.Model(t, "new.yaml", text), same, sight.Measured)
	for i := range w.Steps {
		for k, e := range w.Steps[i].Expect {
			want := 0.8 * e.Move.To
			if got := again.Steps[i].Expect[k].Move.To; e.Part == part && math.Abs(got-want) > readTo {
				t.Errorf("step %d: the new file has it at %v, the model at %v", i+1, got, want)
			}
		}
	}
}
