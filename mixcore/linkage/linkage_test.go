package linkage_test

import (
	"errors"
	"math"
	"testing"

	"example.com/hingeline/mixcore/linkage"
	"pgregory.net/rapid"
)

func mustNew(t testing.TB, g linkage.Geometry) *linkage.Linkage {
	t.Helper()
	l, err := linkage.New(g)
	if err != nil {
		t.Fatalf("%+v: %v", g, err)
	}
	return l
}

// square is arm and horn at right angles to the line between the pivots.
func square(arm, horn, pivots float64) linkage.Geometry {
	return linkage.Geometry{Arm: arm, Horn: horn, Pivots: pivots, ArmDeg: 90, HornDeg: 90}
}

// Two classic four-bars. Source: Norton, Design of Machinery, the worked
// example with links 40, 120, 80, 100 and problem P4-1 row a; values from
// memory, computed again with a general-purpose numerical library by two
// methods. Norton's crank is our arm, his rocker our horn; his open circuit is
// the one with the horn on the arm's side.
func TestSwingNortonFourBars(t *testing.T) {
	for _, c := range []struct {
		name                         string
		crank, coupler, rocker, base float64
		theta2, open, crossed        float64
	}{
		{"example", 40, 120, 80, 100, 40, 57.325, -98.005},
		{"P4-1 a", 2, 7, 9, 6, 30, 117.286, -143.660},
	} {
		// The neutral angle of the horn only chooses the branch; it is measured
		// towards the horn's side, so the crossed circuit is the mirror image
		// with the arm on the other side.
		open := mustNew(t, linkage.Geometry{Arm: c.crank, Horn: c.rocker, Pivots: c.base,
			Pushrod: c.coupler, ArmDeg: c.theta2, HornDeg: 90})
		if got := 90 - open.Swing(0); math.Abs(got-c.open) > 0.0006 {
			t.Errorf("%s open: horn at %.4f°, want %.3f°", c.name, got, c.open)
		}
		crossed := mustNew(t, linkage.Geometry{Arm: c.crank, Horn: c.rocker, Pivots: c.base,
			Pushrod: c.coupler, ArmDeg: c.theta2, HornDeg: 90, Crossed: true})
		if got := -(90 - crossed.Swing(0)); math.Abs(got-c.crossed) > 0.0006 {
			t.Errorf("%s crossed: horn at %.4f°, want %.3f°", c.name, got, c.crossed)
		}
	}
}

// Values computed twice with a general-purpose numerical library (circle
// intersection, and a root of the loop equation). There a positive servo angle
// swings the arm's tip forward, so both columns are negated here.
func TestSwingComputedTables(t *testing.T) {
	leaning := square(10, 15, 60)
	leaning.ArmDeg = 75
	raked := square(10, 15, 60)
	raked.HornDeg = 110
	for _, c := range []struct {
		g         linkage.Geometry
		arm, horn float64
	}{
		{square(10, 15, 60), 45, 27.633},
		{square(10, 15, 60), 30, 19.295},
		{square(10, 15, 60), 0, 0},
		{square(10, 15, 60), -30, -19.637},
		{square(10, 15, 60), -45, -28.569},
		{leaning, 30, 16.521},
		{leaning, -30, -19.878},
		{raked, 30, 18.687},
		{raked, -30, -21.985},
	} {
		if got := mustNew(t, c.g).Swing(c.arm); math.Abs(got-c.horn) > 0.0006 {
			t.Errorf("%+v arm %v°: horn %.4f°, want %.3f°", c.g, c.arm, got, c.horn)
		}
	}
}

// Equal arms square to the pivots are a parallelogram: the horn follows the
// arm exactly. With the pivots as far apart as the arms are long it is a
// rhombus, where the textbook quadratic divides by zero.
func TestSwingParallelogramAndRhombus(t *testing.T) {
	for _, pivots := range []float64{60, 12} {
		l := mustNew(t, square(12, 12, pivots))
		for arm := -80.0; arm <= 80; arm += 0.5 {
			if got := l.Swing(arm); math.Abs(got-arm) > 1e-9 {
				t.Errorf("pivots %v: arm %v°, horn %v°", pivots, arm, got)
			}
		}
	}
}

// Arm 12, horn 8, pivots 60 has no solution over a servo travel of ±45°,
// computed with a numerical library: it locks on the fore side.
func TestRangeFindsTheLock(t *testing.T) {
	l := mustNew(t, square(12, 8, 60))
	fore, aft := l.Range()
	if fore.Kind != linkage.Locks || !(fore.Swing > -45) {
		t.Errorf("fore end %+v, want a lock inside 45°", fore)
	}
	// At a lock horn and pushrod are in one line: the tips are as far apart
	// from hinge to arm as both together.
	for _, end := range []linkage.End{fore, aft} {
		a := (90 - end.Swing) * math.Pi / 180
		d := math.Hypot(60-12*math.Cos(a), 12*math.Sin(a))
		if miss := math.Abs(d - (l.Pushrod() + 8)); miss > 1e-9 && math.Abs(d-(l.Pushrod()-8)) > 1e-9 {
			t.Errorf("%+v: arm tip %v mm from the hinge", end, d)
		}
	}
}

