package verify

import (
	"strings"
	"testing"

	"example.com/hingeline/verify/result"
)

// A script that is wrong fails the check even where the set-up does all it asks.
func TestCheckFailsForAScriptThatFightsTheAeroplane(t *testing.T) {
	reversed := strings.NewReplacer("name: starboard aileron, mix: roll", "name: starboard aileron, mix: roll, reversed: true").Replace(fennel)
	backwards := strings.Replace(fennelScript, "starboard aileron rises", "starboard aileron drops", 1)
	r := check(t, reversed, backwards)
	if passed, failed := r.Counts(); passed != 2 || failed != 0 {
		t.Fatalf("%d passed and %d failed, wanted every check to pass", passed, failed)
	}
	if fail, _, _ := r.ScriptCounts(); r.Verdict != result.Failed || fail != 1 {
		t.Errorf("%s with %d faults in the script, wanted failed with 1", r.Verdict, fail)
	}
	if at := r.Script[0].Place; at.File != "fennel.feature" || !strings.Contains(at.Excerpt, "the starboard aileron drops") {
		t.Errorf("the fault is at %+v", at)
	}
	kept := check(t, reversed, strings.Replace(backwards, "aileron drops\n", "aileron drops on purpose\n", 1))
	if _, _, onPurpose := kept.ScriptCounts(); kept.Verdict != result.Passed || onPurpose != 1 {
		t.Errorf("on purpose: %s with %d kept, wanted passed with 1", kept.Verdict, onPurpose)
	}
	Strict(kept)
	if fail, warn, onPurpose := kept.ScriptCounts(); kept.Verdict != result.Failed || fail == 0 || warn != 0 || onPurpose != 1 {
		t.Errorf("strict: %s with %d, %d and %d, wanted failed for what is not checked, and the sentence still kept", kept.Verdict, fail, warn, onPurpose)
	}
}

func TestStrictOnlyMattersWhereTheScriptWantsALook(t *testing.T) {
	r := check(t, fennel, fennelScript)
	if _, warn, _ := r.ScriptCounts(); r.Verdict != result.Passed || warn == 0 {
		t.Fatalf("%s with %d warnings about the script, wanted passed with some: the flap is never asked about", r.Verdict, warn)
	}
	Strict(r)
	if r.Verdict != result.Failed {
		t.Errorf("strict: %s, wanted failed", r.Verdict)
	}
	clean := &result.Report{Checks: []result.Check{{Passed: true}}}
	if Strict(clean); clean.Verdict != result.Passed {
		t.Errorf("strict, nothing odd: %s, wanted passed", clean.Verdict)
	}
}

// With --only, a sentence that was left out fails nothing; one that was taken does.
func TestScriptIsWrongOnlyInWhatWasSelected(t *testing.T) {
	backwards := strings.Replace(fennelScript, "port aileron drops", "port aileron rises", 1)
	for only, want := range map[string]int{"starboard aileron": 0, "port aileron": 1} {
		r := check(t, fennel, backwards, only)
		if fail, _, _ := r.ScriptCounts(); fail != want {
			t.Errorf("only %q: %d faults in the script, wanted %d", only, fail, want)
		}
	}
}
