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
