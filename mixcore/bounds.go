package mixcore

import (
	"math"

	"example.com/hingeline/mixcore/interval"
)

// Rounding errors of the chain's first stages, as bounds: Expo and the throw take a
// handful of operations on numbers of at most a few hundred, the smooth curve some
// twenty on numbers of at most a few thousand.
const (
	expoError  = 1e-12
	curveError = 1e-11
)

// ShapedRange encloses, over all positions of a stretch of the demand's control, the
// demand before its trim, in percent, as ShapedAt computes it. The control must not be a
// switch.
func (p *Plan) ShapedRange(demand, rate int, at interval.Range) interval.Range {
	d := &p.demands[demand]
	r := &d.rates[rate]
	_, bent := d.bentOver(r, at)
	thrown := interval.Range{Low: r.throw(bent.Low) * bent.Low / 100, High: r.throw(bent.High) * bent.High / 100}
	if !at.IsPoint() {
		thrown = thrown.Widen(expoError)
	}
	return thrown
}

// ShapedSlope encloses how much that changes with the position, in percent of demand for
// one percent of control; to one side or the other, where it has a corner.
func (p *Plan) ShapedSlope(demand, rate int, at interval.Range) interval.Range {
	d := &p.demands[demand]
	r := &d.rates[rate]
	soft, bent := d.bentOver(r, at)
	steep := interval.Point(1)
	if d.curve != nil {
		if r.expo == 0 { // the position itself, without the rounding of getting there
			soft = at
		}
		steep = d.curve.slopeOver(soft)
	}
	throws := interval.Point(r.throw(bent.Low)).Hull(interval.Point(r.throw(bent.High)))
	return expoSlope(at.Scale(0.01), r.expo).Mul(steep).Mul(throws.Scale(0.01))
}

// bentOver encloses the position after expo, and after the curve.
func (d *demand) bentOver(r *rate, at interval.Range) (soft, bent interval.Range) {
	soft = interval.Range{Low: Expo(at.Low/100, r.expo) * 100, High: Expo(at.High/100, r.expo) * 100}
	if !at.IsPoint() {
		soft = soft.Widen(expoError) // Expo never turns back, but for rounding
	}
	if d.curve == nil {
		return soft, soft
	}
	return soft, d.curve.over(soft)
}

func (r *rate) throw(bent float64) float64 {
	if bent < 0 {
		return r.minus
	}
	return r.plus
}

// expoSlope is the derivative of Expo, never negative: (1−k) + 3k·x², or
// (1−|k|) + 3|k|·(1−|x|)².
func expoSlope(x interval.Range, k float64) interval.Range {
	if k == 0 {
		return interval.Point(1)
	}
	size := x.Abs()
	if k < 0 {
		size = interval.Point(1).Sub(size)
	}
	slope := size.Mul(size).Scale(3 * math.Abs(k)).Add(interval.Point(1).Sub(interval.Point(math.Abs(k))))
	return slope.Max(interval.Point(0))
}

// over encloses the curve's value over a stretch: it never turns back between two
// points.
func (c *curve) over(x interval.Range) interval.Range {
	value := interval.Point(c.at(x.Low))
	if x.IsPoint() {
		return value
	}
	value = value.Hull(interval.Point(c.at(x.High)))
	for _, p := range c.points {
		if x.Contains(p.X) {
			value = value.Hull(interval.Point(p.Y))
		}
	}
	return value.Widen(curveError)
}

// slopeOver encloses the curve's slope over a stretch.
func (c *curve) slopeOver(x interval.Range) interval.Range {
	last := len(c.points) - 1
	slope := interval.Range{Low: math.Inf(1), High: math.Inf(-1)} // of no piece yet
	for i := 1; i <= last; i++ {
		low, high := max(c.points[i-1].X, x.Low), min(c.points[i].X, x.High)
		if low < high || low == high && x.IsPoint() { // one that it only touches does not count
			slope = slope.Hull(c.pieceSlope(i, x))
		}
	}
	if x.Low < c.points[0].X || x.High > c.points[last].X { // flat beyond its ends
		slope = slope.Hull(interval.Point(0))
	}
	return slope
}

// pieceSlope encloses the slope of the piece that ends at point i where x reaches
// into it. Written with t from 0 to 1 along the piece and u = 1−t, the derivative of
// the Hermite cubic is 6tu·rise + u(u−2t)·s₀ + t(t−2u)·s₁.
func (c *curve) pieceSlope(i int, x interval.Range) interval.Range {
	a, b := c.points[i-1], c.points[i]
	width := interval.Point(b.X).Sub(interval.Point(a.X))
	rise := interval.Point(b.Y).Sub(interval.Point(a.Y)).Over(width)
	if c.slopes == nil {
		return rise
	}
	from, to := max(x.Low, a.X), min(x.High, b.X)
	t := interval.Range{Low: from, High: max(from, to)}.Sub(interval.Point(a.X)).Over(width).Within(interval.Range{High: 1})
	slope := c.hermiteSlope(i, rise, t)
	if b.Y >= a.Y { // a monotone cubic never turns back
		return interval.Range{Low: max(slope.Low, 0), High: max(slope.High, 0)}
	}
	return interval.Range{Low: min(slope.Low, 0), High: min(slope.High, 0)}
}

// hermiteSlope bounds the quadratic s₀ + (6r−4s₀−2s₁)t + (3s₀+3s₁−6r)t² by its ends
// and its vertex.
func (c *curve) hermiteSlope(i int, rise, t interval.Range) interval.Range {
	s0, s1 := interval.Point(c.slopes[i-1]), interval.Point(c.slopes[i])
	linear := rise.Scale(6).Sub(s0.Scale(4)).Sub(s1.Scale(2))
	square := s0.Add(s1).Scale(3).Sub(rise.Scale(6))
	at := func(t interval.Range) interval.Range {
		return square.Mul(t).Add(linear).Mul(t).Add(s0)
	}
	slope := at(interval.Point(t.Low)).Hull(at(interval.Point(t.High)))
	vertex := linear.Neg().Over(square.Scale(2))
	if vertex.High >= t.Low && vertex.Low <= t.High {
		// Where the vertex is not known well, the whole stretch stands for it.
		slope = slope.Hull(at(vertex.Within(t)))
	}
	return slope
}

// ShapedBreaks are positions of the demand's control, in percent and ascending, between
// which the demand is smooth: where its sign may change and where a curve's points
// are reached. They are near, not exact.
func (p *Plan) ShapedBreaks(demand, rate int) []float64 {
	d := &p.demands[demand]
	if d.values != nil {
		return nil
	}
	var list []float64
	if d.curve == nil {
		return []float64{0}
	}
	k := d.rates[rate].expo
	for _, p := range d.curve.points {
		list = append(list, expoReaches(p.X, k))
	}
	return list
}

// expoReaches is the position at which Expo comes to y, both in percent, by halving.
func expoReaches(y, k float64) float64 {
	low, high := -100.0, 100.0
	for range 60 {
		middle := (low + high) / 2
		if Expo(middle/100, k)*100 < y {
			low = middle
		} else {
			high = middle
		}
	}
	return math.Round(high*1e9) / 1e9
}
