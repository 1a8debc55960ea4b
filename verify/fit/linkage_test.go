package fit

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
)

// What a fit recovers from readings that are up to half a degree off, at nine places of the
// channel or more: a modelling choice, held by the property below.
const (
	noise       = 0.5  // degrees, evenly spread
	ratioWithin = 0.05 // as a part of the ratio
	leanWithin  = 6.0  // degrees
	restsWithin = 0.6  // degrees, of where the surface rests
)

// driveOf is a servo with a linkage.
func driveOf(g linkage.Geometry, swing mixcore.Degrees, aft bool, sign float64) *mixcore.Drive {
	return &mixcore.Drive{Linkage: &g, Sign: sign, Servo: mixcore.Servo{Swing: swing, Max: mixcore.Degrees(math.Inf(1)), PlusAft: aft}}
}

// reads measures a linkage at outputs; off is by how much each reading is off.
func reads(t interface{ Fatalf(string, ...any) }, d *mixcore.Drive, outputs []float64, off func() float64) []Point {
	l, err := linkage.New(*d.Linkage)
	if err != nil {
		t.Fatalf("%+v: %v", d.Linkage, err)
	}
	p := problem{drive: d}
	var list []Point
	for _, at := range outputs {
		a, ok := p.angle(l, mixcore.Percent(at))
		if !ok {
			return nil
		}
		list = append(list, Point{mixcore.Percent(at), mixcore.Degrees(a + off())})
	}
	return list
}

func evenly(n int, most float64) (list []float64) {
	for i := range n {
		list = append(list, -most+2*most*float64(i)/float64(n-1))
	}
	return list
}

func exactly() float64 { return 0 }

var plainLinkage = linkage.Geometry{Arm: 10, Horn: 16, Pivots: 60, ArmDeg: 90, HornDeg: 90}

func TestLinkageRecoversWithoutNoise(t *testing.T) {
	for _, c := range []struct{ arm, lean, rod float64 }{{12, 90, 0}, {8, 80, 0}, {11, 100, 0}, {10, 84, 61}, {9, 92, 59.4}} {
		true_ := plainLinkage
		true_.Arm, true_.ArmDeg, true_.Pushrod = c.arm, c.lean, c.rod
		points := reads(t, driveOf(true_, 45, true, -1), evenly(9, 100), exactly)
		f, err := Linkage(driveOf(plainLinkage, 45, true, -1), points)
		if err != nil {
			t.Fatalf("%+v: %v", c, err)
		}
		if math.Abs(f.Exact.Arm-c.arm) > 1e-3 || math.Abs(f.Exact.ArmDeg-c.lean) > 1e-2 || f.Pushrod != (c.rod > 0) || c.rod > 0 && math.Abs(f.Exact.Pushrod-c.rod) > 1e-3 || f.Sum > 1e-8 {
			t.Errorf("%+v: got %+v, with %g left", c, f.Exact, f.Sum)
		}
		if RMS(f.After) > 0.1 || RMS(f.Before) < 0.5 {
			t.Errorf("%+v: off by %v before and %v after", c, RMS(f.Before), RMS(f.After))
		}
	}
}

