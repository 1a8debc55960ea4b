package chain

import (
	"math"
	"slices"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// demandsOf adds the controls and demands that feed some channels, each once,
// in the order of the channels' mix lines.
func (b *builder) demandsOf(channels []int) {
	var demands, controls []int
	for _, c := range channels {
		if b.t.Channels[c].Failsafe {
			continue
		}
		first := firstLine(b.s, b.t, c)
		for i := first; i < len(b.s.Channels[c].Mix); i++ {
			line := &b.s.Channels[c].Mix[i]
			feeds := line.Op == mixcore.Add || line.Op == mixcore.ScaleBy
			if feeds && b.t.Channels[c].Lines[i].Weight != 0 &&
				!slices.Contains(demands, line.Demand) && !b.idle(line.Demand) {
				demands = append(demands, line.Demand)
			}
		}
	}
	for _, d := range demands {
		if from := b.s.Demands[d].From; !slices.Contains(controls, from) {
			controls = append(controls, from)
			b.control(from)
		}
		b.demand(d)
	}
}

// idle reports whether a demand is 0 because nobody touches its control.
func (b *builder) idle(demand int) bool {
	d := &b.s.Demands[demand]
	return b.t.Demands[demand].Value == 0 && b.t.Input.Position[d.From] == b.s.Controls[d.From].Rest()
}

func (b *builder) control(i int) {
	c := &b.s.Controls[i]
	at := b.t.Input.Position[i]
	stand := value{words: wording.Setpoint(mixcore.Percent(at)), exact: percent(mixcore.Percent(at)).exact}
	if c.Kind == mixcore.SwitchControl {
		stand = value{}
	}
	text := wording.Stand(c, at)
	if text == stand.words {
		text = ""
	}
	b.add(result.Step{Stage: "control", Name: c.Name, Text: text, Place: found(where.Control(b.m, i))}, stand)
}

func (b *builder) demand(i int) {
	d, dt := &b.s.Demands[i], &b.t.Demands[i]
	before := len(b.steps)
	step := func(text string, v mixcore.Percent, place diag.Place) {
		b.add(result.Step{Stage: "demand", Name: d.Name, Text: text, Place: found(place)}, percent(v))
	}
	if d.Values != nil {
		position := b.s.Controls[d.From].Positions[int(dt.Position)]
		step("value of "+position, dt.X, where.Demand(b.m, i, "values."+position, "values"))
	}
	if math.Abs(float64(dt.AfterExpo-dt.X)) > mixcore.Hair {
		step("expo "+wording.Setpoint(dt.Expo), dt.AfterExpo, where.Rate(b.m, i, dt.Rate, "expo"))
	}
	if d.Curve != nil {
		step("curve", dt.AfterCurve, where.Demand(b.m, i, "curve"))
	}
	if dt.Throw != 100 || (len(d.Rates) > 1 && !dt.Blended) {
		step("throw "+wording.Setpoint(dt.Throw)+b.rateWords(d, dt), dt.AfterThrow, where.Rate(b.m, i, dt.Rate, "throw"))
	}
	untrimmed := dt.Value - dt.Trim
	if dt.Blended {
		step("rates are fading over", untrimmed, where.Demand(b.m, i, "rates"))
	}
	if dt.Trim != 0 {
		trim := &b.s.Controls[d.Trim]
		step(trim.Name+" "+wording.Stand(trim, b.t.Input.Position[d.Trim]), dt.Value, where.Control(b.m, d.Trim))
	}
	if len(b.steps) == before {
		step("as it stands", dt.Value, where.Demand(b.m, i))
	}
}

// rateWords says why this rate is in force, where there is more than one.
func (b *builder) rateWords(d *mixcore.Demand, dt *mixcore.DemandTrace) string {
	switch when := d.Rates[dt.Rate].When; {
	case len(d.Rates) == 1:
		return ""
	case when == nil:
		return " (no other rate holds)"
	default:
		return " (" + wording.Condition(b.s, when) + ")"
	}
}
