package mixcore

import "math"

// The pulse of a servo channel: 1500 µs at the centre, 5 µs for each percent
// (MAVLink common.xml, RC_CHANNELS: 1000 and 2000 µs at the ends; the centre is
// common practice).
const (
	CentrePulse     Microseconds = 1500
	PulsePerPercent Microseconds = 5
)

// Hair is how far beyond a limit a value must be before the limit counts as
// having bitten, in percent: sums of decimal settings are not exact in binary.
const Hair = 1e-9

// PulseOf is the pulse for an output, before any limit.
func PulseOf(output Percent) Microseconds {
	return CentrePulse + PulsePerPercent*Microseconds(output)
}

// OutputOf is the output for a pulse.
func OutputOf(pulse Microseconds) Percent {
	return Percent((pulse - CentrePulse) / PulsePerPercent)
}

// clamp limits v to low…high and says whether that changed it by more than a
// hair.
func clamp(v, low, high float64) (limited float64, bit bool) {
	switch {
	case v > high:
		return high, v > high+Hair
	case v < low:
		return low, v < low-Hair
	}
	return v, false
}

// limited is the sum held to the travel limit.
func (c *Channel) limited(sum float64) (float64, Limit) {
	v, bit := clamp(sum, -float64(c.Limit), float64(c.Limit))
	if bit {
		return v, TravelLimit
	}
	return v, 0
}

// put carries a limited sum to the pulse: reverse, end points, sub-trim, pulse
// limits, in that order. trace may be nil.
func (c *Channel) put(limited float64, out *ChannelOutput, trace *ChannelTrace) {
	reversed, ended, wanted := c.wanted(limited)
	c.pulse(Percent(wanted), out)
	if trace != nil {
		trace.Limited, trace.Reversed = Percent(limited), Percent(reversed)
		trace.Ended, trace.Trimmed = Percent(ended), Percent(wanted)
		trace.Wanted = PulseOf(Percent(wanted))
	}
}

// wanted is what a limited sum asks of the channel before the pulse limits.
func (c *Channel) wanted(limited float64) (reversed, ended, wanted float64) {
	reversed = limited
	if c.Reversed {
		reversed = -reversed
	}
	end := float64(c.EndPoints.Plus) / 100
	if reversed < 0 {
		end = float64(c.EndPoints.Minus) / 100
	}
	ended = reversed * end
	return reversed, ended, ended + float64(c.SubTrim)
}

// fail puts out what the channel does once the signal is lost, after what it
// put out before has been computed.
func (c *Channel) fail(out *ChannelOutput, trace *ChannelTrace) {
	if c.Failsafe.Hold {
		return
	}
	out.Limits &^= TravelLimit | PulseLimit
	c.pulse(c.Failsafe.Output, out)
	if trace != nil {
		trace.Failsafe = true
		trace.Wanted = PulseOf(c.Failsafe.Output)
	}
}

func (c *Channel) pulse(output Percent, out *ChannelOutput) {
	low, high := OutputOf(c.PulseMin), OutputOf(c.PulseMax)
	v, bit := clamp(float64(output), float64(low), float64(high))
	if bit {
		out.Limits |= PulseLimit
	}
	out.Output = Percent(v)
	out.Pulse = PulseOf(out.Output)
}

// Spare is how much travel is left before a limit of the channel bites, in percent,
// with the mix at sum: of the travel limit and the pulse limits the nearest. It is
// negative where one bites.
func (c *Channel) Spare(sum Percent) Percent {
	limited, _ := clamp(float64(sum), -float64(c.Limit), float64(c.Limit))
	_, _, wanted := c.wanted(limited)
	low, high := OutputOf(c.PulseMin), OutputOf(c.PulseMax)
	return min(c.Limit-Percent(math.Abs(float64(sum))), high-Percent(wanted), Percent(wanted)-low)
}

// Reach is the least and most output that can leave the channel, whatever its
// mix comes to and whether or not the signal is lost.
func (c *Channel) Reach() (low, high Percent) {
	var a, b ChannelOutput
	c.put(float64(c.Limit), &a, nil)
	c.put(-float64(c.Limit), &b, nil)
	low, high = min(a.Output, b.Output), max(a.Output, b.Output)
	if !c.Failsafe.Hold {
		c.pulse(c.Failsafe.Output, &a)
		low, high = min(low, a.Output), max(high, a.Output)
	}
	return low, high
}
