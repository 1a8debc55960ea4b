package bench_test

import (
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/faults/sight"
)

// Every line of which nothing comes is found in one go, whatever stands before it.
func TestRehearseFindsEveryMisreadLine(t *testing.T) {
	w := walkOf(t, sorrelModel(t), sight.Eye, set(0, -100), set(1, 100))
	for _, c := range []struct {
		lines []string
		want  map[int]int // by line: the word
		over  bool
	}{
		{[]string{"yes", "yes", "yes", "y", "y", "y", "y"}, nil, false},
		{[]string{"yes", "perhaps", "yes", "y", "1 sideways", "kite up", "y", "3 before up", "e kite up", "y", "y"}, map[int]int{1: 0, 4: 1, 5: 0, 7: 1, 8: 1}, false},
		{[]string{"yes", "yes", "yes", "y", "l", "kite", "1 up", "y", "y", "y"}, map[int]int{5: 0}, false},
		{[]string{"yes", "yes", "yes", "y", "y", "y", "y", "y", "y"}, map[int]int{7: 0}, true},
		{[]string{"no", "yes"}, map[int]int{1: 0}, true},
	} {
		wrong, err := bench.Rehearse(bench.NewGuide(w, bench.Nowhere{}, at), c.lines)
		if err != nil {
			t.Fatal(err)
		}
		got := map[int]int{}
		for _, m := range wrong {
			got[m.Line] = m.Word
			if m.Text == "" || m.Over != c.over {
				t.Errorf("%q: %+v", c.lines, m)
			}
		}
		if len(got) != len(c.want) || len(got) > 0 && !reflect.DeepEqual(got, c.want) {
			t.Errorf("%q: got %+v, wanted %v", c.lines, wrong, c.want)
		}
	}
}

// Lines that are rehearsed without a complaint are all understood.
func TestWhatIsRehearsedIsUnderstood(t *testing.T) {
	w := walkOf(t, sorrelModel(t), sight.Measured, set(0, -100), set(2, 100))
	words := []string{"y", "o", "n", "l", "e", "b", "s", "h", "r", "1", "5", "#3", "motor", "up", "runs", "before", "12", "9 mm", "f"}
	rapid.Check(t, func(t *rapid.T) {
		lines := []string{"yes", "yes", "yes"}
		for range rapid.IntRange(0, 12).Draw(t, "lines") {
			lines = append(lines, strings.Join(rapid.SliceOfN(rapid.SampledFrom(words), 1, 3).Draw(t, "line"), " "))
		}
		wrong, err := bench.Rehearse(bench.NewGuide(w, bench.Nowhere{}, at), lines)
		if err != nil {
			t.Fatal(err)
		}
		g := bench.NewGuide(w, bench.Nowhere{}, at)
		for i, line := range lines {
			if g.Over() {
				if len(wrong) == 0 {
					t.Fatalf("over before line %d of %q", i, lines)
				}
				return
			}
			r, err := g.Take(line)
			if err != nil {
				t.Fatal(err)
			}
			if !r.Understood {
				if len(wrong) == 0 || wrong[0].Line != i {
					t.Fatalf("line %d of %q: %+v; rehearsed: %+v", i, lines, r, wrong)
				}
				return
			}
		}
		if len(wrong) > 0 {
			t.Fatalf("%q: %+v", lines, wrong)
		}
	})
}
