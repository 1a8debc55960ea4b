package prove_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/prove/provetest"
	"pgregory.net/rapid"
)

// samples is how many random poses every answer is held against.
const samples = 1000

// tally counts answers by the kind of want, to see that no kind goes untested.
type tally map[string]int

func (n tally) String() string {
	var b strings.Builder
	for k, v := range n {
		fmt.Fprintf(&b, "%s %d, ", k, v)
	}
	return b.String()
}

// An answer is held against random poses: a proof against all of them, with its bound,
// and a counterexample against the Plan.
func TestDecideAgreesWithSamples(t *testing.T) {
	counts := tally{}
	rapid.Check(t, func(t *rapid.T) { answersAgree(t, provetest.Setup(t), counts) })
	t.Log(counts)
}

func answersAgree(t *rapid.T, s mixcore.Setup, counts tally) {
	plan, faults := mixcore.Compile(s)
	if faults != nil {
		t.Fatal(faults)
	}
	p, fresh := prove.New(plan), prove.New(plan)
	for range 4 {
		claim := provetest.Claim(t, plan)
		o := prove.Options{Boxes: 1500, Margins: rapid.Bool().Draw(t, "margins"), Plain: rapid.Bool().Draw(t, "plain")}
		d := p.Decide(context.Background(), claim, o)
		counts[fmt.Sprintf("%T %v", claim.Want, d.Answer)]++
		agrees(t, plan, fresh, claim, o, d)
	}
}

func agrees(t *rapid.T, plan *mixcore.Plan, p *prove.Prover, claim *prove.Claim, o prove.Options, d prove.Decision) {
	describe := func() string {
		return fmt.Sprintf("%T%+v %+v\ndecision %+v\nclaim %+v", claim.Want, claim.Want, o, d, *claim)
	}
	if d.Boxes > o.Boxes+1 {
		if _, rising := claim.Want.(prove.Rising); !rising {
			t.Fatalf("%d boxes looked at, want at most %d\n%s", d.Boxes, o.Boxes, describe())
		}
	}
	if d.Answer == prove.Disproved || d.Answer == prove.Proved && o.Margins && d.Pose.Now.Position != nil {
		if err := provetest.Covers(plan, claim, d.Pose); err != nil {
			t.Fatalf("the pose: %v\n%s", err, describe())
		}
		if m := p.Margin(claim, d.Pose); m != d.Margin {
			t.Fatalf("the margin by the Plan is %v, got %v\n%s", m, d.Margin, describe())
		}
	}
	if d.Answer == prove.Disproved && !(d.Margin < 0) {
		t.Fatalf("disproved with a margin of %v\n%s", d.Margin, describe())
	}
	if d.Answer == prove.Proved && !(d.AtLeast >= 0) {
		t.Fatalf("proved, but at least %v\n%s", d.AtLeast, describe())
	}
	poses := provetest.Poses(plan, claim, rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "random"), 0)))
	for range samples {
		at, ok := poses.Draw()
		if !ok {
			continue
		}
		if d.Answer == prove.Empty {
			t.Fatalf("empty, but it speaks of %+v\n%s", at, describe())
		}
		m := p.Margin(claim, at)
		if m != m {
			t.Fatalf("no margin at %+v\n%s", at, describe())
		}
		if d.Answer == prove.Proved && m < d.AtLeast {
			t.Fatalf("proved at least %v, but %v at %+v\n%s", d.AtLeast, m, at, describe())
		}
	}
}

func TestMain(m *testing.M) { os.Exit(m.Run()) }
