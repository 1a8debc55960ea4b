package prove

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/interval"
)

// Rounding is what arithmetic in binary may add to or take from a value that stands
// exactly at a bound, in degrees or percent.
const Rounding = 1e-6

// within is the margin of a value between two others.
func within(x, low, high float64) float64 { return min(x-low, high-x) }

func withinRange(x interval.Range, low, high float64) rangeOf {
	return x.Sub(interval.Point(low)).Min(interval.Point(high).Sub(x))
}

func (w Place) uses(p *Prover) uses { return usesOf(p, nil, []int{w.Part}) }

func (w Place) margin(p *Prover, now, _ *mixcore.Output) float64 {
	return within(now.Parts[w.Part].Place(), w.Low, w.High)
}

func (w Place) bound(b *box) rangeOf { return withinRange(b.where(w.Part, false), w.Low, w.High) }

func (w Output) uses(p *Prover) uses { return usesOf(p, []int{w.Channel}, nil) }

func (w Output) margin(_ *Prover, now, _ *mixcore.Output) float64 {
	return within(float64(now.Channels[w.Channel].Output), w.Low, w.High)
}

func (w Output) bound(b *box) rangeOf {
	b.try(formKey{channel: w.Channel})
	return withinRange(b.b.p.output(w.Channel, b.sum(w.Channel, false), b.b.now.lost), w.Low, w.High)
}

func (w Travel) uses(p *Prover) uses { return usesOf(p, []int{w.Channel}, nil) }

func (w Travel) margin(p *Prover, now, _ *mixcore.Output) float64 {
	out := &now.Channels[w.Channel]
	spare := float64(p.setup.Channels[w.Channel].Spare(out.Sum))
	if out.Limits&(mixcore.TravelLimit|mixcore.PulseLimit) == 0 {
		return max(spare, 0)
	}
	return min(spare, -mixcore.Hair)
}

// bound: the spare travel is the least of three that rise or fall with the sum, so that
// it is least at an end of the sum's range. A limit bites a hair late.
func (w Travel) bound(b *box) rangeOf {
	c := &b.b.p.setup.Channels[w.Channel]
	b.try(formKey{channel: w.Channel})
	if b.b.now.lost && !c.Failsafe.Hold { // the same whatever the mix comes to
		if b.b.p.plan.ChannelAt(w.Channel, 0, true).Limits&mixcore.PulseLimit != 0 {
			return interval.Range{Low: math.Inf(-1), High: -mixcore.Hair}
		}
		return interval.Range{Low: 0, High: math.Inf(1)}
	}
	sum := b.sum(w.Channel, false)
	spare := min(float64(c.Spare(mixcore.Percent(sum.Low))), float64(c.Spare(mixcore.Percent(sum.High))))
	if !sum.IsPoint() {
		spare -= outputError
	}
	if spare >= -mixcore.Hair+outputError {
		spare = max(spare, 0)
	}
	return interval.Range{Low: spare, High: math.Inf(1)}
}

func (w Differ) uses(p *Prover) uses { return usesOf(p, nil, []int{w.A, w.B}) }

func (w Differ) margin(p *Prover, now, other *mixcore.Output) float64 {
	return within(now.Parts[w.A].Place()-w.Sign*other.Parts[w.B].Place(), w.Low, w.High)
}

func (w Differ) bound(b *box) rangeOf {
	d := b.differ(w.A, false, w.B, true, w.Sign, b.atLeast(w.Low, w.High))
	return withinRange(d, w.Low, w.High)
}

// moves encloses how far a part moves from Other to Now.
func (b *box) moves(part int) interval.Range {
	return b.differ(part, false, part, true, 1, interval.Point(0))
}

func (w Pair) uses(p *Prover) uses { return usesOf(p, nil, []int{w.A, w.B}) }

func (w Pair) margin(p *Prover, now, other *mixcore.Output) float64 {
	a := now.Parts[w.A].Place() - other.Parts[w.A].Place()
	b := now.Parts[w.B].Place() - other.Parts[w.B].Place()
	if w.Opposite {
		b = -b
	}
	idle := min(w.StillA-math.Abs(a), w.StillB-math.Abs(b))
	alike := max(min(a, b), min(-a, -b))
	if idle <= 0 && alike <= 0 { // a movement of exactly still is one, and no movement is no way
		return min(max(idle, alike), -math.SmallestNonzeroFloat64)
	}
	return max(idle, alike)
}

func (w Pair) bound(b *box) rangeOf {
	first, second := b.moves(w.A), b.moves(w.B)
	if w.Opposite {
		second = second.Neg()
	}
	idle := idle(first, w.StillA).Min(idle(second, w.StillB))
	alike := first.Min(second).Max(first.Neg().Min(second.Neg()))
	return strictly(idle.Max(alike))
}

func idle(move interval.Range, still float64) interval.Range {
	return interval.Point(still).Sub(move.Abs())
}

// strictly makes a margin of 0 too little.
func strictly(r rangeOf) rangeOf {
	if r.Low == 0 {
		r.Low = -math.SmallestNonzeroFloat64
	}
	return r
}

func (w Far) uses(p *Prover) uses { return usesOf(p, nil, []int{w.A, w.B}) }

func (w Far) margin(p *Prover, now, other *mixcore.Output) float64 {
	a := math.Abs(now.Parts[w.A].Place() - other.Parts[w.A].Place())
	b := math.Abs(now.Parts[w.B].Place() - other.Parts[w.B].Place())
	m := within(a-b, w.Low, w.High)
	if idle := min(w.StillA-a, w.StillB-b); w.Idle && idle > 0 {
		return max(m, idle)
	}
	return m
}

func (w Far) bound(b *box) rangeOf {
	first, second := b.moves(w.A), b.moves(w.B)
	m := withinRange(b.further(w.A, w.B, first, second), w.Low, w.High)
	if !w.Idle {
		return m
	}
	quiet := idle(first, w.StillA).Min(idle(second, w.StillB))
	if quiet.Low > 0 {
		return m.Max(quiet)
	}
	return interval.Range{Low: m.Low, High: max(m.High, quiet.High)}
}

// further encloses |movement of a| − |movement of c|. Where both directions are known
// it is the difference of two differences between the parts, each at one pose, in
// which mirrored parts cancel.
func (b *box) further(a, c int, first, second interval.Range) interval.Range {
	whole := first.Abs().Sub(second.Abs())
	side := direction(first) * direction(second)
	if side == 0 {
		return whole
	}
	any := interval.Point(0)
	now := b.differ(a, false, c, false, side, any)
	other := b.differ(a, true, c, true, side, any)
	fine := now.Sub(other)
	if direction(first) < 0 {
		fine = fine.Neg()
	}
	return whole.Within(fine.Widen(outputError)) // the Plan takes the differences in another order
}

// direction is +1 or −1 where a range keeps its sign, else 0.
func direction(r interval.Range) float64 {
	switch {
	case r.Low >= 0:
		return 1
	case r.High <= 0:
		return -1
	}
	return 0
}
