package findings

import (
	"fmt"
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/wording"
)

// channelName says a channel: "channel 3 (starboard flap)".
func channelName(c *mixcore.Channel) string {
	if c.Name == "" {
		return fmt.Sprintf("channel %d", c.Number)
	}
	return fmt.Sprintf("channel %d (%s)", c.Number, c.Name)
}

func (f *finder) channelFindings() {
	for i := range f.channels {
		r := &f.channels[i]
		if r.travel.seen {
			f.travelRunsOut(i, r)
		}
		if r.pulse.seen {
			f.pulseRunsOut(i, r)
		}
	}
}

// travelRunsOut is a sum of shares beyond the travel limit.
func (f *finder) travelRunsOut(channel int, r *channelRecord) {
	c := &f.s.Channels[channel]
	bites := func() bool { return f.out.Channels[channel].Limits&mixcore.TravelLimit != 0 }
	position := f.simplest(r.travel.position, bites)
	sum := f.out.Channels[channel].Sum
	lost := mixcore.Percent(math.Abs(float64(sum))) - c.Limit
	message := fmt.Sprintf("%s runs out of travel %s: its mix comes to %s, the travel limit is %s, so %s is lost%s",
		channelName(c), f.with(position), wording.PercentBeside(sum, mixcore.Percent(math.Copysign(float64(c.Limit), float64(sum)))),
		wording.Setpoint(c.Limit), wording.PercentBeside(lost, 0), f.idleEnd(position, bites))
	if most := mixcore.Percent(r.travelMost.amount); most > lost+worthSaying {
		worst := f.simplest(r.travelMost.position, func() bool {
			over := math.Abs(float64(f.out.Channels[channel].Sum)) - float64(c.Limit)
			return over > r.travelMost.amount-clearly
		})
		message += fmt.Sprintf("; at worst %s is lost, %s", wording.Percent(most), f.with(worst))
	}
	f.warn(where.Channel(f.m, channel, "limit"), codeTravel, message,
		"make a share or throw smaller until they add up to the limit, or raise the limit if the servo and the linkage can follow")
}

// worthSaying is how much, in percent, must be lost more at worst for the worst
// pose to be said beside the simplest, and how much of a stick must be idle for
// that to be said.
const worthSaying = 1

// pulseRunsOut is a channel whose end points or sub-trim carry it beyond its
// pulse limits.
func (f *finder) pulseRunsOut(channel int, r *channelRecord) {
	c := &f.s.Channels[channel]
	bites := func() bool { return f.out.Channels[channel].Limits&mixcore.PulseLimit != 0 }
	position := f.simplest(r.pulse.position, bites)
	t := f.plan.Trace(&mixcore.Input{Position: position}).Channels[channel]
	lost := mixcore.Percent(math.Abs(float64(t.Trimmed - t.Output)))
	f.warn(where.Channel(f.m, channel, "pulse_us", "sub_trim", "end_points"), codeTravel,
		fmt.Sprintf("%s runs out of travel %s: its pulse would be %s and is held to %s, so %s is lost%s",
			channelName(c), f.with(position), wording.PulseBeside(t.Wanted, t.Pulse), wording.Pulse(t.Pulse),
			wording.PercentBeside(lost, 0), f.idleEnd(position, bites)),
		"take travel off with the throw, share or end points, or straighten the linkage so that it needs less sub-trim")
}

// simplest puts back to rest every control that a pose can do without while
// something about the output stays true, and leaves the evaluation of the pose
// in f.out.
func (f *finder) simplest(position []float64, holds func() bool) []float64 {
	return f.simplestIn(position, &mixcore.Input{}, holds)
}

// simplestIn is simplest for what depends on the input, too: in is the input of
// the evaluation that holds is asked about.
func (f *finder) simplestIn(position []float64, in *mixcore.Input, holds func() bool) []float64 {
	in.Position = slices.Clone(position)
	for i := range in.Position {
		keep := in.Position[i]
		if keep == f.rest.Position[i] {
			continue
		}
		in.Position[i] = f.rest.Position[i]
		if f.plan.Eval(in, f.out); !holds() {
			in.Position[i] = keep
		}
	}
	f.plan.Eval(in, f.out)
	return in.Position
}

// halvings is how often the place where a limit begins to bite is narrowed down.
const halvings = 40

// idleEnd says from where on the last stick of a pose does nothing more, as the
// end of a sentence; empty where no stick or lever is off rest, where the limit
// bites with the stick at rest as well, or where hardly any of its travel is idle.
func (f *finder) idleEnd(position []float64, bites func() bool) string {
	last := f.lastStick(position)
	if last < 0 {
		return ""
	}
	in := mixcore.Input{Position: slices.Clone(position)}
	free, held := f.rest.Position[last], position[last]
	in.Position[last] = free
	if f.plan.Eval(&in, f.out); bites() {
		return ""
	}
	for range halvings {
		in.Position[last] = (free + held) / 2
		if f.plan.Eval(&in, f.out); bites() {
			held = in.Position[last]
		} else {
			free = in.Position[last]
		}
	}
	c := &f.s.Controls[last]
	if math.Abs(held-position[last]) < worthSaying {
		return ""
	}
	at := mixcore.Percent(math.Abs(held))
	switch {
	case c.Kind == mixcore.LeverControl:
		return fmt.Sprintf("; beyond %s %s nothing more happens", c.Name, wording.Percent(at))
	case at < worthSaying:
		return fmt.Sprintf("; %s going %s does nothing at all", c.Name, wording.AxisSide(c.Axis, held > 0))
	}
	return fmt.Sprintf("; beyond %s %s %s nothing more happens", c.Name, wording.Percent(at), wording.AxisSide(c.Axis, held > 0))
}

// lastStick is the stick, or else lever, or else trim that a pilot would move
// last on the way to a pose; −1 if only switches are off rest.
func (f *finder) lastStick(position []float64) int {
	for _, kind := range []mixcore.ControlKind{mixcore.AxisControl, mixcore.LeverControl, mixcore.TrimControl} {
		for i, at := range position {
			if f.s.Controls[i].Kind == kind && at != f.rest.Position[i] {
				return i
			}
		}
	}
	return -1
}
