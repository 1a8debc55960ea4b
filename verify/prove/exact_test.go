package prove_test

import (
	"math/rand/v2"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/prove/provetest"
)

// hair is a bound that only sums which cancel exactly stay within.
const hair = 1e-9

// In binary 0.1 + 0.2 is not 0.3; in settings it is.
func TestDecideCancelsDecimalShares(t *testing.T) {
	for _, c := range []struct {
		name string
		mix  []mixcore.MixLine
		want prove.Answer
	}{
		{"0.1 + 0.2 − 0.3", lines(add(rollDemand, 0.1), add(rollDemand, 0.2), add(rollDemand, -0.3)), prove.Proved},
		{"10 + 20 − 30, scaled by the lever", lines(add(rollDemand, 10), add(rollDemand, 20), add(rollDemand, -30), scaled(leverDemand)), prove.Proved},
		{"fixed 0.1 + 0.2 − 0.3", lines(fixed(0.1), fixed(0.2), fixed(-0.3)), prove.Proved},
		{"a thousandth too much", lines(add(rollDemand, 0.1), add(rollDemand, 0.2), add(rollDemand, -0.299)), prove.Disproved},
		{"a thousandth too much on one side", lines(add(rollDemand, 0.3), mixcore.MixLine{Op: mixcore.Add, Demand: rollDemand, Share: mixcore.Sides{Plus: -0.3, Minus: -0.301}}), prove.Disproved},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := plain(c.mix)
			d := decide(t, s, everywhere(&s, prove.Output{Channel: 0, Low: -hair, High: hair}))
			wantAnswer(t, d, c.want)
			if c.want == prove.Proved && d.AtLeast < hair/2 {
				t.Errorf("at least %v, want nearly %v", d.AtLeast, hair)
			}
		})
	}
}

// A curve that is all but straight, less the straight line: what is left is a bump of a
// fiftieth of a percent in the middle, and nothing at the ends.
func TestDecideSeesTheSlightestBend(t *testing.T) {
	s := plain(lines(add(rollDemand, 100), add(3, -100)))
	s.Demands = append(s.Demands, mixcore.Demand{From: roll, Rates: full(), Trim: mixcore.NoTrim,
		Curve: &mixcore.Curve{Smooth: true, Points: []mixcore.Point{{X: -100, Y: -100}, {X: 0, Y: 0.02}, {X: 100, Y: 100}}}})
	wantProved(t, decide(t, s, everywhere(&s, prove.Output{Channel: 0, Low: -0.05, High: 0.05})), 0.03)
	wantAnswer(t, decide(t, s, everywhere(&s, prove.Output{Channel: 0, Low: -0.015, High: 0.015})), prove.Disproved)
}

// ailerons are two with differential, linkages and a trim, each the mirror of the other.
func ailerons() mixcore.Setup {
	s := plain(
		lines(mixcore.MixLine{Op: mixcore.Add, Demand: rollDemand, Share: mixcore.Sides{Plus: 100, Minus: 70}}),
		lines(mixcore.MixLine{Op: mixcore.Add, Demand: rollDemand, Share: mixcore.Sides{Plus: 70, Minus: 100}}),
	)
	s.Demands[rollDemand].Trim, s.Demands[rollDemand].TrimRange = rollTrim, 10
	s.Demands[rollDemand].Rates = []mixcore.Rate{{Throw: mixcore.Both(90), Expo: 30}}
	s.Parts[0].Drives = []mixcore.Drive{linked(0, true, -1)}
	s.Parts[1].Drives = []mixcore.Drive{linked(1, false, -1)}
	s.Parts[0].Side, s.Parts[1].Side = mixcore.Starboard, mixcore.Port
	return s
}

// alike wants what the one aileron does as the stick goes right to be what the other does
// as it goes left, to a billionth of a degree.
func alike(s *mixcore.Setup) *prove.Claim {
	c := everywhere(s, prove.Differ{A: 0, B: 1, Sign: 1, Low: -hair, High: hair})
	c.Other = prove.Beside(s)
	c.Other[roll].Kind, c.Other[rollTrim].Kind = prove.Mirrored, prove.Mirrored
	return c
}

