package smt

import (
	"math/big"

	"example.com/hingeline/mixcore"
)

// curve is the value of a curve at x, both in percent: straight pieces, or the cubics
// of the monotone curve with exact slopes. x is somewhere from low to high.
func (s *script) curve(c *mixcore.Curve, x number, low, high float64) number {
	n := len(c.Points)
	xs, ys := make([]*big.Rat, n), make([]*big.Rat, n)
	for i, p := range c.Points {
		xs[i], ys[i] = ratOf(p.X), ratOf(p.Y)
	}
	var slopes []*big.Rat
	if c.Smooth && n > 2 {
		slopes = monotoneSlopes(xs, ys)
	}
	piece := func(i int) number { // from point i to the next
		t := sum(x, exactly(new(big.Rat).Neg(xs[i])))
		h := difference(xs[i+1], xs[i])
		r := quotient(difference(ys[i+1], ys[i]), h)
		if slopes == nil {
			return sum(exactly(ys[i]), scaled(t, r))
		}
		// y = a + t·(s₀ + t·(c₂ + t·c₃)) has the two values and the two slopes.
		s0, s1 := slopes[i], slopes[i+1]
		c2 := quotient(difference(difference(product(big.NewRat(3, 1), r), product(big.NewRat(2, 1), s0)), s1), h)
		c3 := quotient(difference(new(big.Rat).Add(s0, s1), product(big.NewRat(2, 1), r)), product(h, h))
		inner := sum(exactly(c2), scaled(t, c3))
		inner = sum(exactly(s0), s.times(t, inner))
		return sum(exactly(ys[i]), s.times(t, inner))
	}
	y := piece(n - 2)
	for i := n - 3; i >= 0; i-- {
		y = choose(compare("<", x, exactly(xs[i+1])), piece(i), y)
	}
	if x.exact != nil || xs[n-1].Cmp(ratOf(high)) < 0 {
		y = choose(compare(">=", x, exactly(xs[n-1])), exactly(ys[n-1]), y)
	}
	if x.exact != nil || xs[0].Cmp(ratOf(low)) > 0 {
		y = choose(compare("<=", x, exactly(xs[0])), exactly(ys[0]), y)
	}
	return y
}

// monotoneSlopes are the slopes at the points of a monotone cubic after Fritsch,
// Carlson and Butland, exactly: inside the weighted harmonic mean of the two pieces'
// rises, or 0 where they do not go the same way; at the ends the three-point estimate,
// held back where it would overshoot.
func monotoneSlopes(xs, ys []*big.Rat) []*big.Rat {
	n := len(xs)
	var width, rise []*big.Rat
	for i := range n - 1 {
		width = append(width, difference(xs[i+1], xs[i]))
		rise = append(rise, quotient(difference(ys[i+1], ys[i]), width[i]))
	}
	slopes := make([]*big.Rat, n)
	slopes[0] = endSlope(width[0], width[1], rise[0], rise[1])
	slopes[n-1] = endSlope(width[n-2], width[n-3], rise[n-2], rise[n-3])
	for i := 1; i < n-1; i++ {
		before, after := rise[i-1], rise[i]
		if before.Sign()*after.Sign() <= 0 {
			slopes[i] = new(big.Rat)
			continue
		}
		w1 := new(big.Rat).Add(product(big.NewRat(2, 1), width[i]), width[i-1])
		w2 := new(big.Rat).Add(width[i], product(big.NewRat(2, 1), width[i-1]))
		slopes[i] = quotient(new(big.Rat).Add(w1, w2), new(big.Rat).Add(quotient(w1, before), quotient(w2, after)))
	}
	return slopes
}

func endSlope(near, next, rise, beyond *big.Rat) *big.Rat {
	both := new(big.Rat).Add(near, next)
	s := quotient(difference(product(new(big.Rat).Add(near, both), rise), product(near, beyond)), both)
	three := product(big.NewRat(3, 1), rise)
	switch {
	case s.Sign()*rise.Sign() <= 0:
		return new(big.Rat)
	case rise.Sign()*beyond.Sign() <= 0 && new(big.Rat).Abs(s).Cmp(new(big.Rat).Abs(three)) > 0:
		return three
	}
	return s
}
