package prove_test

import (
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/prove/provetest"
)

// The widest difference between two parts, or of one from where a mirrored or resting
// position has it, asked for from one side and from both: no sample is beyond what is
// proved, and the one that is told is within it. Boxes are made smaller on the way.
func TestWidestDifferenceIsNotContradicted(t *testing.T) {
	const beyond, samples, near = 1000, 300, 100
	proved := 0
	rapid.Check(t, func(t *rapid.T) {
		plan, faults := mixcore.Compile(provetest.Setup(t))
		if faults != nil {
			t.Fatal(faults)
		}
		s := plan.Setup()
		claim := &prove.Claim{Now: prove.Everywhere(s), Other: prove.Beside(s)}
		a, b := rapid.IntRange(0, len(s.Parts)-1).Draw(t, "one"), rapid.IntRange(0, len(s.Parts)-1).Draw(t, "other")
		if a == b {
			for i := range s.Controls {
				if rapid.Bool().Draw(t, "from rest") {
					claim.Other[i] = prove.Stands(&s.Controls[i], s.Controls[i].Rest())
				}
			}
		}
		w := prove.Differ{A: a, B: b, Sign: rapid.SampledFrom([]float64{1, -1}).Draw(t, "sign"), Low: -beyond, High: beyond}
		if rapid.Bool().Draw(t, "one side") {
			w.Low = -100 * beyond
		}
		claim.Want = w
		d := prove.New(plan).Decide(t.Context(), claim, prove.Options{Boxes: 600, Margins: true})
		if d.Answer != prove.Proved {
			return
		}
		proved++
		p := prove.New(plan)
		if d.Pose.Now.Position == nil || d.Margin < d.AtLeast || p.Margin(claim, d.Pose) != d.Margin {
			t.Fatalf("%+v: by the Plan %v", d, p.Margin(claim, d.Pose))
		}
		poses := provetest.Poses(plan, claim, rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "random"), 0)))
		look := func(at prove.Pose, ok bool) {
			if m := p.Margin(claim, at); ok && m < d.AtLeast {
				t.Fatalf("%v to spare at %+v, but proved: nowhere less than %v\n%+v", m, at, d.AtLeast, *claim)
			}
		}
		for range samples {
			look(poses.Draw())
		}
		for range near {
			look(poses.Near(d.Pose))
		}
	})
	if proved == 0 {
		t.Error("nothing was proved: this test looks at nothing")
	}
}