func TestDecideMirroredPairs(t *testing.T) {
	for _, c := range []struct {
		name string
		edit func(*mixcore.Setup, *prove.Claim)
		want prove.Answer
	}{
		{"as they are", func(*mixcore.Setup, *prove.Claim) {}, prove.Proved},
		{"end points swapped and one channel reversed", func(s *mixcore.Setup, _ *prove.Claim) {
			s.Channels[0].EndPoints = mixcore.Sides{Plus: 90, Minus: 80}
			s.Channels[1].Reversed = true
			s.Channels[1].EndPoints = mixcore.Sides{Plus: 90, Minus: 80}
			s.Channels[1].Mix[0].Share = mixcore.Sides{Plus: 70, Minus: 100}
			s.Parts[1].Drives[0].Servo.PlusAft = true
		}, prove.Proved},
		{"sub-trims turned about", func(s *mixcore.Setup, _ *prove.Claim) {
			s.Channels[0].SubTrim, s.Channels[1].SubTrim = 3.7, -3.7
		}, prove.Proved},
		{"sub-trims the same", func(s *mixcore.Setup, _ *prove.Claim) {
			s.Channels[0].SubTrim, s.Channels[1].SubTrim = 3.7, 3.7
		}, prove.Disproved},
		{"the trim not turned about", func(_ *mixcore.Setup, c *prove.Claim) { c.Other[rollTrim].Kind = prove.Same }, prove.Disproved},
		{"no differential on one", func(s *mixcore.Setup, _ *prove.Claim) {
			s.Channels[1].Mix[0].Share = mixcore.Both(100)
		}, prove.Disproved},
		{"a thousandth of a share", func(s *mixcore.Setup, _ *prove.Claim) { s.Channels[1].Mix[0].Share.Minus = 99.999 }, prove.Disproved},
		{"an arm longer by a tenth of a millimetre", func(s *mixcore.Setup, _ *prove.Claim) {
			g := *s.Parts[1].Drives[0].Linkage
			g.Arm = 11.1
			s.Parts[1].Drives[0].Linkage = &g
		}, prove.Disproved},
		{"a servo that swings a degree more", func(s *mixcore.Setup, _ *prove.Claim) { s.Parts[1].Drives[0].Servo.Swing = 46 }, prove.Disproved},
		{"a servo that is held on one side", func(s *mixcore.Setup, _ *prove.Claim) { s.Parts[1].Drives[0].Servo.Max = 30 }, prove.Disproved},
		{"a stop on one", func(s *mixcore.Setup, _ *prove.Claim) { s.Parts[1].Stops.Plus = 15 }, prove.Disproved},
		{"the same stops on both", func(s *mixcore.Setup, _ *prove.Claim) {
			s.Parts[0].Stops.Plus, s.Parts[1].Stops.Plus = 15, 15
		}, prove.Proved},
		{"one rate more on right roll", func(s *mixcore.Setup, _ *prove.Claim) {
			high := above(roll, 50)
			s.Demands[rollDemand].Rates = []mixcore.Rate{{When: &high, Throw: mixcore.Both(89), Expo: 30}, s.Demands[rollDemand].Rates[0]}
		}, prove.Disproved},
		{"tables with flat pieces, turned about", func(s *mixcore.Setup, _ *prove.Claim) {
			s.Parts[0].Drives = []mixcore.Drive{{Channel: 0, Table: []mixcore.Point{{X: -200, Y: -30}, {X: -10, Y: 0}, {X: 15, Y: 0}, {X: 200, Y: 41.3}}}}
			s.Parts[1].Drives = []mixcore.Drive{{Channel: 1, Table: []mixcore.Point{{X: -200, Y: 41.3}, {X: -15, Y: 0}, {X: 10, Y: 0}, {X: 200, Y: -30}}}}
		}, prove.Proved},
		{"tables of which one has a wider flat piece", func(s *mixcore.Setup, _ *prove.Claim) {
			s.Parts[0].Drives = []mixcore.Drive{{Channel: 0, Table: []mixcore.Point{{X: -200, Y: -30}, {X: -10, Y: 0}, {X: 15, Y: 0}, {X: 200, Y: 41.3}}}}
			s.Parts[1].Drives = []mixcore.Drive{{Channel: 1, Table: []mixcore.Point{{X: -200, Y: 41.3}, {X: -15.001, Y: 0}, {X: 10, Y: 0}, {X: 200, Y: -30}}}}
		}, prove.Disproved},
		{"both saturated alike", func(s *mixcore.Setup, _ *prove.Claim) {
			s.Channels[0].Limit, s.Channels[1].Limit = 60, 60
		}, prove.Proved},
		{"only one saturates", func(s *mixcore.Setup, _ *prove.Claim) { s.Channels[0].Limit = 60 }, prove.Disproved},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := ailerons()
			claim := alike(&s)
			c.edit(&s, claim)
			d := decide(t, s, claim)
			wantAnswer(t, d, c.want)
			if c.want == prove.Proved && d.AtLeast < 0.9*hair {
				t.Errorf("at least %v, want nearly %v", d.AtLeast, hair)
			}
			// However far apart they are, it is seen how far.
			claim.Want = prove.Differ{A: 0, B: 1, Sign: 1, Low: -90, High: 90}
			d = decide(t, s, claim)
			wantAnswer(t, d, prove.Proved)
			plan := compile(t, s)
			p, poses := prove.New(plan), provetest.Poses(plan, claim, rand.New(rand.NewPCG(1, 1)))
			for range 500 {
				if at, _ := poses.Draw(); p.Margin(claim, at) < d.AtLeast {
					t.Fatalf("at least %v, but %v at %+v", d.AtLeast, p.Margin(claim, at), at)
				}
			}
		})
	}
}

