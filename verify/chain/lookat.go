package chain

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/result"
)

// MaxLookAt is how many lines of the airframe file a case points at: more than
// a person will look at would hide the telling ones.
const MaxLookAt = 6

// Doubt is what a check found wrong about a part or channel.
type Doubt uint8

// The doubts.
const (
	Unclear   Doubt = iota // wrong in some other way
	Direction              // it goes, or stands, the wrong way
	Amount                 // the right way, but too far or not far enough
	Stuck                  // it should move, or run, and does not
	Astir                  // it should stay still, neutral or stopped, and does not
)

// Case is a check that failed: all that there is to go by when the lines to
// look at are chosen.
type Case struct {
	Now    *mixcore.Trace // what was judged
	Before *mixcore.Trace // where the movement began; nil if nothing was moved
	Doubt  Doubt
}

// LookAtPart is the lines of the airframe file to look at, likeliest cause
// first: the limits that bit; what a channel does at loss of signal; what is
// still under way; lines of the mix that are not in force and could be the cause; then,
// by the doubt, what gives the direction (reverse, share, the way the servo
// swings, the side of the horn or the measured table) or what gives the amount
// (share, throw, end points, sub-trim, lengths or table); then the rest. Where only the
// amount is wrong, fixed percents that are not in force come behind what gives it. The
// note of a place says what there is at it. part is an index into Setup.Parts.
func LookAtPart(m *airframes.Model, c Case, part int) []result.Place {
	l := looker{m: m, Case: c}
	for _, t := range l.traces() {
		l.partLimits(t, part)
	}
	l.causes(channelsOf(&m.Setup.Parts[part]), part)
	l.add(where.Part(m, part), "the "+m.Setup.Parts[part].Name+" itself")
	return l.some()
}

// LookAtChannel is LookAtPart for a channel. channel is an index into
// Setup.Channels.
func LookAtChannel(m *airframes.Model, c Case, channel int) []result.Place {
	l := looker{m: m, Case: c}
	l.causes([]int{channel}, noPart)
	return l.some()
}

// noPart stands for the part of a channel that is looked at by itself.
const noPart = -1

// looker gathers lines of the airframe file, likeliest cause first. A line that
// is added a second time stays where it was.
type looker struct {
	Case
	m       *airframes.Model
	places  []result.Place
	settled bool // what tells most has been added: notes grow no more
}

// add keeps a place, with what there is to look at. Of a line that is there
// already it keeps what is new about it, if that tells much; a place that is not
// known it drops.
func (l *looker) add(at diag.Place, note string) {
	p := found(at)
	p.Note = note
	known := slices.IndexFunc(l.places, func(q result.Place) bool { return q.File == p.File && q.Line == p.Line })
	switch {
	case p.Line == 0:
	case known < 0:
		l.places = append(l.places, p)
	case !l.settled && !strings.Contains(l.places[known].Note, note):
		l.places[known].Note += " · " + note
	}
}

// channelName is what a channel is called in notes.
func (l *looker) channelName(i int) string {
	return fmt.Sprintf("channel %d", l.m.Setup.Channels[i].Number)
}

// ofChannel is a note on a key of a channel, which says so where the file does
// not have it: what is not there cannot be pointed at.
func (l *looker) ofChannel(i int, key string) string {
	if where.SaysOfChannel(l.m, i, key) {
		return key + ": of " + l.channelName(i)
	}
	return l.channelName(i) + " has no " + key + ":"
}

func (l *looker) some() []result.Place { return l.places[:min(len(l.places), MaxLookAt)] }

// traces are the positions that decided: the one judged, then the one before it.
func (l *looker) traces() []*mixcore.Trace {
	if l.Before == nil {
		return []*mixcore.Trace{l.Now}
	}
	return []*mixcore.Trace{l.Now, l.Before}
}

func (l *looker) partLimits(t *mixcore.Trace, part int) {
	pt := &t.Parts[part]
	if pt.Limits&mixcore.AtStop != 0 {
		l.add(where.Part(l.m, part, "stops"), "stops: it is driven against one")
	}
	if pt.Limits&mixcore.ServosFight != 0 {
		l.add(where.Part(l.m, part, "servos"), "servos: that ask for different angles")
	}
	for i := range pt.Drives {
		if pt.Drives[i].Limits&mixcore.ServoMax != 0 {
			l.add(where.Drive(l.m, part, i, "servo.max_deg", "servo"), "max_deg: of the servo")
		}
	}
	if pt.Limits&mixcore.PartEnd != 0 {
		l.add(where.Part(l.m, part, "idle_us", "full_us"), "idle_us: and full_us:")
	}
}

// causes are those of some channels and of the part that they move, in order;
// the limits of the part come before.
func (l *looker) causes(channels []int, part int) {
	for _, c := range channels {
		for _, t := range l.traces() {
			l.channelLimits(t, c)
		}
	}
	for _, c := range channels {
		if l.Now.Input.SignalLost {
			l.add(where.Channel(l.m, c, "failsafe"), l.ofChannel(c, "failsafe"))
		}
	}
	l.underWay(channels, part)
	for _, c := range channels {
		l.notInForce(c, false)
	}
	if l.Doubt == Direction {
		l.directions(channels, part)
		l.settled = true
	}
	l.amounts(channels, part)
	for _, c := range channels {
		l.notInForce(c, true)
	}
	l.settled = true
	l.directions(channels, part)
	for _, c := range channels {
		l.add(where.Channel(l.m, c), l.channelName(c))
	}
}

