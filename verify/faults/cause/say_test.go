package cause_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/cause"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
	"example.com/hingeline/verify/verifytest"
)

// A step behind one that leaves the throttle open, or the transmitter off, says what to do
// before its motor is live.
func TestStepsAreSaidBehindThoseThatWereAnswered(t *testing.T) {
	m := verifytest.Shipped(t, "bracken-20")
	at := func(control string) int {
		return slices.IndexFunc(m.Setup.Controls, func(c mixcore.Control) bool { return c.Name == control })
	}
	throttle, motor := at("throttle"), at("motor switch")
	open, lost, live := sight.Step{From: m.Plan.Rest(), To: m.Plan.Rest()}, sight.Step{From: m.Plan.Rest(), To: m.Plan.Rest()}, sight.Step{From: m.Plan.Rest(), To: m.Plan.Rest()}
	open.To.Position[throttle] = 100
	lost.To.SignalLost = true
	live.From.Position[motor], live.To.Position[motor], live.To.Position[throttle] = 1, 1, 50
	s := cause.NewSession(context.Background(), table.New(m, nil, []sight.Step{open, lost, live}), nil, sight.Eye)
	for _, c := range []struct {
		behind int
		says   string
	}{{0, "first throttle 0 %, and only then motor switch live"}, {1, "while the transmitter is switched on again"}} {
		if got := strings.Join(s.Say(2).Beware, "; "); strings.Contains(got, c.says) {
			t.Errorf("before anything was answered: %q", got)
		}
		s.Answer(c.behind, nil)
		if got := strings.Join(s.Say(2).Beware, "; "); !strings.Contains(got, c.says) {
			t.Errorf("behind step %d: %q, wanted %q", c.behind, got, c.says)
		}
	}
}
