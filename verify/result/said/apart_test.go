package said

import (
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/verify/result"
)

// Nobody is asked to tick what cannot be seen, and everything that can be seen is left to tick.
func TestUnseenIsWhatNobodySeesOnTheModel(t *testing.T) {
	for _, c := range []struct {
		check  result.Check
		unseen bool
	}{
		{result.Check{Subject: "channel 3 (port flap)", Wanted: "within its travel"}, true},
		{result.Check{Subject: "the model", Wanted: "rolls RIGHT"}, false},
		{result.Check{Subject: "the model", Wanted: "does not roll"}, true},
		{result.Check{Subject: "the model", Wanted: "no more adverse yaw than with equal throws"}, true},
		{result.Check{Subject: "port aileron", Wanted: "torque at most 30 N cm at 20 m/s"}, true},
		{result.Check{Subject: "motor", Wanted: "power 60 %", Got: "power 58.3 %"}, true},
		{result.Check{Subject: "motor", Wanted: "stopped", Got: "stopped"}, false},
		{result.Check{Subject: "motor", Wanted: "runs", Got: "power 40 %"}, false},
		{result.Check{Subject: "port aileron", Wanted: "rises 18° ± 2°", Got: "rises 17.2° (11 mm)"}, false},
		{result.Check{Subject: "nose retract", Wanted: "OUT", Got: "OUT 100 %"}, false},
	} {
		if got := Unseen(&c.check); got != c.unseen {
			t.Errorf("%s, wanted %s: unseen is %t", c.check.Subject, c.check.Wanted, got)
		}
	}
}

// Failures of one part that point at one line are told together; another part, another line
// or no line at all makes another cause. None is lost and none comes twice.
func TestByCauseKeepsEveryFailure(t *testing.T) {
	fails := func(of string, line int) result.Check {
		c := result.Check{Subject: of}
		if line > 0 {
			c.Why = []result.Reason{{Of: of, LookAt: []result.Place{{File: "m.yaml", Line: line}}}}
		}
		return c
	}
	r := &result.Report{Checks: []result.Check{
		fails("port flap", 7), {Passed: true}, fails("port flap", 7), fails("port flap", 9), fails("rudder", 7), fails("rudder", 0), fails("rudder", 0),
	}}
	want := [][]int{{0, 2}, {3}, {4}, {5}, {6}}
	if got := ByCause(r); !slices.EqualFunc(got, want, slices.Equal[[]int]) {
		t.Errorf("causes are %v, wanted %v", got, want)
	}
}

// With everything at rest a loss of signal shows nothing, so the sticks are held off centre;
// and who has no motor is asked nothing about one.
func TestLostStepsHoldTheSticksBeforeTheTransmitterGoesOff(t *testing.T) {
	glider := &result.Paper{}
	powered := &result.Paper{Motors: []result.Motor{{Name: "motor"}}, Shape: result.Shape{Parts: []result.Outline{{Kind: "flap"}}}}
	for _, p := range []*result.Paper{glider, powered} {
		steps := LostSteps(p)
		hold := slices.IndexFunc(steps, func(s string) bool { return strings.Contains(s, "full right and full back") })
		off := slices.IndexFunc(steps, func(s string) bool { return strings.Contains(s, "switch the transmitter off") })
		if hold < 0 || off < hold || !strings.Contains(steps[0], "Restrain") {
			t.Errorf("the steps are %q", steps)
		}
		all := strings.ToLower(strings.Join(slices.Concat(steps, RangeSights(p), []string{SignalBack(p)}), " "))
		if about := strings.Contains(all, "motor") || strings.Contains(all, "propeller") || strings.Contains(all, "throttle"); about != (len(p.Motors) > 0) {
			t.Errorf("of %d motors it is said: %s", len(p.Motors), all)
		}
	}
}

// A difference between two sides is a warning only where it is more than a ruler may be off.
func TestApartWarnsBeyondTheTolerance(t *testing.T) {
	ends := []result.ThrowEnd{{Tolerance: result.Tolerance{Degrees: 1}}, {Tolerance: result.Tolerance{Degrees: 2}}}
	for differs, want := range map[float64]Tone{0: Good, 1.9: Good, 2: Heed, 7: Heed} {
		if got := Apart(&result.Throw{Ends: ends, Differs: differs}); got != want {
			t.Errorf("%v° apart is %v, wanted %v", differs, got, want)
		}
	}
	if Apart(&result.Throw{Differs: 0.6}) != Heed {
		t.Error("0.6° is nothing where no tolerance is told")
	}
}
