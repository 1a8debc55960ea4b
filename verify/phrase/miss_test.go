package phrase

import (
	"testing"

	"example.com/hingeline/mixcore"
)

func TestMissSaysThePlainThing(t *testing.T) {
	m := exampleModel(t, nil)
	v := NewVocabulary(m)
	for _, c := range []struct {
		scene
		text, want string
	}{
		{scene{"rates high", fullRight}, "the starboard aileron drops 20°", "WRONG WAY: wanted DOWN, it goes UP"},
		{scene{"rates high", fullRight}, "the port aileron is up", "WRONG WAY: wanted UP, it is DOWN"},
		{scene{"", "the yaw stick is full left"}, "the rudder moves right", "WRONG WAY: wanted RIGHT, it goes LEFT"},
		{scene{"rates low", fullRight}, "the starboard flap rises", "DID NOT MOVE: wanted UP"},
		{scene{"", ""}, "the port aileron is up", "AT NEUTRAL: wanted UP"},
		{scene{"gear wheels up", ""}, "the retracts are out", "WRONG WAY: wanted OUT, it is IN"},
		{scene{"rates high and right roll", ""}, "the port aileron is at neutral", "NOT AT NEUTRAL"},
		{scene{"rates high", fullRight}, "the port aileron stays still", "MOVES, wanted still"},
		{scene{"live motor", "throttle is full"}, "the motor stays stopped", "THE MOTOR RUNS"},
		{scene{"", ""}, "the motor runs", "DOES NOT RUN"},
		{scene{"live motor and full throttle", ""}, "the motor is at 50%", "50 % too high"},
		{scene{"", "takeoff flap"}, "the port flap moves opposite to the starboard flap", "WRONG WAY: they move the same way"},
		{scene{"rates low", fullRight}, "the port aileron moves together with the port flap", "DID NOT MOVE: the port flap"},
		{scene{"", "takeoff flap"}, "the port flap moves less than the starboard flap", ""},
	} {
		if got := missed(t, v, m.Plan, c.scene, c.text); got != c.want {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}

// The amount that is missing is the one wanted less the one got, in the unit of
// the sentence: how far it goes is looked up from the model itself.
func TestMissSaysHowMuch(t *testing.T) {
	m := exampleModel(t, nil)
	v := NewVocabulary(m)
	at := scene{"rates high", fullRight}
	before, now := outputs(t, v, m.Plan, at)
	rise := 0.0
	for i := range m.Setup.Parts {
		if m.Setup.Parts[i].Name == "starboard aileron" {
			rise = float64(before.Parts[i].Angle - now.Parts[i].Angle)
		}
	}
	for _, c := range []struct {
		text  string
		value float64
		over  bool
	}{
		{"the starboard aileron rises 25° ± 2°", 25, false},
		{"the starboard aileron rises, at most 5°", 5, true},
		{"the starboard aileron rises between 3° and 4°", 4, true},
		{"the starboard aileron rises, more than 30°", 30, false},
	} {
		size, word := c.value-rise, "too little"
		if c.over {
			size, word = rise-c.value, "too much"
		}
		want := "RIGHT WAY, but " + measure(float64(int(size*10+0.5))/10, "°") + " " + word
		if got := missed(t, v, m.Plan, at, c.text); got != want {
			t.Errorf("%q: %q, want %q", c.text, got, want)
		}
	}
}

// situation is a scene as a situation.
func (s scene) situation(t *testing.T, v *Vocabulary) Situation {
	t.Helper()
	at := Situation{Now: RestPose(v.setup)}
	if s.given != "" {
		g, problem := v.Parse(Given, s.given)
		if problem != nil {
			t.Fatalf("%q: %s", s.given, problem.Message)
		}
		at.Now = at.Now.Take(v.setup, &g.Settings)
	}
	if s.when != "" {
		g, problem := v.Parse(When, s.when)
		if problem != nil {
			t.Fatalf("%q: %s", s.when, problem.Message)
		}
		at = Situation{Before: at.Now, Now: at.Now.Take(v.setup, &g.Settings), Moved: true}
	}
	return at
}

// outputs are before and after a scene's movement; before is nil without one.
func outputs(t *testing.T, v *Vocabulary, plan *mixcore.Plan, s scene) (before, now *mixcore.Output) {
	t.Helper()
	at := s.situation(t, v)
	if at.Moved {
		in := at.Before.Input()
		before = plan.NewOutput()
		plan.Eval(&in, before)
	}
	in := at.Now.Input()
	now = plan.NewOutput()
	plan.Eval(&in, now)
	return before, now
}

func missed(t *testing.T, v *Vocabulary, plan *mixcore.Plan, s scene, text string) string {
	t.Helper()
	meaning, problem := v.Parse(Then, text)
	if problem != nil {
		t.Fatalf("%q: %s", text, problem.Message)
	}
	o := &meaning.Outcomes[0]
	verdict := v.Judge(o, s.situation(t, v))[0]
	if verdict.Passed {
		t.Fatalf("%q passes: %s", text, verdict.Got)
	}
	before, now := outputs(t, v, plan, s)
	return v.Miss(o, &verdict, before, now)
}
