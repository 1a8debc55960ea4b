package bench_test

import (
	"context"
	"slices"
	"testing"

	"example.com/hingeline/verify"
	"example.com/hingeline/verify/bench/benchtest"
	"example.com/hingeline/verify/faults/sight"
)

// Controls that no step moved that was looked at are named, also where a step that moves one
// was skipped.
func TestControlsThatNoStepMoved(t *testing.T) {
	m := sorrelModel(t)
	w := walkOf(t, m, sight.Eye, set(0, -100), set(1, 100), set(4, 1))
	for _, c := range []struct {
		last string
		want []string
	}{
		{"y", []string{"throttle", "gear switch"}},
		{"s no time", []string{"throttle", "gear switch", "motor switch"}},
	} {
		r := walked(t, w, append(benchtest.Begin(), "y", "y", "y", c.last, "y")).Report(context.Background(), nil)
		if !slices.Equal(r.Unmoved, c.want) {
			t.Errorf("%s: %q, wanted %q", c.last, r.Unmoved, c.want)
		}
		verify.FinishBench(r, m, nil)
		if left := r.Cautions[len(r.Cautions)-1]; (left == "Move what was not moved in this walk, and see what it does: throttle, gear switch.") != (c.last == "y") {
			t.Errorf("%s: %q", c.last, left)
		}
	}
}