// From readings that are up to ± 0.5° off, the ratio of arm to horn, the arm's lean and where
// the surface rests come out within what is stated.
func TestLinkageRecoversFromNoisyReadings(t *testing.T) {
	worst := [3]float64{}
	rapid.Check(t, func(t *rapid.T) {
		horn := rapid.Float64Range(10, 25).Draw(t, "horn")
		written := linkage.Geometry{
			Horn: horn, Arm: horn * rapid.Float64Range(0.65, 0.8).Draw(t, "ratio"), Pivots: rapid.Float64Range(45, 500).Draw(t, "pivots"),
			Offset: rapid.Float64Range(-15, 15).Draw(t, "offset"), ArmDeg: rapid.Float64Range(75, 105).Draw(t, "arm"),
			HornDeg: rapid.Float64Range(80, 100).Draw(t, "horn leans"), Crossed: rapid.Bool().Draw(t, "crossed"),
		}
		hand := written
		hand.Arm *= rapid.Float64Range(0.85, 1.2).Draw(t, "longer")
		hand.ArmDeg += rapid.Float64Range(-10, 10).Draw(t, "leans")
		rests := rapid.Bool().Draw(t, "rests elsewhere")
		if l, err := linkage.New(hand); rests && err == nil {
			hand.Pushrod = l.Pushrod() + hand.Arm*rapid.Float64Range(0.05, 0.2).Draw(t, "rod")
		}
		swing := mixcore.Degrees(rapid.Float64Range(40, 50).Draw(t, "swing"))
		aft, sign := rapid.Bool().Draw(t, "aft"), rapid.SampledFrom([]float64{1, -1}).Draw(t, "sign")
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "noise"), 1))
		if _, err := linkage.New(written); err != nil {
			return
		}
		if l, err := linkage.New(hand); err != nil || math.Abs(l.NeutralSwing()) > 20 {
			return
		}
		outputs := evenly(rapid.IntRange(9, 21).Draw(t, "readings"), 100)
		points := reads(t, driveOf(hand, swing, aft, sign), outputs, func() float64 { return noise * (2*random.Float64() - 1) })
		if points == nil || reads(t, driveOf(written, swing, aft, sign), outputs, exactly) == nil {
			return // it locks
		}
		f, err := Linkage(driveOf(written, swing, aft, sign), points)
		if errors.Is(err, ErrNoFit) {
			t.Fatalf("hand %+v, written %+v: %v", hand, written, err)
		}
		if err != nil {
			t.Fatal(err)
		}
		at := func(g linkage.Geometry) float64 { l, _ := linkage.New(g); return l.NeutralSwing() }
		off := [3]float64{math.Abs(f.Ratio*hand.Horn/hand.Arm - 1), math.Abs(f.Exact.ArmDeg - hand.ArmDeg), math.Abs(at(f.Exact) - at(hand))}
		for i := range off {
			worst[i] = math.Max(worst[i], off[i])
		}
		if off[0] > ratioWithin || off[1] > leanWithin || off[2] > restsWithin {
			t.Errorf("hand %+v, written %+v: got %+v: the ratio is off by %.1f %%, the lean by %.2f°, where it rests by %.2f°", hand, written, f.Exact, 100*off[0], off[1], off[2])
		}
	})
	t.Logf("at worst the ratio is off by %.2f %%, the lean by %.2f°, where it rests by %.2f°", 100*worst[0], worst[1], worst[2])
}

func TestLinkageRefuses(t *testing.T) {
	d := driveOf(plainLinkage, 45, true, -1)
	points := reads(t, d, []float64{-100, 0, 100}, exactly)
	if _, err := Linkage(d, points[:2]); !errors.Is(err, ErrFewPoints) {
		t.Errorf("two points: %v", err)
	}
	if _, err := Linkage(d, append(points[:2:2], points[1], points[1])); !errors.Is(err, ErrFewPoints) {
		t.Errorf("two outputs, one of them three times: %v", err)
	}
	for i := range points {
		points[i].Angle = -points[i].Angle
	}
	if _, err := Linkage(d, points); !errors.Is(err, ErrOtherWay) {
		t.Errorf("the other way: %v", err)
	}
}

// Three readings fit two values, and the pushrod is not touched.
func TestLinkageOfThreeReadings(t *testing.T) {
	hand := plainLinkage
	hand.Arm = 11.5
	f, err := Linkage(driveOf(plainLinkage, 45, true, -1), reads(t, driveOf(hand, 45, true, -1), []float64{-100, 0, 100}, exactly))
	if err != nil || math.Abs(f.Exact.Arm-11.5) > 0.01 || f.Pushrod {
		t.Errorf("%+v, %v", f, err)
	}
}
