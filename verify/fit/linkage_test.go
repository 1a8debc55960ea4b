package fit

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
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

// asMeasured fits a linkage whose channel puts out as much either way as was measured one way.
func asMeasured(d *mixcore.Drive, points []Point) (*Fitted, error) {
	most := mixcore.Percent(0)
	for _, p := range points {
		most = max(most, p.Output, -p.Output)
	}
	return Linkage(d, points, -most, most)
}

func TestLinkageRecoversWithoutNoise(t *testing.T) {
	for _, c := range []struct{ arm, lean, rod float64 }{{12, 90, 0}, {8, 80, 0}, {11, 100, 0}, {10, 84, 61}, {9, 92, 59.4}} {
		true_ := plainLinkage
		true_.Arm, true_.ArmDeg, true_.Pushrod = c.arm, c.lean, c.rod
		points := reads(t, driveOf(true_, 45, true, -1), evenly(9, 100), exactly)
		f, err := asMeasured(driveOf(plainLinkage, 45, true, -1), points)
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
		if points == nil || reads(t, driveOf(hand, swing, aft, sign), []float64{-105, 105}, exactly) == nil || reads(t, driveOf(written, swing, aft, sign), outputs, exactly) == nil {
			return // it locks, or nearly: then a fit may come to where it does
		}
		f, err := asMeasured(driveOf(written, swing, aft, sign), points)
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
	for _, c := range []struct {
		name   string
		points []Point
		want   error
	}{
		{"two points", []Point{{-100, 28}, {100, -28}}, ErrFewPoints},
		{"two outputs, one of them three times", []Point{{-100, 28}, {0, 0}, {0.2, 0}, {-0.2, 0.1}}, ErrFewPoints},
		{"the other way", []Point{{-100, -28}, {0, 0}, {100, 28}}, ErrOtherWay},
		{"it does not move", []Point{{-100, 0}, {0, 0}, {100, -0.5}}, ErrStill},
		{"it hardly moves", []Point{{-100, 5}, {0, 0}, {100, -5}}, ErrNoFit},
		{"further than any arm near that", []Point{{-100, 90}, {0, 0}, {100, -90}}, ErrNoFit},
		{"all round neutral", []Point{{-4, 1}, {0, 0}, {4, -1}}, ErrTooClose},
		{"one way only", []Point{{0, 0}, {50, -14}, {100, -29}}, ErrTooClose},
	} {
		if f, err := asMeasured(driveOf(plainLinkage, 45, true, -1), c.points); !errors.Is(err, c.want) {
			t.Errorf("%s: %+v, %v; wanted: %v", c.name, f, err, c.want)
		}
	}
}

// What was measured in the middle says too little of a channel that goes on to full travel,
// and enough of one that does not.
func TestLinkageOverTheTravel(t *testing.T) {
	d := driveOf(plainLinkage, 45, true, -1)
	hand := plainLinkage
	hand.Arm = 12
	points := reads(t, driveOf(hand, 45, true, -1), evenly(5, 40), exactly)
	if f, err := Linkage(d, points, -100, 100); !errors.Is(err, ErrTooClose) {
		t.Errorf("%+v, %v", f, err)
	}
	oneWay := reads(t, driveOf(hand, 45, true, -1), []float64{0, 40, 80, 100}, exactly)
	if f, err := asMeasured(d, oneWay); !errors.Is(err, ErrTooClose) {
		t.Errorf("%+v, %v", f, err)
	}
	if f, err := Linkage(d, oneWay, -10, 100); err != nil || math.Abs(f.Exact.Arm-12) > 1e-3 {
		t.Errorf("%+v, %v", f, err)
	}
	if f, err := Linkage(d, points, -50, 50); err != nil || math.Abs(f.Exact.Arm-12) > 1e-3 {
		t.Errorf("%+v, %v", f, err)
	}
}

// A reading that was misread is named, and nothing is made of it.
func TestLinkageNamesAReadingThatDoesNotFit(t *testing.T) {
	d := driveOf(plainLinkage, 45, true, -1)
	for _, outputs := range [][]float64{evenly(4, 100), evenly(5, 100), evenly(9, 100), {-100, -100, 0, 0, 50, 50, 100, 100}} {
		for wrong := range outputs {
			points := reads(t, d, outputs, exactly)
			points[wrong].Angle += 10
			f, err := asMeasured(d, points)
			var scattered *ScatteredError
			if err == nil || errors.As(err, &scattered) && scattered.Named && scattered.Output != points[wrong].Output ||
				len(outputs) == 9 && (scattered == nil || !scattered.Named) {
				t.Errorf("%v with the one at %v 10° off: %+v, %v", outputs, points[wrong].Output, f, err)
			}
		}
	}
}

// Readings at one output count one by one: three of them weigh more than one.
func TestLinkageWeighsReadingsByTheirNumber(t *testing.T) {
	d := driveOf(plainLinkage, 45, true, -1)
	once := reads(t, d, evenly(5, 100), exactly)
	once[4].Angle -= 0.6
	few, err := asMeasured(d, once)
	if err != nil {
		t.Fatal(err)
	}
	many, err := asMeasured(d, append(slices.Clone(once), once[4], once[4], once[4]))
	if err != nil {
		t.Fatal(err)
	}
	left := func(f *Fitted) float64 {
		r, _ := (&problem{drive: d, points: once}).residuals(f.Exact)
		return math.Abs(r[4])
	}
	if !(left(many) < left(few)/2) || len(many.After) != 5 || many.RatioOff >= few.RatioOff {
		t.Errorf("once %.3f° is left, four times %.3f°", left(few), left(many))
	}
}

// With three readings a surface that rests elsewhere is seen as such.
func TestLinkageOfThreeReadingsThatRestsElsewhere(t *testing.T) {
	d := driveOf(plainLinkage, 45, true, -1)
	f, err := asMeasured(d, []Point{{-100, 28}, {0, 3}, {100, -23}})
	if err != nil || !f.Pushrod || RMS(f.After) > 0.1 {
		t.Errorf("%+v, %v", f, err)
	}
}

// A horn that leans ten degrees otherwise than written leaves less over than readings to
// half a degree do, once the arm's lean is fitted: that is why it is not.
func TestTheHornsLeanShowsAsTheArms(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	between := func(a, b float64) float64 { return a + (b-a)*random.Float64() }
	worst, told := 0.0, 0
	for tried := 0; tried < 40; {
		horn := between(10, 25)
		written := linkage.Geometry{Horn: horn, Arm: horn * between(0.5, 0.8), Pivots: between(45, 450), Offset: between(-15, 15),
			ArmDeg: between(75, 105), HornDeg: between(80, 100), Crossed: random.IntN(2) == 0}
		hand := written
		hand.HornDeg += []float64{-10, 10}[random.IntN(2)]
		d := driveOf(written, 45, true, -1)
		if _, err := linkage.New(written); err != nil {
			continue
		}
		if _, err := linkage.New(hand); err != nil {
			continue
		}
		points := reads(t, driveOf(hand, 45, true, -1), evenly(21, 100), exactly)
		if points == nil || reads(t, d, evenly(21, 100), exactly) == nil {
			continue // it locks
		}
		tried++
		f, err := asMeasured(d, points)
		if either := (*HornOrSwingError)(nil); errors.As(err, &either) {
			told++
			continue
		}
		if err != nil {
			t.Fatalf("%+v: %v", written, err)
		}
		worst = math.Max(worst, RMS(f.After))
	}
	if told > 4 {
		t.Errorf("of 40 it is told in %d", told)
	}
	if worst >= math.Sqrt(readingVariance) {
		t.Errorf("%.2f° is left over", worst)
	}
	t.Logf("at worst %.2f° is left over", worst)
}

// What is said of how well values are told holds in 19 of 20 fits, however few readings.
func TestWhatIsToldHolds(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	between := func(a, b float64) float64 { return a + (b-a)*random.Float64() }
	for _, c := range []struct {
		readings int
		most     float64
		rests    bool
	}{{3, 100, false}, {4, 80, false}, {5, 70, false}, {9, 100, false}, {3, 100, true}, {5, 100, true}} {
		var held [4]int
		fits, refused := 0, 0
		for fits < told19 {
			horn := between(10, 25)
			written := linkage.Geometry{Horn: horn, Arm: horn * between(0.5, 0.8), Pivots: between(45, 450), ArmDeg: between(75, 105), HornDeg: between(80, 100)}
			hand := written
			hand.Arm *= between(0.85, 1.2)
			hand.ArmDeg += between(-10, 10)
			if _, err := linkage.New(written); err != nil {
				continue
			}
			l, err := linkage.New(hand)
			if err != nil {
				continue
			}
			if c.rests {
				hand.Pushrod = l.Pushrod() + hand.Arm*between(0.15, 0.25)
				if _, err := linkage.New(hand); err != nil {
					continue
				}
			}
			d, true_ := driveOf(written, 45, true, -1), driveOf(hand, 45, true, -1)
			if reads(t, d, evenly(9, 100), exactly) == nil || reads(t, true_, evenly(9, 100), exactly) == nil {
				continue // it locks
			}
			f, err := Linkage(d, reads(t, true_, evenly(c.readings, c.most), func() float64 { return noise * (2*random.Float64() - 1) }), -100, 100)
			if err != nil || f.Pushrod != c.rests {
				refused++
				continue
			}
			fits++
			off := [4]float64{f.Ratio - hand.Arm/hand.Horn, f.Exact.ArmDeg - hand.ArmDeg, f.Exact.Pushrod - hand.Pushrod, 0}
			fitted := reads(t, driveOf(f.Exact, 45, true, -1), []float64{100}, exactly)
			if fitted == nil {
				t.Fatalf("%+v ends before full travel", f.Exact)
			}
			off[3] = float64(fitted[0].Angle - reads(t, true_, []float64{100}, exactly)[0].Angle)
			for i, within := range [4]float64{2 * f.RatioOff, 2 * f.ArmOff, 2 * f.PushrodOff, 2 * f.TravelOff} {
				if math.Abs(off[i]) <= within {
					held[i]++
				}
			}
		}
		for i, name := range []string{"ratio", "lean", "pushrod", "angle at full travel"} {
			if least := told19 * 19 / 20; float64(held[i]) < float64(least)-3*math.Sqrt(told19*0.05*0.95) {
				t.Errorf("%+v: the %s lies within what is told in %d of %d", c, name, held[i], told19)
			}
		}
		t.Logf("%+v: %v of %d held, %d refused", c, held, told19, refused)
	}
}

// told19 is how many fits of each kind are tried.
const told19 = 30

// Whatever is written and measured, near a linkage's ends too, comes to a fit of plain
// numbers or to a reason.
func TestLinkageOfAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := linkage.Geometry{
			Arm: rapid.Float64Range(0.5, 60).Draw(t, "arm"), Horn: rapid.Float64Range(0.5, 60).Draw(t, "horn"), Pivots: rapid.Float64Range(0.5, 300).Draw(t, "pivots"),
			Offset: rapid.Float64Range(-60, 60).Draw(t, "offset"), ArmDeg: rapid.Float64Range(10, 170).Draw(t, "arm leans"),
			HornDeg: rapid.Float64Range(10, 170).Draw(t, "horn leans"), Crossed: rapid.Bool().Draw(t, "crossed"),
		}
		if rapid.Bool().Draw(t, "rests elsewhere") {
			g.Pushrod = rapid.Float64Range(0.5, 300).Draw(t, "pushrod")
		}
		d := driveOf(g, mixcore.Degrees(rapid.Float64Range(10, 180).Draw(t, "swing")), rapid.Bool().Draw(t, "aft"), rapid.SampledFrom([]float64{1, -1}).Draw(t, "sign"))
		d.Servo.Max = mixcore.Degrees(rapid.SampledFrom([]float64{30, 60, math.Inf(1)}).Draw(t, "most"))
		var points []Point
		for range rapid.IntRange(0, 8).Draw(t, "readings") {
			points = append(points, Point{mixcore.Percent(rapid.Float64Range(-125, 125).Draw(t, "output")), mixcore.Degrees(rapid.Float64Range(-170, 170).Draw(t, "angle"))})
		}
		if l, err := linkage.New(g); err == nil && rapid.Bool().Draw(t, "honest") { // read of it, where it ends too
			p := problem{drive: d}
			for i := range points {
				a, _ := p.angle(l, points[i].Output)
				points[i].Angle = mixcore.Degrees(a)
			}
		}
		f, err := asMeasured(d, points)
		if (f == nil) == (err == nil) {
			t.Fatalf("%+v, %v", f, err)
		}
		if f == nil {
			return
		}
		if _, err := linkage.New(f.Geometry); err != nil {
			t.Errorf("%+v: %v", f.Geometry, err)
		}
		for _, x := range slices.Concat(f.Before, f.After, []float64{f.Sum, f.Ratio, f.RatioOff, f.ArmOff, f.PushrodOff, f.TravelOff, f.Horn.Off, 1 / f.Horn.Off}) {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Errorf("%+v", f)
			}
		}
	})
}

// Three readings fit two values, and the pushrod is not touched.
func TestLinkageOfThreeReadings(t *testing.T) {
	hand := plainLinkage
	hand.Arm = 11.5
	f, err := asMeasured(driveOf(plainLinkage, 45, true, -1), reads(t, driveOf(hand, 45, true, -1), []float64{-100, 0, 100}, exactly))
	if err != nil || math.Abs(f.Exact.Arm-11.5) > 0.01 || f.Pushrod {
		t.Errorf("%+v, %v", f, err)
	}
}
