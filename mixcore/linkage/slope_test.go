package linkage_test

import (
	"errors"
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"example.com/hingeline/mixcore/interval"
	"example.com/hingeline/mixcore/linkage"
	"pgregory.net/rapid"
)

// wild draws a geometry that can be built, of any kind: short and long, crossed, with a
// pushrod that holds the horn off its neutral.
func wild(t *rapid.T) (linkage.Geometry, *linkage.Linkage) {
	length := func(low, high int, what string) float64 {
		return float64(rapid.IntRange(low*10, high*10).Draw(t, what)) / 10
	}
	draw := rapid.Custom(func(r *rapid.T) linkage.Geometry {
		t = r
		g := linkage.Geometry{Arm: length(5, 25, "arm"), Horn: length(5, 30, "horn"), Pivots: length(15, 120, "pivots"),
			Offset: length(-15, 15, "offset"), ArmDeg: length(20, 160, "arm angle"), HornDeg: length(20, 160, "horn angle"), Crossed: rapid.Bool().Draw(t, "crossed")}
		if rapid.IntRange(0, 3).Draw(t, "own pushrod") == 0 {
			g.Pushrod = g.Pivots + length(-10, 10, "more")
		}
		return g
	})
	g := draw.Filter(func(g linkage.Geometry) bool { _, err := linkage.New(g); return err == nil }).Draw(t, "geometry")
	l, _ := linkage.New(g)
	return g, l
}

// reach is the arm's swing either way, all but its last part.
func reach(l *linkage.Linkage, part float64) interval.Range {
	fore, aft := l.Range()
	return interval.Range{Low: fore.Swing * part, High: aft.Swing * part}
}

// turnsBack says whether the horn turns back, or jumps from one side to the other,
// anywhere in the reach.
func turnsBack(l *linkage.Linkage, r interval.Range) bool {
	const steps = 400
	last, way := l.Swing(r.Low), 0.0
	for i := 1; i <= steps; i++ {
		at := l.Swing(r.Low + (r.High-r.Low)*float64(i)/steps)
		by := at - last
		if i == 1 {
			way = by
		}
		if by*way < 0 {
			return true
		}
		last = at
	}
	return false
}

// The slope encloses every secant, and keeps its sign.
func TestSlopeHoldsSecants(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, l := wild(t)
		r := reach(l, rapid.SampledFrom([]float64{0.5, 0.9, 0.99, 0.9999}).Draw(t, "part"))
		r.Low, r.High = max(r.Low, -95), min(r.High, 95)
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "random"), 0))
		for range 60 {
			a, b := r.Low+(r.High-r.Low)*random.Float64(), r.Low+(r.High-r.Low)*random.Float64()
			if random.IntN(2) == 0 {
				b = min(a+math.Ldexp(r.High-r.Low, -random.IntN(30)), r.High)
			}
			at := interval.Range{Low: min(a, b), High: max(a, b)}
			slope, accuracy := l.Slope(at), l.Accuracy(at)
			if !(slope.Low <= slope.High) || !(accuracy > 0) {
				t.Fatalf("over %v: slope %v, accuracy %v", at, slope, accuracy)
			}
			for range 5 {
				x, y := at.Low+(at.High-at.Low)*random.Float64(), at.Low+(at.High-at.Low)*random.Float64()
				if random.IntN(2) == 0 {
					x, y = at.Low, at.High
				}
				rise := l.Swing(y) - l.Swing(x)
				if want := slope.Mul(interval.Point(y).Sub(interval.Point(x))).Widen(2 * accuracy); !want.Contains(rise) {
					t.Fatalf("from %v to %v in %v: turns by %v, want within %v by a slope of %v", x, y, at, rise, want, slope)
				}
			}
		}
	})
}

// What ranges of places rest on: between its ends a linkage never turns back.
func TestSwingNeverTurnsBackBetweenItsEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, l := wild(t)
		r := reach(l, 0.999999)
		r.Low, r.High = max(r.Low, -95), min(r.High, 95)
		if turnsBack(l, r) {
			t.Fatalf("%+v turns back between %v", g, r)
		}
	})
}

