package smt

import (
	"fmt"
	"math"
	"math/big"

	"example.com/hingeline/mixcore"
)

// place is where a part stands: degrees of a hinged part or wheel, else percent.
func (v *view) place(part int) number {
	if a, ok := v.places[part]; ok {
		return a
	}
	p := &v.s.setup.Parts[part]
	var at number
	var unit string
	switch p.Motion {
	case mixcore.Power:
		unit = "percent of power"
		at = v.power(p)
	case mixcore.OutIn:
		unit = "percent out"
		out := v.output(p.Drives[0].Channel)
		if p.PlusIn {
			out = negative(out)
		}
		at = scaled(sum(out, whole(100)), big.NewRat(1, 2))
		at = v.s.define(v.name(p.Name+" before its ends"), "", at)
		at = held(at, new(big.Rat), big.NewRat(100, 1))
	default:
		unit = "degrees"
		at = v.angle(part)
	}
	at = v.s.define(v.name(p.Name), fmt.Sprintf("Part %s, in %s.", p.Name, unit), at)
	v.places[part] = at
	return at
}

// power is what a motor's controller makes of its channel's pulse.
func (v *view) power(p *mixcore.Part) number {
	idle, full := ratOf(float64(p.Motor.Idle)), ratOf(float64(p.Motor.Full))
	pulse := sum(scaled(v.output(p.Drives[0].Channel), ratOf(5)), whole(1500))
	at := scaled(sum(pulse, exactly(new(big.Rat).Neg(idle))), quotient(ratOf(100), difference(full, idle)))
	at = v.s.define(v.name(p.Name+" before its ends"), fmt.Sprintf("Motor %s: 0 %% at %v us, 100 %% at %v us.", p.Name, float64(p.Motor.Idle), float64(p.Motor.Full)), at)
	return held(at, new(big.Rat), big.NewRat(100, 1))
}

// angle is the mean of a part's servos, held at its stops.
func (v *view) angle(part int) number {
	p := &v.s.setup.Parts[part]
	var angles []number
	for i := range p.Drives {
		angles = append(angles, v.driven(part, i))
	}
	mean := scaled(sum(angles...), big.NewRat(1, int64(len(angles))))
	mean = v.s.define(v.name(p.Name+" before its stops"), "", mean)
	return held(mean, stop(p.Stops.Minus, -1), stop(p.Stops.Plus, +1))
}

// stop is a stop as an angle; nil where there is none.
func stop(at mixcore.Degrees, side int64) *big.Rat {
	if math.IsInf(float64(at), 1) {
		return nil
	}
	return product(ratOf(float64(at)), big.NewRat(side, 1))
}

// driven is what one servo asks of its part, in degrees.
func (v *view) driven(part, drive int) number {
	d := &v.s.setup.Parts[part].Drives[drive]
	out := v.output(d.Channel)
	name := v.s.setup.Parts[part].Name
	if len(v.s.setup.Parts[part].Drives) > 1 {
		name = fmt.Sprintf("%s, servo %d", name, drive+1)
	}
	if d.Linkage == nil {
		return v.s.define(v.name(name+" by its table"), fmt.Sprintf("%s: straight lines between what was measured.", name), measured(d.Table, out))
	}
	bar := v.s.barOf(d)
	arm := v.s.define(v.name(name+" arm"), fmt.Sprintf("%s: swing of the servo arm, plus aft, %v degrees for 100 %%.", name, float64(d.Servo.Swing)), scaled(out, swingOf(d)))
	arm = v.s.define(v.name(name+" arm held"), "", held(arm, stop(d.Servo.Max, -1), stop(d.Servo.Max, +1)))
	angle := v.s.swung(bar, barUse{arm: arm, part: part, drive: drive}, v.name(name+" horn"))
	if d.Sign < 0 {
		return negative(angle)
	}
	return angle
}

// swingOf is the arm's swing for one percent of output, plus aft.
func swingOf(d *mixcore.Drive) *big.Rat {
	per := hundredth(ratOf(float64(d.Servo.Swing)))
	if !d.Servo.PlusAft {
		per.Neg(per)
	}
	return per
}

// measured is a table of angles by output.
func measured(table []mixcore.Point, x number) number {
	n := len(table)
	last := setting(table[n-1].Y)
	y := last
	for i := n - 2; i >= 0; i-- {
		x0, y0 := ratOf(table[i].X), ratOf(table[i].Y)
		rise := quotient(difference(ratOf(table[i+1].Y), y0), difference(ratOf(table[i+1].X), x0))
		line := sum(exactly(y0), scaled(sum(x, exactly(new(big.Rat).Neg(x0))), rise))
		y = choose(compare("<", x, setting(table[i+1].X)), line, y)
	}
	return choose(compare("<=", x, setting(table[0].X)), setting(table[0].Y), y)
}

// errorOf bounds how far the place of a part that is written can be from the real one:
// both are near the straight pieces of a linkage, on either side.
func (s *script) errorOf(part int) *big.Rat {
	p := &s.setup.Parts[part]
	total := new(big.Rat)
	if !p.Motion.Hinged() {
		return total
	}
	for i := range p.Drives {
		if p.Drives[i].Linkage != nil {
			total.Add(total, product(big.NewRat(2, 1), s.barOf(&p.Drives[i]).off))
		}
	}
	return total.Quo(total, big.NewRat(int64(len(p.Drives)), 1))
}
