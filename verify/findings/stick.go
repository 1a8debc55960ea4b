package findings

import (
	"fmt"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/wording"
)

// motorByStick moves each stick and trim that bears on a motor, with its levers at
// rest and its switches anywhere: none of them may start it. A motor without a
// lever is run by a switch, which then rests too.
func (f *finder) motorByStick(part int) {
	p := &f.s.Parts[part]
	var sticks, levers, switches []int
	for _, c := range f.ChannelReach(p.Drives[0].Channel).Controls() {
		switch f.s.Controls[c].Kind {
		case mixcore.LeverControl:
			levers = append(levers, c)
		case mixcore.SwitchControl:
			switches = append(switches, c)
		default:
			sticks = append(sticks, c)
		}
	}
	if levers == nil {
		if switches == nil {
			return // a stick is all that runs it
		}
		switches = nil
	}
	started := false
	f.Walk(switches, safePoses, func(in *mixcore.Input, _ []int, _ int) {
		if started || f.runsOrIsSafe(part, in) {
			return
		}
		for _, stick := range sticks {
			low, high := f.s.Controls[stick].Range()
			for _, at := range []float64{high, low} {
				pose := in.Clone()
				pose.Position[stick] = at
				if f.plan.Eval(&pose, f.out); !started && !p.Motor.Stopped(f.out.Parts[part].Amount) {
					started = true
					f.warn(f.shareOf(part, stick), codeMotorByStick,
						fmt.Sprintf("%s starts by %s alone: %s it stands at %s", p.Name, f.s.Controls[stick].Name, f.with(pose.Position), wording.Position(p, f.out.Parts[part])),
						"end the mix of "+channelName(&f.s.Channels[p.Drives[0].Channel])+" with a line that replaces the sum by a stopped motor while "+f.throttleRests(levers)+", such as {replace_with: -100%, when: …}")
				}
			}
		}
	})
}

// runsOrIsSafe is true where no stick is needed to start a motor, or where it is to
// be stopped, which is another finding's.
func (f *finder) runsOrIsSafe(part int, in *mixcore.Input) bool {
	f.plan.Eval(in, f.out)
	return !f.s.Parts[part].Motor.Stopped(f.out.Parts[part].Amount) || f.isSafe(part, in)
}

func (f *finder) throttleRests(levers []int) string {
	if len(levers) == 0 {
		return "its switch rests"
	}
	return f.s.Controls[levers[0]].Name + " rests"
}

// shareOf is where the mix of a motor's channel takes a stick, or else the motor.
func (f *finder) shareOf(part, stick int) diag.Place {
	channel := f.s.Parts[part].Drives[0].Channel
	for i := range f.s.Channels[channel].Mix {
		line := &f.s.Channels[channel].Mix[i]
		if line.Op != mixcore.Add && line.Op != mixcore.ScaleBy {
			continue
		}
		if d := &f.s.Demands[line.Demand]; d.From == stick || d.Trim == stick {
			return where.Line(f.m, channel, i)
		}
	}
	return where.Part(f.m, part)
}