// In a parallelogram all three come into one line, where its horn can go either way:
// there the linkage locks, however the lengths are rounded.
func TestParallelogramLocksInLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		arm := float64(rapid.IntRange(50, 250).Draw(t, "arm")) / 10
		g := linkage.Geometry{Arm: arm, Horn: arm, Pivots: float64(rapid.IntRange(300, 1200).Draw(t, "pivots")) / 10,
			Offset: float64(rapid.IntRange(-150, 150).Draw(t, "offset")) / 10}
		line := math.Atan2(g.Offset, g.Pivots) * 180 / math.Pi
		g.ArmDeg = float64(rapid.IntRange(40, 140).Draw(t, "angle"))
		g.HornDeg = g.ArmDeg
		l, err := linkage.New(g)
		if err != nil {
			t.Fatal(err)
		}
		fore, aft := l.Range()
		// One line is where the arm lies along the line of the pivots, or against it.
		if want := g.ArmDeg - line; aft.Kind == linkage.Free || math.Abs(aft.Swing-want) > 1e-4 {
			t.Fatalf("%+v ends aft at %+v, want %v", g, aft, want)
		}
		if want := g.ArmDeg - line - 180; fore.Kind == linkage.Free || math.Abs(fore.Swing-max(want, -linkage.MostTurn)) > 1e-4 {
			t.Fatalf("%+v ends fore at %+v, want %v", g, fore, want)
		}
	})
}

// A long arm on a short horn turns it far round; the range ends where it has turned by
// MostTurn, before its angle begins again from the other side.
func TestRangeEndsBeforeHalfATurn(t *testing.T) {
	ended := 0
	rapid.Check(t, func(t *rapid.T) {
		g, l := wild(t)
		fore, aft := l.Range()
		for _, end := range []linkage.End{fore, aft} {
			swing := l.Swing(end.Swing)
			if math.Abs(swing) > linkage.MostTurn+1e-6 {
				t.Fatalf("%+v turns its horn by %v at %+v", g, swing, end)
			}
			if end.Kind == linkage.TurnsTooFar {
				ended++
				if math.Abs(math.Abs(swing)-linkage.MostTurn) > 1e-6 {
					t.Fatalf("%+v ends at %+v with the horn at %v", g, end, swing)
				}
			}
		}
	})
	if ended == 0 {
		t.Error("no linkage drawn turns so far: the test holds nothing")
	}
}

// A pushrod that holds the horn all round from its neutral is refused.
func TestNewRefusesAHornHeldAllRound(t *testing.T) {
	// A slim triangle of pivots 100, horn 10 and pushrod: arm straight up, and a pushrod
	// so long that the horn points away from the arm, 175° from its neutral near 0°.
	_, err := linkage.New(linkage.Geometry{Arm: 1, Horn: 10, Pivots: 100, ArmDeg: 90, HornDeg: 179, Pushrod: 109.9})
	if !errors.Is(err, linkage.ErrTurned) {
		t.Errorf("got %v, want %v", err, linkage.ErrTurned)
	}
}

// A parallelogram's horn turns as its arm does: slope 1. At right angles arm and horn of
// 10 and 15 mm have a slope of 10/15 at neutral.
func TestSlopeByHand(t *testing.T) {
	for _, c := range []struct {
		name string
		g    linkage.Geometry
		at   float64
		want float64
	}{
		{"parallelogram at neutral", square(12, 12, 60), 0, 1},
		{"parallelogram at 40°", square(12, 12, 60), 40, 1},
		{"10 and 15 mm", linkage.Geometry{Arm: 10, Horn: 15, Pivots: 60, Offset: -5, ArmDeg: 90, HornDeg: 90}, 0, 10.0 / 15},
	} {
		got := mustNew(t, c.g).Slope(interval.Point(c.at))
		if !got.Widen(1e-12).Contains(c.want) || got.Width() > 1e-9 {
			t.Errorf("%s: got %v, want just about %v", c.name, got, c.want)
		}
	}
	// Near a lock the horn whips round: the slope grows without end.
	locks := mustNew(t, linkage.Geometry{Arm: 20, Horn: 12, Pivots: 60, ArmDeg: 90, HornDeg: 90})
	_, aft := locks.Range()
	if near, far := locks.Slope(interval.Point(aft.Swing*0.999)), locks.Slope(interval.Point(aft.Swing*0.5)); aft.Kind != linkage.Locks || near.Low < 5*far.High {
		t.Errorf("a lock at %+v: slope %v near it, %v half way", aft, near, far)
	}
}

