package phrase

import (
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain"
)

func TestDoubtTellsTheWayFromTheAmount(t *testing.T) {
	m := exampleModel(t, nil)
	v := NewVocabulary(m)
	for _, c := range []struct {
		scene
		text string
		want chain.Doubt
	}{
		{scene{"rates high", fullRight}, "the starboard aileron drops", chain.Direction},
		{scene{"rates high", fullRight}, "the starboard aileron drops 20°", chain.Direction},
		{scene{"rates high", fullRight}, "the starboard aileron rises 25° ± 2°", chain.Amount},
		{scene{"rates high", fullRight}, "the starboard aileron rises, at most 5°", chain.Amount},
		{scene{"rates low", fullRight}, "the starboard flap rises", chain.Stuck},
		{scene{"rates high", fullRight}, "the port aileron is 12.4° down ± 0.3°", chain.Amount},
		{scene{"rates high", fullRight}, "the port aileron is up", chain.Direction},
		{scene{"", ""}, "the port aileron is up", chain.Stuck},
		{scene{"", "the yaw stick is full left"}, "the rudder moves right", chain.Direction},
		{scene{"rates high", fullRight}, "the port aileron stays still", chain.Astir},
		{scene{"rates high and right roll", ""}, "the port aileron is at neutral", chain.Astir},
		{scene{"live motor", "throttle is full"}, "the motor stays stopped", chain.Astir},
		{scene{"live motor", "throttle is full"}, "the motor stops", chain.Astir},
		{scene{"", ""}, "the motor runs", chain.Stuck},
		{scene{"live motor and full throttle", ""}, "the motor is at 50%", chain.Amount},
		{scene{"", "takeoff flap"}, "the port flap moves opposite to the starboard flap", chain.Direction},
		{scene{"", "takeoff flap"}, "the port flap moves less than the starboard flap", chain.Amount},
		{scene{"rates low", fullRight}, "the port aileron moves together with the port flap", chain.Stuck},
		{scene{"gear wheels up", ""}, "the retracts are out", chain.Direction},
		{scene{"rates high and right roll", ""}, "channel 2 is at 1400 µs", chain.Direction},
		{scene{"rates high and right roll", ""}, "channel 2 is at 1900 µs", chain.Amount},
	} {
		at := Situation{Now: RestPose(&m.Setup)}
		for role, text := range map[Role]string{Given: c.given, When: c.when} {
			if _, problem := v.Parse(role, text); text != "" && problem != nil {
				t.Fatalf("%q: %s", text, problem.Message)
			}
		}
		if c.given != "" {
			g, _ := v.Parse(Given, c.given)
			at.Now = at.Now.Take(&m.Setup, &g.Settings)
		}
		var before *mixcore.Output
		if c.when != "" {
			g, _ := v.Parse(When, c.when)
			at = Situation{Before: at.Now, Now: at.Now.Take(&m.Setup, &g.Settings), Moved: true}
			in := at.Before.Input()
			before = m.Plan.NewOutput()
			m.Plan.Eval(&in, before)
		}
		meaning, problem := v.Parse(Then, c.text)
		if problem != nil {
			t.Fatalf("%q: %s", c.text, problem.Message)
		}
		o := &meaning.Outcomes[0]
		verdict := v.Judge(o, at)[0]
		if verdict.Passed {
			t.Errorf("%q passes: %s", c.text, verdict.Got)
			continue
		}
		in, now := at.Now.Input(), m.Plan.NewOutput()
		m.Plan.Eval(&in, now)
		if got := v.Doubt(o, &verdict, before, now); got != c.want {
			t.Errorf("%q, got %q: doubt %d, want %d", c.text, verdict.Got, got, c.want)
		}
	}
}
