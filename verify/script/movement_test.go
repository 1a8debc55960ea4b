package script

import (
	"strings"
	"testing"
)

// TestMovementSaysWhatStoodBeforeAndWhatMoved takes the last check of each
// scenario.
func TestMovementSaysWhatStoodBeforeAndWhatMoved(t *testing.T) {
	const look = "\n Then the rudder is at neutral\n"
	for _, c := range []struct{ name, steps, before, moved string }{
		{"nothing moved", "Given rates are high" + look, "", ""},
		{"one stick", "Given rates are high\n When right roll" + look, "rate switch high", "roll stick full right"},
		{"from rest", "When right roll" + look, "", "roll stick full right"},
		{"Whens joined by And are one movement", "When right roll\n And full throttle" + look, "", "roll stick full right, throttle 100 %"},
		{"a later When moves on from there", "When right roll\n When left roll" + look, "roll stick full right", "roll stick full left"},
		{"back to rest is a movement too", "Given right roll\n When the roll stick is centred" + look, "roll stick full right", "roll stick centred"},
		{"what is set where it stands does not move", "Given rates are high\n When rates are high and right roll" + look, "rate switch high", "roll stick full right"},
		{"a lever and a switch", "Given landing flap\n When flap is parked\n And rates are high" + look, "flap lever landing", "flap lever parked, rate switch high"},
		{"the signal goes", "Given right roll\n When the signal is lost" + look, "roll stick full right", "signal lost"},
		{"the signal comes back", "Given right roll\n When the signal is lost\n When the signal is back" + look, "roll stick full right, signal lost", "signal back"},
		{"moved while the signal is lost", "When the signal is lost\n When right roll\n And the signal is back" + look, "signal lost", "roll stick full right, signal back"},
		{"a Given after it forgets it", "When right roll" + look + " Given landing flap" + look, "", ""},
		{"one line: the stick moves, the rest is before", "* with rates high, landing flap and right roll, the port aileron drops\n", "flap lever landing, rate switch high", "roll stick full right"},
		{"one line after a When: moved from where that ended", "Given rates are high\n * with right yaw, when right roll, the port aileron drops\n", "yaw stick full right, rate switch high", "roll stick full right"},
	} {
		checks := ran(t, fennel(t), "Feature: f\n Scenario: s\n "+c.steps).Checks
		last := checks[0]
		for _, check := range checks {
			if check.Place.Line > last.Place.Line {
				last = check
			}
		}
		before, moved := strings.Join(last.Before, ", "), strings.Join(last.Moved, ", ")
		if before != c.before || moved != c.moved {
			t.Errorf("%s: got before %q and moved %q, want %q and %q", c.name, before, moved, c.before, c.moved)
		}
	}
}
