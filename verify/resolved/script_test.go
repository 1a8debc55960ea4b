package resolved_test

import (
	"slices"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/features"
	"example.com/hingeline/verify/resolved"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/verifytest"
)

func scriptDigest(t *testing.T, m *airframes.Model, text string) string {
	t.Helper()
	list, problems := resolved.Script(m, []script.File{{Name: "a.feature", Text: []byte(text)}})
	if list == nil {
		t.Fatalf("%+v\n%s", problems, text)
	}
	return resolved.ScriptDigest(list)
}

const asked = `Feature: One
  Background:
    Given rates are high
  @wing
  Scenario: Roll
    When the roll stick is full right
    And the flap lever is landing
    Then the starboard aileron rises
    And the port aileron drops
  Scenario Outline: Flaps
    Given the flap lever is <lever>
    Then the port flap is down
    Examples:
      | lever   |
      | takeoff |
      | landing |
`

// The same in other words, in another order and another language.
const askedAgain = `# language: de
# a remark
Funktionalität: Zwei
  Szenario: L
    Angenommen rates are  HIGH
    Und the flap lever is landing
    Dann the Port-Flap is down.
  Regel: R
    @tail
    Szenario: K
      Gegeben sei rates are high
      Wenn the roll stick is full right
      * the flap lever is landing
      Dann the port aileron drops
    Szenario: K2
      Gegeben sei rates are high
      Wenn the roll stick is full right
      Und the flap lever is landing
      Dann the starboard aileron rises
  Szenario: T
    Angenommen rates are high
    Angenommen the flap lever is takeoff
    Dann the port flap is down
`

func TestScriptsThatAskTheSame(t *testing.T) {
	m := verifytest.Model(t, "bracken", string(verifytest.ShippedText(t, "bracken-20")))
	if scriptDigest(t, m, asked) != scriptDigest(t, m, askedAgain) {
		one, _ := resolved.Script(m, []script.File{{Name: "a", Text: []byte(asked)}})
		other, _ := resolved.Script(m, []script.File{{Name: "b", Text: []byte(askedAgain)}})
		t.Errorf("%q\n%q", one, other)
	}
	d, problems := resolved.ScriptDifferences(m, m, []script.File{{Name: "a", Text: []byte(asked)}}, []script.File{{Name: "b", Text: []byte(askedAgain)}})
	if len(d) > 0 || len(problems) > 0 {
		t.Errorf("%q %v", texts(d), problems)
	}
}

func TestScriptDifferencesAreSaid(t *testing.T) {
	m := verifytest.Model(t, "bracken", string(verifytest.ShippedText(t, "bracken-20")))
	for _, row := range []struct {
		old, new string
		want     []string
	}{
		{"    And the port aileron drops\n", "", []string{`check gone: "the port aileron drops" (given rates are high, when the roll stick is full right, and the flap lever is landing)`}},
		{"    And the port aileron drops\n", "    And the port aileron drops\n    And the elevator stays still\n",
			[]string{`new check: "the elevator stays still" (given rates are high, when the roll stick is full right, and the flap lever is landing)`}},
		{"port aileron drops", "port aileron drops, at least 5°",
			[]string{`check changed: "the port aileron drops" → "the port aileron drops, at least 5°" (given rates are high, when the roll stick is full right, and the flap lever is landing)`}},
		{"      | takeoff |\n", "", []string{`check gone: "the port flap is down" (given rates are high, given the flap lever is takeoff)`}},
		{"And the flap lever is landing", "When the flap lever is landing", []string{
			`check asked elsewhere: "the starboard aileron rises" (given rates are high, when the roll stick is full right, when the flap lever is landing); it was asked given rates are high, when the roll stick is full right, and the flap lever is landing`,
			`check asked elsewhere: "the port aileron drops" (given rates are high, when the roll stick is full right, when the flap lever is landing); it was asked given rates are high, when the roll stick is full right, and the flap lever is landing`}},
		{"  Scenario: Roll", "  Scenario: Rolling about", nil},
	} {
		changed := swap(t, asked, row.old, row.new)
		d, problems := resolved.ScriptDifferences(m, m, []script.File{{Name: "was", Text: []byte(asked)}}, []script.File{{Name: "is", Text: []byte(changed)}})
		if problems != nil || !slices.Equal(texts(d), row.want) {
			t.Errorf("%s:\ngot  %q\nwant %q (%v)", row.new, texts(d), row.want, problems)
		}
		if same := scriptDigest(t, m, asked) == scriptDigest(t, m, changed); same != (len(row.want) == 0) {
			t.Errorf("%s: the same digest: %v", row.new, same)
		}
		for _, x := range d {
			if want := map[bool]string{true: "was", false: "is"}[x.Gone]; x.Place.File != want || x.Place.Line == 0 {
				t.Errorf("%s: at %+v", x.Text, x.Place)
			}
		}
	}
}

// That everything rests counts where a group of settings begins.
func TestScriptGroupsThatRest(t *testing.T) {
	m := verifytest.Model(t, "bracken", string(verifytest.ShippedText(t, "bracken-20")))
	const together = "Feature: F\n  Scenario: S\n    Given everything rests\n    And rates are high\n    Then the elevator is at neutral\n"
	const apart = "Feature: F\n  Background:\n    Given rates are high\n  Scenario: S\n    Given everything rests\n    Then the elevator is at neutral\n"
	one, _ := resolved.Script(m, []script.File{{Name: "a", Text: []byte(together)}})
	other, _ := resolved.Script(m, []script.File{{Name: "b", Text: []byte(apart)}})
	if want := []string{"given everything rests\ngiven rates are high\nthen the elevator is at neutral"}; !slices.Equal(one, want) {
		t.Errorf("got %q", one)
	}
	if want := []string{"given rates are high\ngiven then everything rests\nthen the elevator is at neutral"}; !slices.Equal(other, want) {
		t.Errorf("got %q", other)
	}
}

func TestShippedScriptsResolve(t *testing.T) {
	seen := map[string]string{}
	for _, name := range airframes.Shipped() {
		m := verifytest.Shipped(t, name)
		text, ok := features.Read(name)
		if !ok {
			t.Fatal(name)
		}
		d := scriptDigest(t, m, string(text))
		if seen[d] != "" {
			t.Errorf("%s and %s ask the same", name, seen[d])
		}
		seen[d] = name
	}
}

func TestScriptWithAMistakeIsRefused(t *testing.T) {
	m := verifytest.Model(t, "bracken", string(verifytest.ShippedText(t, "bracken-20")))
	list, problems := resolved.Script(m, []script.File{{Name: "a", Text: []byte("Feature: F\n  Scenario: S\n    Then the wing claps\n")}})
	if list != nil || len(problems) == 0 {
		t.Errorf("got %q, %v", list, problems)
	}
}
