package messages

import (
	"bytes"
	"flag"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/features"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

var update = flag.Bool("update", false, "write the golden files anew")

// sorrel is a model that does not exist.
const sorrel = `hingeline: 1
name: Sorrel
controls:
  roll stick: {axis: roll, trim: 10%}
  pitch stick: {axis: pitch, trim: 10%}
  flap lever: {lever: {parked: 0, half: 50, landing: 100}}
demands:
  roll: roll stick
  pitch: pitch stick
  flap: flap lever
channels:
  1: {name: starboard aileron, mix: roll}
  2: {name: port aileron, mix: [{add: roll, share: -100%}]}
  3: {name: elevator, mix: pitch}
  4: {name: flap, mix: flap}
surfaces:
  starboard aileron: {channel: 1, measured: {100%: 20° up}}
  port aileron: {channel: 2, measured: {100%: 20° up}}
  elevator: {channel: 3, measured: {100%: 15° up}}
  flap: {channel: 4, measured: {100%: 40° down}}
`

// sorrelScript fails at one step of one row: the second row of the outline wants the flap
// where it does not go. The same sentence stands twice in that row.
const sorrelScript = `@bench
Feature: Sorrel, über alles
  What every surface does.

  Background:
    Given the flap lever is parked
    Then the flap is at neutral

  @wing
  Scenario: Right roll
    When the roll stick is full right
    Then the starboard aileron rises
    And the port aileron drops

  Scenario Outline: The flap lever at <detent>
    Then the elevator is at neutral
    When the flap lever is at <detent>
    Then the flap is <angle> down ± 1°
    And the elevator is at neutral

    @half
    Examples:
      | detent  | angle |
      | half    | 20°   |
      | landing | 30°   |
      | 25%     | 10°   |

  Rule: Pitch

    Scenario: Back
      When the pitch stick is full back
      Then the elevator rises
      And both ailerons are at neutral
`

func check(t *testing.T, airframe string, sel script.Selection, files ...script.File) *result.Report {
	t.Helper()
	m, problems := airframes.Load("sorrel.yaml", []byte(airframe))
	if m == nil {
		t.Fatal(told(problems))
	}
	r, problems := verify.Check(m, files, sel)
	if r == nil {
		t.Fatal(told(problems))
	}
	r.Sources = script.Messages(m, files)
	return r
}

func told(problems []diag.Problem) string {
	var b strings.Builder
	diag.Write(&b, problems)
	return b.String()
}

func sorrelFile() script.File {
	return script.File{Name: "sorrel.feature", Text: []byte(sorrelScript)}
}

// shipped is the check of a built-in model, with a change to its airframe file.
func shipped(t *testing.T, name, from, to string) *result.Report {
	t.Helper()
	text, _ := airframes.ReadShipped(name)
	changed := strings.Replace(string(text), from, to, 1)
	if changed == string(text) && from != to {
		t.Fatalf("%q is not in %s", from, name)
	}
	said, ok := features.Read(name)
	if !ok {
		t.Fatalf("there is no script of %s", name)
	}
	return check(t, changed, script.Selection{}, script.File{Name: "features/" + name + ".feature", Text: said})
}

func rendered(t *testing.T, r *result.Report) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Render(&b, r); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}