// digits is how many binary digits the numbers are computed with that Swing is held
// against.
const digits = 300

func bigOf(x float64) *big.Float { return new(big.Float).SetPrec(digits).SetFloat64(x) }

func times(x, y *big.Float) *big.Float { return new(big.Float).SetPrec(digits).Mul(x, y) }
func plus(x, y *big.Float) *big.Float  { return new(big.Float).SetPrec(digits).Add(x, y) }
func less(x, y *big.Float) *big.Float  { return new(big.Float).SetPrec(digits).Sub(x, y) }

// bigSinCos is sine and cosine of degrees by their series.
func bigSinCos(degrees *big.Float) (sin, cos *big.Float) {
	pi, _, _ := big.ParseFloat("3.14159265358979323846264338327950288419716939937510582097494459230781640628620899862803482534211706798214808651", 10, digits, big.ToNearestEven)
	x := new(big.Float).SetPrec(digits).Quo(times(degrees, pi), bigOf(180))
	sin, cos = bigOf(0), bigOf(0)
	term := bigOf(1)
	for n := 0; n < 120; n++ {
		switch n % 4 {
		case 0:
			cos.Add(cos, term)
		case 1:
			sin.Add(sin, term)
		case 2:
			cos.Sub(cos, term)
		case 3:
			sin.Sub(sin, term)
		}
		term = new(big.Float).SetPrec(digits).Quo(times(term, x), bigOf(float64(n+1)))
	}
	return sin, cos
}

// manyDigits is Swing by the formula in its comment, with many digits; not ok where the
// horn cannot be reached.
func manyDigits(g linkage.Geometry, l *linkage.Linkage, arm float64) (swing float64, ok bool) {
	side, branch := 1.0, 1.0
	if g.Crossed {
		side = -1
	}
	tip := func(arm float64) (x, y *big.Float) {
		sin, cos := bigSinCos(less(bigOf(g.ArmDeg), bigOf(arm)))
		return less(times(bigOf(g.Arm), cos), bigOf(g.Pivots)), less(times(bigOf(side*g.Arm), sin), bigOf(g.Offset))
	}
	hornSin, hornCos := bigSinCos(bigOf(g.HornDeg))
	ax, ay := tip(0)
	if less(times(ax, hornSin), times(ay, hornCos)).Sign() < 0 {
		branch = -1
	}
	horn, rod := times(bigOf(g.Horn), bigOf(g.Horn)), times(bigOf(l.Pushrod()), bigOf(l.Pushrod()))
	ax, ay = tip(arm)
	d2 := plus(times(ax, ax), times(ay, ay))
	k := less(plus(d2, horn), rod)
	s2 := less(times(times(bigOf(4), d2), horn), times(k, k))
	if s2.Sign() <= 0 {
		return 0, false
	}
	s := times(bigOf(branch), new(big.Float).SetPrec(digits).Sqrt(s2))
	y, _ := plus(times(ay, k), times(ax, s)).Float64()
	x, _ := less(times(ax, k), times(ay, s)).Float64()
	swing = g.HornDeg - math.Atan2(y, x)*180/math.Pi
	return math.Remainder(swing, 360), true
}

// Swing is as near to what many digits give as Accuracy says, up to a hair before a lock.
func TestAccuracyHoldsAgainstManyDigits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, l := wild(t)
		fore, aft := l.Range()
		part := rapid.SampledFrom([]float64{0, 0.5, 0.9, 0.999, 1 - 1e-6, 1 - 1e-9, 1 - 1e-12}).Draw(t, "part")
		for _, arm := range []float64{fore.Swing * part, aft.Swing * part} {
			want, ok := manyDigits(g, l, arm)
			if !ok {
				continue
			}
			accuracy := l.Accuracy(interval.Point(arm))
			if got := l.Swing(arm); !(math.Abs(math.Remainder(got-want, 360)) <= accuracy) {
				t.Fatalf("%+v at %v: got %v, want %v ± %v, off by %v", g, arm, got, want, accuracy, got-want)
			}
		}
	})
}
