package script

import (
	"slices"
	"strings"
	"testing"
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
		{"a star takes the role before it", "  Scenario: s\n    Given rates are high\n    * landing flap\n    When right roll\n    * full throttle" + look, []string{"roll stick full right, throttle 100 %, flap lever landing, rate switch high"}},
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
