package mixcore

// The chain's end by itself, from a channel's sum on: what provers and fault finders
// call, so that the chain has one implementation.

// ChannelAt is what leaves a channel when its mix comes to sum and everything has come
// to rest. With the signal lost, a channel that holds puts out what it had.
func (p *Plan) ChannelAt(channel int, sum Percent, lost bool) ChannelOutput {
	c := &p.setup.Channels[channel]
	out := ChannelOutput{Sum: sum}
	var limited float64
	limited, out.Limits = c.limited(float64(sum))
	c.put(limited, &out, nil)
	if lost {
		c.fail(&out, nil)
	}
	return out
}

// PartAt is what a part does when its channels put that out; only the channels of its
// drives are looked at.
func (p *Plan) PartAt(part int, channels []ChannelOutput) PartOutput {
	var out PartOutput
	p.parts[part].finish(channels, nil, &out, nil)
	return out
}

// ShapedAt is a demand before its trim, in percent, with its control at a position
// and one of its rates in force.
func (p *Plan) ShapedAt(demand, rate int, position float64) Percent {
	d := &p.demands[demand]
	x := position
	if d.values != nil {
		x = float64(d.values[int(x)])
	}
	_, bent, throw := d.rates[rate].bend(x, d.curve)
	return Percent(bent * throw / 100)
}

// Weigh writes the weight, 0 or 1, of every condition of the plan's rates and mix
// lines with the controls at in and everything at rest. Use out's weights with
// RateCondition and LineCondition.
func (p *Plan) Weigh(in *Input, out *Output) []float64 {
	p.phaseWeights(in.Position, out.phases)
	for i := range p.conditions {
		out.weights[i] = p.conditions[i].weight(in.Position, out.phases)
	}
	return out.weights
}

// RateCondition is the index among Weigh's of a rate's condition, or −1 where it has
// none.
func (p *Plan) RateCondition(demand, rate int) int { return p.demands[demand].rates[rate].when }

// LineCondition is the same of a mix line.
func (p *Plan) LineCondition(channel, line int) int { return p.lines[channel][line].when }
