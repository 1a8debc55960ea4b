package phrase

import (
	"slices"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
)

func group(t *testing.T, v *Vocabulary, role Role, text string) *Group {
	t.Helper()
	meaning, problem := v.Parse(role, text)
	if problem != nil {
		t.Fatalf("%q: %s", text, problem.Message)
	}
	return &meaning.Settings
}

// holdsMotor is the example with a motor channel that holds: it runs on.
func holdsMotor(t *testing.T) *airframes.Model {
	return exampleModel(t, func(s *mixcore.Setup) { s.Channels[motorChannel].Failsafe = mixcore.Failsafe{Hold: true} })
}

// A state with the signal lost is the loss at that pose, in whatever order it is
// written: what was set after the loss was heard too.
func TestAStateWithTheSignalLostWasLostAtThatPose(t *testing.T) {
	m := holdsMotor(t)
	v := NewVocabulary(m)
	for _, order := range [][]string{
		{"the signal is lost", "live motor", "throttle full"},
		{"live motor", "the signal is lost", "throttle full"},
		{"live motor", "throttle full", "the signal is lost"},
	} {
		p := RestPose(&m.Setup)
		for _, text := range order {
			p = p.Stand(&m.Setup, group(t, v, Given, text))
		}
		if got := verdictsAt(t, v, Situation{Now: p}, "the motor runs"); !passes(got) {
			t.Errorf("%q: %+v", order, got)
		}
		moved := p.Take(&m.Setup, group(t, v, When, "motor safe"))
		at := Situation{Before: p, Now: moved, Moved: true}
		if got := verdictsAt(t, v, at, "the motor runs"); !passes(got) || !at.Unheard() {
			t.Errorf("%q: a movement after the loss was heard: %+v", order, got)
		}
	}
	back := RestPose(&m.Setup).Stand(&m.Setup, group(t, v, Given, "the signal is lost")).Stand(&m.Setup, group(t, v, Given, "the signal is back"))
	if back.Lost || !back.Same(RestPose(&m.Setup)) {
		t.Errorf("got %+v", back)
	}
}

func verdictsAt(t *testing.T, v *Vocabulary, at Situation, text string) (list []Verdict) {
	t.Helper()
	for _, o := range outcomesOf(t, v, text) {
		list = append(list, v.Judge(&o, at)...)
	}
	return list
}

// Without when, a signal among the settings is the movement; all else was so
// before it.
func TestOneLineTakesTheSignalForTheMovement(t *testing.T) {
	m := holdsMotor(t)
	v := NewVocabulary(m)
	for _, text := range []string{
		"with live motor, full throttle and the signal lost, the motor is stopped",
		"with the signal lost, full throttle and live motor, the motor is stopped",
		"with full throttle, right roll, the signal lost and live motor, the motor stops",
	} {
		meaning, problem := v.Parse(AnyRole, text)
		if problem != nil {
			t.Fatalf("%q: %s", text, problem.Message)
		}
		if meaning.Move.Signal != SignalLost || len(meaning.Move.Settings) != 0 || meaning.With.Signal != SignalKept || len(meaning.With.Settings) < 2 {
			t.Errorf("%q: got %+v", text, meaning)
		}
		if list := verdicts(t, m, scene{}, text); passes(list) {
			t.Errorf("%q passes although the channel holds: %+v", text, list)
		}
		if list := verdicts(t, exampleModel(t, nil), scene{}, text); !passes(list) {
			t.Errorf("%q fails although the channel stops the motor: %+v", text, list)
		}
	}
	if meaning, _ := v.Parse(AnyRole, "with the signal lost, full throttle, the motor is stopped"); meaning.Move.Signal != SignalLost {
		t.Errorf("got %+v", meaning)
	}
}

func TestUnmovedSaysWhyNothingIsShown(t *testing.T) {
	m := exampleModel(t, nil)
	v := NewVocabulary(m)
	rest := RestPose(&m.Setup)
	to := func(from Pose, text string) Situation {
		return Situation{Before: from, Now: from.Take(&m.Setup, group(t, v, When, text)), Moved: true}
	}
	lost := rest.Stand(&m.Setup, group(t, v, Given, "the signal is lost"))
	for name, c := range map[string]struct {
		at    Situation
		text  string
		shows bool
	}{
		"a movement":              {to(rest, "right roll"), "the port aileron drops", true},
		"no movement":             {Situation{Now: rest}, "the port aileron drops", false},
		"no movement, a position": {Situation{Now: rest}, "the port aileron is at neutral", true},
		"where it stood":          {to(rest, "throttle closed"), "the motor stays stopped", false},
		"a hair":                  {to(rest, "throttle 0.9%"), "the motor stays stopped", false},
		"a percent":               {to(rest, "throttle 1%"), "the motor stays stopped", true},
		"a switch":                {to(rest, "live motor"), "the motor stays stopped", true},
		"the signal":              {to(rest, "the signal is lost"), "the motor stays stopped", true},
		"deaf":                    {to(lost, "full throttle"), "the motor stays stopped", false},
		"deaf, a position":        {to(lost, "full throttle"), "the motor is stopped", false},
		"heard again":             {to(lost, "the signal is back and right roll"), "the port aileron drops", true},
	} {
		problem := outcomesOf(t, v, c.text)[0].Unmoved(&c.at)
		if (problem == nil) != c.shows || problem != nil && (problem.Code != CodeNoMovement || problem.Hint == "") {
			t.Errorf("%s: got %+v", name, problem)
		}
	}
}

