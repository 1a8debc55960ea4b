package script

import (
	"fmt"
	"strings"
	"testing"

	"example.com/hingeline/verify/result"
)

// reasons are the reasons of the first failed check.
func reasons(t *testing.T, text string, replace ...string) []result.Reason {
	t.Helper()
	for _, c := range ran(t, fennel(t, replace...), "Feature: f\n Scenario: s\n "+text+"\n").Checks {
		if !c.Passed {
			return c.Why
		}
	}
	t.Fatalf("%q passes", text)
	return nil
}

func TestComparisonExplainsBothParts(t *testing.T) {
	for _, c := range []struct{ verb, share string }{
		{"opposite to", "-30%"}, {"less than", "30%"}, {"more than", "10%"}, {"as far as", "40%"},
	} {
		why := reasons(t, "* with rates high and right roll, the port flap moves "+c.verb+" the starboard flap",
			"share: 20%, when: rate switch is high", "share: "+c.share+", when: rate switch is high")
		if len(why) != 2 || why[0].Of != "port flap" || why[1].Of != "starboard flap" {
			t.Fatalf("%s: explained by %+v", c.verb, why)
		}
		for _, r := range why {
			if last := r.Chain[len(r.Chain)-1]; last.Stage != "part" || last.Name != r.Of || len(r.LookAt) == 0 {
				t.Errorf("%s: the chain of the %s ends at the %s, with %d lines to look at", c.verb, r.Of, last.Name, len(r.LookAt))
			}
		}
	}
}

// TestLookAtFollowsWhatIsWrong plants a mistake and wants its line among the
// first of those to look at, whether the way or the amount is wrong.
func TestLookAtFollowsWhatIsWrong(t *testing.T) {
	for _, c := range []struct {
		asked, from, to string
		line            string // of the airframe file, as it begins
		within          int
	}{
		{"* with full back pitch, the elevator rises", "6: {name: elevator,", "6: {name: elevator, reversed: true,", "6: {name: elevator", 1},
		{"* with full back pitch, the elevator rises", "measured: {100%: 25° up}, stops", "measured: {100%: 25° down}, stops", "elevator: {channel: 6", 2},
		{"* with full back pitch, the elevator rises 25° ± 1°", "measured: {100%: 25° up}, stops", "measured: {100%: 20° up}, stops", "elevator: {channel: 6", 3},
		{"* with full back pitch, the elevator rises 25° ± 1°", "pitch: pitch stick", "pitch: {from: pitch stick, throw: 80%}", "pitch: {from", 2},
		{"* with full back pitch, the elevator rises 25° ± 1°", "stops: {up: 30°", "stops: {up: 20°", "elevator: {channel: 6", 1},
		{"* with right roll, the port flap drops", "throw: 50%", "throw: 51%", "- {add: roll, share: 20%, when", 1},
		{"* with live motor and full throttle, when the signal is lost, the motor stops", "failsafe: -100%", "failsafe: hold", "failsafe: hold", 1},
		{"* with safe motor, when throttle is full, the motor stays stopped", "replace_with: -100%", "replace_with: 100%", "- {replace_with: 100%", 1},
		{"* with landing flap, the port flap drops 40° ± 1° after 1 s", "share: 80%", "share: 80 %", "slow: 2 s", 1},
	} {
		text := string(fennelText(t, c.from, c.to))
		why := reasons(t, c.asked, c.from, c.to)
		var shown []string
		for _, place := range why[0].LookAt {
			shown = append(shown, fmt.Sprintf("%d %s", place.Line, strings.TrimSpace(strings.Split(text, "\n")[place.Line-1])))
		}
		found := false
		for _, line := range shown[:min(len(shown), c.within)] {
			_, line, _ = strings.Cut(line, " ")
			found = found || strings.HasPrefix(line, c.line)
		}
		if !found {
			t.Errorf("%q with %q: look at %q, want %q among the first %d", c.asked, c.to, shown, c.line, c.within)
		}
	}
}

// Judged says of each check, in the order of the checks, what was asked where, and what
// came of it.
func TestRecordSaysHowEachCheckWasJudged(t *testing.T) {
	m := fennel(t)
	record := ran(t, m, "Feature: f\n Scenario: s\n  When the roll stick is full right\n  Then the starboard aileron rises\n  And the port aileron rises\n Scenario: before\n  Then the motor is stopped\n  And the elevator is at neutral\n")
	if len(record.Judged) != len(record.Checks) || len(record.Checks) != 4 {
		t.Fatalf("%d judged of %d checks", len(record.Judged), len(record.Checks))
	}
	for i, j := range record.Judged {
		c := &record.Checks[i]
		if j.Verdict.Passed != c.Passed || j.Verdict.Wanted != c.Wanted || m.Setup.Parts[j.Outcome.Subject.Parts[0]].Name != c.Subject || j.At.Moved != (len(c.Moved) > 0) {
			t.Errorf("%s: %+v", c.Sentence, j)
		}
	}
}
