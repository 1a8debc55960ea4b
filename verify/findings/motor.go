package findings

import (
	"fmt"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/wording"
)

func (f *finder) motorFindings() {
	for i := range f.s.Parts {
		if f.s.Parts[i].Motor == nil {
			continue
		}
		f.safeMotor(i)
		f.motorAtLossOfSignal(i)
		f.motorStopsLate(i)
		f.motorAtClosedThrottle(i)
		f.motorByStick(i)
	}
}

// safeMotor holds the builder to stopped_when.
func (f *finder) safeMotor(part int) {
	p, r := &f.s.Parts[part], &f.parts[part]
	if p.Motor.StoppedWhen == nil {
		f.warn(where.Part(f.m, part), codeMotorNoSafe,
			fmt.Sprintf("nothing says when %s is sure to be stopped", p.Name),
			"give the motor a switch, a line {replace_with: -100%, when: …} at the end of its mix, and stopped_when: … here")
		return
	}
	if !r.runsWhenSafe.seen {
		return
	}
	var in mixcore.Input
	position := f.simplestIn(r.runsWhenSafe.position, &in, func() bool {
		return !p.Motor.Stopped(f.out.Parts[part].Amount) && f.plan.Holds(p.Motor.StoppedWhen, &in)
	})
	f.warn(where.Part(f.m, part, "stopped_when"), codeMotorSafe,
		fmt.Sprintf("%s runs although %s: %s it stands at %s",
			p.Name, wording.Condition(f.s, p.Motor.StoppedWhen), f.with(position), wording.Position(p, f.out.Parts[part])),
		"end the mix of "+channelName(&f.s.Channels[p.Drives[0].Channel])+" with a line that replaces the sum by a stopped motor in that case")
}

func (f *finder) motorAtLossOfSignal(part int) {
	p, r := &f.s.Parts[part], &f.parts[part]
	channel := p.Drives[0].Channel
	c := &f.s.Channels[channel]
	at := where.Channel(f.m, channel, "failsafe")
	const hint = "give the channel a failsafe that stops the motor, usually failsafe: -100%"
	if c.Failsafe.Hold {
		if r.canRun || !r.complete {
			f.warn(at, codeMotorLostSignal, fmt.Sprintf("when the signal is lost %s keeps the power that it had: %s holds what it had", p.Name, channelName(c)), hint)
		}
		return
	}
	lost := f.rest.Clone()
	lost.SignalLost = true
	f.plan.Eval(&lost, f.out)
	if o := f.out.Parts[part]; !p.Motor.Stopped(o.Amount) {
		f.warn(at, codeMotorLostSignal, fmt.Sprintf("when the signal is lost %s runs at %s: the failsafe of %s is %s",
			p.Name, wording.Position(p, o), channelName(c), wording.Setpoint(c.Failsafe.Output)), hint)
	}
}
