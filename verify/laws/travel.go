package laws

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/wording"
)

var travel = law{Info{"travel", "Travel",
	"No channel and no servo runs out of travel before the controls are at their ends, whatever they do together."},
	func(mk *maker) {
		for i := range mk.s.Channels {
			mk.add(claim{
				sentence: channelName(&mk.s.Channels[i]) + " never runs out of travel",
				needs:    []prove.Claim{{Now: mk.everywhere(), Want: prove.Travel{Channel: i}}},
				spare:    travelLeft,
				seen:     func(v *view) sight { return mk.outOfTravel(v, i) },
			})
		}
		for part := range mk.s.Parts {
			for k := range mk.s.Parts[part].Drives {
				mk.servoReaches(part, k)
			}
		}
	}}

// servoReaches claims that a servo whose maximum is said never comes to it.
func (mk *maker) servoReaches(part, drive int) {
	want, ok := mk.withinServo(part, drive)
	if !ok {
		return
	}
	perPercent := float64(mk.s.Parts[part].Drives[drive].Servo.Swing) / 100
	mk.add(claim{
		sentence: "the servo of " + mk.driveName(part, drive) + " is never asked for more than its maximum",
		needs:    []prove.Claim{{Now: mk.everywhere(), Want: want}},
		spare: func(_ int, margin float64) (spare, bool) {
			left := margin * perPercent
			return spare{left, "°", wording.Angle(mixcore.Degrees(left)) + " of its swing left"}, true
		},
		seen: func(v *view) sight { return mk.servoEnds(v, part, drive) },
	})
}

// withinServo is that a channel puts out no more than a servo can do; false where its
// maximum is not said.
func (mk *maker) withinServo(part, drive int) (prove.Output, bool) {
	d := &mk.s.Parts[part].Drives[drive]
	if math.IsInf(float64(d.Servo.Max), 1) || d.Linkage == nil {
		return prove.Output{}, false
	}
	most := float64(d.Servo.Max) / float64(d.Servo.Swing) * 100
	return prove.Output{Channel: d.Channel, Low: -most, High: most}, true
}

// servoEnds says how a servo's arm is held at its maximum.
func (mk *maker) servoEnds(v *view, part, drive int) sight {
	d, most := &v.now.Parts[part].Drives[drive], mk.s.Parts[part].Drives[drive].Servo.Max
	b := bite{
		bites: func(out *mixcore.Output) bool { return out.Parts[part].Limits&mixcore.ServoMax != 0 },
		lost: func(t *mixcore.Trace) float64 {
			d := &t.Parts[part].Drives[drive]
			return math.Abs(float64(d.Wanted - d.Swing))
		},
		say: func(lost float64) string { return wording.Angle(mixcore.Degrees(lost)) },
	}
	return sight{
		got: "the arm of " + mk.driveName(part, drive) + " is asked for " + wording.AngleBeside(d.Wanted, most) +
			" and goes to " + wording.SetAngle(most) + mk.biteWords(b, v),
		shows: []shown{showPart(part, chain.Amount)},
	}
}

func travelLeft(_ int, margin float64) (spare, bool) {
	return spare{margin, "%", wording.Percent(mixcore.Percent(margin)) + " of travel left"}, true
}

// outOfTravel says how a channel runs out of travel, from where on, and how much is
// lost one way and the other.
func (mk *maker) outOfTravel(v *view, channel int) sight {
	c, ct := &mk.s.Channels[channel], &v.now.Channels[channel]
	got := channelName(c) + " runs out of travel: its mix comes to " +
		wording.PercentBeside(ct.Sum, mixcore.Percent(math.Copysign(float64(c.Limit), float64(ct.Sum)))) +
		", the travel limit is " + wording.Setpoint(c.Limit)
	if ct.Limits&mixcore.TravelLimit == 0 {
		got = channelName(c) + " runs out of travel: its pulse would be " + wording.PulseBeside(ct.Wanted, ct.Pulse) + " and is held to " + wording.Pulse(ct.Pulse)
	}
	b := bite{
		bites: func(out *mixcore.Output) bool {
			return out.Channels[channel].Limits&(mixcore.TravelLimit|mixcore.PulseLimit) != 0
		},
		lost: func(t *mixcore.Trace) float64 {
			ct := &t.Channels[channel]
			over := max(math.Abs(float64(ct.Sum))-float64(c.Limit), 0)
			return max(over, math.Abs(float64(ct.Trimmed-ct.Output)))
		},
		say: func(lost float64) string { return wording.PercentBeside(mixcore.Percent(lost), 0) },
	}
	return sight{got: got + mk.biteWords(b, v), shows: []shown{showChannel(channel)}}
}
