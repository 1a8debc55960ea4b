package prove_test

import (
	"math"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

var inf = math.Inf(1)

// Margins worked by hand: percent are degrees here.
func TestDecideMarginsByHand(t *testing.T) {
	bothWays := lines(add(rollDemand, 60), add(pitchDemand, 25))
	for _, c := range []struct {
		name     string
		channels [][]mixcore.MixLine
		claim    func(*mixcore.Setup) *prove.Claim
		margin   float64
		compares bool // two movements
	}{
		{"60 % + 25 % of two sticks is at most 85: 90 − 85", [][]mixcore.MixLine{bothWays},
			func(s *mixcore.Setup) *prove.Claim { return everywhere(s, prove.Place{Part: 0, Low: -90, High: 90}) }, 5, false},
		{"and at least −85: −85 + 88", [][]mixcore.MixLine{bothWays},
			func(s *mixcore.Setup) *prove.Claim { return everywhere(s, prove.Place{Part: 0, Low: -88, High: inf}) }, 3, false},
		{"the output is the same: 85.5 − 85", [][]mixcore.MixLine{bothWays},
			func(s *mixcore.Setup) *prove.Claim {
				return everywhere(s, prove.Output{Channel: 0, Low: -inf, High: 85.5})
			}, 0.5, false},
		{"travel of 100 less 85", [][]mixcore.MixLine{bothWays},
			func(s *mixcore.Setup) *prove.Claim { return everywhere(s, prove.Travel{Channel: 0}) }, 15, false},
		{"half of the roll stick and 30 % of the lever: −50 + 0, and −50 + 51", [][]mixcore.MixLine{lines(add(rollDemand, 50), add(leverDemand, 30))},
			func(s *mixcore.Setup) *prove.Claim { return everywhere(s, prove.Place{Part: 0, Low: -51, High: 85}) }, 1, false},
		{"roll times lever, 100·1: 101 − 100", [][]mixcore.MixLine{lines(add(rollDemand, 100), scaled(leverDemand))},
			func(s *mixcore.Setup) *prove.Claim { return everywhere(s, prove.Place{Part: 0, Low: -101, High: 101}) }, 1, false},
		// (30 − x)·x with x from 0 to 1 in hundredths of the lever, 60·x − 60·x·x, greatest 15 at a half
		{"60 % of the lever less itself times 60 %: at most 15, 20 − 15", [][]mixcore.MixLine{lines(fixed(60), add(leverDemand, -60), scaled(leverDemand))},
			func(s *mixcore.Setup) *prove.Claim { return everywhere(s, prove.Place{Part: 0, Low: -1, High: 20}) }, 1, false},
		{"the same with only the upper bound: 20 − 15", [][]mixcore.MixLine{lines(fixed(60), add(leverDemand, -60), scaled(leverDemand))},
			func(s *mixcore.Setup) *prove.Claim { return everywhere(s, prove.Place{Part: 0, Low: -inf, High: 20}) }, 5, false},
		{"a part moves 60 % of half a stick: at most 30 from rest, 31 − 30", [][]mixcore.MixLine{bothWays},
			func(s *mixcore.Setup) *prove.Claim {
				c := movement(s, roll, prove.Change(0, -31, 31))
				c.Now[roll] = prove.Span{Low: -50, High: 50}
				return c
			}, 1, false},
		{"what both channels have cancels: 40 % of the stick is left, 45 − 40", [][]mixcore.MixLine{bothWays, lines(add(pitchDemand, 25), add(rollDemand, 20))},
			func(s *mixcore.Setup) *prove.Claim {
				c := everywhere(s, prove.Differ{A: 0, B: 1, Sign: 1, Low: -45, High: 45})
				c.Other = prove.Beside(s)
				return c
			}, 5, false},
		{"a mirrored pose turns it about, and what is left is twice 0.25·100 of the pitch stick: 55 − 50", [][]mixcore.MixLine{bothWays},
			func(s *mixcore.Setup) *prove.Claim {
				c := everywhere(s, prove.Differ{A: 0, B: 0, Sign: -1, Low: -55, High: 55})
				c.Other = prove.Beside(s)
				c.Other[roll].Kind = prove.Mirrored
				return c
			}, 5, false},
		{"as far as, within 10: |60 %| − |55 %| of a stick is at most 5", [][]mixcore.MixLine{bothWays, lines(add(rollDemand, -55))},
			func(s *mixcore.Setup) *prove.Claim {
				return movement(s, roll, prove.Far{A: 0, B: 1, Low: -10, High: 10})
			}, 5, true},
		{"together: while one moves 0.5 or more, 60 % and 55 % move the same way; at 0.5/0.55 both are under still", [][]mixcore.MixLine{bothWays, lines(add(rollDemand, 55))},
			func(s *mixcore.Setup) *prove.Claim {
				c := movement(s, roll, prove.Pair{A: 0, B: 1, StillA: 0.5, StillB: 0.5})
				c.Now[roll] = prove.Span{Low: 10, High: 100}
				return c
			}, 5.5, true}, // 55 % of 10 %
	} {
		t.Run(c.name, func(t *testing.T) {
			s := plain(c.channels...)
			d := decide(t, s, c.claim(&s))
			if c.compares {
				wantMargin(t, d, c.margin)
			} else {
				wantProved(t, d, c.margin)
			}
		})
	}
}

// wantMargin wants a proof with a smallest margin. Where several surfaces are compared
// it need not be known closely.
func wantMargin(t *testing.T, d prove.Decision, margin float64) {
	t.Helper()
	wantAnswer(t, d, prove.Proved)
	if !(d.AtLeast >= 0 && d.AtLeast <= margin) {
		t.Errorf("at least %v, want 0 to %v", d.AtLeast, margin)
	}
	if !(math.Abs(d.Margin-margin) <= nearly) {
		t.Errorf("the smallest margin found is %v at %+v, want %v", d.Margin, d.Pose, margin)
	}
}
