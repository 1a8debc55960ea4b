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
	step := func(text string, v value, place diag.Place) {
		b.add(result.Step{Stage: "channel", Name: name, Text: text, Place: found(place)}, v)
	}
	output := func(text string, v mixcore.Percent, place diag.Place) { step(text, percent(v), place) }
	if ct.Failsafe {
		output("signal lost: failsafe", c.Failsafe.Output, where.Channel(b.m, i, "failsafe"))
		b.pulse(i, name, c.Failsafe.Output)
		return
	}
	if ct.Limits&mixcore.TravelLimit != 0 {
		b.travelLimit(i, name)
	}
	if slowed(c, ct) {
		output("slowed, still under way", ct.Limited, where.Channel(b.m, i, "slow"))
	}
	if c.Reversed && ct.Limited != 0 {
		output("reversed", ct.Reversed, where.Channel(b.m, i, "reversed"))
	}
	if end, side := endPoint(c, ct.Reversed); end != 100 && ct.Reversed != 0 {
		output(side+" end point "+wording.Setpoint(end), ct.Ended,
			where.Channel(b.m, i, "end_points."+side, "end_points"))
	}
	if c.SubTrim != 0 {
		output("sub-trim "+wording.Setpoint(c.SubTrim), ct.Trimmed, where.Channel(b.m, i, "sub_trim"))
	}
	if b.t.Input.SignalLost {
		if ct.Limits&mixcore.PulseLimit != 0 {
			b.pulseLimit(i, name)
		}
		output("signal lost: holds what it had", ct.Output, where.Channel(b.m, i, "failsafe"))
		b.pulseOf(i, name, ct.Output)
		return
	}
	b.pulse(i, name, ct.Trimmed)
}

// travelLimit adds the step from a channel's sum to its travel limit.
func (b *builder) travelLimit(i int, name string) {
	c, ct := &b.s.Channels[i], &b.t.Channels[i]
	limited := limited(c, ct)
	lost := mixcore.Percent(math.Abs(float64(ct.Sum - limited)))
	step := result.Step{Stage: "channel", Name: name,
		Text:  "held to ± " + wording.Setpoint(c.Limit) + ", " + wording.PercentBeside(lost, 0) + " lost",
		Place: found(where.Channel(b.m, i, "limit"))}
	b.bite(&step, mixcore.TravelLimit, b.ofChannel(i), wording.PercentBeside(ct.Sum, limited), wording.Setpoint(limited))
	b.add(step, percent(limited))
}

// ofChannel is the channel of which something was asked.
func (b *builder) ofChannel(i int) string {
	return fmt.Sprintf(" of channel %d", b.s.Channels[i].Number)
}

// limited is a channel's sum within its travel limit.
func limited(c *mixcore.Channel, ct *mixcore.ChannelTrace) mixcore.Percent {
	if ct.Limits&mixcore.TravelLimit == 0 {
		return ct.Sum
	}
	return mixcore.Percent(math.Copysign(float64(c.Limit), float64(ct.Sum)))
}

// slowed reports whether a slow channel has not yet arrived.
func slowed(c *mixcore.Channel, ct *mixcore.ChannelTrace) bool {
	return !ct.Failsafe && math.Abs(float64(ct.Limited-limited(c, ct))) > mixcore.Hair
}

func endPoint(c *mixcore.Channel, v mixcore.Percent) (mixcore.Percent, string) {
	if v >= 0 {
		return c.EndPoints.Plus, "plus"
	}
	return c.EndPoints.Minus, "minus"
}

// pulse adds the step from percent to microseconds.
func (b *builder) pulse(i int, name string, v mixcore.Percent) {
	if b.t.Channels[i].Limits&mixcore.PulseLimit != 0 {
		b.pulseLimit(i, name)
		return
	}
	b.pulseOf(i, name, v)
}

// pulseLimit adds the step from the pulse that was asked for to the pulse limit.
func (b *builder) pulseLimit(i int, name string) {
	c, ct := &b.s.Channels[i], &b.t.Channels[i]
	limited := min(max(ct.Wanted, c.PulseMin), c.PulseMax)
	asked := wording.PulseBeside(ct.Wanted, limited)
	step := result.Step{Stage: "channel", Name: name,
		Text:  asked + " held to " + wording.Pulse(c.PulseMin) + "–" + wording.Pulse(c.PulseMax),
		Place: found(where.Channel(b.m, i, "pulse_us"))}
	b.bite(&step, mixcore.PulseLimit, b.ofChannel(i), asked, wording.Pulse(limited))
	b.add(step, pulse(limited))
}

// pulseOf adds the step from percent to microseconds where no limit bites.
func (b *builder) pulseOf(i int, name string, v mixcore.Percent) {
	text := "centre"
	if size := wording.Percent(mixcore.Percent(math.Abs(float64(v)))); size != wording.Percent(0) {
		sign := "+"
		if v < 0 {
			sign = "-"
		}
		text = fmt.Sprintf("1500 µs %s %s × 5 µs", sign, strings.TrimSuffix(size, " %"))
	}
	b.add(result.Step{Stage: "channel", Name: name, Text: text, Place: found(where.Channel(b.m, i))},
		pulse(b.t.Channels[i].Pulse))
}
