package bench_test

import (
	"context"
	"regexp"
	"slices"
	"testing"

	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/bench/benchtest"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/result"
)

// after is a line about where a part is after a movement, and not which way it went.
var after = regexp.MustCompile(`^#\d+ (\d+\.\d+ \w+ sure|0|\d+\.\d+ %)$`)

// With a ruler at hand what was not measured is no measurement: somebody who measures only
// before the movements, sees the ways and says y to the rest is told the mistake on the
// model all the same. No power of a motor is known from a y.
func TestOnlyWhatWasMeasuredCounts(t *testing.T) {
	planted := 0
	for _, name := range []string{"pellin-park", "ousel-trainer", "bracken-20"} {
		m := load(t, name)
		w := bench.NewWalk(m, bench.Shortest(context.Background(), m, sight.Measured, nil), sight.Measured)
		for i, one := range mistake.All(m, mistake.Options{}) {
			variant, faults := one.Variant(m)
			if faults != nil || one.Kind.Timed || i%5 != 0 && one.Kind.Code != "channel-reversed" && one.Kind.Code != "share-missing" {
				continue
			}
			hand := benchtest.Modeller{Walk: w, Plan: variant.Plan}
			lines := benchtest.Begin()
			for step := range w.Steps {
				lines = append(lines, slices.DeleteFunc(hand.Lines(step), after.MatchString)...)
			}
			r := walked(t, w, lines).Report(context.Background(), nil)
			if r.Verdict != result.SeenDiffers {
				continue
			}
			planted++
			if !slices.ContainsFunc(r.Causes.Suspects, names(one.Text)) {
				t.Errorf("%s: %s: %s, and the truth is not among %d suspects", name, one.Text, r.Causes.Verdict, len(r.Causes.Suspects))
			}
		}
	}
	if planted < 50 {
		t.Errorf("%d were planted and seen", planted)
	}
}
