package bench_test

import (
	"bytes"
	"strings"
	"testing"

	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/bench/benchtest"
	"example.com/hingeline/verify/faults/sight"
)

// A signature binds no record that this program would not have written.
func TestSealRefusesWhatWasEdited(t *testing.T) {
	m := sorrelModel(t)
	w := walkOf(t, m, sight.Eye, set(0, -100))
	p := play(t, w, bench.NewHeader("test", noon, w, nil, "by hand"), append(benchtest.Begin(), "y", "elevator up", "y", "y"))
	if _, err := bench.SealOf(p.record); err != nil {
		t.Fatal(err)
	}
	began, first, last := `"date":"`+noon+`"`, `"event":"confirmed","what":"restrained","at":"`, `"event":"end","at":"`
	for _, c := range []struct{ old, new, says string }{
		{`"saw":"went UP"`, `"saw":"went LEFT"`, `the elevator "went LEFT"`},
		{`"saw":"went UP"`, `"saw":"RUNS"`, `the elevator "RUNS"`},
		{`"saw":"went UP"`, `"saw":"moved too little"`, "should not move"},
		{`"part":"elevator"`, `"part":"elevator","before":true`, "a surface is measured"},
		{`"event":"confirmed","what":"area clear"`, `"event":"confirmed","what":"restrained"`, "which was not asked"},
		{`"event":"confirmed","what":"area clear"`, `"event":"refused","what":"area clear"`, "not gone on with"},
		{first + noon, first + "x", `line 2 of it has the date "x"`},
		{last + noon, last + "2026-11-25T11:59:59Z", "a clock was put back, or it was edited"},
		{began, `"date":"yesterday"`, "line 1 of it has the date"},
		{began, `"date":"2026-11-26T00:00:00Z"`, "a clock was put back, or it was edited"},
	} {
		edited := bytes.Replace(p.record, []byte(c.old), []byte(c.new), 1)
		if bytes.Equal(edited, p.record) {
			t.Fatalf("%s is not in\n%s", c.old, p.record)
		}
		if _, err := bench.SealOf(edited); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s in place of %s: wanted %q, got %v", c.new, c.old, c.says, err)
		}
	}
	lines := bytes.SplitAfter(p.record, []byte("\n"))
	without := bytes.Join(append(append([][]byte{}, lines[0]), lines[4:]...), nil)
	if _, err := bench.SealOf(without); err == nil || !strings.Contains(err.Error(), "before all was confirmed") {
		t.Errorf("nothing confirmed: %v", err)
	}
}

// A walk in which much was called too little to be seen says so.
func TestSealSaysFromWhereOnItWasSeen(t *testing.T) {
	m := sorrelModel(t)
	w := walkOf(t, m, sight.Look{Visible: 30}, set(0, -100))
	p := play(t, w, bench.NewHeader("test", noon, w, nil, "by hand"), append(benchtest.Begin(), "y", "y", "y"))
	s, err := bench.SealOf(p.record)
	if want := "seen on the model: 2 of 2 steps as expected as far as can be seen by eye from 30° on, 2026-11-25"; err != nil || s.Summary != want {
		t.Errorf("got %+v, %v, wanted %q", s, err, want)
	}
}

// What a signature binds: the bytes, and one line.
func TestSealOfARecord(t *testing.T) {
	m := sorrelModel(t)
	w := walkOf(t, m, sight.Eye, set(0, -100), set(1, 100))
	h := bench.NewHeader("test", noon, w, nil, "by hand")
	begin := benchtest.Begin()
	for _, c := range []struct {
		lines []string
		says  string
		right bool
	}{
		{append(begin, "y", "y", "y", "y"), "seen on the model: 3 of 3 steps as expected as far as can be seen by eye, 2026-11-25", true},
		{append(begin, "y", "1 o", "y", "y", "f"), "seen on the model: 2 of 3 steps as expected as far as can be seen by eye, 1 NOT AS EXPECTED, 2026-11-25", false},
		{append(begin, "y", "s wind", "y", "y"), "seen on the model: 2 of 3 steps as expected as far as can be seen by eye, 1 skipped, 2026-11-25", false},
		{append(begin, "y", "u 1", "y", "y", "y"), "seen on the model: 2 of 3 steps as expected as far as can be seen by eye, 1 not seen, 2026-11-25", false},
		{append(begin, "y", "y", "y"), "seen on the model: 3 of 3 steps as expected as far as can be seen by eye, 2026-11-25", true}, // the end of what is said ends it
		{append(begin, "y"), "seen on the model: 1 of 3 steps as expected as far as can be seen by eye, 2 not seen, not finished, 2026-11-25", false},
	} {
		p := play(t, w, h, c.lines)
		s, err := bench.SealOf(p.record)
		if err != nil {
			t.Fatal(err)
		}
		if s.Summary != c.says || s.AsExpected != c.right || s.SetUp != h.SetUp || s.Model != "Sorrel" || !strings.HasPrefix(s.Digest, "sha256:") {
			t.Errorf("%q: %+v", c.lines, s)
		}
		for cut := len(p.record) - 1; cut > len(p.record)-20; cut-- {
			if _, err := bench.SealOf(p.record[:cut]); err == nil {
				t.Errorf("cut off at %d it is sealed", cut)
			}
		}
		edited := bytes.Replace(p.record, []byte("22° down"), []byte("25° down"), 1)
		if _, err := bench.SealOf(edited); err == nil {
			t.Error("with another airframe file in it, it is sealed")
		}
	}
}
