package walk_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
	"example.com/hingeline/verify/faults/walk"
	"example.com/hingeline/verify/verifytest"
)

// Before every candidate step of every shipped model it is said that a motor runs where
// one does, and that one may where its throttle is open, its switch live or the signal lost.
func TestStepsWarnOfMotors(t *testing.T) {
	counts := map[string]int{}
	for _, name := range airframes.Shipped() {
		m := verifytest.Shipped(t, name)
		steps := table.Steps(m)
		if len(steps) > 300 {
			steps = steps[:300]
		}
		tab := table.New(m, nil, steps)
		for i := range steps {
			said := strings.Join(walk.Say(tab, sight.Eye, i).Beware, "; ")
			runs, open := motor(m, &steps[i].From, &steps[i].To)
			switch {
			case runs && !strings.Contains(said, "a motor runs here"):
				t.Fatalf("%s step %d: a motor runs, and it is said: %q", name, i, said)
			case !runs && open && !strings.Contains(said, "a motor may run here"):
				t.Fatalf("%s step %d: the throttle is open, and it is said: %q", name, i, said)
			case runs:
				counts["runs"]++
			case open:
				counts["open"]++
			}
			if !hasMotor(m) && strings.Contains(said, "motor") {
				t.Fatalf("%s has no motor, and it is said: %q", name, said)
			}
		}
	}
	if counts["runs"] < 20 || counts["open"] < 20 {
		t.Errorf("hardly anything was tried: %v", counts)
	}
}

// motor says whether a motor runs at one of two inputs, and whether a control called
// throttle or motor is off rest at one, or the signal lost.
func motor(m *airframes.Model, inputs ...*mixcore.Input) (runs, open bool) {
	rest, out := m.Plan.Rest(), m.Plan.NewOutput()
	for _, in := range inputs {
		m.Plan.Eval(in, out)
		for i := range m.Setup.Parts {
			p := &m.Setup.Parts[i]
			runs = runs || p.Motion == mixcore.Power && !p.Motor.Stopped(out.Parts[i].Amount)
		}
		open = open || in.SignalLost && hasMotor(m)
		for i, c := range m.Setup.Controls {
			named := strings.Contains(c.Name, "throttle") || strings.Contains(c.Name, "motor")
			open = open || named && in.Position[i] != rest.Position[i]
		}
	}
	return runs, open
}

func hasMotor(m *airframes.Model) bool {
	return slices.ContainsFunc(m.Setup.Parts, func(p mixcore.Part) bool { return p.Motion == mixcore.Power })
}

// What else to know: wheels that come in, sticks held while the signal is lost, the
// throttle while the transmitter is switched on again.
func TestStepsSayWhatElseToBewareOf(t *testing.T) {
	said := map[string]int{}
	for _, name := range airframes.Shipped() {
		m := verifytest.Shipped(t, name)
		wheels := slices.ContainsFunc(m.Setup.Parts, func(p mixcore.Part) bool { return p.Kind == "retract" })
		tab := table.New(m, nil, table.Steps(m))
		for i := range tab.Steps {
			for _, text := range walk.Say(tab, sight.Eye, i).Beware {
				said[text]++
				if strings.Contains(text, "wheels") && !wheels {
					t.Errorf("%s has no wheels that come in: %q", name, text)
				}
			}
		}
	}
	for _, want := range []string{"the wheels come in: hold the model up", "for two: one holds the controls, the other switches the transmitter off and looks"} {
		if said[want] == 0 {
			t.Errorf("never said: %q; said: %v", want, said)
		}
	}
}

