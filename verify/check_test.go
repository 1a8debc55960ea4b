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
	if c.Stage != result.PortWing || c.Subject != "port aileron" || len(c.Why) != 1 || len(c.Why[0].Chain) == 0 || len(c.Why[0].LookAt) == 0 {
		t.Fatalf("failed check is %+v", c)
	}
	if c.Place.Excerpt != "    And the port aileron drops" {
		t.Errorf("the script's line is %q", c.Place.Excerpt)
	}
	telling := false
	for _, place := range c.Why[0].LookAt {
		if place.File != "fennel.yaml" || place.Excerpt == "" {
			t.Errorf("look at %+v, wanted a line of fennel.yaml", place)
		}
		telling = telling || strings.Contains(place.Excerpt, "share: 100%")
	}
	if !telling {
		t.Errorf("none of the lines to look at is the share with the wrong sign: %+v", c.Why[0].LookAt)
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
		checks  []result.Check
		leftOut int
		want    result.Verdict
	}{
		{nil, 0, result.NothingChecked},
		{nil, 3, result.NothingChecked},
		{[]result.Check{{Passed: true}}, 0, result.Passed},
		{[]result.Check{{Passed: true}}, 1, result.PassedInPart},
		{[]result.Check{{Passed: true}, {}}, 0, result.Failed},
		{[]result.Check{{Passed: true}, {}}, 1, result.Failed},
		{[]result.Check{{}}, 0, result.Failed},
	} {
		if got := verdict(&result.Report{Checks: c.checks, NotSelected: c.leftOut}); got != c.want {
			t.Errorf("%d checks, %d left out: %s, wanted %s", len(c.checks), c.leftOut, got, c.want)
		}
	}
}

// The report says once what "everything else rests" means.
func TestCheckSaysWhatRestIs(t *testing.T) {
	r := check(t, fennel, fennelScript)
	if want := []string{"sticks and trims centred", "flap lever parked", "rate switch low"}; !slices.Equal(r.Rest, want) {
		t.Errorf("rest is %q, wanted %q", r.Rest, want)
	}
	text, _ := airframes.ReadShipped("bracken-20")
	bracken := load(t, string(text))
	want := []string{"sticks and trims centred", "throttle 0 %", "flap lever parked", "rate switch low", "motor switch safe"}
	if got := rest(&bracken.Setup); !slices.Equal(got, want) {
		t.Errorf("rest is %q, wanted %q", got, want)
	}
}

// A failed check says the plain thing: which way it went, or by how much it
// missed.
func TestCheckSaysHowItMissed(t *testing.T) {
	reversed := strings.Replace(fennel, "share: -100%", "share: 100%", 1)
	for _, c := range []struct{ airframe, from, to, want string }{
		{reversed, "", "", "WRONG WAY: wanted DOWN, it goes UP"},
		{fennel, "the port aileron drops", "the port aileron drops 15°", "RIGHT WAY, but 5° too little"},
		{fennel, "the port aileron drops", "the flap drops", "DID NOT MOVE: wanted DOWN"},
	} {
		r := check(t, c.airframe, strings.Replace(fennelScript, c.from, c.to, 1))
		i := slices.IndexFunc(r.Checks, func(c result.Check) bool { return !c.Passed })
		if i < 0 || r.Checks[i].Miss != c.want {
			t.Errorf("%q for %q: check %d of %+v, wanted %q", c.to, c.from, i, r.Checks, c.want)
		}
		for _, k := range r.Checks {
			if k.Passed && k.Miss != "" {
				t.Errorf("a passed check says %q", k.Miss)
			}
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
