package laws

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/wording"
)

var rateOrder = law{Info{"rate-order", "Low rates",
	"Lower rates really give less: at no place of the stick does a surface move further than on the next higher rate, by more than counts as still, and at full stick it moves clearly less. Asked of switches that are there for the rates."},
	func(mk *maker) {
		for i := range mk.s.Controls {
			if mk.ratesSwitch(i) {
				mk.inOrder(i)
			}
		}
		if len(mk.claims) == 0 {
			mk.none = "no switch that is there for the rates gives a demand a lower one"
		}
	}}

// ratesSwitch is true for a switch that is there for the rates: by its name, or
// because nothing but rates names it.
func (mk *maker) ratesSwitch(control int) bool {
	if mk.s.Controls[control].Kind != mixcore.SwitchControl {
		return false
	}
	return mk.called(control, rateWords) || mk.onlyRatesName(control)
}

// onlyRatesName says whether a control does nothing but choose rates.
func (mk *maker) onlyRatesName(control int) bool {
	chooses := false
	for d := range mk.s.Demands {
		if mk.s.Demands[d].From == control {
			return false
		}
		chooses = chooses || mk.rateDependsOn(d, control)
	}
	for i := range mk.s.Channels {
		for k := range mk.s.Channels[i].Mix {
			if mk.names(mk.s.Channels[i].Mix[k].When, control) {
				return false
			}
		}
	}
	for i := range mk.s.Parts {
		if motor := mk.s.Parts[i].Motor; motor != nil && mk.names(motor.StoppedWhen, control) {
			return false
		}
	}
	return chooses
}

func (mk *maker) rateDependsOn(demand, control int) bool {
	return slices.ContainsFunc(mk.s.Demands[demand].Rates, func(r mixcore.Rate) bool { return mk.names(r.When, control) })
}

// inOrder claims for each stick, and each two positions of a switch that are next to
// each other in the order of their throws, that the lower one gives less.
func (mk *maker) inOrder(control int) {
	for _, stick := range mk.sticks() {
		for d := range mk.s.Demands {
			if mk.s.Demands[d].From != stick || !mk.added(d) || !mk.rateDependsOn(d, control) {
				continue
			}
			order := mk.byThrow(d, control)
			for i := 1; i < len(order); i++ {
				if mk.lowerThrow(d, order[i-1].rate, order[i].rate) {
					mk.givesLess(d, control, order[i-1], order[i])
				}
			}
		}
	}
}

// at is a position of a switch, and the rate of a demand that it puts in force with
// everything else at rest.
type at struct{ control, position, rate int }

// byThrow are the positions of a switch, those with the smaller throw first.
func (mk *maker) byThrow(demand, control int) []at {
	var order []at
	in := mk.rest.Clone()
	for p := range mk.s.Controls[control].Positions {
		in.Position[control] = float64(p)
		order = append(order, at{control, p, mk.rateAt(demand, &in)})
	}
	size := func(a at) float64 {
		t := mk.s.Demands[demand].Rates[a.rate].Throw
		return float64(t.Plus + t.Minus)
	}
	slices.SortStableFunc(order, func(a, b at) int {
		switch {
		case size(a) < size(b):
			return -1
		case size(a) > size(b):
			return 1
		}
		return 0
	})
	return order
}

// rateAt is the rate of a demand that is in force once everything has come to rest.
func (mk *maker) rateAt(demand int, in *mixcore.Input) int {
	rates := mk.s.Demands[demand].Rates
	for k := range rates {
		if rates[k].When == nil || mk.m.Plan.Holds(rates[k].When, in) {
			return k
		}
	}
	return len(rates) - 1
}

// lowerThrow says whether one rate has less throw than another, and not more on any
// side.
func (mk *maker) lowerThrow(demand, low, high int) bool {
	a, b := mk.s.Demands[demand].Rates[low].Throw, mk.s.Demands[demand].Rates[high].Throw
	return a != b && a.Plus <= b.Plus && a.Minus <= b.Minus
}

