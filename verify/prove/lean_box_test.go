package prove_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/prove/provetest"
)

// From every place of a box that is made smaller, the way into what is left of it makes
// the margin no larger, and no place has less than is said of what is left.
func TestLeanLeavesTheLeastMargin(t *testing.T) {
	const boxes, places = 200, 20
	cuts := 0
	rapid.Check(t, func(t *rapid.T) {
		plan, faults := mixcore.Compile(leaning(t))
		if faults != nil {
			t.Fatal(faults)
		}
		claim := differing(t, plan)
		p := prove.New(plan)
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "random"), 0))
		for _, box := range prove.Boxes(p, claim, random, boxes) {
			small := box.Lean()
			if small == nil {
				continue
			}
			cuts++
			for range places {
				from, to := box.Moved(small, random)
				left, least := p.Margin(claim, to), p.Margin(claim, from)
				if left > least+prove.TooClose {
					t.Fatalf("%v to spare at %+v, but %v at %+v, which is all that is left of it\n%+v", least, from, left, to, *claim)
				}
				if least < small.Margin.Low {
					t.Fatalf("%v to spare at %+v, but said to be no less than %v\n%+v", least, from, small.Margin.Low, *claim)
				}
			}
		}
	})
	if cuts == 0 {
		t.Error("no box was made smaller: this test looks at nothing")
	}
}

// leaning draws a set-up in which most parts have one servo, and much is held by
// limits and stops inside the travel.
func leaning(t *rapid.T) mixcore.Setup {
	s := provetest.Setup(t)
	one := func(in int) bool { return rapid.IntRange(1, in).Draw(t, "one in") == in }
	percent := func() float64 { return float64(rapid.IntRange(1, 60).Draw(t, "percent")) }
	for i := range s.Channels {
		if one(3) {
			s.Channels[i].Limit = min(s.Channels[i].Limit, mixcore.Percent(percent()))
		}
	}
	for i := range s.Parts {
		part := &s.Parts[i]
		if len(part.Drives) > 1 && !one(3) {
			part.Drives = part.Drives[:1]
		}
		if one(3) {
			part.Stops.Plus = mixcore.Degrees(percent() / 3)
		}
	}
	return s
}

// differing draws a claim about the difference of two parts, mirrored ones among them,
// in which every kind of other pose, condition and loss of signal occurs, with ends that
// are both near, or only one.
func differing(t *rapid.T, plan *mixcore.Plan) *prove.Claim {
	s := plan.Setup()
	c := provetest.Claim(t, plan)
	c.Other, c.OtherLost = prove.Beside(s), rapid.Bool().Draw(t, "lost")
	for i := range s.Controls {
		control := &s.Controls[i]
		switch rapid.IntRange(1, 5).Draw(t, "other") {
		case 1:
			c.Other[i] = prove.Stands(control, control.Rest())
		case 2:
			c.Other[i] = prove.Other{Kind: prove.Apart, Span: prove.Whole(control)}
		case 3:
			if control.Kind == mixcore.AxisControl || control.Kind == mixcore.TrimControl {
				c.Other[i].Kind = prove.Mirrored
			}
		}
	}
	part := func(label string) int { return rapid.IntRange(0, len(s.Parts)-1).Draw(t, label) }
	end := func(label string) float64 {
		return rapid.SampledFrom([]float64{0, 1, 2, 5, 10, 20, math.Inf(1)}).Draw(t, label)
	}
	c.Want = prove.Differ{A: part("one"), B: part("other"), Sign: rapid.SampledFrom([]float64{1, -1}).Draw(t, "sign"),
		Low: -end("low"), High: end("high")}
	return c
}

// A part goes the way of all its servos, not of its first; and one without a signal does
// not move, whatever its mix says. Each of these is beyond its claim at one end.
func TestLeanGoesByWhatMoves(t *testing.T) {
	const most = 10
	for _, c := range []struct {
		name  string
		mixes [3][]mixcore.MixLine
		edit  func(*mixcore.Setup, *prove.Claim)
	}{
		{"two servos on the first part, the second of which moves it", [3][]mixcore.MixLine{lines(add(rollDemand, 20)), nil, lines(add(rollDemand, -100))},
			func(s *mixcore.Setup, _ *prove.Claim) { s.Parts[0].Drives = append(s.Parts[0].Drives, straight(2)) }},
		{"two servos on the other part, the second of which moves it", [3][]mixcore.MixLine{nil, lines(add(rollDemand, 20)), lines(add(rollDemand, -100))},
			func(s *mixcore.Setup, _ *prove.Claim) { s.Parts[1].Drives = append(s.Parts[1].Drives, straight(2)) }},
		{"the other part without a signal", [3][]mixcore.MixLine{lines(add(rollDemand, 20)), lines(add(rollDemand, 100)), nil},
			func(s *mixcore.Setup, c *prove.Claim) {
				s.Channels[1].Failsafe, c.OtherLost = mixcore.Failsafe{}, true
			}},
		{"the first part without a signal", [3][]mixcore.MixLine{lines(add(rollDemand, 100)), lines(add(rollDemand, 20)), nil},
			func(s *mixcore.Setup, c *prove.Claim) { s.Channels[0].Failsafe, c.Lost = mixcore.Failsafe{}, true }},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := plain(c.mixes[:]...)
			claim := everywhere(&s, prove.Differ{A: 0, B: 1, Sign: 1, Low: math.Inf(-1), High: most})
			claim.Other = prove.Beside(&s)
			c.edit(&s, claim)
			wantAnswer(t, decide(t, s, claim), prove.Disproved)
		})
	}
}

// Where limits hold two parts, they stand exactly. Just before, the Plan's rounding puts a
// linkage further: by more than this claim allows, whose end is between the two.
func TestLeanAllowsForThePlansRounding(t *testing.T) {
	s := plain(lines(add(rollDemand, 100)), lines(add(pitchDemand, 20)))
	s.Channels[1].Limit = 2
	s.Parts[0].Drives = []mixcore.Drive{{Channel: 0, Sign: 1,
		Linkage: &linkage.Geometry{Arm: 11.1, Horn: 22.7, Pivots: 108.3, ArmDeg: 44, HornDeg: 58},
		Servo:   mixcore.Servo{Swing: 90, Max: 35.545, PlusAft: true}}}
	p := prove.New(compile(t, s))
	claim := everywhere(&s, prove.Differ{A: 0, B: 1, Sign: 1, Low: math.Inf(-1)})
	claim.Other = prove.Beside(&s)
	apart := func(at float64) float64 {
		in := mixcore.Input{Position: []float64{roll: at, pitch: -100, rollTrim: 0}}
		return -p.Margin(claim, prove.Pose{Now: in, Other: in})
	}
	held, furthest, before := apart(100), apart(100), 35.545/90*100
	for range 2000 {
		before = math.Nextafter(before, 0)
		furthest = max(furthest, apart(before))
	}
	if furthest == held {
		t.Fatal("nowhere before the limit is the linkage further than there: this test looks at nothing")
	}
	claim.Now[roll].Low = 12
	claim.Want = prove.Differ{A: 0, B: 1, Sign: 1, Low: math.Inf(-1), High: held + 0.9*(furthest-held)}
	if d := p.Decide(t.Context(), claim, prove.Options{Boxes: 2000}); d.Answer == prove.Proved {
		t.Errorf("got %+v, want anything but a proof: %v apart at most, %v just before the limit", d, claim.Want, furthest)
	}
}
