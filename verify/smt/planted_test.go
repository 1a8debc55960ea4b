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
	m := golden(t)
	for _, fault := range []struct {
		what  string
		plant func(s *mixcore.Setup)
	}{
		{"a share too large", func(s *mixcore.Setup) { s.Channels[0].Mix[0].Share = mixcore.Both(125) }},
		{"a share turned about", func(s *mixcore.Setup) { s.Channels[1].Mix[0].Share = mixcore.Both(100) }},
		{"a line left out", func(s *mixcore.Setup) { s.Channels[2].Mix = s.Channels[2].Mix[:1] }},
		{"no scaling", func(s *mixcore.Setup) { s.Channels[0].Mix[1].Op = mixcore.Add; s.Channels[0].Mix[1].Share = mixcore.Both(0) }},
		{"a condition turned about", func(s *mixcore.Setup) { s.Channels[2].Mix[1].When.Position = 1 }},
		{"another failsafe", func(s *mixcore.Setup) { s.Channels[2].Failsafe.Output = -99 }},
		{"a longer arm", func(s *mixcore.Setup) { s.Parts[0].Drives[0].Linkage.Arm += 0.5 }},
		{"a reversed channel", func(s *mixcore.Setup) { s.Channels[0].Reversed = true }},
	} {
		t.Run(fault.what, func(t *testing.T) {
			faulty := golden(t).Setup.Clone()
			fault.plant(&faulty)
			writing, faults := mixcore.Compile(faulty)
			if faults != nil {
				t.Fatal(faults)
			}
			p := prove.New(m.Plan)
			var searched, pinned bool
			for i, s := range telling(t) {
				s.writing = writing
				s.plan = m.Plan
				d := s.verdict(p)
				for k := range solvers {
					out, _ := s.held(t, &solvers[k], p, &d)
					searched = searched || out == contradicts
				}
				_, why := s.pinned(t, &solvers[0], p, &d, rand.New(rand.NewPCG(uint64(i), 3)))
				pinned = pinned || why != ""
			}
			if !searched || !pinned {
				t.Errorf("reported by the search: %v, at single poses: %v; want both", searched, pinned)
			}
		})
	}
}

// telling are claims about the golden airframe that hold by little or fail by little,
// as the Plan has them, so that any fault of those planted shows in one.
func telling(t *testing.T) (list []subject) {
	t.Helper()
	m := golden(t)
	everywhere := prove.Everywhere(&m.Setup)
	add := func(c prove.Claim) { list = append(list, subject{name: "planted", claim: c}) }
	for channel := range m.Setup.Channels {
		low, high := extremes(m.Plan, func(out *mixcore.Output) float64 { return float64(out.Channels[channel].Output) })
		add(prove.Claim{Now: everywhere, Want: prove.Output{Channel: channel, Low: low - 0.5, High: high + 0.5}})
		add(prove.Claim{Now: everywhere, Want: prove.Output{Channel: channel, Low: low + 0.5, High: high - 0.5}})
	}
	for part := range m.Setup.Parts {
		if place := m.Setup.Parts[part].Motion; place == mixcore.Power {
			off := &mixcore.Condition{Op: mixcore.AtPosition, Control: 4, Position: 0}
			add(prove.Claim{Now: everywhere, When: off, Want: prove.Place{Part: part, Low: 0, High: 0}})
			add(prove.Claim{Now: everywhere, Lost: true, Want: prove.Place{Part: part, Low: 0, High: 0}})
			continue
		}
		low, high := extremes(m.Plan, func(out *mixcore.Output) float64 { return float64(out.Parts[part].Angle) })
		add(prove.Claim{Now: everywhere, Want: prove.Place{Part: part, Low: low - 0.1, High: high + 0.1}})
		add(prove.Claim{Now: everywhere, Want: prove.Place{Part: part, Low: low + 0.1, High: high - 0.1}})
	}
	return list
}

// extremes are the least and most of a value over ends and middles of all controls.
func extremes(plan *mixcore.Plan, value func(*mixcore.Output) float64) (low, high float64) {
	in, out := plan.Rest(), plan.NewOutput()
	plan.Eval(&in, out)
	low, high = value(out), value(out)
	var walk func(i int)
	walk = func(i int) {
		if i == len(in.Position) {
			plan.Eval(&in, out)
			low, high = min(low, value(out)), max(high, value(out))
			return
		}
		c := &plan.Setup().Controls[i]
		from, to := c.Range()
		steps := 10.0
		if c.Kind == mixcore.SwitchControl {
			steps = to
		}
		for k := 0.0; k <= steps; k++ {
			in.Position[i] = from + (to-from)*k/steps
			walk(i + 1)
		}
		in.Position[i] = c.Rest()
	}
	walk(0)
	return low, high
}