// givesLess claims that no part that the demand reaches goes further with the switch
// low than high, and clearly less at full stick.
func (mk *maker) givesLess(demand, control int, low, high at) {
	stick, c := mk.s.Demands[demand].From, &mk.s.Controls[control]
	cl := claim{
		sentence: "with the " + c.Name + " " + c.Positions[low.position] + " the " + mk.s.Controls[stick].Name + " gives less " +
			mk.s.Demands[demand].Name + " than with it " + c.Positions[high.position],
		seen: func(v *view) sight { return mk.goesFurther(v) },
	}
	var full []bool // by need: it is that of full stick
	cl.spare = func(need int, margin float64) (spare, bool) {
		p := &mk.s.Parts[cl.needs[need].Want.(prove.Differ).A]
		left := margin + clearly
		return spare{left, unitOf(p), amount(p, left) + " less at full stick"}, full[need]
	}
	when := mk.bothInForce(demand, control, low, high)
	for part := range mk.s.Parts {
		if !mk.reaches(demand, part) {
			continue
		}
		if mk.movesAtRest(part, low, high) {
			mk.remark("Nothing is asked of the " + mk.s.Parts[part].Name + ", which the " + c.Name + " moves with the sticks at rest.")
			continue
		}
		for side, end := range ends {
			way, always := mk.goesWay(part, stick, side, high)
			if way == 0 {
				continue
			}
			cl.needs = append(cl.needs, mk.noFurther(part, stick, control, low, high, when, prove.Span{Low: min(end, 0), High: max(end, 0)}, way, mk.still(part)))
			full = append(full, false)
			if always {
				cl.needs = append(cl.needs, mk.noFurther(part, stick, control, low, high, when, prove.At(end), way, -clearly))
				full = append(full, true)
			}
		}
	}
	if cl.needs != nil {
		mk.add(cl)
	}
}

// bothInForce is the condition in which the one rate is in force with the switch at
// its one position, and the other would be with the switch at the other; nil where
// nothing but the switch decides.
func (mk *maker) bothInForce(demand, control int, low, high at) *mixcore.Condition {
	r := mk.probe.Nothing()
	for i := range mk.s.Demands[demand].Rates {
		mk.probe.AddCondition(r, mk.s.Demands[demand].Rates[i].When)
	}
	if slices.Equal(r.Controls(), []int{control}) {
		return nil
	}
	var both []mixcore.Condition
	if here := mk.inForce(demand, low.rate); here != nil {
		both = append(both, *here)
	}
	if there := mk.inForce(demand, high.rate); there != nil {
		both = append(both, mk.elsewhere(there, control, low.position, high.position))
	}
	return allOf(both)
}

// reaches says whether a demand is added to a channel of a part.
func (mk *maker) reaches(demand, part int) bool {
	return slices.ContainsFunc(mk.s.Parts[part].Drives, func(d mixcore.Drive) bool { return adds(&mk.s.Channels[d.Channel], demand) })
}

// goesWay tries which way a part goes as the stick goes to an end with a switch at a
// position: +1 as mixcore counts, −1, or 0 where it does not move; and whether it does
// so at every switch and lever position.
func (mk *maker) goesWay(part, stick, side int, high at) (way float64, always bool) {
	still := mk.still(part)
	switch least, most := mk.moved(part, stick, side, &high); {
	case most >= still && least > -still:
		return 1, least >= still
	case least <= -still && most < still:
		return -1, most <= -still
	}
	return 0, false
}

// movesAtRest tries whether a part stands elsewhere with a switch at another position
// and everything else at rest: then where it stands says nothing about how far it moves.
func (mk *maker) movesAtRest(part int, low, high at) bool {
	stands := func(a at) float64 {
		in := mk.rest.Clone()
		in.Position[a.control] = float64(a.position)
		mk.m.Plan.Eval(&in, mk.out[0])
		return mk.out[0].Parts[part].Place()
	}
	return math.Abs(stands(high)-stands(low)) >= mk.still(part)
}

// noFurther is that a part stands no further out with the switch low than high, but
// for an allowance.
func (mk *maker) noFurther(part, stick, control int, low, high at, when *mixcore.Condition, over prove.Span, way, allow float64) prove.Claim {
	now, other := mk.handsOff(), prove.Beside(mk.s)
	now[stick], now[control] = over, prove.Span{Places: []int{low.position}}
	other[control] = prove.Stands(&mk.s.Controls[control], float64(high.position))
	want := prove.Change(part, -beyond, allow)
	if way < 0 {
		want = prove.Change(part, -allow, beyond)
	}
	return prove.Claim{Now: now, Other: other, When: when, Want: want}
}

// goesFurther says where a part stands on the low and on the high rate.
func (mk *maker) goesFurther(v *view) sight {
	part := v.need.Want.(prove.Differ).A
	p := &mk.s.Parts[part]
	return sight{
		got: "the " + p.Name + ": " + wording.Position(p, v.now.Output.Parts[part]) + " on the low rate, and " +
			wording.Position(p, v.before.Output.Parts[part]) + " on the high one",
		shows: []shown{showPart(part, chain.Amount)},
	}
}
