package cause_test

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/faults/cause"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/verifytest"
)

func written(sentences ...string) []script.File {
	return []script.File{{Name: "own.feature", Text: []byte("Feature: Own\n\n  Scenario: Sticks\n    * " + strings.Join(sentences, "\n    * ") + "\n")}}
}

func changes(list []result.Repair) (all []string) {
	for _, r := range list {
		all = append(all, r.Change)
	}
	return all
}

// A mistake in the file that its script catches: where one change of the catalogue leads
// back to the file without it, that change is offered, whatever the laws say of the file
// with the mistake.
func TestRepairsOfferTheWayBack(t *testing.T) {
	for _, name := range airframes.Shipped() {
		m := verifytest.Shipped(t, name)
		all := mistake.All(m, mistake.Options{})
		tried := 0
		for i := range all {
			wrong, faults := all[i].Variant(m)
			if i%(12**oneIn) != 0 || faults != nil || all[i].Kind.Timed {
				continue
			}
			back := slices.IndexFunc(mistake.All(wrong, mistake.Options{}), func(c mistake.Mistake) bool {
				again, faults := c.Variant(wrong)
				return faults == nil && len(mistake.Touched(m.Plan, again.Plan)) == 0
			})
			r := cause.Repairs(context.Background(), wrong, verifytest.Scripts(t, name))
			if back < 0 || r == nil {
				continue
			}
			tried++
			want := mistake.All(wrong, mistake.Options{})[back].Change
			if !slices.Contains(changes(r.List), want) {
				t.Errorf("%s: %s: %q is not among the %d offered: %q", name, all[i].Text, want, len(r.List), changes(r.List))
			}
		}
		t.Logf("%s: %d tried", name, tried)
		if tried == 0 && len(all) > 12**oneIn {
			t.Errorf("%s: no mistake was tried", name)
		}
	}
}

// What a law found of the file must hold after a change even where the law would no longer
// ask: a rudder that goes the wrong way in the script is not repaired by letting it follow
// the pitch stick.
func TestRepairsNeverTakeAControlAway(t *testing.T) {
	m := verifytest.Shipped(t, "ousel-trainer")
	for _, sentence := range []string{
		"with the yaw stick full right, the rudder stays still",
		"with the yaw stick full right, the rudder moves left",
	} {
		r := cause.Repairs(context.Background(), m, written(sentence))
		if r == nil {
			t.Fatalf("%q fails nothing", sentence)
		}
		for _, change := range changes(r.List) {
			if strings.Contains(change, "follow") || strings.Contains(change, "reverse") || strings.Contains(change, "unplug") {
				t.Errorf("%q: offered is %q", sentence, change)
			}
		}
	}
}

// elevatorOnly is a check that swapped plugs of elevator and steering fail.
const elevatorOnly = "with the pitch stick full back, the elevator rises"

func swappedPlugs(t *testing.T) *airframes.Model {
	m := verifytest.Shipped(t, "bracken-20")
	wrong, faults := m.With(mistakeOf(t, m, "the plugs of channel 6 (elevator) and channel 7 (steering) are swapped").Edit)
	if faults != nil {
		t.Fatal(faults)
	}
	return wrong
}

// A change that mends the failing check and breaks another is not offered, where it is
// offered without that other.
func TestRepairsKeepTheOtherChecks(t *testing.T) {
	const swap, follow = "swap the plugs of channel 6 (elevator) and channel 7 (steering)", "let the share of yaw on channel 7 (steering) follow pitch"
	for _, c := range []struct {
		also string
		want []string
	}{
		{"with the yaw stick full left, the elevator stays still", []string{swap, follow}},
		{"with the yaw stick full left, the rudder moves left", []string{swap}},
	} {
		r := cause.Repairs(context.Background(), swappedPlugs(t), written(elevatorOnly, c.also))
		if r == nil {
			t.Fatal("nothing fails")
		}
		for _, change := range []string{swap, follow} {
			if got, want := slices.Contains(changes(r.List), change), slices.Contains(c.want, change); got != want {
				t.Errorf("also %q: %q offered: %v, wanted %v", c.also, change, got, want)
			}
		}
	}
}

// Where several changes make every check pass, a step tells them apart: at it each looks
// as its answers say, and no answer leaves all of them.
func TestRepairsSayWhichStepTellsThemApart(t *testing.T) {
	r := cause.Repairs(context.Background(), swappedPlugs(t), written(elevatorOnly))
	if r == nil || len(r.List) < 2 || r.Apart == nil {
		t.Fatalf("offered are %+v", r)
	}
	if r.Tried < 200 || r.Open > 0 {
		t.Errorf("%d tried, %d left open", r.Tried, r.Open)
	}
	named := map[string]bool{}
	for _, a := range r.Apart.Answers {
		if len(a.See) == 0 || len(a.Suspects) == 0 || len(a.Suspects) == len(r.List) {
			t.Errorf("answer %+v of %d changes", a, len(r.List))
		}
		for _, s := range a.Suspects {
			named[s] = true
		}
	}
	if len(r.Apart.Answers) < 2 || len(named) != len(r.List) || r.Apart.Left < 1 {
		t.Errorf("%d answers name %d of %d changes, %d steps", len(r.Apart.Answers), len(named), len(r.List), r.Apart.Left)
	}
}

