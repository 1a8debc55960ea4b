package poses_test

import (
	"slices"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/verifytest"
	"pgregory.net/rapid"
)

func TestWhatStartsAMotorIsSetLast(t *testing.T) {
	m := verifytest.Shipped(t, "ousel-trainer")
	index := func(name string) int {
		return slices.IndexFunc(m.Setup.Controls, func(c mixcore.Control) bool { return c.Name == name })
	}
	throttle, motor := index("throttle"), index("motor switch")
	at := func(open, live float64) *mixcore.Input {
		in := m.Plan.Rest()
		in.Position[throttle], in.Position[motor] = open, live
		return &in
	}
	order := func(was, is *mixcore.Input) []string { return names(m, poses.HandOrder(&m.Setup, was, is)) }
	got := order(at(0, 0), at(50, 1))
	if want := []string{"motor switch", "throttle"}; !slices.Equal(got[len(got)-2:], want) {
		t.Errorf("the motor made to run: last %q, want %q", got[len(got)-2:], want)
	}
	if !slices.Equal(got, names(m, poses.FromRest(&m.Setup, at(50, 1)))) {
		t.Error("from rest it is another order")
	}
	if got, want := order(at(50, 1), at(0, 0))[:2], []string{"throttle", "motor switch"}; !slices.Equal(got, want) {
		t.Errorf("the motor stopped: first %q, want %q", got, want)
	}
	if got := order(at(50, 0), at(0, 1)); got[0] != "throttle" || got[len(got)-1] != "motor switch" {
		t.Errorf("closed and made live: %q, want the throttle first and the switch last", got)
	}
}

// The brakes of this model stop its motor: with them out first it never runs.
func TestBrakesAreOutBeforeTheMotorIsLive(t *testing.T) {
	m := verifytest.Shipped(t, "tarn-measured")
	in := m.Plan.Rest()
	order := names(m, poses.FromRest(&m.Setup, &in))
	if slices.Index(order, "brake lever") > slices.Index(order, "motor switch") || order[len(order)-1] != "motor switch" {
		t.Errorf("got %q, want the motor switch last", order)
	}
}

// A hand that follows the order never flicks a switch that starts a motor with a throttle
// open that it opened before, or is going to close.
func TestNoSwitchStartsAMotorInHandOrder(t *testing.T) {
	var models []poseModel
	for _, m := range verifytest.EveryShipped(t) {
		models = append(models, poseModel{m.Name, m.Plan, &m.Setup})
	}
	started := 0
	rapid.Check(t, func(t *rapid.T) {
		m := models[rapid.IntRange(0, len(models)-1).Draw(t, "model")]
		was, is := m.draw(t, "was"), m.draw(t, "is")
		in, out := was.Clone(), m.plan.NewOutput()
		running := func() (list []bool) {
			m.plan.Eval(&in, out)
			for i := range m.setup.Parts {
				p := &m.setup.Parts[i]
				list = append(list, p.Motion == mixcore.Power && !p.Motor.Stopped(out.Parts[i].Amount))
			}
			return list
		}
		starters, before := poses.Starters(m.setup), running()
		for _, c := range poses.HandOrder(m.setup, was, is) {
			in.Position[c] = is.Position[c]
			now := running()
			for part := range now {
				if !now[part] || before[part] {
					continue
				}
				started++
				for k, starts := range starters {
					open := in.Position[k] != m.setup.Controls[k].Rest()
					moves := poses.NearerRest(&m.setup.Controls[k], in.Position[k], is.Position[k]) || poses.NearerRest(&m.setup.Controls[k], in.Position[k], was.Position[k])
					if starters[c] == poses.SwitchesMotor && starts == poses.OpensThrottle && open && moves {
						t.Errorf("%s: the %s starts the %s with the %s open", m.name, m.setup.Controls[c].Name, m.setup.Parts[part].Name, m.setup.Controls[k].Name)
					}
				}
			}
			before = now
		}
	})
	if started == 0 {
		t.Error("no motor ever started: this test looks at nothing")
	}
}

type poseModel struct {
	name  string
	plan  *mixcore.Plan
	setup *mixcore.Setup
}

// draw is a pose of levers and switches; sticks and trims, which start nothing, rest.
func (m *poseModel) draw(t *rapid.T, label string) *mixcore.Input {
	in := m.plan.Rest()
	for i := range m.setup.Controls {
		switch c := &m.setup.Controls[i]; c.Kind {
		case mixcore.SwitchControl:
			in.Position[i] = float64(rapid.IntRange(0, len(c.Positions)-1).Draw(t, label))
		case mixcore.LeverControl:
			in.Position[i] = rapid.SampledFrom([]float64{0, 50, 100}).Draw(t, label)
		}
	}
	return &in
}
