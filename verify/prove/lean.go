package prove

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore/interval"
)

// lean makes a box smaller where the margin of a difference is smallest at one end of a
// variable, wherever the others stand: where only one end of the claim's range counts in
// the box, and the difference never turns back as the variable moves. Nothing in the box
// has a smaller margin than what is left of it, but for the Plan's rounding, which the
// box keeps. It says whether anything was taken away.
func (s *search) lean(box *box2) bool {
	w, ok := s.b.c.Want.(Differ)
	p := s.b.p
	if !ok || len(p.setup.Parts[w.A].Drives) != 1 || len(p.setup.Parts[w.B].Drives) != 1 {
		return false
	}
	toHigh := w.presses(box.differ(w.A, false, w.B, true, w.Sign, interval.Point(0)))
	if toHigh == 0 {
		return false
	}
	a, b := s.b.tail(w.A, 0, s.b.now.lost), s.b.tail(w.B, 0, s.b.other.lost)
	turn := turnFor(a, b, w.Sign)
	first, second := box.form(a.channel, false), box.form(b.channel, true)
	apart := box.ready(formKey{channel: a.channel, turn: int64(turn), second: b.channel, beside: true})
	byFirst, bySecond := a.slope(first.over(p, box.spans, box.fine)), b.slope(second.over(p, box.spans, box.fine)).Scale(w.Sign)
	rounding := 2 * (a.accuracy + b.accuracy + first.rounding(byFirst) + second.rounding(bySecond))
	if !(rounding < mostLean) {
		return false
	}
	leaned := false
	for v, span := range box.spans {
		if span.IsPoint() {
			continue
		}
		mine := second.slopeBy(p, box.spans, v)
		by := byFirst.Mul(first.slopeBy(p, box.spans, v)).Sub(bySecond.Mul(mine))
		// The same with the difference of the two sums, in which what both follow alike falls out.
		shared := byFirst.Scale(turn).Sub(bySecond)
		by = by.Within(byFirst.Mul(apart.slopeBy(p, box.spans, v)).Add(shared.Mul(mine)))
		var end interval.Range
		switch by = by.Scale(toHigh); {
		case by == interval.Point(0): // it does not matter: let it stay where it rests
			continue
		case by.Low >= 0:
			end = interval.Point(span.High)
		case by.High <= 0:
			end = interval.Point(span.Low)
		default:
			continue
		}
		if !leaned {
			box.spans, leaned = slices.Clone(box.spans), true
		}
		box.spans[v] = end
	}
	if leaned {
		box.rounding = max(box.rounding, rounding)
	}
	return leaned
}

// How the Plan's rounding bears on a box that was made smaller: at an end where something
// holds a part it is exact, on the way there it is not.
const (
	// demandError is more than what a demand is rounded by, in percent: by expo and throw
	// less than 1e-12, by a smooth curve 1e-11.
	demandError = 2e-11
	// mostLean is the most rounding that a box is made smaller with, in degrees or percent:
	// so little that a claim at its bound is still seen to be TooClose.
	mostLean = TooClose / 2
)

// rounding bounds what the Plan's rounding up to a sum does to a tail with some slope.
func (r *ready) rounding(slope interval.Range) float64 {
	sum := interval.Point(r.slop)
	for _, g := range r.form.groups {
		shares := math.Abs(float64(g.constant)) // thousandths of a percent, as of the terms
		for _, t := range g.terms {
			shares += math.Abs(float64(t.plus)) + math.Abs(float64(t.minus))
		}
		sum = sum.Add(interval.Point(shares / (100 * unit)).Scale(demandError * float64(1+len(g.factors))))
	}
	return sum.Mul(slope.Abs()).High
}

// presses says which end of the claim's range is nearer wherever a difference is in a
// range: +1 for the high end, −1 for the low one, 0 where it may be either.
func (w Differ) presses(r interval.Range) float64 {
	switch {
	case r.Low-w.Low >= w.High-r.Low:
		return 1
	case r.High-w.Low <= w.High-r.High:
		return -1
	}
	return 0
}