func mistakeOf(t *testing.T, m *airframes.Model, text string) *mistake.Mistake {
	t.Helper()
	all := mistake.All(m, mistake.Options{})
	for i := range all {
		if all[i].Text == text {
			return &all[i]
		}
	}
	t.Fatalf("the catalogue has no %q", text)
	return nil
}

// Sentences about every position are nothing that anybody saw, and each is refused where
// it stands; so are files that cannot be read, all mistakes at once.
func TestExplainRefusesWhatNobodyCanHaveSeen(t *testing.T) {
	m := verifytest.Shipped(t, "bracken-20")
	for _, c := range []struct{ text, want string }{
		{"Feature: f\n  Scenario: s\n    * with the roll stick full right, the port aileron drops\n    Then whatever the roll stick does, the elevator stays still\n    And the flaps never rise\n", "4:5 seen-everywhere, 5:5 seen-everywhere"},
		{"Feature: f\n  Scenario: s\n    Given the motor switch is safe\n    Then the motor never runs\n", "4:5 seen-everywhere"},
		{"Feature: f\n  Scenario: s\n    * with the roll stik full right, the port aileron drops\n    * with the roll stick full right, the port alieron drops\n", "3:21 unknown-setting, 4:43 unknown-subject"},
		{"Feature: f\n", "0:0 no-scenarios"},
		{"", "0:0 no-scenarios"},
	} {
		r, problems := cause.Explain(context.Background(), m, nil, script.File{Name: "seen.feature", Text: []byte(c.text)}, cause.Options{})
		var got []string
		for _, p := range problems {
			got = append(got, fmt.Sprintf("%d:%d %s", p.Line, p.Column, p.Code))
			if p.Hint == "" || p.File != "seen.feature" {
				t.Errorf("%+v lacks its hint or file", p)
			}
		}
		if r != nil || strings.Join(got, ", ") != c.want {
			t.Errorf("%q: a report: %v, problems %q, wanted %q", c.text, r != nil, got, c.want)
		}
	}
}

// An honest observer who does not see small movements rules out nothing by it, and what
// nobody could overlook does.
func TestExplainIsHonestAtTheThreshold(t *testing.T) {
	m := verifytest.Shipped(t, "bracken-20")
	for _, c := range []struct {
		sentence string
		odd      bool
	}{
		{"with the roll stick 2 % right, the port aileron stays still", false},
		{"with the roll stick 10 % right, the port aileron stays still", false},
		{"with the roll stick full right, the port aileron stays still", true},
		{"with the roll stick full right, the port aileron drops", false},
		{"with the roll stick full right, the port aileron drops 10°", false},
		{"with the roll stick full right, the port aileron drops 14°", true},
	} {
		r, problems := cause.Explain(context.Background(), m, nil, script.File{Name: "seen.feature", Text: written(c.sentence)[0].Text}, cause.Options{})
		if r == nil {
			t.Fatalf("%q: %+v", c.sentence, problems)
		}
		if odd := r.Verdict != result.AsItShould; odd != c.odd {
			t.Errorf("%q: %s, wanted odd %v", c.sentence, r.Verdict, c.odd)
		}
	}
}

// A sub-trim that nobody needs, or that is wrong, is offered to be taken out where that
// makes the script pass, with its place in the file; one that is right never is.
func TestRepairsTakeASubTrimOut(t *testing.T) {
	const take = "take the sub-trim of channel 1 (rudder) out"
	for _, c := range []struct {
		subTrim string
		offered bool
	}{{"20%", true}, {"-15%", true}, {"6%", true}, {"0%", false}} {
		m, problems := airframes.Load("own.yaml", []byte(`hingeline: 1
name: Own
controls: {yaw stick: yaw, throttle: lever}
demands: {yaw: yaw stick}
channels:
  1: {name: rudder, sub_trim: `+c.subTrim+`, mix: [{add: yaw, share: 60%}]}
surfaces:
  rudder: {channel: 1, measured: {100%: 20° right}}
`))
		if m == nil {
			t.Fatal(problems)
		}
		r := cause.Repairs(context.Background(), m, []script.File{{Name: "own.feature", Text: []byte("Feature: Own\n\n  Scenario: Rest\n    Then the rudder is at neutral\n")}})
		if r == nil {
			if c.offered {
				t.Errorf("sub-trim %s: nothing fails", c.subTrim)
			}
			continue
		}
		at := slices.Index(changes(r.List), take)
		if got := at >= 0; got != c.offered {
			t.Errorf("sub-trim %s: offered are %q", c.subTrim, changes(r.List))
		}
		if at >= 0 && r.List[at].Place.Line != 6 {
			t.Errorf("sub-trim %s: it is said to be at %+v", c.subTrim, r.List[at].Place)
		}
	}
}
