package findings

import (
	"fmt"
	"slices"

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
	// mostFollowed is how many steps of time are followed at most in one look over a
	// model: half an hour of one motor.
	mostFollowed = 2_000_000
	// safePoses bounds the poses tried of the controls that make a motor safe.
	safePoses = 64
)

// lateStop is how long a motor runs on, and at which safe pose.
type lateStop struct {
	after mixcore.Seconds
	safe  []float64
}

// motorStopsLate makes a motor at full throttle safe, each way that its
// condition allows, and waits. Motors that hang on one channel and are promised to
// stop by one condition are looked at once.
func (f *finder) motorStopsLate(part int) {
	p := &f.s.Parts[part]
	if p.Motor.StoppedWhen == nil {
		return
	}
	key := fmt.Sprintf("%d %g %g %g %+v", p.Drives[0].Channel, p.Motor.Idle, p.Motor.Full, p.Motor.StoppedBelow, *p.Motor.StoppedWhen)
	late, known := f.late[key]
	if !known {
		late = f.lateStopOf(part)
		f.late[key] = late
	}
	if late.after > stopsWithin {
		f.warn(where.Part(f.m, part, "stopped_when"), codeMotorLate,
			fmt.Sprintf("%s runs on for %s after it was made safe %s", p.Name, wording.Time(late.after), f.with(late.safe)),
			"take slow off its channel, and stop it by a condition on the switch itself, not by a phase that fades")
	}
}

func (f *finder) lateStopOf(part int) lateStop {
	plan := f.motorAlone(part)
	if plan == nil {
		return lateStop{}
	}
	running, safe := f.motorPoses(part)
	for i := range running {
		for j := range safe {
			if late := f.stopsAfter(plan, &running[i], &safe[j]); late > stopsWithin {
				return lateStop{late, safe[j].Position}
			}
		}
	}
	return lateStop{}
}

// motorAlone is a motor with its channel and nothing else that takes time: what
// else is under way on the model keeps nobody waiting for it. Nil if the motor
// answers at once.
func (f *finder) motorAlone(part int) *mixcore.Plan {
	p := f.s.Parts[part]
	channel := f.s.Channels[p.Drives[0].Channel]
	named := make([]bool, len(f.s.Phases))
	for i := range channel.Mix {
		line := &channel.Mix[i]
		namedPhases(line.When, named)
		if line.Op == mixcore.Add || line.Op == mixcore.ScaleBy {
			rates := f.s.Demands[line.Demand].Rates
			for k := range rates {
				namedPhases(rates[k].When, named)
			}
		}
	}
	s := *f.s
	s.Phases = slices.Clone(f.s.Phases)
	takesTime := channel.Slow > 0
	for i := range s.Phases {
		if !named[i] {
			s.Phases[i].Fade = 0
		}
		takesTime = takesTime || s.Phases[i].Fade > 0
	}
	if !takesTime {
		return nil
	}
	p.Drives = slices.Clone(p.Drives)
	p.Drives[0].Channel = 0
	s.Channels, s.Parts = []mixcore.Channel{channel}, []mixcore.Part{p}
	plan, _ := mixcore.Compile(s) // nil, and then not looked at, only if f.s would not compile
	return plan
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

// stopsAfter is when a motor alone that runs at one pose stands still for good
// after a jump to another, at most longestStop; 0 if it stands still at once. A
// motor that never stops is another finding's.
func (f *finder) stopsAfter(plan *mixcore.Plan, from, to *mixcore.Input) mixcore.Seconds {
	motor := plan.Setup().Parts[0].Motor
	var ran mixcore.Seconds
	running := true
	plan.During(from, to, longestStop, func(now mixcore.Seconds, out *mixcore.Output) bool {
		f.followed++
		running = !motor.Stopped(out.Parts[0].Amount)
		if running {
			ran = now
		}
		return f.followed < mostFollowed
	})
	if running && ran < longestStop {
		return 0
	}
	return ran
}
