package script

import (
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
)

// poses runs a script of "the elevator is at neutral" sentences and says the
// pose of each check, in the order of the script.
func poses(t *testing.T, steps string) (list []string) {
	t.Helper()
	m := fennel(t)
	scenarios, vocabulary, problems := prepare(m, []File{{"test.feature", []byte("Feature: f\n" + steps)}})
	if len(problems) > 0 {
		t.Fatalf("refused: %+v", problems)
	}
	each(scenarios, func(ch *check) {
		ch.judge(m, vocabulary)
		list = append(list, strings.Join(ch.result.Pose, ", "))
	})
	return list
}

func TestSceneFollowsGivenAndWhen(t *testing.T) {
	const look = "\n    Then the rudder is at neutral\n"
	for _, c := range []struct {
		name, steps string
		want        []string
	}{
		{"nothing set rests", "  Scenario: s" + look, []string{""}},
		{"Givens add up", "  Scenario: s\n    Given rates are high\n    Given landing flap\n    And live motor" + look, []string{"flap lever landing, rate switch high, motor switch live"}},
		{"a When comes on top", "  Scenario: s\n    Given rates are high\n    When right roll" + look, []string{"roll stick full right, rate switch high"}},
		{"a later When moves on", "  Scenario: s\n    When right roll" + look + "    When full throttle" + look, []string{"roll stick full right", "roll stick full right, throttle 100 %"}},
		{"a later Given forgets the movement", "  Scenario: s\n    Given rates are high\n    When right roll" + look + "    Given landing flap" + look, []string{"roll stick full right, rate switch high", "flap lever landing, rate switch high"}},
		{"a background may be overruled", "  Background:\n    Given rates are high\n  Scenario: s\n    Given rates are low\n    And right roll" + look, []string{"roll stick full right"}},
		{"And goes on from the background", "  Background:\n    Given rates are high\n  Scenario: s\n    And right roll" + look, []string{"roll stick full right, rate switch high"}},
		{"a star takes the role before it", "  Scenario: s\n    Given rates are high\n    * landing flap\n    When right roll\n    * full throttle" + look, []string{"roll stick full right, flap lever landing, rate switch high, throttle 100 %"}},
		{"stars alone", "  Scenario: s\n    * everything rests\n    Then the rudder is at neutral\n    * the elevator is at neutral\n", []string{"", ""}},
		{"one line changes nothing for others", "  Scenario: s\n    Given rates are high\n    * with right yaw, the rudder moves right" + look, []string{"yaw stick full right, rate switch high", "rate switch high"}},
		{"everything rests", "  Scenario: s\n    Given rates are high\n    When everything rests and right roll" + look, []string{"roll stick full right"}},
		{"signal", "  Scenario: s\n    When right roll\n    When the signal is lost" + look + "    When the signal is back" + look, []string{"roll stick full right, signal lost", "roll stick full right"}},
	} {
		if got := poses(t, c.steps); !slices.Equal(got, c.want) {
			t.Errorf("%s: got %q, want %q", c.name, got, c.want)
		}
	}
}

func TestSceneComparesWithTheStateBeforeTheWholeMovement(t *testing.T) {
	m := fennel(t)
	for _, c := range []struct{ name, steps, want string }{
		// The flaps go down with the lever, then up with roll; together they go down.
		{"Whens joined by And are one movement", "Given rates are high\n When landing flap\n And right roll\n Then the starboard flap drops 30° ± 1°", "starboard wing | starboard flap | drops 30° ± 1° | true"},
		{"a second When starts from the first", "Given rates are high\n When landing flap\n When right roll\n Then the starboard flap rises 10° ± 1°", "starboard wing | starboard flap | rises 10° ± 1° | true"},
		{"a When after a Then moves on", "Given rates are high\n When landing flap\n Then the elevator is at neutral\n When right roll\n Then the starboard flap rises 10° ± 1°", "starboard wing | starboard flap | rises 10° ± 1° | true"},
		{"one line moves sticks, not switches", "* with rates high, landing flap and right roll, the starboard flap rises 10° ± 1°", "starboard wing | starboard flap | rises 10° ± 1° | true"},
	} {
		got := said(ran(t, m, "Feature: f\n Scenario: s\n "+c.steps+"\n"))
		if got[len(got)-1] != c.want {
			t.Errorf("%s: got %q, want %q", c.name, got, c.want)
		}
	}
}

func TestSceneRefusesWhatShowsNothing(t *testing.T) {
	m := fennel(t)
	for _, c := range []struct{ steps, want string }{
		{"Given right roll\n    Then the flaps stay still", "4:10 no-movement"},
		{"When right roll\n    Given rates are high\n    Then the flaps stay still", "5:10 no-movement"},
		{"When right roll\n    Given rates are high\n    Then the rudder is at neutral", "3:10 nothing-asked"},
		{"When right roll\n    Then the ailerons are down\n    When left roll\n    And landing flap", "6:9 nothing-asked"},
		{"Then the ailerons are down\n    Given landing flap", "4:11 nothing-asked"},
		{"Then the flaps are down after 2 s", "3:10 no-movement"},
		{"When low rates\n    Then the flaps stay still", "4:10 no-movement"},
		{"When right roll\n    When right roll\n    Then the flaps stay still", "5:10 no-movement"},
		{"* with everything rests, the flaps stay still", "3:30 no-movement"},
		{"* with right roll, when the signal is lost and the throttle is full, the motor stops", "3:29 unclear-order"},
		{"When right roll\n    And left roll\n    Then the flaps stay still", "4:9 set-twice"},
		{"* rates are high\n    * the flaps stay still", "4:7 wrong-keyword"},
	} {
		if got := codesOf(m, "Feature: f\n  Scenario: s\n    "+c.steps+"\n"); !slices.Contains(got, c.want) {
			t.Errorf("%q: got %v, want %s", c.steps, got, c.want)
		}
	}
}