// A throttle is set behind what makes its motor live, and both behind all else.
func TestThrottleIsSetLast(t *testing.T) {
	m := verifytest.Shipped(t, "bracken-20")
	tab, both := table.New(m, nil, table.Steps(m)), 0
	for i := range tab.Steps {
		stand := walk.Say(tab, sight.Eye, i).Stand
		throttle := slices.IndexFunc(stand, func(s string) bool { return strings.HasPrefix(s, "throttle ") })
		live := slices.Index(stand, "motor switch live")
		if throttle >= 0 && throttle != len(stand)-1 || live >= 0 && throttle < 0 && live != len(stand)-1 {
			t.Errorf("set %q", stand)
		}
		if throttle >= 0 && live >= 0 {
			both++
		}
	}
	if both == 0 {
		t.Error("no step has the motor live and the throttle open: the test holds nothing")
	}
}

// Whoever does what a walk says in the order in which it is said never makes a motor live
// with its throttle open that is to be closed: it is closed first, and that is said.
func TestThrottleIsClosedBeforeAMotorIsLive(t *testing.T) {
	for _, name := range []string{"bracken-20", "quoin-delta", "turnstone-canard"} {
		m := verifytest.Shipped(t, name)
		at := func(control string) int {
			return slices.IndexFunc(m.Setup.Controls, func(c mixcore.Control) bool { return c.Name == control })
		}
		throttle, motor := at("throttle"), at("motor switch")
		if throttle < 0 || motor < 0 {
			t.Fatal(name, throttle, motor)
		}
		open, live := sight.Step{From: m.Plan.Rest(), To: m.Plan.Rest()}, sight.Step{From: m.Plan.Rest(), To: m.Plan.Rest()}
		open.To.Position[throttle] = 100
		live.From.Position[motor], live.To.Position[motor] = 1, 1
		live.To.Position[throttle] = 50
		steps := (&walk.Found{Table: table.New(m, nil, []sight.Step{open, live}), Look: sight.Eye, Order: []int{0, 1, 0}}).Result().Steps
		position := "motor switch " + m.Setup.Controls[motor].Positions[1]
		if got, want := steps[1].Ready, []string{"throttle 0 %", position}; !slices.Equal(got, want) {
			t.Errorf("%s: to be set %q, wanted %q", name, got, want)
		}
		if want := "first throttle 0 %, and only then " + position; !slices.Contains(steps[1].Beware, want) {
			t.Errorf("%s: %q, wanted %q", name, steps[1].Beware, want)
		}
		if got, want := steps[2].Ready, []string{"throttle 0 %", "motor switch " + m.Setup.Controls[motor].Positions[0]}; !slices.Equal(got, want) {
			t.Errorf("%s: to be made safe %q, wanted %q", name, got, want)
		}
		for _, i := range []int{0, 2} {
			if strings.Contains(strings.Join(steps[i].Beware, ";"), "only then") {
				t.Errorf("%s: step %d: %q", name, i+1, steps[i].Beware)
			}
		}
	}
}

// Wheels that come in as a step is set come in, too, and it is said before it.
func TestWheelsThatComeInAsAStepIsSet(t *testing.T) {
	said := 0
	for _, name := range airframes.Shipped() {
		m := verifytest.Shipped(t, name)
		part := slices.IndexFunc(m.Setup.Parts, func(p mixcore.Part) bool { return p.Kind == "retract" })
		if part < 0 {
			continue
		}
		all := table.Steps(m)
		rest, out := m.Plan.Rest(), m.Plan.NewOutput()
		m.Plan.Eval(&rest, out)
		down := sight.PlaceOf(&m.Setup, part, out)
		tab := table.New(m, nil, all)
		for i := range all {
			m.Plan.Eval(&all[i].From, out)
			from := sight.PlaceOf(&m.Setup, part, out)
			m.Plan.Eval(&all[i].To, out)
			if from >= down || sight.PlaceOf(&m.Setup, part, out) < from {
				continue
			}
			said++
			if text := walk.Say(tab, sight.Eye, i).Beware; !slices.Contains(text, "the wheels come in: hold the model up") {
				t.Fatalf("%s step %d: %q", name, i, text)
			}
		}
	}
	if said == 0 {
		t.Error("no step is set with the wheels in")
	}
}
