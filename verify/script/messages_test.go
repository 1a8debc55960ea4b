package script

import (
	"encoding/json"
	"slices"
	"testing"

	"example.com/hingeline/verify/result"
)

const messagesScript = `Feature: F

  Background:
    Given the flap lever is parked
    Then the flaps are at neutral

  Scenario: One
    When the roll stick is full right
    Then the starboard aileron rises
    And the port aileron drops

  Scenario Outline: Two <to>
    When the flap lever is <to>
    Then the flaps drop

    Examples:
      | to      |
      | landing |
      | takeoff |
`

// Every check is at the step that its number names, in every scenario and row.
func TestMessagesHaveEveryCheckAtItsStep(t *testing.T) {
	m := fennel(t)
	files := []File{{Name: "a.feature", Text: []byte(messagesScript)}, {Name: "b.feature", Text: []byte("Feature: G\n  Scenario: Three\n    Then the flaps are at neutral and the port aileron is at neutral\n")}}
	record, problems := Run(m, files, Selection{})
	if len(record.Checks) == 0 {
		t.Fatal(problems)
	}
	sources := Messages(m, files)
	var pickles []result.Pickle
	var names []string
	for _, s := range sources {
		for _, p := range s.Pickles {
			pickles, names = append(pickles, p), append(names, s.URI)
		}
	}
	ran := map[result.StepNumber]int{}
	for _, c := range record.Checks {
		st := pickles[c.Step.Scenario-1].Steps[c.Step.Step-1]
		if st.Text != c.Sentence || st.Line != c.Place.Line || names[c.Step.Scenario-1] != c.Place.File {
			t.Errorf("%s:%d: %q is numbered %+v, which is %q in line %d of %s", c.Place.File, c.Place.Line, c.Sentence, c.Step, st.Text, st.Line, names[c.Step.Scenario-1])
		}
		ran[c.Step]++
	}
	asked := 0
	for i, p := range pickles {
		for k, st := range p.Steps {
			asked += st.Checks
			if got := ran[result.StepNumber{Scenario: i + 1, Step: k + 1}]; got != st.Checks {
				t.Errorf("step %d of pickle %d has %d checks, says %d", k+1, i+1, got, st.Checks)
			}
		}
	}
	if asked != len(record.Checks) || len(pickles) < 4 {
		t.Errorf("%d checks in %d pickles, wanted %d", asked, len(pickles), len(record.Checks))
	}
}

// The steps of a background stand at their own line, those of an outline at their row.
func TestMessagesHaveTheLinesOfRows(t *testing.T) {
	p := Messages(fennel(t), []File{{Name: "a.feature", Text: []byte(messagesScript)}})[0].Pickles[2]
	var lines []int
	for _, st := range p.Steps {
		lines = append(lines, st.Line)
	}
	if want := []int{4, 5, 19, 19}; !slices.Equal(lines, want) {
		t.Errorf("lines %v, wanted %v", lines, want)
	}
	var message struct {
		ID   string
		Name string
	}
	if err := json.Unmarshal(p.Message, &message); err != nil || message.ID != p.ID || message.Name != "Two takeoff" {
		t.Errorf("the pickle is %+v, %v", message, err)
	}
}

func TestMessagesOfABrokenScriptAreNone(t *testing.T) {
	if got := Messages(fennel(t), []File{{Name: "a.feature", Text: []byte("Feature: F\n  Scenario: S\n    Then whatever\n")}}); got != nil {
		t.Errorf("got %+v", got)
	}
}

// A byte order mark is no part of the text, so that its columns are those of the tree.
func TestMessagesLeaveOutTheByteOrderMark(t *testing.T) {
	s := Messages(fennel(t), []File{{Name: "a.feature", Text: []byte("\uFEFF" + messagesScript)}})[0]
	if s.Text != messagesScript {
		t.Errorf("the text is %q", s.Text)
	}
}