// Two retracts or motors turned about stand a whole travel apart: (100 + v)/2 and
// −(100 − v)/2.
func TestDecideTurnedAboutRetractsAreApart(t *testing.T) {
	s := plain(lines(add(rollDemand, 50)), lines(add(rollDemand, 100)))
	s.Parts[0] = mixcore.Part{Kind: "retract", Motion: mixcore.OutIn, Drives: []mixcore.Drive{{Channel: 0}}}
	s.Parts[1] = mixcore.Part{Kind: "motor", Motion: mixcore.Power, Drives: []mixcore.Drive{{Channel: 1}}, Motor: &mixcore.Motor{Idle: 1000, Full: 2000}}
	for part, sum := range []float64{100, 100} { // x + its mirror is 100 % at every place of the stick
		c := everywhere(&s, prove.Differ{A: part, B: part, Sign: -1, Low: sum - 1, High: sum + 1})
		c.Other = prove.Beside(&s)
		c.Other[roll].Kind = prove.Mirrored
		d := decide(t, s, c)
		wantProved(t, d, 1)
		c.Want = prove.Differ{A: part, B: part, Sign: -1, Low: -1, High: 1}
		wantAnswer(t, decide(t, s, c), prove.Disproved)
	}
}

// A threshold belongs to one side of it, and to that side alone.
func TestDecideThresholdsToTheLastNumber(t *testing.T) {
	op := func(op mixcore.ConditionOp, at mixcore.Percent) mixcore.Condition {
		return mixcore.Condition{Op: op, Control: roll, Low: at, High: at}
	}
	for _, c := range []struct {
		name      string
		condition mixcore.Condition
		span      prove.Span
		want      prove.Answer
	}{
		{"above 5, up to 5", op(mixcore.Above, 5), prove.Span{Low: -100, High: 5}, prove.Proved},
		{"at least 5, up to 5", op(mixcore.AtLeast, 5), prove.Span{Low: -100, High: 5}, prove.Disproved},
		{"below 5, from 5", op(mixcore.Below, 5), prove.Span{Low: 5, High: 100}, prove.Proved},
		{"at most 5, from 5", op(mixcore.AtMost, 5), prove.Span{Low: 5, High: 100}, prove.Disproved},
		{"exactly 5.1", op(mixcore.Within, 5.1), prove.Span{Low: -100, High: 100}, prove.Disproved},
		{"not at most 100", not(op(mixcore.AtMost, 100)), prove.Span{Low: -100, High: 100}, prove.Proved},
		{"at least 100", op(mixcore.AtLeast, 100), prove.Span{Low: -100, High: 100}, prove.Disproved},
		{"above 5 and below 5", all(op(mixcore.Above, 5), op(mixcore.Below, 5)), prove.Span{Low: -100, High: 100}, prove.Proved},
		{"neither above nor below 5", all(not(op(mixcore.Above, 5)), not(op(mixcore.Below, 5))), prove.Span{Low: -100, High: 100}, prove.Disproved},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := plain(lines(when(fixed(20), c.condition)))
			claim := everywhere(&s, prove.Place{Part: 0, Low: -1, High: 1})
			claim.Now[roll] = c.span
			wantAnswer(t, decide(t, s, claim), c.want)
			// The same of a claim that counts only where the condition holds.
			s.Channels[0].Mix = lines(fixed(20))
			claim.When = &c.condition
			want := c.want
			if want == prove.Proved {
				want = prove.Empty
			}
			wantAnswer(t, decide(t, s, claim), want)
		})
	}
}

