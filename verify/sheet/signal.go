package sheet

import (
	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// Signal is what each channel does when the signal is lost, and where that brings its
// parts from everything at rest.
func Signal(m *airframes.Model) []result.Signal {
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
			sig.Parts = append(sig.Parts, p.Name+": "+wording.Position(p, out.Parts[part]))
			if p.Motion == mixcore.Power {
				sig.Motor = true
				sig.Runs = sig.Runs || mayRun(m, part, i)
			}
		}
		list[i] = sig
	}
	return list
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
