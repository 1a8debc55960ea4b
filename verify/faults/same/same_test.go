package same_test

import (
	"context"
	"math/rand/v2"
	"testing"
	"time"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/same"
	"example.com/hingeline/verify/verifytest"
)

func models(t testing.TB) []*airframes.Model {
	t.Helper()
	return append(verifytest.EveryShipped(t), verifytest.Twelve(t))
}

// stillOf is what counts as still on a model.
func stillOf(m *airframes.Model) func(int) float64 {
	return func(part int) float64 {
		if m.Setup.Parts[part].Motion.Hinged() {
			return float64(m.Still)
		}
		return 1
	}
}

// anywhere is a position of the controls, often at an end.
func anywhere(r *rand.Rand, plan *mixcore.Plan) mixcore.Input {
	in := plan.Rest()
	for i := range in.Position {
		c := &plan.Setup().Controls[i]
		low, high := c.Range()
		switch {
		case c.Kind == mixcore.SwitchControl:
			in.Position[i] = float64(r.IntN(len(c.Positions)))
		case r.IntN(3) > 0:
			in.Position[i] = []float64{low, high, 0}[r.IntN(3)]
		default:
			in.Position[i] = low + r.Float64()*(high-low)
		}
	}
	in.SignalLost = r.IntN(4) == 0
	return in
}

// apart is how far a part of two plans is apart.
func apart(a, b *mixcore.Plan, in *mixcore.Input, part int, x, y *mixcore.Output) float64 {
	a.Eval(in, x)
	b.Eval(in, y)
	d := x.Parts[part].Place() - y.Parts[part].Place()
	return max(d, -d)
}

// Every mistake of every model is the same or not, and neither is contradicted by
// samples and by the pose that was found.
func TestDecideIsNotContradicted(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for _, m := range models(t) {
		still := stillOf(m)
		counts := map[same.Answer]int{}
		exact := 0
		var took time.Duration
		for _, wrong := range mistake.All(m, mistake.Options{}) {
			variant, faults := wrong.Variant(m)
			if faults != nil {
				continue
			}
			touched := mistake.Touched(m.Plan, variant.Plan)
			start := time.Now()
			d := same.Decide(context.Background(), m.Plan, variant.Plan, touched, same.Options{Still: still, Boxes: 2000})
			took += time.Since(start)
			counts[d.Answer]++
			x, y := m.Plan.NewOutput(), variant.Plan.NewOutput()
			switch d.Answer {
			case same.Same:
				if d.Exact {
					exact++
				}
				for range 200 {
					in := anywhere(r, m.Plan)
					for part := range m.Setup.Parts {
						by := apart(m.Plan, variant.Plan, &in, part, x, y)
						if by > still(part)+1e-6 || d.Exact && by > 2e-6 {
							t.Fatalf("%s: %s: the same (exactly: %v), but the %s is %v apart at %v", m.Name, wrong.Text, d.Exact, m.Setup.Parts[part].Name, by, in)
						}
					}
				}
			case same.Different:
				if by := apart(m.Plan, variant.Plan, &d.Pose, d.Part, x, y); by <= still(d.Part) || by != d.By {
					t.Errorf("%s: %s: %v apart at %v, said %v", m.Name, wrong.Text, by, d.Pose, d.By)
				}
			default:
				t.Logf("%s: undecided: %s (%s)", m.Name, wrong.Text, m.Setup.Parts[d.Part].Name)
			}
			if k := time.Since(start); k > 100*time.Millisecond {
				t.Logf("  slow %v %v %v: %s", d.Answer, k, d.Boxes, wrong.Text)
			}
		}
		t.Logf("%s: %d same (%d exactly), %d different, %d undecided, %v", m.Name, counts[same.Same], exact, counts[same.Different], counts[same.Undecided], took)
	}
}
