package script

import (
	"fmt"
	"slices"
	"testing"
)

func TestOutlineRunsEachRowAtItsPlace(t *testing.T) {
	record := ran(t, fennel(t), `Feature: f
  Scenario Outline: The rudder <way>
    When the yaw stick is <amount> <way>
    Then the rudder moves <way>

    Examples: full
      | amount | way   |
      | full   | right |
      | full   | left  |
    @half
    Examples: half
      | way   | amount |
      | right | half   |
`)
	var got []string
	for _, c := range record.Checks {
		got = append(got, fmt.Sprintf("%d:%d %s: %s %v", c.Place.Line, c.Place.Column, c.Scenario, c.Sentence, c.Passed))
	}
	want := []string{
		"8:7 The rudder right: the rudder moves right true",
		"9:7 The rudder left: the rudder moves left true",
		"13:7 The rudder right: the rudder moves right true",
	}
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestOutlineMistakesAreShownWhereTheyWereWritten(t *testing.T) {
	m := fennel(t)
	const head = "Feature: f\n  Scenario Outline: o\n    When the yaw stick is full <way>\n    Then the <part> moves <way>\n    Examples:\n      | part | way |\n"
	for _, c := range []struct{ row, want string }{
		{"      | ruder  | right |\n", "7:9 unknown-subject"},
		{"      | rudder | rihgt |\n", "3:27 unknown-setting"},
		{"      | the \\| rudder | right |\n", "7:13 unknown-sentence"},
		{"      | <way>  | right |\n", "7:9 unknown-column"},
	} {
		if got := codesOf(m, head+c.row); !slices.Contains(got, c.want) {
			t.Errorf("%q: got %v, want %s", c.row, got, c.want)
		}
	}
	// The same mistake in every row is one mistake.
	if got := codesOf(m, "Feature: f\n  Scenario Outline: o\n    When yaw full <way>\n    Then the ruder moves <way>\n    Examples:\n      | way |\n      | right |\n      | left |\n"); len(got) != 1 {
		t.Errorf("got %v, want one problem", got)
	}
}
