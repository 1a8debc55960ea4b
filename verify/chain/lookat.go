package chain

import (
	"cmp"
	"math"
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/result"
)

// MaxLookAt is how many lines of the airframe file a chain points at: more than
// a person will look at would hide the telling ones.
const MaxLookAt = 6

// looker gathers lines of the airframe file, most telling first.
type looker struct {
	m      *airframes.Model
	t      *mixcore.Trace
	places []result.Place
}

// lookAtPart puts first the limits that bit, then what a channel at loss of
// signal says; then, where no line of the mix does anything, those that are not
// in force; then what gives the direction (horn or measured table, servo,
// reverse, the shares, largest first); then what gives the amount.
func lookAtPart(m *airframes.Model, t *mixcore.Trace, part int) []result.Place {
	l := looker{m: m, t: t}
	p := &m.Setup.Parts[part]
	channels := channelsOf(p)
	l.partLimits(part)
	for _, c := range channels {
		l.channelLimits(c)
		l.failsafe(c)
		l.idleLines(c)
	}
	if p.Motion == mixcore.UpDown || p.Motion == mixcore.LeftRight {
		for i := range p.Drives {
			l.add(where.Drive(m, part, i, "linkage.horn", "linkage", "measured"))
			if p.Drives[i].Linkage != nil {
				l.add(where.Drive(m, part, i, "servo.plus_swings", "servo"))
			}
		}
	}
	for _, c := range channels {
		l.channel(c)
	}
	l.add(where.Part(m, part))
	return l.some()
}

func lookAtChannel(m *airframes.Model, t *mixcore.Trace, channel int) []result.Place {
	l := looker{m: m, t: t}
	l.channelLimits(channel)
	l.failsafe(channel)
	l.idleLines(channel)
	l.channel(channel)
	return l.some()
}

// add keeps a place unless its line is there already or is not known.
func (l *looker) add(at diag.Place) {
	p := found(at)
	known := slices.ContainsFunc(l.places, func(q result.Place) bool { return q.File == p.File && q.Line == p.Line })
	if p.Line > 0 && !known {
		l.places = append(l.places, p)
	}
}

func (l *looker) some() []result.Place { return l.places[:min(len(l.places), MaxLookAt)] }

func (l *looker) partLimits(part int) {
	pt := &l.t.Parts[part]
	if pt.Limits&mixcore.AtStop != 0 {
		l.add(where.Part(l.m, part, "stops"))
	}
	if pt.Limits&mixcore.ServosFight != 0 {
		l.add(where.Part(l.m, part, "servos"))
	}
	for i := range pt.Drives {
		if pt.Drives[i].Limits&mixcore.ServoMax != 0 {
			l.add(where.Drive(l.m, part, i, "servo.max_deg", "servo"))
		}
	}
	if pt.Limits&mixcore.PartEnd != 0 {
		l.add(where.Part(l.m, part, "idle_us", "full_us"))
	}
}

func (l *looker) channelLimits(channel int) {
	limits := l.t.Channels[channel].Limits
	if limits&mixcore.TravelLimit != 0 {
		l.add(where.Channel(l.m, channel, "limit"))
		l.lines(channel)
	}
	if limits&mixcore.PulseLimit != 0 {
		l.add(where.Channel(l.m, channel, "pulse_us", "sub_trim", "end_points"))
	}
}

func (l *looker) failsafe(channel int) {
	if l.t.Input.SignalLost {
		l.add(where.Channel(l.m, channel, "failsafe"))
	}
}

// idleLines points at the conditions of a channel whose mix does nothing.
func (l *looker) idleLines(channel int) {
	if l.t.Channels[channel].Failsafe {
		return
	}
	if slices.ContainsFunc(l.t.Channels[channel].Lines, func(lt mixcore.LineTrace) bool { return lt.Change != 0 }) {
		return
	}
	l.notInForce(channel)
}

func (l *looker) notInForce(channel int) {
	traces := l.t.Channels[channel].Lines
	for i := firstLine(&l.m.Setup, l.t, channel); i < len(traces); i++ {
		if traces[i].Weight == 0 {
			l.add(where.Line(l.m, channel, i))
		}
	}
}

// channel points at what gives a channel its direction and then its amount.
func (l *looker) channel(i int) {
	c := &l.m.Setup.Channels[i]
	if !l.t.Channels[i].Failsafe {
		if c.Reversed {
			l.add(where.Channel(l.m, i, "reversed"))
		}
		l.lines(i)
		for j := firstLine(&l.m.Setup, l.t, i); j < len(c.Mix); j++ {
			if d := c.Mix[j].Demand; l.t.Channels[i].Lines[j].Change != 0 && c.Mix[j].Op == mixcore.Add {
				l.add(where.Rate(l.m, d, l.t.Demands[d].Rate, "throw"))
			}
		}
		if c.SubTrim != 0 {
			l.add(where.Channel(l.m, i, "sub_trim"))
		}
		if c.EndPoints != mixcore.Both(100) {
			l.add(where.Channel(l.m, i, "end_points"))
		}
		l.notInForce(i)
	}
	l.add(where.Channel(l.m, i))
}

// lines points at the mix lines that do something, the largest change first.
func (l *looker) lines(channel int) {
	traces := l.t.Channels[channel].Lines
	var order []int
	for i := firstLine(&l.m.Setup, l.t, channel); i < len(traces); i++ {
		if traces[i].Change != 0 {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Compare(math.Abs(float64(traces[b].Change)), math.Abs(float64(traces[a].Change)))
	})
	for _, i := range order {
		l.add(where.Line(l.m, channel, i))
	}
}
