package mixcore

import "math"

// curve is a compiled Curve: on each piece between two points a cubic in
// Hermite form (a straight line where it is not smooth).
type curve struct {
	points []Point
	slopes []float64 // at the points; nil for straight lines
}

// compileCurve prepares a curve. A smooth one is the monotone piecewise cubic
// of Fritsch and Carlson (SIAM J. Numer. Anal. 17, 1980) with the weighted
// harmonic-mean slopes of Fritsch and Butland (SIAM J. Sci. Stat. Comput. 5,
// 1984) and the shape-preserving three-point formula at the ends: what
// general-purpose libraries call PCHIP. Citations from memory; the values are
// tested against one of those libraries.
func compileCurve(c *Curve) *curve {
	if c == nil {
		return nil
	}
	out := &curve{points: c.Points}
	if c.Smooth && len(c.Points) > 2 {
		out.slopes = monotoneSlopes(c.Points)
	}
	return out
}

// at is the curve's value, both in percent. Outside its points it is the end
// value. Between two points it never leaves the range of their values, whatever
// the rounding.
func (c *curve) at(x float64) float64 {
	p := c.points
	if x <= p[0].X {
		return p[0].Y
	}
	last := len(p) - 1
	if x >= p[last].X {
		return p[last].Y
	}
	i := 1
	for x >= p[i].X {
		i++
	}
	a, b := p[i-1], p[i]
	if c.slopes == nil {
		return between(lineAt(a, b, x), a.Y, b.Y)
	}
	h := b.X - a.X
	t := (x - a.X) / h
	u := 1 - t
	// Hermite basis, written so that t = 0 and t = 1 give a.Y and b.Y exactly.
	y := float64(a.Y*u*u*(1+2*t)) + float64(b.Y*t*t*(1+2*u)) +
		float64(h*t*u*(float64(u*c.slopes[i-1])-float64(t*c.slopes[i])))
	return between(y, a.Y, b.Y)
}

// lineAt is the straight line through a and b.
func lineAt(a, b Point, x float64) float64 {
	return a.Y + float64((b.Y-a.Y)*((x-a.X)/(b.X-a.X)))
}

func between(y, a, b float64) float64 { return min(max(y, min(a, b)), max(a, b)) }

func monotoneSlopes(p []Point) []float64 {
	n := len(p)
	width, rise := make([]float64, n-1), make([]float64, n-1)
	for i := range width {
		width[i] = p[i+1].X - p[i].X
		rise[i] = (p[i+1].Y - p[i].Y) / width[i]
	}
	slopes := make([]float64, n)
	for i := 1; i < n-1; i++ {
		if rise[i-1]*rise[i] > 0 {
			w1, w2 := 2*width[i]+width[i-1], width[i]+2*width[i-1]
			slopes[i] = (w1 + w2) / (w1/rise[i-1] + w2/rise[i])
		}
	}
	slopes[0] = endSlope(width[0], width[1], rise[0], rise[1])
	slopes[n-1] = endSlope(width[n-2], width[n-3], rise[n-2], rise[n-3])
	return slopes
}

// endSlope is the one-sided three-point estimate, held back where it would
// overshoot.
func endSlope(w0, w1, r0, r1 float64) float64 {
	s := ((2*w0+w1)*r0 - w0*r1) / (w0 + w1)
	switch {
	case s*r0 <= 0:
		return 0
	case r0*r1 <= 0 && math.Abs(s) > 3*math.Abs(r0):
		return 3 * r0
	}
	return s
}
