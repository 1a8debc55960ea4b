package script

import (
	"bytes"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/result"
)

// ran runs one script that must be without mistake.
func ran(t testing.TB, m *airframes.Model, text string, only ...string) Record {
	t.Helper()
	record, problems := Run(m, []File{{"test.feature", []byte(text)}}, Selection{Only: only})
	if len(problems) > 0 {
		var said bytes.Buffer
		diag.Write(&said, problems, diag.NewSource("test.feature", []byte(text)))
		t.Fatalf("the script is refused:\n%s", &said)
	}
	return record
}

// codesOf are the codes of the problems of one script.
func codesOf(m *airframes.Model, text string) (codes []string) {
	_, problems := Run(m, []File{{"test.feature", []byte(text)}}, Selection{})
	for _, p := range problems {
		codes = append(codes, fmt.Sprintf("%d:%d %s", p.Line, p.Column, p.Code))
	}
	return codes
}

// said is a record in short.
func said(record Record) (lines []string) {
	for _, c := range record.Checks {
		lines = append(lines, fmt.Sprintf("%s | %s | %s | %v", c.Stage, c.Subject, c.Wanted, c.Passed))
	}
	return lines
}

const rolling = `Feature: Fennel
  @wing
  Scenario: Rolling right on high rates
    Given rates are high
    When the roll stick is full right
    Then the starboard aileron rises 20° ± 2°
    And the port aileron drops
    And the flaps stay where they are
    And the starboard flap rises, at least 8°
    But the elevator stays still
`

