//go:build solvers

package smt

import (
	"math/rand/v2"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

// A fault in what is written, which the prover does not see, must be reported as a
// contradiction: by the search for a counterexample, and at single poses.
func TestSolversReportPlantedContradictions(t *testing.T) {
	requireSolvers(t)
	base := plantable(t)
	plan := compiled(t, base)
	for _, fault := range []struct {
		what  string
		plant func(s *mixcore.Setup)
	}{
		{"a share too large", func(s *mixcore.Setup) { s.Channels[0].Mix[0].Share = mixcore.Both(125) }},
		{"a share turned about", func(s *mixcore.Setup) { s.Channels[1].Mix[0].Share = mixcore.Both(100) }},
		{"a line left out", func(s *mixcore.Setup) { s.Channels[2].Mix = s.Channels[2].Mix[:1] }},
		{"no scaling", func(s *mixcore.Setup) {
			s.Channels[0].Mix[1].Op = mixcore.Add
			s.Channels[0].Mix[1].Share = mixcore.Both(0)
		}},
		{"a condition turned about", func(s *mixcore.Setup) {
			s.Channels[2].Mix[1].When = &mixcore.Condition{Op: mixcore.AtPosition, Control: named(s, "motor switch"), Position: 1}
		}},
		{"another failsafe", func(s *mixcore.Setup) { s.Channels[2].Failsafe.Output = -99 }},
		{"a longer arm", func(s *mixcore.Setup) { s.Parts[0].Drives[0].Linkage.Arm += 0.5 }},
		{"a reversed channel", func(s *mixcore.Setup) { s.Channels[0].Reversed = true }},
	} {
		t.Run(fault.what, func(t *testing.T) {
			faulty := base.Clone()
			fault.plant(&faulty)
			writing := compiled(t, faulty)
			p := prove.New(plan)
			var searched, pinned bool
			for i, claim := range telling(plan) {
				s := subject{name: "planted", plan: plan, writing: writing, claim: claim}
				d := s.verdict(p)
				for k := range solvers {
					out, _ := s.held(t, &solvers[k], p, &d)
					searched = searched || out == contradicts
				}
				r := rand.New(rand.NewPCG(uint64(i), 3))
				for range posesTries {
					_, why := s.pinned(t, &solvers[0], p, &d, r)
					pinned = pinned || why != ""
				}
				if searched && pinned {
					break
				}
			}
			if !searched || !pinned {
				t.Errorf("reported by the search: %v, at single poses: %v; want both", searched, pinned)
			}
		})
	}
}

// posesTries is how often single poses of each claim are drawn.
const posesTries = 5

// plantable is the golden airframe made simple enough that the solvers decide every
// claim about it at once.
func plantable(t *testing.T) mixcore.Setup {
	t.Helper()
	s := golden(t).Setup.Clone()
	for i := range s.Demands {
		for k := range s.Demands[i].Rates {
			s.Demands[i].Rates[k].Expo = 0
		}
		if c := s.Demands[i].Curve; c != nil {
			s.Demands[i].Curve = &mixcore.Curve{Points: c.Points}
		}
	}
	s.Demands[0].Rates[0].Throw = mixcore.Both(70)
	return s
}

// telling are claims that hold by little, with the roll stick at its ends, so that any
// fault of those planted shows in one.
func telling(plan *mixcore.Plan) (list []prove.Claim) {
	s := plan.Setup()
	for _, stick := range []float64{-100, 100} {
		now := prove.Everywhere(s)
		now[named(s, "roll stick")] = prove.At(stick)
		add := func(lost bool, want func(low, high float64) prove.Want, value func(*mixcore.Output) float64) {
			off := named(s, "motor switch")
			for at := range s.Controls[off].Positions {
				now := append([]prove.Span(nil), now...)
				now[off] = prove.Span{Places: []int{at}}
				low, high := extremes(plan, now, lost, value)
				list = append(list, prove.Claim{Now: now, Lost: lost, Want: want(low-0.2, high+0.2)})
			}
		}
		for _, lost := range []bool{false, true} {
			for i := range s.Channels {
				add(lost, func(low, high float64) prove.Want { return prove.Output{Channel: i, Low: low, High: high} },
					func(out *mixcore.Output) float64 { return float64(out.Channels[i].Output) })
			}
		}
		for i := range s.Parts {
			add(false, func(low, high float64) prove.Want { return prove.Place{Part: i, Low: low, High: high} },
				func(out *mixcore.Output) float64 { return float64(out.Parts[i].Angle) + float64(out.Parts[i].Amount) })
		}
	}
	return list
}

// extremes are the least and most of a value over a grid of positions.
func extremes(plan *mixcore.Plan, now []prove.Span, lost bool, value func(*mixcore.Output) float64) (low, high float64) {
	in, out := plan.Rest(), plan.NewOutput()
	in.SignalLost = lost
	first := true
	var walk func(i int)
	walk = func(i int) {
		if i == len(now) {
			plan.Eval(&in, out)
			if v := value(out); first {
				low, high, first = v, v, false
			} else {
				low, high = min(low, v), max(high, v)
			}
			return
		}
		if now[i].Places != nil {
			for _, at := range now[i].Places {
				in.Position[i] = float64(at)
				walk(i + 1)
			}
			return
		}
		for k := 0.0; k <= gridSteps; k++ {
			in.Position[i] = now[i].Low + (now[i].High-now[i].Low)*k/gridSteps
			walk(i + 1)
		}
	}
	walk(0)
	return low, high
}

// gridSteps puts every point of the golden airframe's curves on the grid.
const gridSteps = 10
