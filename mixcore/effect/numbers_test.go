package effect_test

import (
	"math"
	"testing"

	"example.com/hingeline/mixcore/effect"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %v, want %v ± %v", what, got, want, tolerance)
	}
}

// τ: Glauert, R&M 1095, in Houghton & Carpenter, Aerodynamics for Engineering
// Students, eqs 4.49–4.57; b2 their eq. 4.56. b1 and dCm computed by quadrature
// with a general-purpose numerical library.
func TestThinFlapTable(t *testing.T) {
	for _, c := range []struct{ part, tau, b1, b2, moment float64 }{
		{0.10, 0.39582, -0.3449, -0.8842, -0.0600},
		{0.20, 0.54982, -0.4994, -0.9229, -0.1600},
		{0.25, 1.0/3 + math.Sqrt(3)/(2*math.Pi), -0.5653, -0.9436, -0.2165},
		{0.30, 0.66075, -0.6274, -0.9654, -0.2750},
		{0.40, 0.74778, -0.7448, -1.0127, -0.3919},
		{0.50, 0.5 + 1/math.Pi, -0.8584, -1.0658, -0.5000},
		{1, 1, -math.Pi / 2, -math.Pi / 2, 0},
	} {
		got := effect.ThinFlap(c.part)
		near(t, "τ", got.Effectiveness, c.tau, 1e-5)
		near(t, "b1", got.HingeLift, c.b1, 1e-4)
		near(t, "b2", got.HingeFlap, c.b2, 1e-4)
		near(t, "dCm", got.Moment, c.moment, 1e-4)
		// Schlichting & Truckenbrodt eq. 12.7: the same τ in another form.
		other := 2 / math.Pi * (math.Sqrt(c.part*(1-c.part)) + math.Asin(math.Sqrt(c.part)))
		near(t, "τ, other form", got.Effectiveness, other, 1e-12)
	}
}

// Formula from memory, values computed.
func TestHelmboldSlope(t *testing.T) {
	for aspect, want := range map[float64]float64{4: 3.8832, 6: 4.5287, 8: 4.9058, 10: 5.1510} {
		near(t, "slope", effect.HelmboldSlope(aspect), want, 5e-5)
	}
}

// NAVION, from Nelson, Flight Stability and Automatic Control (value from
// memory: 0.155 per radian; recomputed 0.1548).
func TestStripRollNavion(t *testing.T) {
	w := effect.Wing{Span: 33.4, RootChord: 7.2, TipChord: 7.2 * 0.54}
	got := w.StripRoll(4.44, 0.36, 11.1, 16) * w.Area() / 184
	near(t, "Cl per radian", got, 0.155, 0.002)
}

// Strip theory, formula from memory: a rectangle has −a/6, taper 0.5 −0.13889 a.
func TestStripDamping(t *testing.T) {
	rectangle := effect.Wing{Span: 6, RootChord: 1, TipChord: 1}
	near(t, "rectangle", rectangle.StripDamping(6), -1, 1e-12)
	tapered := effect.Wing{Span: 6, RootChord: 1, TipChord: 0.5}
	near(t, "taper 0.5", tapered.StripDamping(1), -0.13889, 1e-5)
}

// Aileron from 60 to 95 % of the semispan, a quarter of the chord, aspect ratio
// 6, rectangle: pb/2V per radian is 0.496 by strips and 0.514 by lifting line,
// computed with a general-purpose numerical library.
func TestHelixAngleAgainstLiftingLine(t *testing.T) {
	w := effect.Wing{Span: 6, RootChord: 1, TipChord: 1}
	slope := effect.HelmboldSlope(w.Aspect())
	got := w.StripRoll(slope, effect.ThinFlap(0.25).Effectiveness, 0.6*3, 0.95*3) / -w.StripDamping(slope)
	near(t, "pb/2V by strips", got, 0.496, 0.0006)
	near(t, "pb/2V by lifting line", got, 0.514, 0.05*0.514)
}
