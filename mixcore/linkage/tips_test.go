package linkage_test

import (
	"math"
	"testing"

	"example.com/hingeline/mixcore/linkage"
)

// The pushrod joins the two tips at any swing, and the horn's tip has swung as far as the
// linkage says. With arm and horn alike the linkage is a parallelogram: both swing alike.
func TestTipsAreJoinedByThePushrod(t *testing.T) {
	for _, g := range []linkage.Geometry{
		square(12, 12, 60),
		{Arm: 10, Horn: 15, Pivots: 60, Offset: 8, ArmDeg: 75, HornDeg: 100},
		{Arm: 10, Horn: 15, Pivots: 60, Offset: -4, ArmDeg: 90, HornDeg: 90, Crossed: true},
	} {
		l := mustNew(t, g)
		for _, swing := range []float64{0, 30, -40} {
			arm, horn := l.Tips(swing)
			if got := math.Hypot(horn[0]-arm[0], horn[1]-arm[1]); math.Abs(got-l.Pushrod()) > 1e-9 {
				t.Errorf("%+v at %v°: tips %v mm apart, want %v mm", g, swing, got, l.Pushrod())
			}
			leans := math.Atan2(horn[1]-g.Offset, horn[0]-g.Pivots) * 180 / math.Pi
			if got := g.HornDeg - leans; math.Abs(got-l.Swing(swing)) > 1e-9 {
				t.Errorf("%+v at %v°: horn swung %v°, want %v°", g, swing, got, l.Swing(swing))
			}
		}
	}
	l := mustNew(t, square(12, 12, 60))
	if arm, horn := l.Tips(30); math.Abs(arm[0]-6) > 1e-9 || math.Abs(horn[0]-66) > 1e-9 {
		t.Errorf("%v, %v; want 6 and 66 mm aft", arm, horn)
	}
}
