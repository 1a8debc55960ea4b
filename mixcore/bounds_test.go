package mixcore_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/interval"
	"pgregory.net/rapid"
)

// setting draws a whole multiple of 0.001.
func setting(t *rapid.T, low, high int, what string) float64 {
	if rapid.Bool().Draw(t, what+" whole") {
		return float64(rapid.IntRange(low, high).Draw(t, what))
	}
	return float64(rapid.IntRange(low*1000, high*1000).Draw(t, what)) / 1000
}

// shapes is a set-up of one demand with one rate, drawn.
func shapes(t *rapid.T) mixcore.Setup {
	return oneChannel(func(s *mixcore.Setup) {
		d := &s.Demands[0]
		r := &d.Rates[0]
		r.Throw = mixcore.Sides{Plus: mixcore.Percent(setting(t, 0, 100, "plus")), Minus: mixcore.Percent(setting(t, 0, 100, "minus"))}
		r.Expo = mixcore.Percent(setting(t, -100, 100, "expo"))
		low := -100.0
		if rapid.Bool().Draw(t, "lever") {
			d.From, low = 1, 0
		}
		if !rapid.Bool().Draw(t, "curve") {
			return
		}
		d.Curve = &mixcore.Curve{Smooth: rapid.Bool().Draw(t, "smooth")}
		pieces := rapid.IntRange(1, 6).Draw(t, "pieces")
		for i := range pieces + 1 {
			x := low + (100-low)*float64(i)/float64(pieces)
			if i > 0 && i < pieces {
				x += setting(t, -7, 7, "x")
			}
			y := setting(t, -100, 100, "y")
			if i > 0 && rapid.IntRange(0, 3).Draw(t, "flat") == 0 {
				y = d.Curve.Points[i-1].Y
			}
			d.Curve.Points = append(d.Curve.Points, mixcore.Point{X: math.Round(x*1000) / 1000, Y: y})
		}
	})
}

// stretch draws a part of a control's travel.
func stretch(random *rand.Rand, low, high float64) interval.Range {
	place := func() float64 {
		if random.IntN(3) == 0 {
			return low + (high-low)*float64(random.IntN(11))/10
		}
		return low + (high-low)*random.Float64()
	}
	a, b := place(), place()
	switch random.IntN(4) {
	case 0:
		b = a
	case 1:
		b = min(a+(high-low)*math.Ldexp(1, -random.IntN(40)), high)
	case 2: // so narrow that rounding is all there is
		b = a
		for range random.IntN(8) + 2 {
			b = math.Nextafter(b, high)
		}
	}
	return interval.Range{Low: min(a, b), High: max(a, b)}
}

func inside(random *rand.Rand, r interval.Range) float64 {
	switch random.IntN(4) {
	case 0:
		return r.Low
	case 1:
		return r.High
	}
	return min(r.Low+(r.High-r.Low)*random.Float64(), r.High)
}

// rounding is more than the demand's arithmetic is wrong by, in percent: see its bounds.
const rounding = 5e-11

// What a demand comes to and how steeply it changes, over any stretch of its control.
func TestShapedBoundsHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := shapes(t)
		p, faults := mixcore.Compile(s)
		if faults != nil {
			t.Fatal(faults)
		}
		low, high := s.Controls[s.Demands[0].From].Range()
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "random"), 0))
		for range 100 {
			at := stretch(random, low, high)
			value, slope := p.ShapedRange(0, 0, at), p.ShapedSlope(0, 0, at)
			if !(slope.Low <= slope.High) {
				t.Fatalf("slope over %v: %v", at, slope)
			}
			for range 10 {
				x, y := inside(random, at), inside(random, at)
				a, b := float64(p.ShapedAt(0, 0, x)), float64(p.ShapedAt(0, 0, y))
				if !value.Contains(a) {
					t.Fatalf("over %v: got %v, want %v (at %v) in it", at, value, a, x)
				}
				if rise := slope.Mul(interval.Point(y).Sub(interval.Point(x))).Widen(rounding); !rise.Contains(b - a) {
					t.Fatalf("from %v to %v in %v: rises by %v, want within %v by a slope of %v", x, y, at, b-a, rise, slope)
				}
			}
		}
	})
}

// A point is enclosed by itself: what stands still is exact.
func TestShapedBoundsOfAPointAreExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := shapes(t)
		p, _ := mixcore.Compile(s)
		low, high := s.Controls[s.Demands[0].From].Range()
		x := rapid.Float64Range(low, high).Draw(t, "x")
		if got, want := p.ShapedRange(0, 0, interval.Point(x)), interval.Point(float64(p.ShapedAt(0, 0, x))); got != want {
			t.Fatalf("at %v: got %v, want %v", x, got, want)
		}
	})
}