// A line that is at work where its threshold is reached from the other side in the pose
// that is compared with: mirrored.
func TestDecideThresholdsMirrored(t *testing.T) {
	s := plain(lines(when(fixed(20), above(roll, 5))), lines(when(fixed(20), mixcore.Condition{Op: mixcore.Below, Control: roll, High: -5})))
	c := everywhere(&s, prove.Differ{A: 0, B: 1, Sign: 1, Low: -hair, High: hair})
	c.Other = prove.Beside(&s)
	c.Other[roll].Kind = prove.Mirrored
	wantAnswer(t, decide(t, s, c), prove.Proved)
	s.Channels[1].Mix[0].When.Op = mixcore.AtMost
	d := decide(t, s, c)
	wantAnswer(t, d, prove.Disproved)
	wantMoved(t, &s, d.Pose.Now, map[int]float64{roll: 5})
}

// With the signal lost a channel puts out its failsafe value whatever its mix says, or
// holds what the mix says.
func TestDecideSignalLost(t *testing.T) {
	s := plain(lines(add(rollDemand, 50), when(fixed(1), above(roll, 20))), lines(add(rollDemand, 50)))
	s.Channels[0].Failsafe = mixcore.Failsafe{Output: -30}
	s.Channels[0].Limit, s.Channels[1].Limit = 40, 40
	lost := func(w prove.Want) *prove.Claim {
		c := everywhere(&s, w)
		c.Lost = true
		return c
	}
	wantProved(t, decide(t, s, lost(prove.Place{Part: 0, Low: -31, High: -28})), 1)
	wantProved(t, decide(t, s, lost(prove.Place{Part: 1, Low: -41, High: 42})), 1)
	wantAnswer(t, decide(t, s, lost(prove.Place{Part: 1, Low: -31, High: -28})), prove.Disproved)
	wantAnswer(t, decide(t, s, everywhere(&s, prove.Place{Part: 0, Low: -31, High: -28})), prove.Disproved)
	// A limit does not bite where the failsafe value takes its place.
	wantAnswer(t, decide(t, s, lost(prove.Travel{Channel: 0})), prove.Proved)
	wantAnswer(t, decide(t, s, lost(prove.Travel{Channel: 1})), prove.Disproved)
	// From the place before: −30 less anything from −40 to 40.
	c := lost(prove.Change(0, -71, 11))
	c.Other = prove.Beside(&s)
	wantProved(t, decide(t, s, c), 1)
	c.Want = prove.Change(1, -hair, hair) // what holds does not move
	wantAnswer(t, decide(t, s, c), prove.Proved)
	c.OtherLost = true
	c.Want = prove.Change(0, -hair, hair)
	wantAnswer(t, decide(t, s, c), prove.Proved)
	for part := range 2 {
		for _, sign := range []float64{1, -1} {
			rises := lost(prove.Rising{Part: part, Control: roll, Sign: sign})
			want := prove.Proved
			if part == 1 && sign < 0 {
				want = prove.Disproved
			}
			wantAnswer(t, decide(t, s, rises), want)
		}
	}
}

