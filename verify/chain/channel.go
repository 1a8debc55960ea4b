package chain

import (
	"fmt"
	"math"
	"strings"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// channel adds the steps from a channel's sum to its pulse. of is the name of
// the part that the chain is about, or empty.
func (b *builder) channel(i int, of string) {
	c, ct := &b.s.Channels[i], &b.t.Channels[i]
	name := fmt.Sprintf("channel %d", c.Number)
	if c.Name != "" && !strings.EqualFold(c.Name, of) {
		name += " (" + c.Name + ")"
	}
	step := func(text, value string, place diag.Place, bit mixcore.Limit) {
		b.add(result.Step{Stage: "channel", Name: name, Text: text, Value: value, Place: found(place),
			Limit: strings.Join(wording.Limits(ct.Limits&bit), ", ")})
	}
	percent := func(text string, value mixcore.Percent, place diag.Place) {
		step(text, wording.Percent(value), place, 0)
	}
	if ct.Failsafe {
		percent("signal lost: failsafe", c.Failsafe.Output, where.Channel(b.m, i, "failsafe"))
		b.pulse(i, c.Failsafe.Output, step)
		return
	}
	limited := ct.Sum
	if ct.Limits&mixcore.TravelLimit != 0 {
		limited = mixcore.Percent(math.Copysign(float64(c.Limit), float64(ct.Sum)))
		lost := mixcore.Percent(math.Abs(float64(ct.Sum - limited)))
		step("held to ± "+wording.Setpoint(c.Limit)+", "+wording.PercentBeside(lost, 0)+" lost",
			wording.Percent(limited), where.Channel(b.m, i, "limit"), mixcore.TravelLimit)
	}
	if math.Abs(float64(ct.Limited-limited)) > mixcore.Hair {
		percent("slowed, still under way", ct.Limited, where.Channel(b.m, i, "slow"))
	}
	if c.Reversed && ct.Limited != 0 {
		percent("reversed", ct.Reversed, where.Channel(b.m, i, "reversed"))
	}
	if end, side := endPoint(c, ct.Reversed); end != 100 && ct.Reversed != 0 {
		percent(side+" end point "+wording.Setpoint(end), ct.Ended,
			where.Channel(b.m, i, "end_points."+side, "end_points"))
	}
	if c.SubTrim != 0 {
		percent("sub-trim "+wording.Setpoint(c.SubTrim), ct.Trimmed, where.Channel(b.m, i, "sub_trim"))
	}
	if b.t.Input.SignalLost {
		percent("signal lost: holds what it had", ct.Output, where.Channel(b.m, i, "failsafe"))
		b.pulse(i, ct.Output, step)
		return
	}
	b.pulse(i, ct.Trimmed, step)
}

func endPoint(c *mixcore.Channel, v mixcore.Percent) (mixcore.Percent, string) {
	if v >= 0 {
		return c.EndPoints.Plus, "plus"
	}
	return c.EndPoints.Minus, "minus"
}

// pulse adds the step from percent to microseconds.
func (b *builder) pulse(i int, v mixcore.Percent, step func(string, string, diag.Place, mixcore.Limit)) {
	c, ct := &b.s.Channels[i], &b.t.Channels[i]
	if ct.Limits&mixcore.PulseLimit != 0 && !b.t.Input.SignalLost || ct.Wanted != ct.Pulse && ct.Failsafe {
		text := wording.PulseBeside(mixcore.PulseOf(v), ct.Pulse) + " held to " +
			wording.Pulse(c.PulseMin) + "–" + wording.Pulse(c.PulseMax)
		step(text, wording.Pulse(ct.Pulse), where.Channel(b.m, i, "pulse_us"), mixcore.PulseLimit)
		return
	}
	text := "centre"
	if size := wording.Percent(mixcore.Percent(math.Abs(float64(v)))); size != wording.Percent(0) {
		sign := "+"
		if v < 0 {
			sign = "-"
		}
		text = fmt.Sprintf("1500 µs %s %s × 5 µs", sign, strings.TrimSuffix(size, " %"))
	}
	step(text, wording.Pulse(ct.Pulse), where.Channel(b.m, i), 0)
}
