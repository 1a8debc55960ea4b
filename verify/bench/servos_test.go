package bench_test

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/bench/benchtest"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/result"
)

// twin is a model whose elevator has two servos that lie as mirror images.
const twin = `hingeline: 1
name: Twite
controls: {pitch stick: pitch}
demands: {pitch: pitch stick}
channels:
  1: {name: elevator port, mix: pitch}
  2: {name: elevator starboard, mix: pitch, reversed: true}
surfaces:
  elevator:
    servos:
      - channel: 1
        servo: {swing_deg: 45, plus_swings: aft}
        linkage: {arm_mm: 10, horn_mm: 16, pivots_mm: 62, horn: below}   # the port one
      - channel: 2
        servo: {swing_deg: 45, plus_swings: fore}
        linkage: {arm_mm: 10, horn_mm: 16, pivots_mm: 62, horn: below}
  tab: {kind: elevator, channel: 1, measured: {100%: 5° up}}
`

// twinWalk is a walk over the travel of the twin's elevator.
func twinWalk(t testing.TB) *bench.Walk {
	m, problems := airframes.Load("twite.yaml", []byte(twin))
	if m == nil {
		t.Fatal(problems)
	}
	var moves []func(*mixcore.Input)
	for _, at := range []float64{-100, -75, -50, -25, 25, 50, 75, 100} {
		moves = append(moves, set(0, at))
	}
	return walkOf(t, m, sight.Measured, moves...)
}

// withArms is the twin in the hand, with other arms.
func withArms(t interface{ Fatal(...any) }, m *airframes.Model, arms ...float64) *mixcore.Plan {
	hand, faults := m.Plan.Vary(func(s *mixcore.Setup) {
		s.Parts[0].Drives = slices.Clone(s.Parts[0].Drives)
		for i, arm := range arms {
			g := *s.Parts[0].Drives[i].Linkage
			g.Arm = arm
			s.Parts[0].Drives[i].Linkage = &g
		}
	})
	if faults != nil {
		t.Fatal(faults)
	}
	return hand
}

// place is a place of the elevator as somebody says it.
func place(at float64) string {
	return fmt.Sprintf("%.1f %s sure", math.Abs(at), map[bool]string{true: "down", false: "up"}[at > 0])
}

// elevator are the answers of somebody who measures it in every step: with all servos on,
// where together says so, and with each of some alone. off is by how much each is misread.
func elevator(w *bench.Walk, hand *mixcore.Plan, together bool, servos []int, off func() float64) []string {
	out := hand.NewOutput()
	lines := benchtest.Begin()
	for i := range w.Steps {
		hand.Eval(&w.Steps[i].To, out)
		if together {
			lines = append(lines, "elevator "+place(float64(out.Parts[0].Angle)+off()))
		}
		for _, n := range servos {
			drive := hand.Setup().Parts[0].Drives[n-1]
			lines = append(lines, fmt.Sprintf("elevator servo %d %s", n, place(float64(hand.DriveAngle(0, n-1, out.Channels[drive.Channel].Output))+off())))
		}
		lines = append(lines, "y")
	}
	return append(lines, "f")
}

func exact() float64 { return 0 }

// Each of two servos measured alone: the one whose arm is longer than written is named, it
// alone is corrected, and that the two pull against each other is said.
func TestServoThatDisagreesIsNamed(t *testing.T) {
	for longer := 1; longer <= 2; longer++ {
		w := twinWalk(t)
		arms := []float64{10, 10}
		arms[longer-1] = 11.5
		g := walked(t, w, elevator(w, withArms(t, w.Model, arms...), true, []int{1, 2}, exact))
		r := g.Report(context.Background(), nil)
		if r.Verdict != result.SeenDiffers || len(r.Fits) != 3 || !strings.Contains(r.Fits[0].Note, "Servos 1 and 2, each alone, hold it up to ") || r.Fits[0].Offered {
			t.Fatalf("%s, %+v", r.Verdict, r.Fits)
		}
		for _, f := range r.Fits[1:] {
			if f.Offered != (f.Servo == longer) || f.Place.Line == 0 {
				t.Errorf("servo %d has the longer arm: %+v", longer, f)
			}
		}
		if one, other := r.Fits[1].Place, r.Fits[2].Place; one == other {
			t.Errorf("both are at %+v", one)
		}
		text, problem := g.Corrected()
		if problem != "" {
			t.Fatal(problem)
		}
		now, problems := airframes.Load("new.yaml", text)
		if now == nil {
			t.Fatal(problems)
		}
		for i, arm := range arms {
			if got := now.Setup.Parts[0].Drives[i].Linkage.Arm; math.Abs(got-arm) > 0.1 {
				t.Errorf("servo %d has an arm of %g mm, wanted %g", i+1, got, arm)
			}
		}
		was, is, changed := bytes.Split([]byte(twin), []byte("\n")), bytes.Split(text, []byte("\n")), 0
		for i := range was {
			if !bytes.Equal(was[i], is[i]) {
				changed++
			}
		}
		if len(was) != len(is) || changed != 1 {
			t.Errorf("%d lines are different:\n%s", changed, text)
		}
		tables, problem := g.CorrectedAsTables()
		if problem != "" || bytes.Count(tables, []byte("measured:")) != 2 || bytes.Count(tables, []byte("linkage:")) != 1 {
			t.Errorf("%s\n%s", problem, tables)
		}
	}
}

