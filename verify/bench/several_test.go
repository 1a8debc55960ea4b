package bench_test

import (
	"reflect"
	"strings"
	"testing"

	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/faults/sight"
)

// said is a line, and what is said of it.
type said struct{ line, says string }

// converse takes lines, each of which must be understood.
func converse(t *testing.T, g *bench.Guide, lines []said) {
	t.Helper()
	for _, l := range lines {
		if r, err := g.Take(l.line); err != nil || !r.Understood || r.Text != l.says {
			t.Errorf("%q: got %+v, %v, wanted %q", l.line, r, err, l.says)
		}
	}
}

// Several parts are told in one line, all of it or nothing; what takes the place of another
// word says so, and the last thing noted can be taken back.
func TestSeveralPartsAndUndo(t *testing.T) {
	m := sorrelModel(t)
	w := walkOf(t, m, sight.Eye, set(0, -100), set(0, 100), set(0, -50))
	j := &memory{}
	g := bench.NewGuide(w, j, at)
	converse(t, g, []said{
		{"y", ""}, {"y", ""}, {"y", ""}, {"y", ""},
		{"1, 4 went down", "noted: port aileron went DOWN. Not as expected.\nnoted: starboard aileron went DOWN."},
		{"port aileron up", "noted: port aileron went UP (instead of: went DOWN)."},
		{"undo", "taken back: port aileron went UP; as before: went DOWN"},
		{"undo", "taken back: starboard aileron went DOWN"},
		{"elevator 3.5 up and motor runs", "noted: elevator 3.5° UP. Not as expected.\nnoted: motor RUNS. Not as expected."},
		{"elevator 4.5 up", "noted: elevator 4.5° UP (instead of: 3.5° UP). Not as expected."},
		{"y", ""},
		{"nothing moved", "noted: port aileron did not move. Not as expected.\nnoted: starboard aileron did not move. Not as expected."},
		{"undo", "taken back: starboard aileron did not move"},
		{"y", ""},
		{"1 and 4 other way", "noted: port aileron the other way. Not as expected.\nThe port aileron was not as expected in 3 steps: p stops here and shows what explains it.\nnoted: starboard aileron the other way. Not as expected."},
		{"1 still", "noted: port aileron did not move (instead of: the other way). Not as expected."},
		{"r", ""},
	})
	if ask := g.Ask(); ask.Step == nil || !strings.HasPrefix(ask.Said, "noted: starboard aileron the other way\nnoted: port aileron did not move\n") {
		t.Errorf("shown again it says %q", ask.Said)
	}
	r, err := bench.Read(append([]byte("{\"hingeline_bench\":1,\"date\":\""+noon+"\"}\n"), j.text()...))
	if err != nil {
		t.Fatal(err)
	}
	again := bench.NewGuide(w, nil, at)
	if err := again.Replay(r.Events); err != nil || !reflect.DeepEqual(g.Steps(), again.Steps()) {
		t.Errorf("%v: %+v, and again %+v", err, g.Steps(), again.Steps())
	}
	if g.Take("p"); !g.Over() {
		t.Error("p does not stop")
	}
}
