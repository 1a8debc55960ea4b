package cause_test

import (
	"context"
	"testing"

	"example.com/hingeline/verify/faults/cause"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/verifytest"
)

// Sentences about a rudder that goes the wrong way, one of them written down wrongly: no
// mistake explains all of them, and the reversed channel is the nearest but for that one.
func TestNearlyOfWhatWasWrittenDown(t *testing.T) {
	m := verifytest.Shipped(t, "pellin-park")
	seen := written(
		"with the turn stick full right, the rudder moves left", "with the turn stick full left, the rudder moves right",
		"with the turn stick 50% right, the rudder moves left", "with the turn stick 50% left, the rudder moves left",
		"with everything at rest, the rudder is at neutral",
	)
	r, problems := cause.Explain(context.Background(), m, nil, seen[0], cause.Options{})
	if r == nil {
		t.Fatal(problems)
	}
	if r.Verdict != result.NoCause || len(r.Near) == 0 {
		t.Fatalf("%s, %d near", r.Verdict, len(r.Near))
	}
	n := r.Near[0]
	if n.Text != "channel 1 (rudder) is reversed" || n.Explains != 4 || n.Of != 5 || len(n.Against) != 1 ||
		n.Against[0].What[0] != "with the turn stick 50% left, the rudder moves left" || n.Against[0].Place.Line == 0 {
		t.Errorf("%+v", n)
	}
}
