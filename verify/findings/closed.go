package findings

import (
	"fmt"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/wording"
)

// throttles is by how much power a lever must change a motor, over all its travel, to
// count as its throttle and not as something that is mixed in beside it, in percent.
const throttles = 25

// motorAtClosedThrottle sets the switches of a motor to every combination, with its
// levers and all else at rest: a motor that has a throttle must not run by a switch
// alone. Where it runs with everything at rest, or where it is made safe, another finding
// says so; where no lever makes much of a difference the switch is what runs the motor.
func (f *finder) motorAtClosedThrottle(part int) {
	p := &f.s.Parts[part]
	if f.parts[part].runsWhenSafe.seen {
		return
	}
	var switches []int
	for _, c := range f.ChannelReach(p.Drives[0].Channel).Controls() {
		if f.s.Controls[c].Kind == mixcore.SwitchControl {
			switches = append(switches, c)
		}
	}
	found := false
	f.Walk(switches, safePoses, func(in *mixcore.Input, _ []int, moved int) {
		if found || moved == 0 || !f.runsUnasked(part, in) {
			return
		}
		closed := wording.Position(p, f.out.Parts[part])
		demand, follows := f.throttleOf(part, in)
		if !follows {
			return
		}
		found = true
		lever := f.s.Demands[demand].From
		set := append(wording.Pose(f.s, in), wording.Setting(f.s, lever, f.rest.Position[lever]))
		f.warn(where.Demand(f.m, demand), codeMotorClosed,
			fmt.Sprintf("%s runs with its throttle closed: with %s it stands at %s", p.Name, wording.Listed(set), closed),
			"a throttle lever's demand wants curve: {0%: -100%, 100%: 100%}, so that the closed lever is a stopped motor")
	})
}

// runsUnasked is true where a motor runs that nobody promised to be stopped.
func (f *finder) runsUnasked(part int, in *mixcore.Input) bool {
	f.plan.Eval(in, f.out)
	return !f.s.Parts[part].Motor.Stopped(f.out.Parts[part].Amount) && !f.isSafe(part, in)
}

// isSafe is true where the builder has promised that a motor is stopped.
func (f *finder) isSafe(part int, in *mixcore.Input) bool {
	when := f.s.Parts[part].Motor.StoppedWhen
	return when != nil && f.plan.Holds(when, in)
}

// throttleOf is the demand of the lever that the power of a motor follows, with the
// switches as they stand.
func (f *finder) throttleOf(part int, in *mixcore.Input) (demand int, follows bool) {
	f.plan.Eval(in, f.out)
	closed := f.out.Parts[part].Amount
	for _, line := range f.s.Channels[f.s.Parts[part].Drives[0].Channel].Mix {
		if line.Op != mixcore.Add {
			continue
		}
		lever := f.s.Demands[line.Demand].From
		if f.s.Controls[lever].Kind != mixcore.LeverControl {
			continue
		}
		open := in.Clone()
		_, open.Position[lever] = f.s.Controls[lever].Range()
		f.plan.Eval(&open, f.out)
		if by := f.out.Parts[part].Amount - closed; max(by, -by) >= throttles {
			return line.Demand, true
		}
	}
	return 0, false
}