func TestRangeFindsOverCentre(t *testing.T) {
	// A short arm on a long horn: the arm comes into line with the pushrod long
	// before the horn does.
	l := mustNew(t, square(6, 25, 70))
	_, aft := l.Range()
	if aft.Kind != linkage.OverCentre {
		t.Fatalf("aft end %+v, want over centre", aft)
	}
	before, at, beyond := l.Swing(aft.Swing-1), l.Swing(aft.Swing), l.Swing(aft.Swing+1)
	if !(at > before && at > beyond) {
		t.Errorf("horn %v, %v, %v around the end: want the middle one furthest", before, at, beyond)
	}
}

func TestNewRefuses(t *testing.T) {
	short := square(10, 15, 60)
	short.Pushrod = 20
	if _, err := linkage.New(short); !errors.Is(err, linkage.ErrCannotMeet) {
		t.Errorf("short pushrod: %v", err)
	}
	inLine := linkage.Geometry{Arm: 10, Horn: 10, Pivots: 50, Pushrod: 30, ArmDeg: 1e-12, HornDeg: 180 - 1e-12}
	if _, err := linkage.New(inLine); !errors.Is(err, linkage.ErrStuck) && !errors.Is(err, linkage.ErrCannotMeet) {
		t.Errorf("all in one line: %v", err)
	}
	for _, g := range []linkage.Geometry{
		square(0, 10, 50), square(10, -1, 50), square(10, 10, math.NaN()), square(10, math.Inf(1), 50),
		{Arm: 10, Horn: 10, Pivots: 50, ArmDeg: 0, HornDeg: 90},
		{Arm: 10, Horn: 10, Pivots: 50, ArmDeg: 90, HornDeg: math.NaN()},
		{Arm: 10, Horn: 10, Pivots: 50, ArmDeg: 90, HornDeg: 90, Offset: math.NaN()},
		{Arm: 10, Horn: 10, Pivots: 50, ArmDeg: 90, HornDeg: 90, Pushrod: -1},
	} {
		if _, err := linkage.New(g); err == nil {
			t.Errorf("%+v was taken", g)
		}
	}
}

// buildable are geometries that can be put together.
var buildable = rapid.Custom(drawGeometry).Filter(func(g linkage.Geometry) bool {
	_, err := linkage.New(g)
	return err == nil
})

func drawGeometry(t *rapid.T) linkage.Geometry {
	return linkage.Geometry{
		Arm:     rapid.Float64Range(4, 30).Draw(t, "arm"),
		Horn:    rapid.Float64Range(4, 40).Draw(t, "horn"),
		Pivots:  rapid.Float64Range(15, 300).Draw(t, "pivots"),
		Offset:  rapid.Float64Range(-20, 20).Draw(t, "offset"),
		ArmDeg:  rapid.Float64Range(20, 160).Draw(t, "arm angle"),
		HornDeg: rapid.Float64Range(20, 160).Draw(t, "horn angle"),
		Crossed: rapid.Bool().Draw(t, "crossed"),
	}
}

// Inside its range a linkage closes (the pushrod keeps its length), starts from
// neutral and is strictly monotone; so no end was missed.
func TestSwingClosesAndIsMonotoneInsideRange(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := buildable.Draw(t, "geometry")
		l, err := linkage.New(g)
		if err != nil {
			t.Fatal(err)
		}
		if got := l.Swing(0); math.Abs(got) > 1e-6 {
			t.Fatalf("at neutral the horn is at %v°", got)
		}
		fore, aft := l.Range()
		const steps = 400
		previous, direction := math.NaN(), 0.0
		for i := 1; i < steps; i++ {
			arm := fore.Swing + (aft.Swing-fore.Swing)*float64(i)/steps
			horn := l.Swing(arm)
			if miss := math.Abs(rodLength(g, arm, horn) - l.Pushrod()); !(miss < 1e-6) {
				t.Fatalf("arm %v°, horn %v°: pushrod off by %v mm", arm, horn, miss)
			}
			step := math.Remainder(horn-previous, 360)
			switch {
			case i == 1:
			case direction == 0:
				direction = math.Copysign(1, step)
			case step*direction <= 0:
				t.Fatalf("arm %v°: horn turned back by %v° inside the range %+v to %+v", arm, step, fore, aft)
			}
			previous = horn
		}
	})
}

// rodLength is the distance from arm tip to horn tip, straight from the
// geometry.
func rodLength(g linkage.Geometry, armSwing, hornSwing float64) float64 {
	side := 1.0
	if g.Crossed {
		side = -1
	}
	a := (g.ArmDeg - armSwing) * math.Pi / 180
	h := (g.HornDeg - hornSwing) * math.Pi / 180
	return math.Hypot(g.Pivots+g.Horn*math.Cos(h)-g.Arm*math.Cos(a),
		g.Offset+g.Horn*math.Sin(h)-side*g.Arm*math.Sin(a))
}

func BenchmarkSwing(b *testing.B) {
	l := mustNew(b, square(11, 15, 58))
	b.ReportAllocs()
	var sum float64
	for i := range b.N {
		sum += l.Swing(float64(i%80) - 40)
	}
	if math.IsNaN(sum) {
		b.Fatal("not a number")
	}
}
