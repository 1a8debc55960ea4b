package script

import (
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
)

const turning = `Feature: Fennel in the air
  Scenario: Rolling right on high rates
    Given rates are high
    When the roll stick is full right
    Then the model rolls right
    And adverse yaw does not grow
    And the elevator stays still
    And the starboard flap rises on purpose
  @port-wing
  Scenario: Pulling up
    When the pitch stick is full back
    Then the model pitches up and the elevator rises
    * with full right yaw, the model yaws right
  Scenario: Losing the signal
    Given the roll stick is full right
    When the signal is lost
    Then the model does not roll
`

func TestRunJudgesTheModelAsAWhole(t *testing.T) {
	want := []string{
		"port wing | the model | pitches UP | true",
		"port wing | elevator | rises | true",
		"port wing | the model | yaws RIGHT | true",
		"tail | elevator | stays still | true",
		"starboard wing | the model | rolls RIGHT | true",
		"starboard wing | the model | adverse yaw no more than with equal up and down throws | true",
		"starboard wing | starboard flap | rises | true",
		"motor and loss of signal | the model | does not roll | true",
	}
	if got := said(ran(t, fennel(t), turning)); !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if got := said(ran(t, fennel(t), turning, "the model")); len(got) != 5 {
		t.Errorf("--only \"the model\" takes %q", got)
	}
}

// Both ailerons reversed: the parts that roll it the wrong way are explained.
func TestRunExplainsTheModelByThePartsThatTurnIt(t *testing.T) {
	m := fennel(t, "port aileron: {channel: 2, chord_mm: 40, measured: {100%: 20° down}}", "port aileron: {channel: 2, chord_mm: 40, measured: {100%: 20° up}}",
		"starboard aileron: {channel: 3, chord_mm: 40, measured: {100%: 20° down}}", "starboard aileron: {channel: 3, chord_mm: 40, measured: {100%: 20° up}}")
	record := ran(t, m, "Feature: f\n Scenario: s\n  When the roll stick is full right\n  Then the model rolls right\n")
	c := record.Checks[0]
	if c.Passed || c.Subject != "the model" || c.Got != "rolls LEFT: starboard aileron and port aileron roll it left" {
		t.Fatalf("got %+v", c)
	}
	if len(c.Why) != 2 || c.Why[0].Of != "starboard aileron" || c.Why[1].Of != "port aileron" {
		t.Fatalf("explained by %+v", c.Why)
	}
	// What is wrong is among the lines to look at: the measured table.
	text := strings.Split(string(m.Source.Text), "\n")
	for _, why := range c.Why {
		if last := why.Chain[len(why.Chain)-1]; last.Stage != "part" || last.Name != why.Of {
			t.Errorf("the chain ends at %+v, want the %s", last, why.Of)
		}
		if !slices.ContainsFunc(why.LookAt, func(p result.Place) bool {
			return strings.Contains(text[p.Line-1], why.Of+":") && strings.Contains(text[p.Line-1], "20° up")
		}) {
			t.Errorf("%s: look at %+v", why.Of, why.LookAt)
		}
	}
}

// What nobody can tell from the ground does not pass, and says so.
func TestRunDoesNotPassWhatCannotBeTold(t *testing.T) {
	m := fennel(t)
	record := ran(t, m, "Feature: f\n Scenario: s\n  When the flap lever is landing\n  Then the model does not pitch\n")
	c := record.Checks[0]
	if c.Passed || len(c.Why) != 2 || !strings.Contains(c.Got, "downwash") {
		t.Fatalf("got %+v", c)
	}
}

