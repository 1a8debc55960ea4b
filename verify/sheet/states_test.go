package sheet

import (
	"slices"
	"testing"

	"example.com/hingeline/airframes"
)

// humped has a lever that scales the roll stick, least at both of its ends and most at
// half; behind an expo the most is where that comes to half, at 79.4 %.
const humped = `hingeline: 1
name: Humped
controls: {roll stick: roll, first lever: lever, second lever: lever}
demands:
  roll: roll stick
  gain: {from: first lever, curve: {0%: 50%, 50%: 100%, 100%: 50%}}
  late gain: {from: second lever, curve: {0%: 50%, 50%: 100%, 100%: 50%}, rates: [{throw: 100%, expo: 100%}]}
channels:
  1: {mix: [roll, {scale_by: gain}]}
  2: {mix: [roll, {scale_by: late gain}]}
surfaces:
  port aileron: {channel: 1, measured: {100%: 20° down}}
  starboard aileron: {channel: 2, measured: {100%: 20° up}}
`

// A lever that scales a throw is tried where it scales most, which need not be at an end:
// else the table would tell of half of what the part can do.
func TestThrowsAreTriedWhereALeverScalesMost(t *testing.T) {
	m, problems := airframes.Load("humped.yaml", []byte(humped))
	if m == nil {
		t.Fatal(problems)
	}
	most := map[string]float64{}
	var when []string
	for _, r := range throwsOf(m) {
		if r.Control == "roll stick" {
			when = append(when, r.When...)
			for _, e := range r.Ends {
				most[r.Part] = max(most[r.Part], e.Degrees)
			}
		}
	}
	for _, part := range []string{"port aileron", "starboard aileron"} {
		if abs(most[part]-20) > alike {
			t.Errorf("%s goes 20°, and the table says at most %v°", part, most[part])
		}
	}
	for _, want := range []string{"first lever 0 % or 100 %", "first lever 50 %"} {
		if !slices.Contains(when, want) {
			t.Errorf("%q is not in %q", want, when)
		}
	}
}