func TestRunRecordsEveryOutcomeInWalkAroundOrder(t *testing.T) {
	want := []string{
		"port wing | port aileron | drops | true",
		"port wing | port flap | stays still | false",
		"tail | elevator | stays still | true",
		"starboard wing | starboard aileron | rises 20° ± 2° | true",
		"starboard wing | starboard flap | stays still | false",
		"starboard wing | starboard flap | rises at least 8° | true",
	}
	record := ran(t, fennel(t), rolling)
	if got := said(record); !slices.Equal(got, want) {
		t.Errorf("got:\n%s\nwant:\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	for _, c := range record.Checks {
		if c.Feature != "Fennel" || c.Scenario != "Rolling right on high rates" || c.Place.File != "test.feature" || c.Place.Line < 6 || !c.Rests {
			t.Errorf("the check does not say where it comes from: %+v", c)
		}
		if pose := strings.Join(c.Pose, ", "); pose != "roll stick full right, rate switch high" {
			t.Errorf("got the pose %q", pose)
		}
		if c.Passed == (len(c.Why) > 0) {
			t.Errorf("passed %v with %d reasons", c.Passed, len(c.Why))
		}
		for _, why := range c.Why {
			if why.Of != c.Subject || len(why.Chain) == 0 || len(why.LookAt) == 0 {
				t.Errorf("a failed check of the %s is explained by %+v", c.Subject, why)
			}
		}
	}
}

func TestRunCatchesPlantedFaults(t *testing.T) {
	const script = `Feature: Fennel
  Scenario: Roll
    When the roll stick is full right
    Then the starboard aileron rises and the port aileron drops
    And the flaps stay still
  Scenario: Flaps
    * with landing flap, the flaps drop 40° ± 2°
    * with landing flap, the port flap moves together with the starboard flap
  Scenario: Tail
    * with full back pitch, the elevator rises
    * with right yaw, the rudder moves right and the nose wheel moves right
  Scenario: Motor
    * with safe motor, when throttle is full, the motor stays stopped
    * with live motor and full throttle, when the signal is lost, the motor stops
`
	failed := func(m *airframes.Model) (subjects []string) {
		for _, c := range ran(t, m, script).Checks {
			if !c.Passed && !slices.Contains(subjects, c.Subject) {
				subjects = append(subjects, c.Subject)
			}
		}
		return subjects
	}
	if got := failed(fennel(t)); got != nil {
		t.Fatalf("the good model fails: %v", got)
	}
	for _, c := range []struct {
		name, from, to string
		want           []string
	}{
		{"port aileron reversed", "2: {name: port aileron,", "2: {name: port aileron, reversed: true,", []string{"port aileron"}},
		{"starboard aileron reversed", "3: {name: starboard aileron,", "3: {name: starboard aileron, reversed: true,", []string{"starboard aileron"}},
		{"elevator reversed", "6: {name: elevator,", "6: {name: elevator, reversed: true,", []string{"elevator"}},
		{"steering reversed", "7: {name: steering,", "7: {name: steering, reversed: true,", []string{"rudder", "nose wheel"}},
		{"aileron channels swapped", "port aileron: {channel: 2,", "port aileron: {channel: 3,", []string{"port aileron"}},
		{"flaps join on low rates", "share: 20%, when: rate switch is high", "share: 20%", []string{"port flap"}},
		{"flap short", "share: 80%", "share: 70%", []string{"port flap"}},
		{"no safe motor", "- {replace_with: -100%, when: motor switch is safe}", "- 0%", []string{"motor"}},
		{"motor holds", "failsafe: -100%", "failsafe: hold", []string{"motor"}},
	} {
		if got := failed(fennel(t, c.from, c.to)); !slices.Equal(got, c.want) {
			t.Errorf("%s: failing %v, want %v", c.name, got, c.want)
		}
	}
}

func TestRunGoesOnAfterAFailedCheck(t *testing.T) {
	record := ran(t, fennel(t), `Feature: f
  Scenario: first
    When right roll
    Then the port aileron rises
    And the starboard aileron rises
    When left roll
    Then the port aileron rises
  Scenario: second
    Then the elevator is at neutral
`)
	var passed []bool
	for _, c := range record.Checks {
		passed = append(passed, c.Passed)
	}
	if len(passed) != 4 || slices.Index(passed, false) < 0 || slices.Contains(passed[2:], false) {
		t.Errorf("got %v", said(record))
	}
}

func TestRunIsTheSameEveryTimeAndFromManyGoroutines(t *testing.T) {
	m := fennel(t)
	want := ran(t, m, rolling)
	var wait sync.WaitGroup
	for range 4 {
		wait.Go(func() {
			for range 5 {
				record, problems := Run(m, []File{{"test.feature", []byte(rolling)}}, Selection{})
				if len(problems) > 0 || !reflect.DeepEqual(record, want) {
					t.Errorf("got %+v, %v", record, problems)
				}
			}
		})
	}
	wait.Wait()
}

func TestRunTakesSeveralFiles(t *testing.T) {
	m := fennel(t)
	second := "Feature: g\n  Scenario: s\n    Then the rudder is at neutral\n"
	record, problems := Run(m, []File{{"a.feature", []byte(rolling)}, {"b.feature", []byte(second)}}, Selection{})
	if len(problems) > 0 || len(record.Checks) != 7 || record.Checks[0].Place.File != "b.feature" {
		t.Errorf("got %v, %v", said(record), problems)
	}
	_, problems = Run(m, []File{{"a.feature", []byte(rolling)}, {"a.feature", []byte(second)}}, Selection{})
	if len(problems) != 1 || problems[0].Code != codeSameScript {
		t.Errorf("two files of one name: got %v", problems)
	}
}

func TestStagesFollowTagsThenThePose(t *testing.T) {
	record := ran(t, fennel(t), `@port-wing
Feature: f
  Scenario: of the feature
    Then the rudder is at neutral
  @starboard-wing
  Scenario: its own
    Then the rudder is at neutral
`)
	want := []string{"port wing | rudder | neutral | true", "starboard wing | rudder | neutral | true"}
	if got := said(record); !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
	record = ran(t, fennel(t), `Feature: f
  Scenario: s
    Then the rudder is at neutral
    And the motor is stopped
    * with right yaw, when the signal is lost, the nose wheel points right
    * with landing flap, when the signal is lost, channel 4 is within its travel and channel 5 is within its travel
    When the signal is lost
    Then the rudder is at neutral
`)
	want = []string{
		"before power | rudder | neutral | true",
		"motor and loss of signal | motor | stopped | true",
		"motor and loss of signal | nose wheel | RIGHT | true",
		"motor and loss of signal | channel 4 (port flap) | within its travel | true",
		"motor and loss of signal | channel 5 (starboard flap) | within its travel | true",
		"motor and loss of signal | rudder | neutral | true",
	}
	if got := said(record); !slices.Equal(got, want) {
		t.Errorf("got:\n%s\nwant:\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

func TestSelectionTakesTagsStagesAndWords(t *testing.T) {
	m := fennel(t)
	const script = `Feature: f
  @wing @first
  Scenario: Ailerons to the right
    When right roll
    Then the ailerons do not move
  @tail
  Scenario: Rudder
    * with right yaw, the rudder moves right and the nose wheel moves right
`
	for _, c := range []struct {
		only []string
		want int
	}{
		{nil, 4}, {[]string{"@wing"}, 2}, {[]string{"@WING"}, 2}, {[]string{"tail"}, 2}, {[]string{"Port Wing"}, 1}, {[]string{"starboard-wing"}, 1},
		{[]string{"rudder"}, 2}, {[]string{"nose wheel"}, 1}, {[]string{"to the right"}, 2}, {[]string{"@first", "nose wheel"}, 3},
	} {
		record := ran(t, m, script, c.only...)
		if len(record.Checks) != c.want || record.NotSelected != 4-c.want {
			t.Errorf("%v: got %d checks and %d left out, want %d", c.only, len(record.Checks), record.NotSelected, c.want)
		}
	}
	for _, only := range []string{"@win", "wing", "", " ", "@", "fuselage", "ail"} {
		record, problems := Run(m, []File{{"test.feature", []byte(script)}}, Selection{Only: []string{"rudder", only}})
		if len(problems) != 1 || problems[0].Code != CodeNothingSelected || len(record.Checks) > 0 {
			t.Errorf("%q: got %v and %d checks", only, problems, len(record.Checks))
		}
	}
}

// What stands somewhere while something else is judged is not covered by that,
// and what the model cannot hear covers nothing.
func TestUncoveredWantsMovementsThatTheModelHears(t *testing.T) {
	for _, c := range []struct{ steps, control, position string }{
		{"Given right roll\n  When full back pitch\n  Then the elevator rises", "roll stick", ""},
		{"Given full throttle\n  Then the motor is stopped", "throttle", ""},
		{"Given right roll\n  When the signal is lost\n  Then the port aileron stays still", "roll stick", ""},
		{"When the signal is lost\n  When right roll\n  And the signal is back\n  Then the port aileron drops", "", ""},
		{"When the signal is lost\n  When right roll\n  When the signal is back\n  Then the port aileron drops", "", ""},
		{"When right roll\n  Then the port aileron drops", "", ""},
		{"* with right roll, the port aileron drops", "", ""},
		{"Given the signal is lost\n  And rates are high\n  Then the port aileron is at neutral", "rate switch", ""},
		{"Given rates are high\n  When right roll\n  Then the port aileron drops", "", "rate switch low"},
		{"Given landing flap\n  When right roll\n  Then the port aileron drops", "", "flap lever takeoff"},
	} {
		u := ran(t, fennel(t), "Feature: f\n Scenario: s\n  "+c.steps+"\n").Uncovered
		for _, control := range []string{"roll stick", "throttle", "rate switch"} {
			mentioned := strings.Contains(c.steps, "roll") && control == "roll stick" || strings.Contains(c.steps, control) || control == "rate switch" && strings.Contains(c.steps, "rates")
			if got := slices.Contains(u.Controls, control); mentioned && got != (control == c.control) {
				t.Errorf("%q: the %s is uncovered: %v", c.steps, control, got)
			}
		}
		if c.position != "" && !slices.Contains(u.Positions, c.position) {
			t.Errorf("%q: got the positions %q, want %q among them", c.steps, u.Positions, c.position)
		}
	}
}

func TestUncoveredNamesWhatNoCheckTouched(t *testing.T) {
	record := ran(t, fennel(t), `Feature: f
  Scenario: s
    Given rates are high
    When the flap lever is at takeoff
    Then the port flap moves together with the starboard flap
    And channel 6 is within its travel
`)
	want := result.Uncovered{
		Parts:     []string{"port aileron", "starboard aileron", "rudder", "nose wheel", "motor"},
		Controls:  []string{"roll stick", "roll trim", "pitch stick", "yaw stick", "throttle", "motor switch"},
		Positions: []string{"flap lever landing", "rate switch low"},
	}
	got := record.Uncovered
	slices.Sort(got.Controls)
	slices.Sort(want.Controls)
	slices.Sort(got.Parts)
	slices.Sort(want.Parts)
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got %+v, want %+v", got, want)
	}
}

func BenchmarkRun(b *testing.B) {
	m := fennel(b)
	for b.Loop() {
		ran(b, m, rolling)
	}
}
