package sheet

import (
	"testing"

	"example.com/hingeline/airframes"
)

// lopsided has a starboard aileron that the rate switch makes go less, and a port aileron
// that it does not touch.
const lopsided = `hingeline: 1
name: Lopsided
controls: {roll stick: roll, rate switch: [low, high]}
demands:
  roll: roll stick
  half: {from: roll stick, rates: [{when: rate switch is low, throw: 50%}, {throw: 100%}]}
channels:
  1: {mix: [{add: roll}, {add: half, share: 0%}]}
  2: {mix: [{add: half, share: -100%}]}
surfaces:
  port aileron: {channel: 1, measured: {100%: 20° down}}
  starboard aileron: {channel: 2, measured: {100%: 20° down}}
`

// Where two sides differ in some states only, the row that is of all of them does not say
// that they always do.
func TestThrowsSayThatPartnersDifferInSomeStatesOnly(t *testing.T) {
	m, problems := airframes.Load("lopsided.yaml", []byte(lopsided))
	if m == nil {
		t.Fatal(problems)
	}
	want := map[string]string{
		"port aileron ()":                      "up to 10° more UP and up to 10° more DOWN than the starboard aileron",
		"starboard aileron (rate switch low)":  "10° less UP and 10° less DOWN than the port aileron",
		"starboard aileron (rate switch high)": "",
	}
	for _, r := range throwsOf(m) {
		when := ""
		if len(r.When) > 0 {
			when = r.When[0]
		}
		if got := r.Partner; got != want[r.Part+" ("+when+")"] {
			t.Errorf("%s (%s): %q", r.Part, when, got)
		}
	}
}
