package sheet

import (
	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// signals is what each channel does when the signal is lost, and where that brings its
// parts, wherever they were before. A failsafe value is put out at once, whether or not the
// channel is slowed.
func signals(m *airframes.Model) []result.Signal {
	s := &m.Setup
	lost, out := m.Plan.Rest(), m.Plan.NewOutput()
	lost.SignalLost = true
	m.Plan.Eval(&lost, out)
	list := make([]result.Signal, len(s.Channels))
	for i := range s.Channels {
		c := &s.Channels[i]
		sig := result.Signal{Channel: channelName(c), Does: "holds what it put out"}
		if !c.Failsafe.Hold {
			sig.Does = "goes to " + wording.Pulse(out.Channels[i].Pulse) + " (" + wording.Percent(out.Channels[i].Output) + ")"
		}
		for _, part := range drivenBy(s, i) {
			p := &s.Parts[part]
			runs := p.Motion == mixcore.Power && mayRun(m, part, i)
			sig.Motor, sig.Runs = sig.Motor || p.Motion == mixcore.Power, sig.Runs || runs
			sig.Parts = append(sig.Parts, p.Name+": "+onLoss(s, part, c.Failsafe.Hold, runs, out.Parts[part]))
		}
		list[i] = sig
	}
	return list
}

// onLoss is in words what one channel does to a part when the signal is lost, where that
// brings it to a place if every one of its channels has a failsafe value.
func onLoss(s *mixcore.Setup, part int, holds, runs bool, place mixcore.PartOutput) string {
	p := &s.Parts[part]
	mixed := false
	for _, drive := range p.Drives {
		mixed = mixed || s.Channels[drive.Channel].Failsafe.Hold != holds
	}
	switch {
	case mixed && holds:
		return "this channel stays where it was and another one goes elsewhere: look where it stands"
	case mixed:
		return "this channel goes there and another one stays where it was: look where it stands"
	case runs && holds:
		return "goes on as it was"
	case holds && p.Motion == mixcore.Power:
		return "goes on as it was: this channel can never make it run"
	case holds:
		return "stays where it was, wherever that is"
	}
	return wording.Position(p, place) + ", at once, from wherever it was"
}

// mayRun says whether a motor may go on running when the signal is lost: its channel
// stays somewhere, or goes somewhere, where it is not stopped.
func mayRun(m *airframes.Model, part, channel int) bool {
	c, p := &m.Setup.Channels[channel], &m.Setup.Parts[part]
	outs := make([]mixcore.ChannelOutput, len(m.Setup.Channels))
	if !c.Failsafe.Hold {
		outs[channel] = m.Plan.ChannelAt(channel, 0, true)
		return !p.Motor.Stopped(m.Plan.PartAt(part, outs).Amount)
	}
	_, high := c.Reach()
	outs[channel] = mixcore.ChannelOutput{Output: high, Pulse: mixcore.PulseOf(high)}
	return !p.Motor.Stopped(m.Plan.PartAt(part, outs).Amount)
}
