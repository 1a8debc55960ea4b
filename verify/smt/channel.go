package smt

import (
	"fmt"
	"math/big"

	"example.com/hingeline/mixcore"
)

// pulseEnds are the pulse limits of a channel as outputs, in percent.
func pulseEnds(c *mixcore.Channel) (low, high *big.Rat) {
	as := func(pulse mixcore.Microseconds) *big.Rat {
		return quotient(difference(ratOf(float64(pulse)), ratOf(1500)), ratOf(5))
	}
	return as(c.PulseMin), as(c.PulseMax)
}

// asked is what a channel would put out if its pulse had no limits, in percent.
func (v *view) asked(channel int) number {
	c := &v.s.setup.Channels[channel]
	if v.lost && !c.Failsafe.Hold {
		return setting(c.Failsafe.Output)
	}
	name := fmt.Sprintf("channel %d", c.Number)
	limit := ratOf(float64(c.Limit))
	x := held(v.sum(channel), new(big.Rat).Neg(limit), limit)
	if c.Reversed {
		x = negative(v.s.define(v.name(name+" limited"), "", x))
	}
	x = v.s.define(v.name(name+" limited and turned"), fmt.Sprintf("Channel %d %s: travel limit %v %%.", c.Number, c.Name, float64(c.Limit)), x)
	plus, minus := hundredth(ratOf(float64(c.EndPoints.Plus))), hundredth(ratOf(float64(c.EndPoints.Minus)))
	ended := scaled(x, plus)
	if plus.Cmp(minus) != 0 {
		ended = choose(compare(">=", x, whole(0)), ended, scaled(x, minus))
	}
	return v.s.define(v.name(name+" before the pulse limits"), fmt.Sprintf("End points %v %% plus and %v %% minus, sub-trim %v %%.",
		float64(c.EndPoints.Plus), float64(c.EndPoints.Minus), float64(c.SubTrim)), sum(ended, setting(c.SubTrim)))
}

// output is what leaves a channel, in percent.
func (v *view) output(channel int) number {
	if a, ok := v.outputs[channel]; ok {
		return a
	}
	c := &v.s.setup.Channels[channel]
	low, high := pulseEnds(c)
	out := v.s.define(v.name(fmt.Sprintf("output of channel %d", c.Number)),
		fmt.Sprintf("Channel %d %s: what leaves it, between the pulse limits.", c.Number, c.Name), held(v.asked(channel), low, high))
	v.outputs[channel] = out
	return out
}
