package mixcore

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Values of scipy.interpolate.PchipInterpolator, SciPy 1.10.1.
func TestSmoothCurveAgreesWithPchip(t *testing.T) {
	for _, c := range []struct{ points, values []Point }{
		{
			[]Point{{-100, -100}, {-40, -70}, {0, 0}, {30, 10}, {100, 80}},
			[]Point{{-90, -98.89957264957265}, {-70, -91.0576923076923}, {-55, -81.50240384615385},
				{-20, -33.67371558330968}, {-5, -4.6426163780868634}, {10, 3.961750034167008},
				{25, 8.00834635950526}, {50, 22.674319727891156}, {75, 47.12930484693878}, {95, 72.81191539115646}},
		},
		{
			[]Point{{0, -100}, {25, -100}, {50, 20}, {100, 100}},
			[]Point{{5, -100}, {30, -89.55294117647058}, {40, -31.388235294117642}, {60, 44.5835294117647}, {90, 95.74588235294118}},
		},
		{
			[]Point{{-100, 100}, {-20, -50}, {20, -60}, {100, -100}},
			[]Point{{-80, 44.80609939759036}, {-40, -33.0817018072289}, {0, -55.42598967297763},
				{30, -63.450520833333336}, {80, -87.45535714285712}},
		},
		{
			[]Point{{-100, -40}, {-50, 60}, {0, -20}, {50, 60}, {100, 100}},
			[]Point{{-75, 33.75}, {-25, 20}, {-60, 55.68}, {25, 13.333333333333336}, {75, 84.16666666666667}, {85, 91.78}},
		},
	} {
		smooth := compileCurve(&Curve{Points: c.points, Smooth: true})
		for _, v := range c.values {
			if got := smooth.at(v.X); math.Abs(got-v.Y) > 1e-12*100 {
				t.Errorf("%v at %v: %v, want %v", c.points, v.X, got, v.Y)
			}
		}
	}
}

func TestStraightCurve(t *testing.T) {
	c := compileCurve(&Curve{Points: []Point{{-100, -20}, {0, 40}, {100, 40}}})
	for _, v := range []Point{{-100, -20}, {-50, 10}, {0, 40}, {60, 40}, {100, 40}} {
		if got := c.at(v.X); math.Abs(got-v.Y) > 1e-12 {
			t.Errorf("at %v: %v, want %v", v.X, got, v.Y)
		}
	}
}

func drawCurve(t *rapid.T) *Curve {
	n := rapid.IntRange(2, 33).Draw(t, "points")
	c := &Curve{Smooth: rapid.Bool().Draw(t, "smooth")}
	x := -100.0
	for i := range n {
		c.Points = append(c.Points, Point{x, rapid.Float64Range(-100, 100).Draw(t, "y")})
		switch {
		case i == n-2:
			x = 100
		case i < n-2:
			x += rapid.Float64Range(0.001, (100-x)/float64(n-i)).Draw(t, "step")
		}
	}
	return c
}

// A curve goes through its points, and between two points it neither leaves
// their range nor turns back, bit for bit.
func TestCurveNeverOvershoots(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		drawn := drawCurve(t)
		c := compileCurve(drawn)
		for i, p := range drawn.Points {
			if got := c.at(p.X); got != p.Y {
				t.Fatalf("at point %d: %v, want %v", i, got, p.Y)
			}
		}
		for i := 1; i < len(drawn.Points); i++ {
			a, b := drawn.Points[i-1], drawn.Points[i]
			previous := a.Y
			for k := 1; k <= 32; k++ {
				y := c.at(a.X + (b.X-a.X)*float64(k)/32)
				if y < min(a.Y, b.Y) || y > max(a.Y, b.Y) {
					t.Fatalf("%v outside %v to %v", y, a, b)
				}
				if (y-previous)*(b.Y-a.Y) < -1e-9 {
					t.Fatalf("turns back from %v to %v between %v and %v", previous, y, a, b)
				}
				previous = y
			}
		}
	})
}
