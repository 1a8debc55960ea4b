package mixcore

import "slices"

// Some is a choice of parts with all that bears on them, for EvalSome.
type Some struct {
	parts, channels, demands, conditions []int
}

// Some chooses parts and the channels, demands and conditions behind them.
func (p *Plan) Some(parts []int) Some {
	some := Some{parts: parts}
	for _, i := range parts {
		for k := range p.parts[i].drives {
			some.channels = append(some.channels, p.parts[i].drives[k].Channel)
		}
	}
	some.channels = distinct(some.channels)
	for _, c := range some.channels {
		for k := range p.lines[c] {
			l := &p.lines[c][k]
			some.conditions = append(some.conditions, l.when)
			if l.op == Add || l.op == ScaleBy {
				some.demands = append(some.demands, l.demand)
			}
		}
	}
	some.demands = distinct(some.demands)
	for _, d := range some.demands {
		for k := range p.demands[d].rates {
			some.conditions = append(some.conditions, p.demands[d].rates[k].when)
		}
	}
	some.conditions = slices.DeleteFunc(distinct(some.conditions), func(c int) bool { return c == always })
	return some
}

func distinct(list []int) []int {
	slices.Sort(list)
	return slices.Compact(list)
}

// EvalSome is Eval for some of the parts: it writes their places and those of their
// channels and demands to out, and leaves all others as they are.
func (p *Plan) EvalSome(in *Input, some *Some, out *Output) {
	p.phaseWeights(in.Position, out.phases)
	for _, i := range some.conditions {
		out.weights[i] = p.conditions[i].weight(in.Position, out.phases)
	}
	for _, i := range some.demands {
		out.Demands[i] = Percent(p.demands[i].value(in.Position, out.weights, nil))
	}
	for _, i := range some.channels {
		out.Channels[i] = ChannelOutput{Sum: Percent(sum(p.lines[i], out.Demands, out.weights, nil))}
		p.channel(i, in, nil, out, nil)
	}
	for _, i := range some.parts {
		p.parts[i].finish(out.Channels, nil, &out.Parts[i], nil)
	}
}
