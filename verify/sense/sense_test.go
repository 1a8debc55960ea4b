package sense

import (
	"bytes"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/features"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/verifytest"
)

func run(t *testing.T, m *airframes.Model, text string) script.Record {
	t.Helper()
	record, problems := script.Run(m, []script.File{{Name: "script.feature", Text: []byte(text)}}, script.Selection{})
	if diag.HasErrors(problems) {
		var said bytes.Buffer
		diag.Write(&said, problems, diag.NewSource("script.feature", []byte(text)))
		t.Fatalf("the test's own script is refused:\n%s", &said)
	}
	return record
}

// found are the findings of one code.
func found(list []result.ScriptFinding, code string) []result.ScriptFinding {
	var of []result.ScriptFinding
	for _, f := range list {
		if f.Code == code {
			of = append(of, f)
		}
	}
	return of
}

// lookAt looks at a script of one scenario with these steps.
func lookAt(t *testing.T, m *airframes.Model, steps ...string) []result.ScriptFinding {
	t.Helper()
	text := "Feature: Test\n  Scenario: Test\n    " + strings.Join(steps, "\n    ") + "\n"
	return Look(m, run(t, m, text).Asked)
}

// Nothing is invented about the scripts that Hingeline ships: nothing fights the
// aeroplane there, nothing contradicts, and nothing is left out.
func TestLookFindsNothingInShippedScripts(t *testing.T) {
	for _, name := range features.Names() {
		m := verifytest.Shipped(t, name)
		text, _ := features.Read(name)
		record := run(t, m, string(text))
		if len(record.Asked) < 20 {
			t.Errorf("%s: only %d outcomes: this looks at nothing", name, len(record.Asked))
		}
		for _, f := range Look(m, record.Asked) {
			t.Errorf("%s: %+v", name, f)
		}
	}
}

// Every movement and position in the shipped scripts that answers a stick is
// found once it is turned round, by its own sentence and with a right one that is
// the way it was.
func TestEveryShippedExpectationIsSuspiciousTurnedRound(t *testing.T) {
	turnable := map[phrase.Way]phrase.Way{
		phrase.Up: phrase.Down, phrase.Down: phrase.Up, phrase.Left: phrase.Right, phrase.Right: phrase.Left,
		phrase.Faster: phrase.Slower, phrase.Slower: phrase.Faster, phrase.Out: phrase.In, phrase.In: phrase.Out,
	}
	least := map[string]int{ // of each model: that many at least, or the test looks at too little
		"bracken-20": 60, "garrow-twin": 60, "hollin-spoilers": 20, "ousel-trainer": 10, "pellin-park": 14,
		"quoin-delta": 40, "skein-wing": 40, "skerry": 80, "tansel-aerobatic": 60, "tarn-measured": 30, "turnstone-canard": 40,
	}
	for _, name := range features.Names() {
		m := verifytest.Shipped(t, name)
		text, _ := features.Read(name)
		asked := run(t, m, string(text)).Asked
		turned := 0
		for i := range asked {
			a := asked[i]
			if a.Outcome.Verb != phrase.Move && a.Outcome.Verb != phrase.Turn {
				continue
			}
			was := a.Outcome.Way
			a.Outcome.Way = turnable[was]
			for _, f := range found(Look(m, []phrase.Asked{a}), codeSuspicious) {
				turned++
				if !f.Fails || f.Sentence != a.Sentence || f.Place != a.Place || f.Reason == "" {
					t.Errorf("%s: %+v", name, f)
				}
				want := doesWords[was]
				if a.Outcome.Verb == phrase.Turn {
					want = isWords[was]
				}
				if !strings.HasSuffix(f.Right, want) {
					t.Errorf("%s: %q turned round has %q as its right sentence, want it to end in %q", name, a.Sentence, f.Right, want)
				}
			}
		}
		if turned < least[name] {
			t.Errorf("%s: %d expectations were found turned round, want at least %d", name, turned, least[name])
		}
	}
}

const backwards = `Feature: Bracken 20, by somebody in a hurry
  Background:
    Given rates are high
  Scenario: Right roll
    When the roll stick is full right
    Then the starboard aileron rises
    And the port aileron drops
    And the starboard flap drops
    And the port flap rises
  Scenario: Back
    When the pitch stick is full back
    Then the elevator drops
  Scenario: Left rudder
    When the yaw stick is full left
    Then the rudder moves right
    And the nose wheel moves left
  Scenario: Landing
    When the flap lever is at landing
    Then the port flap drops
    And the starboard flap rises
`

// Five sentences of the script fight the aeroplane. All five are found and no
// other, whether the set-up is right or so wrong that it does what they ask.
func TestFiveBackwardsExpectationsAreFound(t *testing.T) {
	right := verifytest.Shipped(t, "bracken-20")
	wrong := *right
	wrong.Setup.Channels = append([]mixcore.Channel(nil), right.Setup.Channels...)
	for _, number := range []int{4, 6, 7} {
		for i := range wrong.Setup.Channels {
			if c := &wrong.Setup.Channels[i]; c.Number == number {
				c.Reversed = !c.Reversed
			}
		}
	}
	plan, faults := mixcore.Compile(wrong.Setup)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	wrong.Plan = plan
	want := []string{"starboard flap drops", "port flap rises", "elevator drops", "rudder moves right", "starboard flap rises"}
	for name, m := range map[string]*airframes.Model{"right": right, "wrong": &wrong} {
		record := run(t, m, backwards)
		passes := map[string]bool{}
		for _, c := range record.Checks {
			passes[c.Sentence] = c.Passed
		}
		if name == "wrong" && (!passes["the elevator drops"] || !passes["the rudder moves right"] || !passes["the starboard flap rises"]) {
			t.Errorf("the wrong set-up does not do what the wrong script asks: %v", passes)
		}
		got := found(Look(m, record.Asked), codeSuspicious)
		if len(got) != len(want) {
			t.Fatalf("%s set-up: %d are found, want %d: %+v", name, len(got), len(want), got)
		}
		for i, f := range got {
			if f.Sentence != "the "+want[i] || !f.Fails || f.OnPurpose {
				t.Errorf("%s set-up: %d is %+v, want %q", name, i, f, want[i])
			}
		}
	}
}

// A set-up that is reversed from end to end passes a script that is backwards
// from end to end; the look at the script does not.
func TestBackwardsScriptOnReversedModelPassesNoLook(t *testing.T) {
	m := verifytest.Model(t, "mini.yaml", strings.Replace(mini, "mix: pitch", "mix: pitch, reversed: true", 1))
	record := run(t, m, "Feature: Mini\n  Scenario: Back\n    When the pitch stick is full back\n    Then the elevator drops\n")
	if len(record.Checks) != 1 || !record.Checks[0].Passed {
		t.Fatalf("the check is to pass: %+v", record.Checks)
	}
	if got := found(Look(m, record.Asked), codeSuspicious); len(got) != 1 || !got[0].Fails {
		t.Errorf("found %+v, want the one sentence", got)
	}
}

const mini = `hingeline: 1
name: Mini
controls:
  pitch stick: pitch
demands:
  pitch: pitch stick
channels:
  1: {mix: pitch}
surfaces:
  elevator: {channel: 1, measured: {-100%: 20° down, 0%: 0°, 100%: 20° up}}
`
