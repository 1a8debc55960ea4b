package prove_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/interval"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/prove/provetest"
	"pgregory.net/rapid"
)

// What the engine says of a box holds at every pose in it: the margin, and the stages
// that it is made of. A hundred draws look at more than a million values.
func TestBoundsHoldWhatThePlanDoes(t *testing.T) {
	looked := 0
	rapid.Check(t, func(t *rapid.T) {
		plan, faults := mixcore.Compile(provetest.Setup(t))
		if faults != nil {
			t.Fatal(faults)
		}
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "random"), 0))
		p, plain := prove.New(plan), prove.New(plan)
		for range 6 {
			claim := provetest.Claim(t, plan)
			for _, box := range prove.Boxes(p, claim, random, 10) {
				looked += holdsInBox(t, plan, plain, claim, box, random)
			}
		}
	})
	t.Logf("%d values held against their bounds", looked)
}

func holdsInBox(t *rapid.T, plan *mixcore.Plan, p *prove.Prover, claim *prove.Claim, box *prove.Box, random *rand.Rand) int {
	s := plan.Setup()
	now, other := plan.NewOutput(), plan.NewOutput()
	_, rising := claim.Want.(prove.Rising)
	first, second := random.IntN(len(s.Parts)), random.IntN(len(s.Parts))
	side := float64(1 - 2*random.IntN(2))
	usable := uses(box, s, first) && uses(box, s, second)
	var gap interval.Range
	if box.Two() && usable {
		gap = box.Differ(first, second, side, interval.Point(random.Float64()*20-10))
	}
	looked := 0
	hold := func(what string, r interval.Range, x float64, at prove.Pose) {
		looked++
		if !r.Contains(x) {
			t.Fatalf("%s: got %v, want %v in it\nat %+v\nof %T%+v %+v", what, r, x, at, claim.Want, claim.Want, *claim)
		}
	}
	for range 40 {
		at := box.Pose(random)
		m := p.Margin(claim, at)
		if rising && m > -3*prove.Rounding {
			m = 0
		}
		hold("margin", box.Margin, m, at)
		plan.Eval(&at.Now, now)
		if at.Other.Position != nil {
			plan.Eval(&at.Other, other)
		}
		for i := range s.Channels {
			if box.Uses(i) {
				hold(fmt.Sprintf("sum of channel %d", i), box.Sum(i, false), float64(now.Channels[i].Sum), at)
				if box.Two() {
					hold(fmt.Sprintf("other sum of channel %d", i), box.Sum(i, true), float64(other.Channels[i].Sum), at)
				}
			}
		}
		if !usable {
			continue
		}
		hold(fmt.Sprintf("place of part %d", first), box.Where(first, false), now.Parts[first].Place(), at)
		if box.Two() {
			hold(fmt.Sprintf("other place of part %d", second), box.Where(second, true), other.Parts[second].Place(), at)
			hold(fmt.Sprintf("place of part %d less %v times that of part %d", first, side, second), gap,
				now.Parts[first].Place()-side*other.Parts[second].Place(), at)
		}
	}
	return looked
}

func uses(box *prove.Box, s *mixcore.Setup, part int) bool {
	for i := range s.Parts[part].Drives {
		if !box.Uses(s.Parts[part].Drives[i].Channel) {
			return false
		}
	}
	return true
}

// A drive's range and slope hold over every stretch of sums, at its kinks and limits too.
func TestTailsHoldWhatThePlanDoes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan, faults := mixcore.Compile(provetest.Setup(t))
		if faults != nil {
			t.Fatal(faults)
		}
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "random"), 0))
		p := prove.New(plan)
		s := plan.Setup()
		for part := range s.Parts {
			for drive := range s.Parts[part].Drives {
				tail := prove.TailOf(p, part, drive, random.IntN(4) == 0)
				for range 40 {
					tailHolds(t, tail, random)
				}
			}
		}
	})
}

func tailHolds(t *rapid.T, tail prove.Tail, random *rand.Rand) {
	sum := func() float64 {
		x := random.Float64()*320 - 160
		if random.IntN(2) == 0 {
			x = float64(random.IntN(65)*5 - 160)
		}
		return x
	}
	in := interval.Point(sum()).Hull(interval.Point(sum()))
	if random.IntN(2) == 0 {
		in.High = in.Low + (in.High-in.Low)/1000
	}
	over, slope := tail.Over(in), tail.Slope(in)
	for range 10 {
		x := min(in.Low+(in.High-in.Low)*random.Float64(), in.High)
		y := min(in.Low+(in.High-in.Low)*random.Float64(), in.High)
		if random.IntN(2) == 0 {
			x, y = in.Low, in.High
		}
		a, b := tail.At(x), tail.At(y)
		if !over.Contains(a) || !over.Contains(b) {
			t.Fatalf("over %v: got %v, want %v and %v in it", in, over, a, b)
		}
		if rise := slope.Mul(interval.Point(y).Sub(interval.Point(x))).Widen(2 * tail.Accuracy()); !rise.Contains(b - a) {
			t.Fatalf("from %v to %v in %v: rises by %v, want within %v by a slope of %v", x, y, in, b-a, rise, slope)
		}
	}
}
