package smt

import (
	"math/big"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

// fails is the negation of what a claim wants. Every relation is as the types of
// package prove have it; clearance is by how much more it must fail.
func (s *script) fails() truth {
	switch w := s.claim.Want.(type) {
	case prove.Place:
		return s.misplaced(w)
	case prove.Output:
		return s.outside(s.now.output(w.Channel), w.Low, w.High)
	case prove.Travel:
		return s.outOfTravel(w.Channel)
	case prove.Differ:
		s.needsOther()
		s.pairs = true
		apart := minus(s.now.place(w.A), scaled(s.other.place(w.B), ratOf(w.Sign)))
		s.off(s.errorOf(w.A), s.errorOf(w.B))
		return s.outside(s.define("difference", "What must stay between two bounds.", apart), w.Low, w.High)
	case prove.Pair:
		return s.unpaired(w)
	case prove.Far:
		return s.tooFar(w)
	case prove.Rising:
		return s.turnsBack(w)
	case prove.Turn:
		return s.turns(w)
	}
	refuse("what %T wants is not known here", s.claim.Want)
	return truth{}
}

func (s *script) needsOther() {
	if s.claim.Other == nil {
		refuse("%T compares two positions, and the claim has one", s.claim.Want)
	}
}

// off adds up what bears on the margin's error.
func (s *script) off(parts ...*big.Rat) {
	for _, by := range parts {
		s.error.Add(s.error, by)
	}
}

// less is a < b by more than the clearance; more is a > b.
func (s *script) less(a number, b *big.Rat) truth {
	return compare("<", a, exactly(difference(b, s.clearance)))
}

func (s *script) more(a number, b *big.Rat) truth {
	return compare(">", a, exactly(new(big.Rat).Add(b, s.clearance)))
}

// outside is true of a number that is not between two bounds, ends included.
func (s *script) outside(a number, low, high float64) truth {
	beyond := certain(false)
	if low := bound(low, -1); low != nil {
		beyond = oneOf(beyond, s.less(a, low))
	}
	if high := bound(high, +1); high != nil {
		beyond = oneOf(beyond, s.more(a, high))
	}
	return beyond
}

func (s *script) misplaced(w prove.Place) truth {
	if !s.byOutput(w.Part) {
		s.off(s.errorOf(w.Part))
		return s.outside(s.now.place(w.Part), w.Low, w.High)
	}
	by, _ := s.clearance.Float64()
	beyond := certain(false)
	if bound(w.Low, -1) != nil {
		beyond = oneOf(beyond, s.now.beyond(w.Part, w.Low-by, false))
	}
	if bound(w.High, +1) != nil {
		beyond = oneOf(beyond, s.now.beyond(w.Part, w.High+by, true))
	}
	return beyond
}

// outOfTravel: a limit bites where a value is beyond it by more than a hair.
func (s *script) outOfTravel(channel int) truth {
	c := &s.setup.Channels[channel]
	hair := ratOf(mixcore.Hair)
	past := func(a number, low, high *big.Rat) truth {
		return oneOf(s.less(a, difference(low, hair)), s.more(a, new(big.Rat).Add(high, hair)))
	}
	low, high := pulseEnds(c)
	bites := past(s.now.asked(channel), low, high)
	if s.now.lost && !c.Failsafe.Hold {
		return bites
	}
	limit := ratOf(float64(c.Limit))
	return oneOf(past(s.now.sum(channel), new(big.Rat).Neg(limit), limit), bites)
}

// moved is how far a part moves from the other position to this.
func (s *script) moved(part int) number {
	by := minus(s.now.place(part), s.other.place(part))
	e := s.errorOf(part)
	s.off(e, e)
	return s.define(s.setup.Parts[part].Name+" moved by", "How far "+s.setup.Parts[part].Name+" moves.", by)
}

// idle is true where a part moves by less than its still.
func (s *script) idle(moved number, still float64) truth {
	least := exactly(new(big.Rat).Add(ratOf(still), s.clearance))
	return every(compare("<", moved, least), compare(">", moved, negative(least)))
}

func (s *script) unpaired(w prove.Pair) truth {
	s.needsOther()
	s.pairs = true
	a, b := s.moved(w.A), s.moved(w.B)
	if w.Opposite {
		b = negative(b)
	}
	quiet := every(s.idle(a, w.StillA), s.idle(b, w.StillB))
	by := s.clearance
	back := new(big.Rat).Neg(by)
	alike := oneOf(
		every(compare(">", a, exactly(back)), compare(">", b, exactly(back))),
		every(compare("<", a, exactly(by)), compare("<", b, exactly(by))))
	return every(not(quiet), not(alike))
}

func (s *script) tooFar(w prove.Far) truth {
	s.needsOther()
	s.pairs = true
	a, b := s.moved(w.A), s.moved(w.B)
	further := s.define("further", "How much further the one moves than the other.", minus(size(a), size(b)))
	failed := s.outside(further, w.Low, w.High)
	if !w.Idle {
		return failed
	}
	return every(failed, not(every(s.idle(a, w.StillA), s.idle(b, w.StillB))))
}

// turnsBack compares two places of one control, the other being the lower.
func (s *script) turnsBack(w prove.Rising) truth {
	forward := s.ascends(w.Control)
	moved := scaled(s.moved(w.Part), ratOf(w.Sign))
	return every(forward, s.less(moved, new(big.Rat).Neg(ratOf(prove.Rounding))))
}

// ascends is true where a control stands further in its plus direction than in the
// other position.
func (s *script) ascends(control int) truth {
	if s.setup.Controls[control].Kind != mixcore.SwitchControl {
		return compare("<=", s.other.axis(control), s.now.axis(control))
	}
	now, other := s.now.positions(control), s.other.positions(control)
	var cases []truth
	for i := range now {
		for j := range i {
			cases = append(cases, every(now[i], other[j]))
		}
	}
	return oneOf(cases...)
}