// A signal that the state has lost was lost where the whole state stands, however
// it is written. The motor channel holds what it had.
func TestSceneLosesTheSignalWhereTheStateStands(t *testing.T) {
	holding := fennel(t, "failsafe: -100%", "failsafe: hold")
	good := fennel(t)
	const asks = "\n    Then the motor is stopped\n"
	for _, steps := range []string{
		"  Background:\n    Given the signal is lost\n  Scenario: s\n    Given live motor\n    And full throttle" + asks,
		"  Scenario: s\n    Given the signal is lost\n    And live motor and full throttle" + asks,
		"  Scenario: s\n    Given the signal is lost\n    Then the rudder is at neutral\n    Given live motor and full throttle" + asks,
		"  Scenario: s\n    Given live motor and full throttle and the signal is lost" + asks,
		"  Scenario: s\n    Given live motor and full throttle\n    When the signal is lost" + asks,
		"  Scenario: s\n    * with live motor, full throttle and the signal lost, the motor is stopped\n",
		"  Scenario: s\n    * with the signal lost, live motor and full throttle, the motor stops\n",
		"  Background:\n    Given live motor\n  Scenario: s\n    * with full throttle and the signal lost, the motor stops\n",
	} {
		for model, want := range map[string]bool{"holds": false, "stops": true} {
			m := map[string]*airframes.Model{"holds": holding, "stops": good}[model]
			for _, c := range ran(t, m, "Feature: f\n"+steps).Checks {
				if c.Subject == "motor" && c.Passed != want {
					t.Errorf("a motor that %s: %q passed %v: %s", model, steps, c.Passed, c.Got)
				}
			}
		}
	}
}

// A one-line sentence adds to a state without signal, too.
func TestOneLineAddsToAStateThatLostTheSignal(t *testing.T) {
	const steps = "Feature: f\n  Scenario: s\n    Given the signal is lost\n    * with live motor and full throttle, when the signal is back, the motor speeds up\n"
	if c := ran(t, fennel(t), steps).Checks[0]; !c.Passed {
		t.Errorf("a motor that stopped: %s", c.Got)
	}
	if c := ran(t, fennel(t, "failsafe: -100%", "failsafe: hold"), steps).Checks[0]; c.Passed {
		t.Errorf("a motor that went on: %s", c.Got)
	}
}

func TestSceneRefusesWhatTheModelCannotHear(t *testing.T) {
	m := fennel(t)
	for _, c := range []struct{ steps, want string }{
		{"Given the signal is lost\n    When full throttle\n    Then the motor stays stopped", "5:10 no-movement"},
		{"When the signal is lost\n    When full throttle\n    Then the motor is stopped", "5:10 no-movement"},
		{"When the signal is lost\n    * with full throttle, the motor is stopped", "4:27 no-movement"},
		{"Given the signal is lost\n    * with rates high, when right roll, the rudder is at neutral", "4:41 no-movement"},
		{"When the roll stick is 0.5% right\n    Then the rudder stays still", "4:10 no-movement"},
	} {
		if got := codesOf(m, "Feature: f\n  Scenario: s\n    "+c.steps+"\n"); !slices.Contains(got, c.want) {
			t.Errorf("%q: got %v, want %s", c.steps, got, c.want)
		}
	}
}

// What goes on from a one-line sentence asks something too.
func TestSceneGoesOnFromOneLineSentencesAsThen(t *testing.T) {
	m := fennel(t)
	record := ran(t, m, "Feature: f\n  Scenario: s\n    Given rates are high\n    * with landing flap, the port flap drops\n    And the flaps are down\n    * the rudder is at neutral\n")
	want := []string{
		"port wing | port flap | drops | true", "port wing | port flap | trailing edge DOWN | false",
		"tail | rudder | neutral | true", "starboard wing | starboard flap | trailing edge DOWN | false",
	}
	if got := said(record); !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	for _, c := range []struct{ steps, want string }{
		{"* with landing flap, the port flap drops\n    And rates are high", "4:9 wrong-keyword"},
		{"Given rates are high\n    * with landing flap, the port flap drops\n    * landing flap", "5:7 wrong-keyword"},
		{"* with landing flap, the port flap drosp\n    And rates are high", "4:9 wrong-keyword"},
	} {
		if got := codesOf(m, "Feature: f\n  Scenario: s\n    "+c.steps+"\n"); !slices.Contains(got, c.want) {
			t.Errorf("%q: got %v, want %s", c.steps, got, c.want)
		}
	}
}

func TestSceneRefusesAMovementOfABackgroundThatIsForgotten(t *testing.T) {
	m := fennel(t)
	const background = "Feature: f\n  Background:\n    Given rates are high\n    When right roll\n"
	const asks = "    Then the port aileron is down\n"
	got := codesOf(m, background+"  Scenario: a\n"+asks+"  Scenario: b\n    Given landing flap\n"+asks+"  Scenario: c\n    Given landing flap\n"+asks)
	if !slices.Equal(got, []string{"4:10 nothing-asked"}) {
		t.Errorf("got %v", got)
	}
	ran(t, m, background+"  Scenario: a\n"+asks+"  Scenario: b\n    And landing flap\n"+asks+"  Scenario: c\n"+asks+"    Given landing flap\n    Then the flaps are down\n")
}
