package smt

import (
	"fmt"
	"math/big"

	"example.com/hingeline/mixcore"
)

// demand is what the pilot asks for, in percent: the control, shaped, and its trim.
func (v *view) demand(i int) number {
	if a, ok := v.demands[i]; ok {
		return a
	}
	d := &v.s.setup.Demands[i]
	var rates []number
	var when []truth
	for r := range d.Rates {
		holds := v.holds(d.Rates[r].When)
		if holds.known && !holds.holds {
			continue
		}
		rates, when = append(rates, v.shaped(d, r)), append(when, holds)
		if holds.known {
			break
		}
	}
	last := len(rates) - 1
	value := rates[last]
	for r := last - 1; r >= 0; r-- {
		value = choose(when[r], rates[r], value)
	}
	comment := "Demand " + d.Name + ", in percent."
	if d.Trim != mixcore.NoTrim {
		value = sum(value, scaled(v.axis(d.Trim), hundredth(ratOf(float64(d.TrimRange)))))
		comment = "Demand " + d.Name + " with its trim, in percent."
	}
	value = v.s.define(v.name("demand "+d.Name), comment, value)
	v.demands[i] = value
	return value
}

// shaped is a demand with one of its rates in force, before its trim.
func (v *view) shaped(d *mixcore.Demand, rate int) number {
	name := v.name("demand " + d.Name)
	if len(d.Rates) > 1 {
		name = v.name(fmt.Sprintf("demand %s, rate %d", d.Name, rate+1))
	}
	control := &v.s.setup.Controls[d.From]
	if control.Kind != mixcore.SwitchControl {
		low, high := control.Range()
		return v.s.shape(name, d, &d.Rates[rate], v.axis(d.From), low, high)
	}
	positions := v.positions(d.From)
	var value number
	for i := len(positions) - 1; i >= 0; i-- {
		if positions[i].known && !positions[i].holds {
			continue
		}
		x := whole(int64(i))
		if d.Values != nil {
			x = setting(d.Values[i])
		}
		at := v.s.shape(name, d, &d.Rates[rate], x, 0, 0)
		if value.text == "" {
			value = at
		} else {
			value = choose(positions[i], at, value)
		}
	}
	return v.s.define(name, "", value)
}

// shape carries a position, somewhere from low to high, through expo, curve and throw.
func (s *script) shape(name string, d *mixcore.Demand, r *mixcore.Rate, x number, low, high float64) number {
	throws := fmt.Sprintf("throw %v %% plus, %v %% minus", float64(r.Throw.Plus), float64(r.Throw.Minus))
	if r.Throw.Plus == r.Throw.Minus {
		throws = fmt.Sprintf("throw %v %%", float64(r.Throw.Plus))
	}
	y := s.define(name+" after expo", fmt.Sprintf("Expo %v %%.", float64(r.Expo)), s.expo(x, ratOf(float64(r.Expo))))
	if d.Curve != nil {
		y = s.define(name+" after its curve", "Curve.", s.curve(d.Curve, y, low, high))
	}
	plus, minus := scaled(y, hundredth(ratOf(float64(r.Throw.Plus)))), scaled(y, hundredth(ratOf(float64(r.Throw.Minus))))
	if r.Throw == mixcore.Both(100) {
		return y
	}
	return s.define(name, "With "+throws+".", choose(compare(">=", y, whole(0)), plus, minus))
}

// expo is y of a position p, both in percent, with k the expo as a part of 1. Written
// out from x = p/100, for k > 0: y = (1−k)·p + k·p³/10000; for k < 0 and p ≥ 0:
// y = (1+2|k|)·p − 3|k|·p²/100 + |k|·p³/10000, and for p < 0 the same turned about.
func (s *script) expo(p number, percent *big.Rat) number {
	k := hundredth(percent)
	one := big.NewRat(1, 1)
	square := func(a number) number { return s.times(a, p) }
	switch k.Sign() {
	case 0:
		return p
	case 1:
		cube := s.times(p, square(p))
		return sum(scaled(p, difference(one, k)), scaled(cube, product(k, big.NewRat(1, 10000))))
	}
	k.Neg(k)
	even := func(sign int64) number {
		return sum(
			scaled(p, new(big.Rat).Add(one, product(k, big.NewRat(2, 1)))),
			scaled(square(p), product(k, big.NewRat(-3*sign, 100))),
			scaled(s.times(p, square(p)), product(k, big.NewRat(1, 10000))))
	}
	return choose(compare(">=", p, whole(0)), even(1), even(-1))
}
