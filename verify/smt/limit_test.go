package smt

import (
	"math"
	"math/big"
	"math/rand/v2"
	"slices"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/prove/provetest"
)

// elevator is an elevator on one stick between two stops. Its linkage turns it about 10
// degrees either way, or, with a pushrod too long by far, keeps it at 19 or more.
func elevator(t *testing.T, pushrod float64, stops mixcore.Stops) *mixcore.Plan {
	t.Helper()
	return compiled(t, mixcore.Setup{
		Controls: []mixcore.Control{{Name: "stick", Kind: mixcore.AxisControl, Axis: mixcore.Pitch}},
		Demands: []mixcore.Demand{{Name: "pitch", Trim: mixcore.NoTrim,
			Rates: []mixcore.Rate{{Throw: mixcore.Both(100)}}}},
		Channels: []mixcore.Channel{{Number: 1, Name: "elevator", Limit: 100, EndPoints: mixcore.Both(100),
			PulseMin: 1000, PulseMax: 2000, Failsafe: mixcore.Failsafe{Hold: true},
			Mix: []mixcore.MixLine{{Op: mixcore.Add, Demand: 0, Share: mixcore.Both(100)}}}},
		Parts: []mixcore.Part{{Name: "elevator", Motion: mixcore.UpDown, Stops: stops, Drives: []mixcore.Drive{{
			Channel: 0, Sign: 1, Servo: mixcore.Servo{Swing: 10, Max: mixcore.Degrees(math.Inf(1))},
			Linkage: &linkage.Geometry{Arm: 10, Horn: 10, Pivots: 20, Pushrod: pushrod, ArmDeg: 90, HornDeg: 90}}}}},
	})
}

// Where a stop keeps a part beyond a place, the claim fails wherever the linkage would
// bring it; where a stop is at the place or further out, the linkage decides.
func TestWriteHeedsStopsBesideAPlace(t *testing.T) {
	const level, long = 0, 25 // pushrods in mm; 0 is the one that centres the horn
	inf := math.Inf(1)
	for _, c := range []struct {
		name      string
		pushrod   float64
		stops     mixcore.Stops
		low, high float64
		fails     [3]bool // stick forward, centred, back
	}{
		{"stop below a place that the linkage never leaves", long, mixcore.Stops{Plus: 0, Minus: 30}, 1, inf, [3]bool{true, true, true}},
		{"stop below a place that the linkage crosses", level, mixcore.Stops{Plus: 0, Minus: 30}, 1, inf, [3]bool{true, true, true}},
		{"stop above a place that the linkage crosses", level, mixcore.Stops{Plus: 30, Minus: 0}, -inf, -1, [3]bool{true, true, true}},
		{"stop at the low place", level, mixcore.Stops{Plus: 1, Minus: 30}, 1, inf, [3]bool{false, true, true}},
		{"stop at the high place", level, mixcore.Stops{Plus: 30, Minus: 1}, -inf, -1, [3]bool{true, true, false}},
		{"stop beyond the low place", level, mixcore.Stops{Plus: 2, Minus: 30}, 1, inf, [3]bool{false, true, true}},
		{"stop beyond the high place", level, mixcore.Stops{Plus: 30, Minus: 2}, -inf, -1, [3]bool{true, true, false}},
		{"stop that keeps the part off the place", level, mixcore.Stops{Plus: 0, Minus: 30}, -inf, 1, [3]bool{false, false, false}},
	} {
		t.Run(c.name, func(t *testing.T) {
			plan := elevator(t, c.pushrod, c.stops)
			p := prove.New(plan)
			for i, at := range []float64{-100, 0, 100} {
				for _, now := range []prove.Span{prove.At(at), prove.Whole(&plan.Setup().Controls[0])} {
					claim := &prove.Claim{Now: []prove.Span{now}, Want: prove.Place{Part: 0, Low: c.low, High: c.high}}
					s, failure, err := build(plan, claim, new(big.Rat))
					if err != nil {
						t.Fatal(err)
					}
					pose := prove.Pose{Now: plan.Rest()}
					pose.Now.Position[0] = at
					text := string(s.assemble(c.name, failure))
					values, truths := s.pinnedAt(&pose)
					r, err := read(text, values, truths)
					if err != nil {
						t.Fatal(err)
					}
					margin := p.Margin(claim, pose)
					if r.fails != c.fails[i] || (margin < 0) != c.fails[i] {
						t.Errorf("stick at %v %%: it fails: %v, margin %v by the Plan, want it to fail: %v\n%s", at, r.fails, margin, c.fails[i], text)
					}
				}
			}
		})
	}
}

// A stop can hold a part beyond a place that its linkage would bring it to.
func TestWriteKnowsThatAStopHoldsAPartBeyondAPlace(t *testing.T) {
	setup := golden(t).Setup.Clone()
	part := slices.IndexFunc(setup.Parts, func(p mixcore.Part) bool {
		return p.Motion == mixcore.UpDown && len(p.Drives) == 1 && p.Drives[0].Linkage != nil
	})
	for _, c := range []struct {
		stops mixcore.Stops
		want  prove.Place
	}{
		{mixcore.Stops{Plus: 0, Minus: 20}, prove.Place{Part: part, Low: 1, High: math.Inf(1)}},
		{mixcore.Stops{Plus: 20, Minus: 0}, prove.Place{Part: part, Low: math.Inf(-1), High: -1}},
	} {
		setup.Parts[part].Stops = c.stops
		plan := compiled(t, setup)
		claim := &prove.Claim{Now: prove.Everywhere(&setup), Want: c.want}
		s, failure, err := build(plan, claim, new(big.Rat))
		if err != nil {
			t.Fatal(err)
		}
		text, p := string(s.assemble("held by a stop", failure)), prove.New(plan)
		poses := provetest.Poses(plan, claim, rand.New(rand.NewPCG(5, 0)))
		for range 50 {
			if pose, ok := poses.Draw(); ok {
				sameAsPlan(t, s, text, p, claim, pose)
			}
		}
	}
}