// No strict movement is proved of a surface that stands still: with a share of 0, on the
// flat piece of a table, at its limit.
func TestDecideStandingStillIsNoMovement(t *testing.T) {
	for _, c := range []struct {
		name string
		edit func(*mixcore.Setup)
		want prove.Answer
	}{
		{"half a stick", func(*mixcore.Setup) {}, prove.Proved},
		{"a share of 0", func(s *mixcore.Setup) { s.Channels[0].Mix[0].Share = mixcore.Both(0) }, prove.Disproved},
		{"a share of 0 one way", func(s *mixcore.Setup) { s.Channels[0].Mix[0].Share.Minus = 0 }, prove.Disproved},
		{"at its limit", func(s *mixcore.Setup) { s.Channels[0].Mix = append(s.Channels[0].Mix, fixed(100)) }, prove.Disproved},
		{"at its stop", func(s *mixcore.Setup) { s.Parts[0].Stops.Plus = 0 }, prove.Disproved},
		{"at a servo's maximum", func(s *mixcore.Setup) {
			s.Parts[0].Drives = []mixcore.Drive{linked(0, true, 1)}
			s.Parts[0].Drives[0].Servo.Max = 1
			s.Channels[0].SubTrim = 10
		}, prove.Disproved},
		{"on the flat piece of a table", func(s *mixcore.Setup) {
			s.Parts[0].Drives[0].Table = []mixcore.Point{{X: -200, Y: -150}, {X: -20, Y: 0}, {X: 20, Y: 0}, {X: 200, Y: 150}}
		}, prove.Disproved},
		{"the wrong way", func(s *mixcore.Setup) { s.Channels[0].Reversed = true }, prove.Disproved},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := plain(lines(add(rollDemand, 50)), lines(add(rollDemand, 60)))
			c.edit(&s)
			for _, span := range []prove.Span{{Low: 10, High: 100}, {Low: -100, High: 100}} {
				together := movement(&s, roll, prove.Pair{A: 0, B: 1, StillA: 0.5, StillB: 0.5})
				together.Now[roll] = span
				if c.name == "a share of 0 one way" && span.Low > 0 {
					wantAnswer(t, decide(t, s, together), prove.Proved)
					continue
				}
				wantAnswer(t, decide(t, s, together), c.want)
			}
			// Never the wrong way holds of all but the last.
			rises := decide(t, s, everywhere(&s, prove.Rising{Part: 0, Control: roll, Sign: 1}))
			want := prove.Proved
			if c.name == "the wrong way" {
				want = prove.Disproved
			}
			wantAnswer(t, rises, want)
		})
	}
}

// A channel that saturates moves by what its limit leaves: from 90 to 100, and no more.
func TestDecideSaturation(t *testing.T) {
	s := plain(lines(fixed(90), add(rollDemand, 50)))
	c := movement(&s, roll, prove.Change(0, 9, inf))
	c.Now[roll] = prove.Span{Low: 50, High: 100}
	wantProved(t, decide(t, s, c), 1) // 10 less 9
	c.Want = prove.Change(0, 10.5, inf)
	wantAnswer(t, decide(t, s, c), prove.Disproved)
	c.Now[roll] = prove.Span{Low: 0, High: 100}
	c.Want = prove.Change(0, 0.001, inf)
	wantAnswer(t, decide(t, s, c), prove.Disproved)
	d := decide(t, s, everywhere(&s, prove.Travel{Channel: 0}))
	wantAnswer(t, d, prove.Disproved) // bites from 20 % of the stick on
	wantMoved(t, &s, d.Pose.Now, map[int]float64{roll: 100})
	c = everywhere(&s, prove.Travel{Channel: 0})
	c.Now[roll] = prove.Span{Low: -100, High: 20} // 90 + 50 % of 20 is just 100
	if d := decide(t, s, c); d.Answer != prove.Proved {
		t.Errorf("a sum of exactly the limit: %+v, want proved", d)
	}
}
