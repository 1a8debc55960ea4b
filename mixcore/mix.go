package mixcore

// line is a compiled MixLine.
type line struct {
	op          MixOp
	demand      int
	when        int // index into Plan.conditions, or always
	plus, minus float64
	value       float64
}

func (p *Plan) compileLine(m *MixLine) line {
	return line{op: m.Op, demand: m.Demand, when: p.compileWhen(m.When),
		plus: float64(m.Share.Plus), minus: float64(m.Share.Minus), value: float64(m.Value)}
}

// sum works down the lines of one channel. trace may be nil; otherwise it has
// room for every line.
func sum(lines []line, demands []Percent, weights []float64, trace []LineTrace) float64 {
	total := 0.0
	for i := range lines {
		l := &lines[i]
		w := 1.0
		if l.when != always {
			w = weights[l.when]
		}
		if w == 0 {
			if trace != nil {
				trace[i].Sum = Percent(total)
			}
			continue
		}
		before := total
		switch l.op {
		case Add:
			d := float64(demands[l.demand])
			share := l.plus
			if d < 0 {
				share = l.minus
			}
			total += float64(w * float64(share*d) / 100)
			if trace != nil {
				trace[i].Share, trace[i].Demand = Percent(share), Percent(d)
			}
		case Fixed:
			total += float64(w * l.value)
		case ScaleBy:
			d := float64(demands[l.demand])
			total *= 1 + float64(w*(d/100-1))
			if trace != nil {
				trace[i].Demand = Percent(d)
			}
		case ReplaceWith:
			if w == 1 {
				total = l.value
			} else {
				total += float64(w * (l.value - total))
			}
		}
		if trace != nil {
			trace[i].Weight, trace[i].Change, trace[i].Sum = w, Percent(total-before), Percent(total)
		}
	}
	return total
}
