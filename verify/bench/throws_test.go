package bench_test

import (
	"context"
	"testing"

	"example.com/hingeline/verify/bench/benchtest"
	"example.com/hingeline/verify/faults/sight"
)

// Left is held against right by what each should be where it was measured, which may be at
// positions of the control that are not alike.
func TestLeftAgainstRight(t *testing.T) {
	m := sorrelModel(t)
	for _, c := range []struct {
		right   float64 // roll stick where the starboard aileron was measured
		port    string
		star    string
		partner string
	}{
		{100, "25 up", "22 up", "3° more than the starboard aileron, computed alike"},
		{50, "25 up", "11 up", "3° more than it should be beside the starboard aileron"},
		{50, "22 up", "14 up", "3° less than it should be beside the starboard aileron"},
		{50, "22 up", "11 up", ""},
	} {
		w := walkOf(t, m, sight.Measured, set(0, -100), set(0, c.right))
		r := walked(t, w, append(benchtest.Begin(), "y", "port aileron "+c.port+" sure", "y", "starboard aileron "+c.star+" sure", "y", "y")).Report(context.Background(), nil)
		if len(r.Throws) != 2 || r.Throws[0].Part != "port aileron" || r.Throws[0].Partner != c.partner {
			t.Errorf("%+v: %+v", c, r.Throws)
		}
	}
}
