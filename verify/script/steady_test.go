package script

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/mixcore"
)

// A steady part is on its way nowhere but between the two places where it rests, on any
// model; and one that a fade bears on may be elsewhere, or the test would show nothing.
func TestSteadyPartsStayBetweenTheirEnds(t *testing.T) {
	steady, moved := 0, 0
	rapid.Check(t, func(r *rapid.T) {
		m := load(t, "drawn.yaml", airframestest.Generate(r))
		draw := func(label string) mixcore.Input {
			in := m.Plan.Rest()
			for i := range in.Position {
				low, high := m.Setup.Controls[i].Range()
				if m.Setup.Controls[i].Kind == mixcore.SwitchControl {
					in.Position[i] = float64(rapid.IntRange(0, int(high)).Draw(r, label))
				} else {
					in.Position[i] = rapid.Float64Range(low, high).Draw(r, label)
				}
			}
			return in
		}
		from, to := draw("from"), draw("to")
		from.SignalLost, to.SignalLost = rapid.IntRange(0, 5).Draw(r, "lost") == 0, rapid.IntRange(0, 3).Draw(r, "lost") == 0
		a, b := m.Plan.NewOutput(), m.Plan.NewOutput()
		m.Plan.Eval(&from, a)
		m.Plan.Eval(&to, b)
		if to.SignalLost { // what a channel holds is what it had
			m.Plan.EvalAfter(&from, &to, 1000, b)
		}
		place := func(o *mixcore.Output, part int) float64 {
			return float64(o.Parts[part].Angle) + float64(o.Parts[part].Amount)
		}
		for part := range m.Setup.Parts {
			if m.Plan.Steady(part, &from, &to) {
				steady++
				if place(a, part) != place(b, part) {
					moved++
				}
			}
		}
		m.Plan.During(&from, &to, 5, func(now mixcore.Seconds, out *mixcore.Output) bool {
			for part := range m.Setup.Parts {
				if !m.Plan.Steady(part, &from, &to) {
					continue
				}
				at, low, high := place(out, part), math.Min(place(a, part), place(b, part)), math.Max(place(a, part), place(b, part))
				if at < low-1e-9 || at > high+1e-9 {
					r.Fatalf("%s is at %v after %v s, on its way from %v to %v", m.Setup.Parts[part].Name, at, now, place(a, part), place(b, part))
				}
			}
			return true
		})
	})
	if steady == 0 || moved == 0 {
		t.Errorf("%d steady parts, of which %d moved", steady, moved)
	}
}
