package said

import (
	"strings"
	"testing"

	"example.com/hingeline/verify/result"
)

// A motor that runs when it should not is never among what is as it should be.
func TestMotorSightsTellOfMotorsThatRun(t *testing.T) {
	kept := result.Motor{Name: "motor", StoppedWhen: "motor switch is safe", Rest: "stopped"}
	broken, running, unsure := kept, kept, kept
	broken.Breaks, running.Rest, unsure.NotSure = []string{"throttle 100 %"}, "power 40 %", true
	for _, c := range []struct {
		motor result.Motor
		tone  Tone
		words string
	}{
		{kept, Good, "stopped, and stays so"},
		{broken, Bad, "IT RUNS although motor switch is safe"},
		{running, Bad, "IT RUNS with everything at rest: power 40 %"},
		{unsure, Heed, "it may run"},
	} {
		found := false
		for _, s := range MotorSights(&c.motor) {
			found = found || s.Tone == c.tone && strings.Contains(s.Text, c.words)
			if strings.Contains(s.Text, "RUNS") && s.Tone == Good {
				t.Errorf("%q is taken for good", s.Text)
			}
		}
		if !found {
			t.Errorf("%q is not said: %+v", c.words, MotorSights(&c.motor))
		}
	}
}

// Only a whole check that passed is signed for.
func TestStatementOfAPartReleasesNothing(t *testing.T) {
	r := &result.Report{Checks: []result.Check{{Passed: true}}, NotSelected: 3, Verdict: result.PassedInPart}
	s := StatementOf(r)
	if s.Title == "What is signed" || s.Condition != "" || !strings.Contains(s.Text, "does not release the model") {
		t.Errorf("%+v", s)
	}
	r.NotSelected, r.Verdict = 0, result.Passed
	if s := StatementOf(r); s.Title != "What is signed" {
		t.Errorf("%+v", s)
	}
}
