package prove

import (
	"math"

	"example.com/hingeline/mixcore/interval"
)

// gap is the difference between two tails whose sums are known together: a(u) −
// side·b(w′) with u = the sum of a, w = turn·(the sum of b), and u − w within apart.
// turn is chosen so that both sides of the difference rise together.
type gap struct {
	a, b       *tail
	turn, side float64
	u, w       interval.Range
	apart      interval.Range
	same       bool
}

// How finely a gap is looked at.
const (
	gapPieces = 40   // stretches of u at most
	gapClose  = 1e-4 // degrees or percent: nearer is not looked for
)

// turnFor is the turn that makes the two sides of a gap rise together.
func turnFor(a, b *tail, side float64) float64 { return a.rises * b.rises * side }

// second is side·b as a function of w, over a range.
func (g *gap) second(w interval.Range) interval.Range {
	if g.turn < 0 {
		w = w.Neg()
	}
	r := g.b.over(w)
	if g.side < 0 {
		return r.Neg()
	}
	return r
}

func (g *gap) secondSlope(w interval.Range) interval.Range {
	if g.turn < 0 {
		w = w.Neg()
	}
	return g.b.slope(w).Scale(g.turn * g.side)
}

// over encloses the gap. It stops looking once the range is wholly inside want, or
// cannot be told better.
func (g *gap) over(want interval.Range) interval.Range {
	whole := g.piece(g.u)
	if !(whole.Low < want.Low || whole.High > want.High) || whole.Width() <= gapClose || g.u.IsPoint() {
		return whole
	}
	low := g.least(whole, want.Low, 1)
	high := -g.least(whole, -want.High, -1)
	return interval.Range{Low: low, High: high}.Within(whole)
}

// gapKnown is a gap that was looked at, and what it had to be inside.
type gapKnown struct {
	gap
	want interval.Range
}

// mostKnown is how many gaps, or places of one tail, are remembered.
const mostKnown = 1 << 15

// gapOver is over, remembered: cells that differ elsewhere ask the same.
func (p *Prover) gapOver(g gap, want interval.Range) interval.Range {
	k := gapKnown{g, want}
	if r, ok := p.gaps[k]; ok {
		return r
	}
	if p.gaps == nil || len(p.gaps) >= mostKnown {
		p.gaps = map[gapKnown]interval.Range{}
	}
	r := g.over(want)
	p.gaps[k] = r
	return r
}

// least is a lower bound of sign times the gap, near enough or at least need.
func (g *gap) least(whole interval.Range, need, sign float64) float64 {
	type part struct {
		u   interval.Range
		low float64
	}
	signed := func(r interval.Range) float64 {
		if sign < 0 {
			return -r.High
		}
		return r.Low
	}
	parts := []part{{g.u, signed(whole)}}
	for range gapPieces {
		worst := 0
		for i := range parts {
			if parts[i].low < parts[worst].low {
				worst = i
			}
		}
		p := parts[worst]
		if p.low >= need || p.u.Width() < gapClose {
			break
		}
		middle := p.u.Middle()
		parts[worst] = parts[len(parts)-1]
		parts = parts[:len(parts)-1]
		for _, half := range []interval.Range{{Low: p.u.Low, High: middle}, {Low: middle, High: p.u.High}} {
			if low := signed(g.piece(half)); !math.IsInf(low, 1) {
				parts = append(parts, part{half, max(low, p.low)})
			}
		}
		if len(parts) == 0 {
			return p.low
		}
	}
	low := math.Inf(1)
	for _, p := range parts {
		low = min(low, p.low)
	}
	return low
}

// piece encloses the gap over a stretch of u. A stretch that no w goes with gives
// the range from +∞ to −∞: nothing.
func (g *gap) piece(u interval.Range) interval.Range {
	w := u.Sub(g.apart)
	w = interval.Range{Low: max(w.Low, g.w.Low), High: min(w.High, g.w.High)}
	if w.Low > w.High {
		if w.Low-w.High > outputError {
			return interval.Range{Low: math.Inf(1), High: math.Inf(-1)}
		}
		w.Low, w.High = w.High, w.Low
	}
	first := g.a.over(u).Sub(g.second(w))
	if u.IsPoint() && w.IsPoint() {
		return first
	}
	if g.same {
		first = first.Within(g.run(u, w))
		if first.Width() <= gapClose {
			return first
		}
	}
	middle := interval.Point(u.Middle())
	at := g.a.over(middle).Sub(g.second(middle.Sub(g.apart)))
	fine := at.Add(g.a.slope(u).Sub(g.secondSlope(u.Sub(g.apart))).Mul(u.Sub(middle)))
	return first.Within(fine.Widen(2 * (g.a.accuracy + g.b.accuracy)))
}

// run encloses the gap of a tail with itself: what it moves from w to u. That is its
// slope times the way from w to u, less what of the way something holds it.
func (g *gap) run(u, w interval.Range) interval.Range {
	apart := g.apart.Within(u.Sub(w))
	if apart == (interval.Range{}) {
		return apart
	}
	all := u.Hull(w)
	slope, held := g.a.freeSlope(all), g.a.beyond(all)
	way := apart // or shorter by up to held, never to the other side
	switch {
	case apart.Low > 0:
		way.Low = max(apart.Low-held, 0)
	case apart.High < 0:
		way.High = min(apart.High+held, 0)
	}
	return slope.Mul(way).Widen(2 * g.a.accuracy)
}
