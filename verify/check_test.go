package verify

import (
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/features"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

const fennel = `hingeline: 1
name: Fennel
controls:
  roll stick: {axis: roll, trim: 10%, aka: aileron stick}
  flap lever: {lever: {parked: 0, landing: 100}}
  rate switch: {switch: [low, high], aka: rates}
demands:
  roll:
    from: roll stick
    rates:
      - {when: rate switch is high, throw: 90%}
      - {throw: 50%}
  flap: flap lever
channels:
  1: {name: starboard aileron, mix: roll}
  2: {name: port aileron, mix: [{add: roll, share: -100%}]}
  3: {name: flap, mix: flap, slow: 2 s, failsafe: 20%}
surfaces:
  starboard aileron: {channel: 1, chord_mm: 40, measured: {100%: 20° up}}
  port aileron: {channel: 2, chord_mm: 40, measured: {100%: 20° up}}
  flap: {channel: 3, measured: {100%: 40° down}}
`

const fennelScript = `Feature: Fennel

  Scenario: Right roll
    When the roll stick is full right
    Then the starboard aileron rises
    And the port aileron drops
`

func load(t *testing.T, text string) *airframes.Model {
	t.Helper()
	m, problems := airframes.Load("fennel.yaml", []byte(text))
	if m == nil {
		var b strings.Builder
		diag.Write(&b, problems)
		t.Fatal(b.String())
	}
	return m
}

func check(t *testing.T, airframe, text string, only ...string) *result.Report {
	t.Helper()
	r, problems := Check(load(t, airframe), []script.File{{Name: "fennel.feature", Text: []byte(text)}}, script.Selection{Only: only})
	if r == nil {
		var b strings.Builder
		diag.Write(&b, problems)
		t.Fatal(b.String())
	}
	return r
}

func TestCheckPassesWhatTheScriptAsks(t *testing.T) {
	r := check(t, fennel, fennelScript)
	passed, failed := r.Counts()
	if r.Verdict != result.Passed || passed != 2 || failed != 0 {
		t.Errorf("%s with %d passed and %d failed, wanted passed with 2 and 0", r.Verdict, passed, failed)
	}
	if r.Tool != Version || r.Model != (result.Model{Name: "Fennel", File: "fennel.yaml"}) || !slices.Equal(r.Scripts, []string{"fennel.feature"}) {
		t.Errorf("report is of %+v by %q, scripts %q", r.Model, r.Tool, r.Scripts)
	}
	if !slices.Contains(r.Uncovered.Parts, "flap") || !slices.Contains(r.Uncovered.Controls, "flap lever") {
		t.Errorf("uncovered is %+v, wanted the flap and its lever in it", r.Uncovered)
	}
	if len(r.Cautions) == 0 || strings.Contains(strings.Join(r.Cautions, " "), "propeller") {
		t.Errorf("cautions of a model without a motor: %q", r.Cautions)
	}
}

func TestCheckFailsWithTheReason(t *testing.T) {
	r := check(t, strings.Replace(fennel, "share: -100%", "share: 100%", 1), fennelScript)
	_, failed := r.Counts()
	if r.Verdict != result.Failed || failed != 1 {
		t.Fatalf("%s with %d failed, wanted failed with 1", r.Verdict, failed)
	}
	i := slices.IndexFunc(r.Checks, func(c result.Check) bool { return !c.Passed })
	c := r.Checks[i]
	if c.Stage != result.PortWing || c.Subject != "port aileron" || len(c.Chain) == 0 || len(c.LookAt) == 0 {
		t.Fatalf("failed check is %+v", c)
	}
	if c.Place.Excerpt != "    And the port aileron drops" {
		t.Errorf("the script's line is %q", c.Place.Excerpt)
	}
	telling := false
	for _, place := range c.LookAt {
		if place.File != "fennel.yaml" || place.Excerpt == "" {
			t.Errorf("look at %+v, wanted a line of fennel.yaml", place)
		}
		telling = telling || strings.Contains(place.Excerpt, "share: 100%")
	}
	if !telling {
		t.Errorf("none of the lines to look at is the share with the wrong sign: %+v", c.LookAt)
	}
}

func TestCheckReturnsEveryMistakeAndNoReport(t *testing.T) {
	r, problems := Check(load(t, fennel), []script.File{{Name: "bad.feature", Text: []byte(`Feature: Bad
  Scenario: Roll
    When the role stick is full right
    Then the starboard aileron rises a bit
`)}}, script.Selection{})
	if r != nil || !diag.HasErrors(problems) || len(problems) < 2 {
		t.Errorf("got report %v and %d problems, wanted none and 2 or more", r, len(problems))
	}
}

func TestVerdictOfNoChecksIsNoPass(t *testing.T) {
	for _, c := range []struct {
		checks []result.Check
		want   result.Verdict
	}{
		{nil, result.NothingChecked},
		{[]result.Check{{Passed: true}}, result.Passed},
		{[]result.Check{{Passed: true}, {}}, result.Failed},
		{[]result.Check{{}}, result.Failed},
	} {
		if got := verdict(&result.Report{Checks: c.checks}); got != c.want {
			t.Errorf("%d checks: %s, wanted %s", len(c.checks), got, c.want)
		}
	}
}

func TestFindingsKeepWarningsOnly(t *testing.T) {
	source := diag.NewSource("a.yaml", []byte("one\ntwo\n"))
	got := Findings([]diag.Problem{
		{Place: diag.Place{File: "a.yaml", Line: 2, Column: 1}, Severity: diag.Warning, Code: "odd", Message: "odd", Hint: "look"},
		{Place: diag.Place{File: "a.yaml", Line: 1}, Severity: diag.Error, Code: "wrong", Message: "wrong"},
	}, source)
	want := []result.Finding{{Code: "odd", Message: "odd", Hint: "look", Place: result.Place{File: "a.yaml", Line: 2, Column: 1, Excerpt: "two"}}}
	if !slices.Equal(got, want) {
		t.Errorf("got %+v, wanted %+v", got, want)
	}
}

// The motor is what hurts people: with one aboard, the propeller comes first.
func TestCautionsBeginWithThePropeller(t *testing.T) {
	text, _ := airframes.ReadShipped("bracken-20")
	m := load(t, string(text))
	if got := cautions(m)[0]; !strings.Contains(got, "propeller") {
		t.Errorf("first caution is %q", got)
	}
}

// Every model that Hingeline brings along does what its own script asks.
func TestShippedModelsPass(t *testing.T) {
	for _, name := range airframes.Shipped() {
		text, _ := airframes.ReadShipped(name)
		sentences, ok := features.Read(name)
		if !ok {
			t.Errorf("%s has no script", name)
			continue
		}
		r := check(t, string(text), string(sentences))
		if passed, failed := r.Counts(); r.Verdict != result.Passed || passed == 0 {
			t.Errorf("%s: %s, %d passed, %d failed", name, r.Verdict, passed, failed)
		}
	}
}
