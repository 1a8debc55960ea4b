package cause_test

import (
	"context"
	"testing"

	"example.com/hingeline/verify/faults/cause"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/verifytest"
)

func seenOn(t *testing.T, scripts []script.File) *result.Causes {
	t.Helper()
	m := verifytest.Shipped(t, "pellin-park")
	seen := written("with the turn stick full right, the rudder moves left", "with the turn stick full left, the rudder moves right")
	r, problems := cause.Explain(context.Background(), m, scripts, seen[0], cause.Options{})
	if r == nil {
		t.Fatal(problems)
	}
	if len(r.Suspects) < 2 || len(r.Repairs) == 0 || len(r.Edits) == 0 {
		t.Fatalf("%+v", r)
	}
	return r
}

// A model whose rudder goes the wrong way, and whose script passes on the file: what takes
// the mistake back, so that the file stays, comes before what only makes up for it, and
// with the mistake in the file its script would fail.
func TestFileStaysWhereItsScriptPasses(t *testing.T) {
	r := seenOn(t, verifytest.Scripts(t, "pellin-park"))
	if r.Script.Checks == 0 || r.Script.Failing != 0 {
		t.Fatalf("%+v", r.Script)
	}
	if r.Repairs[0].Change != "take the reversing off channel 1 (rudder)" || !r.Repairs[0].AsFile || r.Repairs[0].OnModel {
		t.Errorf("first comes %+v", r.Repairs[0])
	}
	ended, told := false, map[string]bool{}
	for _, one := range r.Repairs {
		if one.AsFile && ended {
			t.Errorf("%q leaves the file as it is, and comes behind what does not", one.Change)
		}
		if told[one.Change] {
			t.Errorf("%q stands there twice", one.Change)
		}
		told[one.Change] = true
		ended = ended || !one.AsFile
	}
	for _, e := range r.Edits {
		if e.Failing == 0 {
			t.Errorf("with %q in the file all of its script passes", e.Edit)
		}
	}
}

// A script that wants what the model does fails on the file: with the edit it passes.
func TestFileIsInQuestionWhereItsScriptFails(t *testing.T) {
	r := seenOn(t, written("with the turn stick full right, the rudder moves left", "with everything at rest, the rudder is at neutral"))
	if r.Script != (result.Asked{Checks: 2, Failing: 1}) {
		t.Errorf("%+v", r.Script)
	}
	if e := r.Edits[0]; e.Edit != "reverse channel 1 (rudder)" || e.Failing != 0 {
		t.Errorf("%+v", e)
	}
	for _, one := range r.Repairs {
		if !one.AsFile {
			t.Errorf("%q is offered against a script that fails as written", one.Change)
		}
	}
}

// Without a script nothing is said of checks.
func TestRemediesWithoutAScript(t *testing.T) {
	if r := seenOn(t, nil); r.Script != (result.Asked{}) || r.Edits[0].Failing != 0 || !r.Repairs[0].AsFile {
		t.Errorf("%+v", r)
	}
}