// A part that shares its stick's short name is what moves behind the comma.
func TestOneLineTakesTheOutcomeBehindTheComma(t *testing.T) {
	m := exampleModel(t, func(s *mixcore.Setup) {
		s.Controls[yawStick].Name = "rudder stick"
		s.Controls[flapLever].Detents = []mixcore.Detent{{Name: "up"}, {Name: "down", At: 100}}
	})
	v := NewVocabulary(m)
	for text, want := range map[string][2]int{ // settings, outcomes
		"with full right rudder, the rudder moves right":                           {1, 1},
		"with full right rudder, the rudder moves right, at least 20°":             {1, 1},
		"with full right rudder, the rudder moves right and is 25° right":          {1, 2},
		"with full right rudder, the rudder moves right, the nose wheel goes left": {1, 2},
		"with full throttle, the rudder is at neutral":                             {1, 1},
		"with full throttle, the rudder is at neutral and the elevator is neutral": {1, 2},
		"when the rudder is full right, the rudder moves right":                    {1, 1},
		"with rates high and full right rudder, the rudder moves right":            {2, 1},
		"with rates high, full right rudder, the rudder moves right":               {2, 1},
		"with high rates and the flaps are down, the elevator is at neutral":       {2, 1},
		"with the rudder full right the rudder moves right":                        {1, 1},
	} {
		for _, role := range []Role{Given, When, Then, AnyRole} {
			meaning, problem := v.Parse(role, text)
			if problem != nil {
				t.Errorf("%q: %s (%s)", text, problem.Message, problem.Hint)
				break
			}
			if got := [2]int{len(meaning.With.Settings) + len(meaning.Move.Settings), len(meaning.Outcomes)}; got != want {
				t.Errorf("%q: got %v settings and outcomes, want %v", text, got, want)
			}
		}
	}
	for _, text := range []string{"with high rates, the flaps are down, the elevator is at neutral", "with full throttle, the rudder is centred, the elevator is at neutral"} {
		if _, problem := v.Parse(AnyRole, text); problem == nil || problem.Code != CodeUnclearName {
			t.Errorf("%q: got %+v, want it refused as unclear", text, problem)
		}
	}
}

// Under a * with nothing before it, a text that could set or ask is refused.
func TestAnyRoleRefusesWhatCouldBeEither(t *testing.T) {
	m := exampleModel(t, func(s *mixcore.Setup) {
		s.Controls[flapLever].Detents = []mixcore.Detent{{Name: "up"}, {Name: "down", At: 100}}
		s.Controls[yawStick].Name = "rudder stick"
	})
	v := NewVocabulary(m)
	for _, text := range []string{"the flaps are down", "the rudder moves right", "the flaps are up and the rudder is right", "the rudder is neutral"} {
		_, problem := v.Parse(AnyRole, text)
		if problem == nil || problem.Code != CodeUnclearName || problem.Column != 1 || problem.Hint == "" {
			t.Errorf("%q: got %+v", text, problem)
		}
		if meaning, problem := v.Parse(Given, text); problem != nil || meaning.Role != Given {
			t.Errorf("Given %q: %+v", text, problem)
		}
		if meaning, problem := v.Parse(Then, text); problem != nil || meaning.Role != Then {
			t.Errorf("Then %q: %+v", text, problem)
		}
		if !v.Understands(text) {
			t.Errorf("%q is not understood at all", text)
		}
	}
}

func TestClaimsAreNamesWithAVerb(t *testing.T) {
	v := NewVocabulary(exampleModel(t, nil))
	for text, want := range map[string]bool{
		"the port aileron rises with right roll":           true,
		"Verify that the elevator rises":                   true,
		"1. Then the elevator drops":                       true,
		"Expect: the motor stays stopped!":                 true,
		"- motor switch must be live":                      true,
		"Wenn the roll stick is full right":                true,
		"(the flaps are parked)":                           true,
		"channel 3 is at 1500":                             true,
		"the elevator should not rise; see above":          true,
		"rate switch is high":                              true,
		"Four servos in the wing, full-span roll.":         false,
		"every detent of the flap lever: which way":        false,
		"Nothing but flaps, and one reversed is enough":    false,
		"The wind is up and the sun is down":               false,
		"The elevator is what worries me most":             false,
		"It flies well; the motor of my other plane stops": false,
		"": false,
	} {
		if got := v.Claims(text); got != want {
			t.Errorf("%q: got %v", text, got)
		}
	}
}

func TestSituationsKnowWhatMovedHardly(t *testing.T) {
	m := exampleModel(t, nil)
	at := Situation{Before: RestPose(&m.Setup), Now: RestPose(&m.Setup), Moved: true}
	at.Now.Position[rollStick], at.Now.Position[pitchStick] = 0.99, -0.99
	if !at.Hardly() || !slices.Equal(at.MovedControls(), []int{rollStick, pitchStick}) {
		t.Errorf("got %+v", at)
	}
	at.Now.Position[pitchStick] = -1
	if at.Hardly() {
		t.Error("one percent is hardly a movement")
	}
}