// Bounds are of use only if they are not much too wide: worked by hand.
func TestShapedBoundsByHand(t *testing.T) {
	demand := func(r mixcore.Rate, c *mixcore.Curve) *mixcore.Plan {
		return mustCompile(t, oneChannel(func(s *mixcore.Setup) {
			s.Demands[0].Rates, s.Demands[0].Curve = []mixcore.Rate{r}, c
		}))
	}
	type rg = interval.Range
	for _, c := range []struct {
		name         string
		plan         *mixcore.Plan
		at           rg
		value, slope rg
	}{
		{"throw 80 and 60", demand(mixcore.Rate{Throw: mixcore.Sides{Plus: 80, Minus: 60}}, nil), rg{Low: -50, High: 50}, rg{Low: -30, High: 40}, rg{Low: 0.6, High: 0.8}},
		{"throw 80 on the right", demand(mixcore.Rate{Throw: mixcore.Sides{Plus: 80, Minus: 60}}, nil), rg{Low: 10, High: 50}, rg{Low: 8, High: 40}, rg{Low: 0.8, High: 0.8}},
		// (1−0.3) + 3·0.3·x² : 0.7 at the centre, 1.6 at the end
		{"expo 30", demand(mixcore.Rate{Throw: mixcore.Both(100), Expo: 30}, nil), rg{Low: -100, High: 100}, rg{Low: -100, High: 100}, rg{Low: 0.7, High: 1.6}},
		// (1−0.3) + 3·0.3·(1−x)² : at half 0.7 + 0.9/4
		{"expo −30", demand(mixcore.Rate{Throw: mixcore.Both(100), Expo: -30}, nil), rg{Low: 50, High: 100}, rg{Low: 61.25, High: 100}, rg{Low: 0.7, High: 0.925}},
		{"straight pieces", demand(mixcore.Rate{Throw: mixcore.Both(100)}, &mixcore.Curve{Points: []mixcore.Point{{X: -100, Y: 0}, {X: 0, Y: 50}, {X: 50, Y: 0}, {X: 100, Y: 20}}}),
			rg{Low: -20, High: 40}, rg{Low: 10, High: 50}, rg{Low: -1, High: 0.5}},
		// a smooth curve through −100, 0, 100 with equal rises is the straight line itself
		{"a smooth straight line", demand(mixcore.Rate{Throw: mixcore.Both(50)}, &mixcore.Curve{Smooth: true, Points: []mixcore.Point{{X: -100, Y: -100}, {X: 0, Y: 0}, {X: 100, Y: 100}}}),
			rg{Low: -60, High: 30}, rg{Low: -30, High: 15}, rg{Low: 0.5, High: 0.5}},
	} {
		value, slope := c.plan.ShapedRange(0, 0, c.at), c.plan.ShapedSlope(0, 0, c.at)
		for _, pair := range []struct {
			what      string
			got, want rg
		}{{"value", value, c.value}, {"slope", slope, c.slope}} {
			near(t, c.name+": least "+pair.what, pair.got.Low, pair.want.Low, 1e-9)
			near(t, c.name+": greatest "+pair.what, pair.got.High, pair.want.High, 1e-9)
		}
	}
}

// Between two breaks a demand is smooth: no corner of a curve, no change of throw.
func TestShapedBreaksAreWhereTheCurvePointsAre(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := shapes(t)
		p, _ := mixcore.Compile(s)
		breaks := p.ShapedBreaks(0, 0)
		if s.Demands[0].Curve == nil {
			if len(breaks) != 1 || breaks[0] != 0 {
				t.Fatalf("without a curve: got %v, want the centre", breaks)
			}
			return
		}
		if len(breaks) != len(s.Demands[0].Curve.Points) {
			t.Fatalf("got %v, want one for each of %v", breaks, s.Demands[0].Curve.Points)
		}
		k := float64(s.Demands[0].Rates[0].Expo) / 100
		for i, x := range breaks {
			// Full expo is flat at one point, where many positions give nearly one value.
			if got, want := mixcore.Expo(x/100, k)*100, s.Demands[0].Curve.Points[i].X; !(math.Abs(got-want) < 1e-6) {
				t.Fatalf("break %v: after expo %v, want %v", x, got, want)
			}
		}
	})
}
