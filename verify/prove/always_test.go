package prove_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/prove/provetest"
	"pgregory.net/rapid"
)

// How many poses every answer is held against: random ones, and from the worst of them
// on ones that differ in one control.
const (
	samples = 1000
	nearby  = 200
)

// tally counts the answers by kind of claim.
type tally map[string]map[prove.Answer]int

// An answer is held against random poses: a proof, with its bound, against all of them; a
// counterexample against the Plan and against what the claim speaks of; no position at
// all against any that is found.
func TestDecideAgreesWithSamples(t *testing.T) {
	counts, claims := tally{}, 0
	rapid.Check(t, func(t *rapid.T) {
		draw := provetest.Setup
		if rapid.Bool().Draw(t, "tiny") {
			draw = provetest.Tiny
		}
		plan, faults := mixcore.Compile(draw(t))
		if faults != nil {
			t.Fatal(faults)
		}
		p := prove.New(plan)
		for range 3 {
			claim := provetest.Claim(t, plan)
			o := prove.Options{Boxes: 800, Margins: rapid.Bool().Draw(t, "margins"), Plain: rapid.Bool().Draw(t, "plain")}
			d := p.Decide(t.Context(), claim, o)
			kind := fmt.Sprintf("%T", claim.Want)
			if counts[kind] == nil {
				counts[kind] = map[prove.Answer]int{}
			}
			counts[kind][d.Answer]++
			claims++
			(&held{t: t, plan: plan, p: prove.New(plan), claim: claim, o: o, d: d}).agrees()
		}
	})
	for kind, answers := range counts {
		t.Logf("%s: %d proved, %d disproved, %d empty, %d undecided", kind,
			answers[prove.Proved], answers[prove.Disproved], answers[prove.Empty], answers[prove.Undecided])
		if claims >= 1200 && (answers[prove.Proved] == 0 || answers[prove.Disproved] == 0) {
			t.Errorf("%s: the claims drawn are of no use: %v", kind, answers)
		}
	}
}

// held is an answer that is held against poses.
type held struct {
	t     *rapid.T
	plan  *mixcore.Plan
	p     *prove.Prover // knows nothing of how the answer was found
	claim *prove.Claim
	o     prove.Options
	d     prove.Decision
}

func (h *held) fail(format string, a ...any) {
	h.t.Helper()
	h.t.Fatalf("%s\n%T%+v with %+v\ndecision %+v\nclaim %+v", fmt.Sprintf(format, a...), h.claim.Want, h.claim.Want, h.o, h.d, *h.claim)
}

func (h *held) agrees() {
	if h.d.Boxes > h.o.Boxes+lastBox {
		h.fail("%d boxes looked at, want at most %d and one more", h.d.Boxes, h.o.Boxes)
	}
	h.pose()
	if h.d.Answer == prove.Proved && !(h.d.AtLeast >= 0) {
		h.fail("proved, but at least %v", h.d.AtLeast)
	}
	poses := provetest.Poses(h.plan, h.claim, rand.New(rand.NewPCG(rapid.Uint64().Draw(h.t, "random"), 0)))
	var worst prove.Pose
	least, found := 0.0, false
	look := func(at prove.Pose, ok bool) {
		if !ok {
			return
		}
		if m := h.holds(at); !found || m < least {
			worst, least, found = at, m, true
		}
	}
	for range samples {
		look(poses.Draw())
	}
	if !found || h.d.Answer != prove.Proved {
		return
	}
	for range nearby {
		look(poses.Near(worst))
	}
}

// pose looks at the pose that came with an answer.
func (h *held) pose() {
	_, rising := h.claim.Want.(prove.Rising)
	switch {
	case h.d.Answer == prove.Disproved:
		if !(h.d.Margin < 0) {
			h.fail("disproved with a margin of %v", h.d.Margin)
		}
	case h.d.Answer == prove.Proved && h.d.Pose.Now.Position != nil && !rising:
	default:
		return
	}
	if err := provetest.Covers(h.plan, h.claim, h.d.Pose); err != nil {
		h.fail("the pose: %v", err)
	}
	if m := h.p.Margin(h.claim, h.d.Pose); m != h.d.Margin {
		h.fail("the margin of the pose is %v, got %v", m, h.d.Margin)
	}
}

// holds holds the answer against one pose, and returns its margin.
func (h *held) holds(at prove.Pose) float64 {
	m := h.p.Margin(h.claim, at)
	switch {
	case m != m:
		h.fail("no margin at %+v", at)
	case h.d.Answer == prove.Empty:
		h.fail("empty, but it speaks of %+v", at)
	case h.d.Answer == prove.Proved && m < h.d.AtLeast-lastBit:
		h.fail("proved with at least %v, but %v at %+v", h.d.AtLeast, m, at)
	}
	return m
}

// lastBit is what the Plan's own rounding may put between two ways to the same value, in
// degrees or percent: a sample that misses by less says nothing.
const lastBit = 1e-12