// underWay points at what makes a channel or servo slow, if it had not arrived.
func (l *looker) underWay(channels []int, part int) {
	for _, c := range channels {
		if slowed(&l.m.Setup.Channels[c], &l.Now.Channels[c]) {
			l.add(where.Channel(l.m, c, "slow"), l.ofChannel(c, "slow"))
		}
	}
	for _, i := range l.hinges(part) {
		d := &l.m.Setup.Parts[part].Drives[i]
		if lags(&l.Now.Parts[part].Drives[i], &l.Now.Channels[d.Channel]) {
			l.add(where.Drive(l.m, part, i, "servo.seconds_per_60deg", "servo"), "seconds_per_60deg: of the servo")
		}
	}
}

func (l *looker) channelLimits(t *mixcore.Trace, channel int) {
	limits := t.Channels[channel].Limits
	if limits&mixcore.TravelLimit != 0 {
		l.add(where.Channel(l.m, channel, "limit"), "the travel limit of "+l.channelName(channel))
		l.lines(channel)
	}
	if limits&mixcore.PulseLimit != 0 {
		l.add(where.Channel(l.m, channel, "pulse_us", "sub_trim", "end_points"), "the pulse limits of "+l.channelName(channel))
	}
}

// directions points at what gives a part its direction.
func (l *looker) directions(channels []int, part int) {
	for _, c := range channels {
		if !l.Now.Channels[c].Failsafe {
			note := l.ofChannel(c, "reversed")
			if l.Doubt != Direction && !where.SaysOfChannel(l.m, c, "reversed") {
				note = l.channelName(c)
			}
			l.add(where.Channel(l.m, c, "reversed"), note)
		}
	}
	for _, c := range channels {
		if acting := l.acting(c); len(acting) > 0 {
			l.add(where.Line(l.m, c, acting[0]), l.lineNote(c, acting[0]))
		}
	}
	for _, i := range l.hinges(part) {
		if l.m.Setup.Parts[part].Drives[i].Linkage != nil {
			l.add(where.Drive(l.m, part, i, "servo.plus_swings", "servo"), "plus_swings: of the servo")
		}
	}
	for _, i := range l.hinges(part) {
		note := "measured: which way it was seen to go"
		if l.m.Setup.Parts[part].Drives[i].Linkage != nil {
			note = "horn: its side"
		}
		l.add(where.Drive(l.m, part, i, "linkage.horn", "linkage", "measured"), note)
	}
}

// hinges are the servos of a part that move it by a horn or a table; none for
// motors and extras.
func (l *looker) hinges(part int) []int {
	if part == noPart {
		return nil
	}
	p := &l.m.Setup.Parts[part]
	if !p.Motion.Hinged() {
		return nil
	}
	drives := make([]int, len(p.Drives))
	for i := range drives {
		drives[i] = i
	}
	return drives
}

// amounts points at what decides how far a part goes. What has its ordinary
// value decides nothing.
func (l *looker) amounts(channels []int, part int) {
	for _, c := range channels {
		l.lines(c)
	}
	for _, c := range channels {
		l.demands(c)
	}
	for _, c := range channels {
		channel := &l.m.Setup.Channels[c]
		if l.Now.Channels[c].Failsafe {
			continue
		}
		if channel.EndPoints != mixcore.Both(100) {
			l.add(where.Channel(l.m, c, "end_points"), l.ofChannel(c, "end_points"))
		}
		if channel.SubTrim != 0 {
			l.add(where.Channel(l.m, c, "sub_trim"), l.ofChannel(c, "sub_trim"))
		}
	}
	for _, i := range l.hinges(part) {
		if l.m.Setup.Parts[part].Drives[i].Linkage == nil {
			l.add(where.Drive(l.m, part, i, "measured"), "measured: the angles")
			continue
		}
		l.add(where.Drive(l.m, part, i, "linkage.arm_mm", "linkage"), "arm_mm:")
		l.add(where.Drive(l.m, part, i, "linkage.horn_mm", "linkage"), "horn_mm:")
		l.add(where.Drive(l.m, part, i, "servo.swing_deg", "servo"), "swing_deg: of the servo")
	}
}

// demands points at the throws of what feeds a channel's acting lines, and at
// what else gives those demands their size.
func (l *looker) demands(channel int) {
	for _, i := range l.acting(channel) {
		line := &l.m.Setup.Channels[channel].Mix[i]
		if line.Op != mixcore.Add && line.Op != mixcore.ScaleBy {
			continue
		}
		d := line.Demand
		for _, t := range l.traces() {
			dt := &t.Demands[d]
			l.add(where.Rate(l.m, d, dt.Rate, "throw"), "throw of "+l.m.Setup.Demands[d].Name)
			if math.Abs(float64(dt.AfterExpo-dt.X)) > mixcore.Hair {
				l.add(where.Rate(l.m, d, dt.Rate, "expo"), "expo of "+l.m.Setup.Demands[d].Name)
			}
		}
		if l.m.Setup.Demands[d].Curve != nil {
			l.add(where.Demand(l.m, d, "curve"), "curve of "+l.m.Setup.Demands[d].Name)
		}
	}
}
