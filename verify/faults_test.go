package verify_test

import (
	"context"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/faults"
	"example.com/hingeline/verify/faults/cause"
	"example.com/hingeline/verify/faults/walk"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/verifytest"
)

// shippedModel is a built-in model and its script; edit is what to change in its file, by
// turns old and new.
func shippedModel(t *testing.T, name string, edit ...string) (*airframes.Model, []script.File) {
	t.Helper()
	text := verifytest.ShippedText(t, name)
	if changed := strings.NewReplacer(edit...).Replace(string(text)); len(edit) > 0 && changed == string(text) {
		t.Fatalf("%s has no %q", name, edit[0])
	} else {
		text = []byte(changed)
	}
	return verifytest.Model(t, name+".yaml", text), verifytest.Scripts(t, name)
}

// Every place that a report names is quoted from the file.
func TestReportsOfMistakesQuoteTheirPlaces(t *testing.T) {
	m, files := shippedModel(t, "pellin-park")
	quoted := 0
	wants := func(p result.Place, of string) {
		t.Helper()
		if p.Line > 0 && p.Excerpt == "" {
			t.Errorf("%s: line %d of %s is not quoted", of, p.Line, p.File)
		}
		quoted++
	}
	r, _ := verify.Faults(t.Context(), m, files, faults.Options{})
	for _, f := range r.Faults {
		wants(f.Place, f.Text)
		for _, by := range f.By {
			wants(by.Place, by.Sentence)
		}
	}
	around, text := verify.Walk(t.Context(), m, walk.Options{})
	for _, u := range around.Unseen {
		wants(u.Place, u.Text)
	}
	seen := script.File{Name: "seen.feature", Text: []byte("Feature: Seen\n\n  Scenario: Sticks\n    * with the turn stick full right, the rudder moves left\n")}
	found, _ := verify.Causes(t.Context(), m, files, seen, cause.Options{})
	for _, s := range found.Suspects {
		wants(s.Place, s.Text)
	}
	for _, one := range found.Repairs {
		wants(one.Place, one.Change)
	}
	wants(found.Wrong[0].Place, found.Wrong[0].Sentence)
	if len(found.Repairs) == 0 || len(text) == 0 || quoted < 100 {
		t.Errorf("%d repairs, %d places, a script of %d bytes: this test looks at nothing", len(found.Repairs), quoted, len(text))
	}
	if r.Tool != verify.Version || around.Tool != verify.Version || found.Tool != verify.Version || len(r.Cautions)*len(around.Cautions)*len(found.Cautions) == 0 {
		t.Error("a report lacks the tool or its cautions")
	}
}

// What is stopped is never a yes: nothing that was not tried counts as caught, and no
// change is offered that was not held against everything.
func TestStoppedSearchesPromiseNothing(t *testing.T) {
	m, files := shippedModel(t, "ousel-trainer")
	ctx, stop := context.WithCancel(t.Context())
	stop()
	r, _ := verify.Faults(ctx, m, files, faults.Options{})
	if s := r.Score(); r.Verdict != result.SomeMissed || r.Stopped == "" || s.Caught > 0 || s.Open != len(r.Faults) || len(r.Spare) > 0 {
		t.Errorf("%s, %q, %+v, %d spare", r.Verdict, r.Stopped, s, len(r.Spare))
	}
	if around, _ := verify.Walk(ctx, m, walk.Options{}); around.Stopped == "" {
		t.Error("the walk-around does not say that its search was stopped")
	}
	seen := script.File{Name: "seen.feature", Text: []byte("Feature: Seen\n\n  Scenario: Sticks\n    * with the yaw stick full right, the rudder moves left\n")}
	if found, _ := verify.Causes(ctx, m, files, seen, cause.Options{}); len(found.Suspects) == 0 || len(found.Repairs) > 0 {
		t.Errorf("%d suspects and %d repairs", len(found.Suspects), len(found.Repairs))
	}
	m, files = shippedModel(t, "ousel-trainer", "\n  4: yaw\n", "\n  4: {mix: yaw, reversed: true}\n")
	report, _ := verify.Check(m, files, script.Selection{})
	verify.Offer(ctx, m, files, report)
	if report.Verdict != result.Failed || report.Repairs != nil {
		t.Errorf("%s, and offered %+v", report.Verdict, report.Repairs)
	}
	verify.Offer(t.Context(), m, files, report)
	if report.Repairs == nil || len(report.Repairs.List) == 0 {
		t.Errorf("nothing is offered where nobody stops it: %+v", report.Repairs)
	}
}

// No change is offered to please a script that fights the aeroplane; one whose sentences
// say that it is on purpose is taken at its word.
func TestNothingIsOfferedToAScriptThatFights(t *testing.T) {
	for tail, want := range map[string]bool{"": false, " on purpose": true} {
		m, _ := shippedModel(t, "bracken-20")
		files := []script.File{{Name: "own.feature", Text: []byte("Feature: Own\n\n  Scenario: Flaps\n" +
			"    * with the flap lever landing, the port flap rises" + tail + "\n    * with the flap lever landing, the starboard flap rises" + tail + "\n")}}
		r, problems := verify.Check(m, files, script.Selection{})
		if r == nil {
			t.Fatal(problems)
		}
		verify.Offer(t.Context(), m, files, r)
		if r.Verdict != result.Failed || (r.Repairs != nil) != want {
			t.Errorf("%q: %s, offered: %+v", tail, r.Verdict, r.Repairs)
		}
		if want && len(r.Repairs.List) == 0 {
			t.Errorf("nothing is offered on purpose either: the test looks at nothing")
		}
	}
}
