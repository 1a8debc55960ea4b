package phrase

import (
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
)

// fadesSafe is the example whose motor is made safe by a phase that fades in.
func fadesSafe(t *testing.T) *airframes.Model {
	return exampleModel(t, func(s *mixcore.Setup) {
		s.Phases = []mixcore.Phase{{Name: "safe motor", When: mixcore.Condition{Op: mixcore.AtPosition, Control: motorSwitch, Position: 0}, Fade: 2}}
		s.Channels[motorChannel].Mix[1].When = &mixcore.Condition{Op: mixcore.InPhase, Phase: 0}
	})
}

// kicks is the example whose elevator leaves its place for two seconds when the
// flaps move: one of its servos is on a slowed channel, and makes up for the other.
func kicks(t *testing.T) *airframes.Model {
	return exampleModel(t, func(s *mixcore.Setup) {
		helper := s.Channels[elevatorChannel]
		helper.Number, helper.Name, helper.Slow = 9, "elevator helper", 2
		helper.Mix = []mixcore.MixLine{{Op: mixcore.Add, Demand: 4, Share: mixcore.Both(-40)}}
		s.Channels[elevatorChannel].Mix = append(s.Channels[elevatorChannel].Mix, mixcore.MixLine{Op: mixcore.Add, Demand: 4, Share: mixcore.Both(40)})
		s.Channels = append(s.Channels, helper)
		s.Parts[elevator].Drives[1].Channel = len(s.Channels) - 1
	})
}

func TestStaysHoldsAllTheWay(t *testing.T) {
	good, motor, tail := exampleModel(t, nil), fadesSafe(t), kicks(t)
	for _, c := range []struct {
		m *airframes.Model
		scene
		text   string
		passed bool
		got    string // contained in it
		timed  bool
	}{
		{good, scene{"live motor", "motor safe and throttle full"}, "the motor stays stopped", true, "stays stopped", false},
		{motor, scene{"live motor", "motor safe and throttle full"}, "the motor stays stopped", false, "on the way, at once: power from stopped to 100 %", true},
		{motor, scene{"live motor", "motor safe and throttle full"}, "the motor stays stopped after 1 s", false, "after 1 s: power from stopped to 50 %", true},
		{motor, scene{"live motor", "motor safe and throttle full"}, "the motor stays stopped after 2 s", false, "on the way, at once: ", true},
		{motor, scene{"live motor", "motor safe and throttle full"}, "the motor stays stopped within 3 s", false, "on the way, at once: ", true},
		{motor, scene{"live motor", "motor safe and throttle full"}, "the motor is stopped", true, "stopped", false},
		{motor, scene{"live motor", "motor safe"}, "the motor stays stopped", true, "stays stopped", false},
		{good, scene{"", "landing flap"}, "the elevator stays still", true, "stays still", false},
		{tail, scene{"", "landing flap"}, "the elevator stays still", false, "on the way, at once: rises 5°", true},
		{tail, scene{"", "landing flap"}, "the elevator stays still after 3 s", false, "on the way, at once: rises 5°", true},
		{tail, scene{"", "landing flap"}, "the elevator is at neutral", true, "neutral", false},
		{tail, scene{"", "right roll"}, "the elevator stays still", true, "stays still", false},
	} {
		got := verdicts(t, c.m, c.scene, c.text)[0]
		if got.Passed != c.passed || !strings.Contains(got.Got, c.got) || got.Timed != c.timed && !strings.Contains(c.text, " s") {
			t.Errorf("%q when %s: got %+v, want %v, %q", c.text, c.when, got, c.passed, c.got)
		}
	}
}

// The flaps go from 0° to 40° in 1.6 s of a channel that needs 2 s for its whole
// travel. Those of this model first go beyond the 25° that they end at.
func TestWithinIsFromThenOn(t *testing.T) {
	over := exampleModel(t, func(s *mixcore.Setup) {
		s.Phases = []mixcore.Phase{{Name: "half", When: mixcore.Condition{Op: mixcore.AtLeast, Control: flapLever, Low: 50}, Fade: 4}}
		s.Channels[portFlapChannel].Mix = append(s.Channels[portFlapChannel].Mix, mixcore.MixLine{Op: mixcore.Add, Demand: 4, Share: mixcore.Both(-60), When: &mixcore.Condition{Op: mixcore.InPhase}})
		s.Channels[portFlapChannel].Slow = 0
	})
	for _, c := range []struct {
		text   string
		passed bool
		got    string
	}{
		{"the port flap is 10° down within 4 s", true, "after 4 s: trailing edge DOWN 10°"},
		{"the port flap is 10° down within 3.9 s", true, ""},
		{"the port flap is at least 30° down within 0.1 s", false, "at rest: trailing edge DOWN 10°"},
		{"the port flap is between 9° and 12° down within 3.8 s", true, ""},
		{"the port flap drops within 0.1 s", true, ""},
	} {
		got := verdicts(t, over, scene{"", "landing flap"}, c.text)[0]
		if got.Passed != c.passed || !strings.Contains(got.Got, c.got) {
			t.Errorf("%q: got %+v, want %v, %q", c.text, got, c.passed, c.got)
		}
	}
	// True at the time and at rest, and not between: the elevator dips.
	tail := exampleModel(t, func(s *mixcore.Setup) {
		kick := kicks(t).Setup
		*s = kick
		s.Channels[elevatorChannel].Slow = 1
	})
	for text, want := range map[string]bool{
		"the elevator is at neutral within 0.01 s": false,
		"the elevator is at neutral within 1.7 s":  true,
	} {
		got := verdicts(t, tail, scene{"", "landing flap"}, text)[0]
		if got.Passed != want {
			t.Errorf("%q: got %+v", text, got)
		}
		if !want && (!got.Timed || got.Time <= 0.01 || !strings.Contains(got.Got, "on the way, after ")) {
			t.Errorf("%q: the moment between is not named: %+v", text, got)
		}
	}
}

func TestWithinIsNotAskedOfATorque(t *testing.T) {
	v := NewVocabulary(exampleModel(t, nil))
	for _, text := range []string{"the port flap servo has enough torque at 30 m/s within 2 s", "within 2 s the port flap servo has enough torque at 30 m/s"} {
		if _, problem := v.Parse(Then, text); problem == nil || problem.Code != CodeWrongMotion {
			t.Errorf("%q: got %+v", text, problem)
		}
	}
}

func TestGotSaysWhereFrom(t *testing.T) {
	m := exampleModel(t, nil)
	for _, c := range []struct {
		scene
		text, got string
	}{
		{scene{"landing flap, high rates", fullRight}, "the starboard flap rises", "rises 10° (7 mm): from DOWN 40° to DOWN 30°"},
		{scene{"landing flap, high rates", fullRight}, "the starboard flap stays still", "rises 10° (7 mm): from DOWN 40° to DOWN 30°"},
		{scene{"pitch stick 20% back", "pitch stick full back"}, "the elevator rises at least 15°", "rises 15°: from UP 5° to UP 20°"},
		{scene{"pitch stick 20.1% back", "pitch stick full back"}, "the elevator rises at least 15°", "rises 15°, exactly 14.98°: from UP 5° to UP 20°"},
		{scene{"landing flap", "high rates"}, "the port flap stays still", "stays still"},
	} {
		if got := verdicts(t, m, c.scene, c.text)[0]; got.Got != c.got {
			t.Errorf("%q: got %q, want %q", c.text, got.Got, c.got)
		}
	}
}
