package findings

import (
	"fmt"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/wording"
)

const (
	// stopsWithin is how soon a motor must stand still once its controls say so.
	// Common practice, no source.
	stopsWithin mixcore.Seconds = 1
	// longestStop is how long a motor that is made safe is watched.
	longestStop mixcore.Seconds = 600
	// safePoses bounds the poses tried of the controls that make a motor safe.
	safePoses = 64
)

// motorStopsLate makes a motor at full throttle safe, each way that its
// condition allows, and waits.
func (f *finder) motorStopsLate(part int) {
	p := &f.s.Parts[part]
	if p.Motor.StoppedWhen == nil || !f.takesTime(p.Drives[0].Channel) {
		return
	}
	running, safe := f.motorPoses(part)
	for i := range running {
		for j := range safe {
			if late := f.stopsAfter(part, &running[i], &safe[j]); late > stopsWithin {
				f.warn(where.Part(f.m, part, "stopped_when"), codeMotorLate,
					fmt.Sprintf("%s runs on for %s after it was made safe %s", p.Name, wording.Time(late), f.with(safe[j].Position)),
					"take slow off its channel, and stop it by a condition on the switch itself, not by a phase that fades")
				return
			}
		}
	}
}

// takesTime is true for a channel that is slowed or that a fading phase bears on.
func (f *finder) takesTime(channel int) bool {
	if f.s.Channels[channel].Slow > 0 {
		return true
	}
	for i := range f.s.Phases {
		if f.s.Phases[i].Fade > 0 {
			return true
		}
	}
	return false
}

// motorPoses are poses with every lever of the motor's channel full, and the
// controls of its safe condition wherever they may be: those at which it runs,
// and those at which it is to be stopped.
func (f *finder) motorPoses(part int) (running, safe []mixcore.Input) {
	p := &f.s.Parts[part]
	condition := f.Nothing()
	f.AddCondition(condition, p.Motor.StoppedWhen)
	base := f.rest.Clone()
	for _, control := range f.ChannelReach(p.Drives[0].Channel).Controls() {
		if f.s.Controls[control].Kind == mixcore.LeverControl && !condition[control] {
			_, base.Position[control] = f.s.Controls[control].Range()
		}
	}
	poses := []mixcore.Input{base}
	for _, control := range condition.Controls() {
		var more []mixcore.Input
		for i := range poses {
			for _, point := range f.Points[control] {
				if len(more) == safePoses {
					break
				}
				pose := poses[i].Clone()
				pose.Position[control] = point
				more = append(more, pose)
			}
		}
		poses = more
	}
	for i := range poses {
		f.plan.Eval(&poses[i], f.out)
		switch {
		case f.plan.Holds(p.Motor.StoppedWhen, &poses[i]):
			safe = append(safe, poses[i])
		case !p.Motor.Stopped(f.out.Parts[part].Amount):
			running = append(running, poses[i])
		}
	}
	return running, safe
}

// stopsAfter is when a motor that runs at one pose stands still for good after a
// jump to another, at most longestStop; 0 if it stands still at once. A motor
// that never stops is another finding's.
func (f *finder) stopsAfter(part int, from, to *mixcore.Input) mixcore.Seconds {
	motor := f.s.Parts[part].Motor
	var ran mixcore.Seconds
	running := true
	f.plan.During(from, to, longestStop, func(now mixcore.Seconds, out *mixcore.Output) bool {
		running = !motor.Stopped(out.Parts[part].Amount)
		if running {
			ran = now
		}
		return true
	})
	if running && ran < longestStop {
		return 0
	}
	return ran
}
