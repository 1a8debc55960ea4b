package findings

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/verify/verifytest"
)

// What else is under way on a model keeps nobody waiting for a motor, and motors
// on one channel are followed once.
func TestLateMotorsAreFollowedAlone(t *testing.T) {
	const model = `hingeline: 1
name: Fennel
controls: {roll stick: roll, throttle: lever, motor switch: [safe, live], flight switch: [p, q]}
phases:
  soft: {when: flight switch is q, fade: 60 s}
  off: {when: motor switch is safe, fade: %s}
demands: {roll: roll stick, throttle: {from: throttle, curve: {0%%: -100%%, 100%%: 100%%}}}
channels:
  1: {mix: [roll, {fixed: 10%%, when: soft}], slow: 60 s}
  2: {mix: [throttle, {replace_with: -100%%, when: %s}], failsafe: -100%%}
surfaces:
  port aileron: {channel: 1, measured: {100%%: 15° down}}
  starboard aileron: {channel: 1, measured: {100%%: 15° up}}
motors:
  motor: {channel: 2, stopped_when: motor switch is safe}
  second motor: {channel: 2, stopped_when: motor switch is safe}
`
	for _, c := range []struct {
		fade, when string
		late       int
		followed   int // steps of time, at most
	}{
		{"60 s", "motor switch is safe", 0, 0},
		{"0.5 s", "off", 0, 501 * 4},
		{"4 s", "off", 2, 4001 * 4},
	} {
		m := verifytest.Model(t, "model.yaml", []byte(fmt.Sprintf(model, c.fade, c.when)))
		f := newFinder(m, budget)
		f.motorFindings()
		var late []string
		for _, p := range f.problems {
			if p.Code == codeMotorLate {
				late = append(late, p.Message)
			}
		}
		if len(late) != c.late || f.followed > c.followed {
			t.Errorf("fade %s, when %s: %d late in %d steps, want %d in at most %d: %q", c.fade, c.when, len(late), f.followed, c.late, c.followed, late)
		}
		if c.late == 2 && !slices.ContainsFunc(late, func(s string) bool { return strings.HasPrefix(s, "second motor runs on for 3.9") }) {
			t.Errorf("fade %s: %q", c.fade, late)
		}
	}
}