// From readings that are up to half a degree off, whichever servo has another arm is the one
// that is corrected, to within 5 %.
func TestServoThatDisagreesIsNamedFromNoisyReadings(t *testing.T) {
	w := twinWalk(t)
	random := rand.New(rand.NewPCG(8, 9))
	for tried := range 8 {
		servo := tried % 2
		arms := []float64{10, 10}
		arms[servo] *= []float64{0.8, 0.88, 1.12, 1.18}[random.IntN(4)]
		g := bench.NewGuide(w, bench.Nowhere{}, at)
		for _, line := range elevator(w, withArms(t, w.Model, arms...), false, []int{1, 2}, func() float64 { return random.Float64() - 0.5 }) {
			if r, err := g.Take(line); err != nil || !r.Understood {
				t.Fatalf("%q: %+v, %v", line, r, err)
			}
		}
		text, problem := g.Corrected()
		if problem != "" {
			t.Fatal(problem)
		}
		now, _ := airframes.Load("new.yaml", text)
		for i, arm := range arms {
			got := now.Setup.Parts[0].Drives[i].Linkage.Arm
			if i == servo && math.Abs(got/arm-1) > 0.05 || i != servo && got != arm {
				t.Errorf("servo %d has an arm of %g mm, wanted %g", i+1, got, arm)
			}
		}
	}
}

// With all servos on, what would fit if all were off alike is said, and nothing is offered:
// one arm that is longer by twice as much looks the same.
func TestServosTogetherTellTheirMeanOnly(t *testing.T) {
	var said []string
	for _, arms := range [][]float64{{11, 11}, {10, 12}, {12, 10}} {
		w := twinWalk(t)
		g := walked(t, w, elevator(w, withArms(t, w.Model, arms...), true, nil, exact))
		r := g.Report(context.Background(), nil)
		if len(r.Fits) != 1 || r.Fits[0].Offered || r.Fits[0].Changes != nil || r.Verdict != result.SeenDiffers {
			t.Fatalf("%s, %+v", r.Verdict, r.Fits)
		}
		note := r.Fits[0].Note
		if !strings.Contains(note, "If all of them are, and alike, then arm_mm: 11") || !strings.Contains(note, "Not yet measured alone: servo 1, servo 2.") {
			t.Errorf("%v: %s", arms, note)
		}
		if _, problem := g.Corrected(); problem == "" {
			t.Errorf("%v: something is corrected", arms)
		}
		said = append(said, note)
	}
	t.Log(said[0])
}

// A surface that stands right with both servos on, of which one alone does not, is not seen
// as expected.
func TestServoAloneThatIsOffIsNotAsExpected(t *testing.T) {
	w := twinWalk(t)
	lines := append(benchtest.Begin(), "elevator 0", "tab 0", "y", "elevator servo 2 24 down", "elevator servo 1 30 down")
	g := walked(t, w, lines)
	r := g.Report(context.Background(), nil)
	var part *result.BenchPart
	for i := range r.Steps[1].Parts {
		if p := &r.Steps[1].Parts[i]; p.Name == "elevator" {
			part = p
		}
	}
	if r.Verdict != result.SeenDiffers || part == nil || !part.Differs || len(part.Reading) != 2 || part.Reading[1].Says != "24° DOWN with servo 2 alone" {
		t.Errorf("%s: %+v", r.Verdict, part)
	}
}

// What is said of one servo alone is taken, kept in the record and taken back; what nobody
// could mean is asked about.
func TestServoAloneIsUnderstood(t *testing.T) {
	w := twinWalk(t)
	j := &memory{}
	g := bench.NewGuide(w, j, at)
	converse(t, g, []said{
		{"y", ""}, {"y", ""}, {"y", ""}, {"y", "step 1 counts as seen by eye; not measured: elevator, tab"},
		{"elevator servo 1 27 down", "noted: elevator 27° DOWN with servo 1 alone."},
		{"elevator servo 2 alone 20 down", "noted: elevator 20° DOWN with servo 2 alone. Not as expected."},
		{"elevator servo 2 26.5 down", "noted: elevator 26.5° DOWN with servo 2 alone (instead of: 20° DOWN)."},
		{"elevator before servo 2 2 up", "noted: elevator 2° UP with servo 2 alone before the movement. Not as expected."},
		{"undo", "taken back: elevator 2° UP with servo 2 alone before the movement"},
	})
	for line, problem := range map[string]string{
		"elevator servo 3 29 down": "say which of servos 1 to 2", "elevator servo 29 down": "say which of servos 1 to 2", "elevator servo": "say which of servos 1 to 2",
		"tab servo 1 2 up": "no more than one servo", "elevator servo 1 went down": "not understood",
	} {
		if r, err := g.Take(line); err != nil || r.Understood || !strings.Contains(r.Text, problem) {
			t.Errorf("%q: got %+v, %v, wanted %q", line, r, err, problem)
		}
	}
	r, err := bench.Read(append([]byte("{\"hingeline_bench\":1,\"date\":\""+noon+"\"}\n"), j.text()...))
	if err != nil {
		t.Fatal(err)
	}
	again := bench.NewGuide(w, nil, at)
	if err := again.Replay(r.Events); err != nil || !reflect.DeepEqual(g.Steps(), again.Steps()) {
		t.Errorf("%v: %+v, and again %+v", err, g.Steps(), again.Steps())
	}
	for was, is := range map[string]string{`"servo":1`: `"servo":3`, `"part":"elevator","servo":1`: `"part":"tab","servo":1`} {
		text := strings.Replace(string(j.text()), was, is, 1)
		if text == string(j.text()) {
			t.Fatalf("no %s in %s", was, text)
		}
		r, err := bench.Read([]byte("{\"hingeline_bench\":1,\"date\":\"" + noon + "\"}\n" + text))
		if err == nil {
			err = bench.NewGuide(w, nil, at).Replay(r.Events)
		}
		if err == nil {
			t.Errorf("%s is taken", is)
		}
	}
}
