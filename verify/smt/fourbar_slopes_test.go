package smt

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/mixcore/linkage"
)

// The pieces that are written for a linkage keep to the slopes that are written for it,
// over however short a stretch: else no place of the horn on a piece would be allowed.
func TestSlopesHoldThoseOfThePieces(t *testing.T) {
	short := 0
	rapid.Check(t, func(t *rapid.T) {
		l, err := linkage.New(linkage.Geometry{
			Arm: rapid.Float64Range(5, 15).Draw(t, "arm"), Horn: rapid.Float64Range(10, 25).Draw(t, "horn"),
			Pivots: rapid.Float64Range(60, 200).Draw(t, "pivots"), ArmDeg: 90, HornDeg: 90,
		})
		if err != nil {
			t.Fatal(err)
		}
		low := math.Round(rapid.Float64Range(-20, 20).Draw(t, "low")*1000) / 1000
		long := math.Pow(10, rapid.Float64Range(-5, 1).Draw(t, "length"))
		bar := bend(l, low, low+long)
		if long < 0.001 {
			short++
		}
		for i := 1; i < len(bar.knots); i++ {
			if piece := steepness(bar.knots[i-1], bar.knots[i]); piece.Sign() == bar.slopes[0].Sign() && (piece.Cmp(bar.slopes[0]) < 0 || piece.Cmp(bar.slopes[1]) > 0) {
				t.Fatalf("a piece of slope %s is outside %s to %s", piece.FloatString(12), bar.slopes[0].FloatString(12), bar.slopes[1].FloatString(12))
			}
		}
		if bar.slopes[0].Cmp(bar.slopes[1]) > 0 || bar.slopes[0].Sign() != bar.slopes[1].Sign() {
			t.Fatalf("the slopes are %v", bar.slopes)
		}
	})
	if short == 0 {
		t.Error("no short stretch was drawn")
	}
}
