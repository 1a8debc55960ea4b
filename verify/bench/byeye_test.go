package bench_test

import (
	"context"
	"strings"
	"testing"

	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/bench/benchtest"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/result"
)

// With a ruler, a step of which not all was measured was seen by eye; it is counted so, and
// a signature says so. Without a ruler nothing was to be measured.
func TestStepsThatWereNotMeasured(t *testing.T) {
	m := sorrelModel(t)
	for _, c := range []struct {
		look  sight.Look
		lines []string
		want  []bool
		seal  string
	}{
		{sight.Measured, []string{"y", "y", "y", "y"}, []bool{true, true, true}, "0 of 3 steps as expected, 3 by eye and not measured, 2026-11-25"},
		{sight.Measured, []string{"y", "1 22 up", "starboard aileron 22 down", "y", "y", "y"}, []bool{true, false, true}, "1 of 3 steps as expected, 2 by eye and not measured, 2026-11-25"},
		{sight.Measured, []string{"y", "s wind", "y", "y"}, []bool{true, false, true}, "0 of 3 steps as expected, 1 skipped, 2 by eye and not measured, 2026-11-25"},
		{sight.Eye, []string{"y", "y", "y", "y"}, []bool{false, false, false}, "3 of 3 steps as expected as far as can be seen by eye, 2026-11-25"},
	} {
		w := walkOf(t, m, c.look, set(0, -100), set(1, 100))
		lines := append(benchtest.Begin(), c.lines...)
		r := walked(t, w, lines).Report(context.Background(), nil)
		for i, want := range c.want {
			if (r.Steps[i].State == result.StepByEye) != want {
				t.Errorf("%q: step %d by eye: %v", c.lines, i+1, !want)
			}
		}
		p := play(t, w, bench.NewHeader("test", noon, w, nil, "by hand"), lines)
		s, err := bench.SealOf(p.record)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.HasSuffix(s.Summary, c.seal) {
			t.Errorf("%q: %q", c.lines, s.Summary)
		}
	}
}

// What differs is told in the same words wherever it is the same, however it was said.
func TestHowAPartDiffers(t *testing.T) {
	m := sorrelModel(t)
	for _, c := range []struct{ line, part, how string }{
		{"1 o", "port aileron", "the other way"},
		{"1 down", "port aileron", "the other way"},
		{"1 n", "port aileron", "did not move"},
		{"1 still", "port aileron", "did not move"},
		{"1 l", "port aileron", "moved too little"},
		{"1 12 up", "port aileron", "short"},
		{"1 0", "port aileron", "short"},
		{"1 29 up", "port aileron", "too far"},
		{"1 22 down", "port aileron", "not where it should be"},
		{"1 before 5 up", "port aileron", "not where it should be"},
		{"elevator up", "elevator", "went UP, and should not"},
		{"motor runs", "motor", "RUNS"},
		{"motor before runs", "motor", "RUNS before the movement"},
		{"1 up", "port aileron", ""},
		{"1 22 up", "port aileron", ""},
	} {
		w := walkOf(t, m, sight.Measured, set(0, -100))
		r := walked(t, w, append(benchtest.Begin(), "y", c.line, "y", "y")).Report(context.Background(), nil)
		part := r.Steps[1].Part(c.part)
		if part.How != c.how || part.Differs != (c.how != "") || (c.how != "") != (r.Verdict == result.SeenDiffers) {
			t.Errorf("%q: %q, %+v", c.line, part.How, part)
		}
	}
}

// Corrections are held back for what went another way, by name, and not for what only comes
// too soon or goes short.
func TestWhyNothingIsOffered(t *testing.T) {
	m := sorrelModel(t)
	measured := []string{"1 0", "y", "1 27 up", "y", "1 27 down", "y", "y", "y"}
	for _, c := range []struct {
		line, why string
	}{
		{"elevator 17 up", ""},
		{"elevator l", ""},
		{"elevator o", "not offered: the elevator went the other way in step 4"},
		{"elevator n", "not offered: the elevator did not move in step 4"},
		{"elevator 17 down", "not offered: the elevator was on the other side of neutral in step 4"},
		{"starboard aileron up", "not offered: the starboard aileron moved, and should not in step 4"},
		{"motor runs", "not offered: the motor did not do what it should in step 4"},
	} {
		w := walkOf(t, m, sight.Measured, set(0, -100), set(0, 100), set(1, 100))
		lines := append(benchtest.Begin(), measured[:6]...)
		lines = append(append(lines, c.line), measured[6:]...)
		r := walked(t, w, lines).Report(context.Background(), nil)
		if len(r.Fits) == 0 || r.Fits[0].Part != "port aileron" || r.Fits[0].Offered != (c.why == "") || !strings.HasPrefix(r.Fits[0].Note, c.why) {
			t.Errorf("%q: %+v", c.line, r.Fits)
		}
	}
}
