package mixcore

import "math"

// demand is a compiled Demand.
type demand struct {
	from      int
	values    []Percent
	rates     []rate
	curve     *curve
	trim      int
	trimRange float64
}

type rate struct {
	when        int // index into Plan.conditions, or always
	plus, minus float64
	expo        float64 // k, −1…+1
}

// always is the index of the condition that a rate or line without one has.
const always = -1

func (p *Plan) compileDemand(d *Demand) demand {
	out := demand{from: d.From, values: d.Values, curve: compileCurve(d.Curve),
		trim: d.Trim, trimRange: float64(d.TrimRange)}
	for i := range d.Rates {
		r := &d.Rates[i]
		out.rates = append(out.rates, rate{when: p.compileWhen(r.When),
			plus: float64(r.Throw.Plus), minus: float64(r.Throw.Minus), expo: float64(r.Expo) / 100})
	}
	return out
}

// value is the demand in percent. trace may be nil.
func (d *demand) value(position, weights []float64, trace *DemandTrace) float64 {
	x := position[d.from]
	if d.values != nil {
		x = float64(d.values[int(x)])
	}
	trim := 0.0
	if d.trim != NoTrim {
		trim = position[d.trim] / 100 * d.trimRange
	}
	if trace != nil {
		*trace = DemandTrace{Position: position[d.from], X: Percent(x), Trim: Percent(trim)}
	}
	return d.shaped(x, weights, trace) + trim
}

// shaped is the demand before its trim: the rates blended by their weights, from
// the first down.
func (d *demand) shaped(x float64, weights []float64, trace *DemandTrace) float64 {
	sum, left, heaviest := 0.0, 1.0, 0.0
	for i := range d.rates {
		r := &d.rates[i]
		w := left
		if r.when != always {
			w = left * weights[r.when]
		}
		if w == 0 {
			continue
		}
		soft, bent, throw := r.bend(x, d.curve)
		thrown := bent * throw / 100
		sum += float64(w * thrown)
		left -= w
		if trace != nil && w > heaviest {
			heaviest = w
			trace.Rate, trace.Blended = i, w < 1
			trace.Expo, trace.Throw = Percent(r.expo*100), Percent(throw)
			trace.AfterExpo, trace.AfterCurve, trace.AfterThrow = Percent(soft), Percent(bent), Percent(thrown)
		}
		if left <= 0 {
			break
		}
	}
	return sum
}

// bend carries a position through expo and curve, and says which throw counts
// there.
func (r *rate) bend(x float64, c *curve) (soft, bent, throw float64) {
	soft = Expo(x/100, r.expo) * 100
	bent = soft
	if c != nil {
		bent = c.at(soft)
	}
	if bent < 0 {
		return soft, bent, r.minus
	}
	return soft, bent, r.plus
}

// Expo bends a stick's travel x, −1…+1, about its centre by k, −1…+1. Plus
// softens the centre with a cubic, (1−k)·x + k·x³; minus sharpens it by the
// cubic turned round, (1−|k|)·x + |k|·sign(x)·(1−(1−|x|)³). It is odd, keeps
// −1, 0 and +1, and never turns back. Common practice, no source.
func Expo(x, k float64) float64 {
	if k == 0 {
		return x
	}
	if k > 0 {
		return float64((1-k)*x) + float64(k*x*x*x)
	}
	rest := 1 - math.Abs(x)
	return float64((1+k)*x) + math.Copysign(-k*(1-float64(rest*rest*rest)), x)
}

// Range is the least and most that the demand can come to, in percent, over
// every position of its control and trim, and every rate.
func (d *Demand) Range(controls []Control) (low, high Percent) {
	x0, x1 := controls[d.From].Range()
	if d.Values != nil {
		x0, x1 = math.Inf(1), math.Inf(-1)
		for _, v := range d.Values {
			x0, x1 = min(x0, float64(v)), max(x1, float64(v))
		}
	}
	if d.Curve != nil { // expo maps the control's travel onto itself
		x0, x1 = math.Inf(1), math.Inf(-1)
		for _, p := range d.Curve.Points {
			x0, x1 = min(x0, p.Y), max(x1, p.Y)
		}
	}
	low, high = Percent(math.Inf(1)), Percent(math.Inf(-1))
	for i := range d.Rates {
		t := &d.Rates[i].Throw
		for _, x := range []float64{x0, x1} {
			throw := t.Plus
			if x < 0 {
				throw = t.Minus
			}
			low, high = min(low, Percent(x)*throw/100), max(high, Percent(x)*throw/100)
		}
	}
	if d.Trim != NoTrim {
		reach := Percent(math.Abs(float64(d.TrimRange)))
		low, high = low-reach, high+reach
	}
	return low, high
}