// Every servo is a check of its own, and none of them looks at its part.
func TestRunChecksEachServoApart(t *testing.T) {
	pairs := []string{}
	for _, side := range []string{"port", "starboard"} {
		number := map[string]string{"port": "4", "starboard": "5"}[side]
		pairs = append(pairs, side+" flap: {channel: "+number+", chord_mm: 40,", side+" flap: {channel: "+number+", chord_mm: 40, span_mm: [120, 540], servo: {plus_swings: aft, torque_ncm: 60},")
	}
	record := ran(t, fennel(t, pairs...), "Feature: f\n Scenario: s\n  Given the flap lever is landing\n  Then both flap servos have twice the torque they need at 25 m/s\n")
	want := []string{
		"port wing | port flap servo | at least 2 times the torque needed at 25 m/s | true",
		"starboard wing | starboard flap servo | at least 2 times the torque needed at 25 m/s | true",
	}
	if got := said(record); !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	if !slices.Contains(record.Uncovered.Parts, "port flap") {
		t.Errorf("a torque covers the flap: %+v", record.Uncovered)
	}
}

func TestRunExplainsNothingWhereNothingTurnsTheModel(t *testing.T) {
	record := ran(t, fennel(t), "Feature: f\n Scenario: s\n  When the flap lever is landing\n  Then adverse yaw does not grow\n")
	if c := record.Checks[0]; c.Passed || c.Why != nil {
		t.Errorf("got %+v", c)
	}
}

func TestRunRefusesTheModelWithoutAMovement(t *testing.T) {
	got := codesOf(fennel(t), `Feature: f
  Scenario: s
    Given the roll stick is full right
    Then the model rolls right
    And adverse yaw does not grow
    And the flaps add at least 5 % to the roll
    And the port flap servo has enough torque at 20 m/s
`)
	want := []string{"4:10 " + phrase.CodeNoMovement, "5:9 " + phrase.CodeNoMovement, "6:19 " + phrase.CodeMissingSize, "7:29 " + phrase.CodeMissingSize}
	if !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

// Model sentences leave every part uncovered: none is looked at by itself.
func TestModelSentencesCoverNoPart(t *testing.T) {
	record := ran(t, fennel(t), "Feature: f\n Scenario: s\n  When the roll stick is full right\n  Then the model rolls right\n")
	if !slices.Contains(record.Uncovered.Parts, "port aileron") || slices.Contains(record.Uncovered.Controls, "roll stick") {
		t.Errorf("got %+v", record.Uncovered)
	}
}

func TestRecordKeepsWhatWasAsked(t *testing.T) {
	m := fennel(t)
	record := ran(t, m, turning, "the model")
	if len(record.Asked) != 8 || len(record.Checks) != 5 || record.NotSelected != 3 {
		t.Fatalf("%d asked, %d checks, %d not selected", len(record.Asked), len(record.Checks), record.NotSelected)
	}
	roll, flap, pitch, elevator := record.Asked[0], record.Asked[3], record.Asked[4], record.Asked[5]
	if roll.Outcome.Verb != phrase.Turn || roll.Outcome.Axis != mixcore.Roll || roll.Outcome.Way != phrase.Right || roll.Title != "the model" || roll.Outcome.OnPurpose {
		t.Errorf("got %+v", roll)
	}
	if flap.Outcome.Verb != phrase.Move || !flap.Outcome.OnPurpose || flap.Title != "starboard flap" || flap.Check != -1 || flap.Place.Line != 8 || flap.Scenario != "Rolling right on high rates" {
		t.Errorf("got %+v", flap)
	}
	if got := roll.At.MovedControls(); len(got) != 1 || m.Setup.Controls[got[0]].Name != "roll stick" {
		t.Errorf("moved %v", got)
	}
	if elevator.Check != -1 || pitch.Sentence != "the model pitches up and the elevator rises" {
		t.Errorf("got %+v, %+v", pitch, elevator)
	}
	for _, a := range record.Asked {
		if a.Check < 0 {
			continue
		}
		if c := record.Checks[a.Check]; c.Sentence != a.Sentence || c.Subject != a.Title || c.Place != a.Place {
			t.Errorf("%q leads to the check of %q", a.Sentence, c.Sentence)
		}
	}
}
