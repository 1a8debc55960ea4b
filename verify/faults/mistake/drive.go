package mistake

import (
	"fmt"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/wording"
)

func swappedPlugs(l *lister) {
	drives := make([]bool, len(l.s.Channels))
	l.eachDrive(func(_, _ int, _ *mixcore.Part, d *mixcore.Drive) { drives[d.Channel] = true })
	for i := range l.s.Channels {
		for k := range i {
			if !drives[i] && !drives[k] {
				continue
			}
			names := l.channel(k) + " and " + l.channel(i)
			l.addOnModel(back("the plugs of "+names+" are swapped", "swap the plugs of "+names),
				where.Channel(l.m, k), func(s *mixcore.Setup) { swapPlugs(s, i, k) })
		}
	}
}

func swapPlugs(s *mixcore.Setup, a, b int) {
	for i := range s.Parts {
		for k := range s.Parts[i].Drives {
			switch d := &s.Parts[i].Drives[k]; d.Channel {
			case a:
				d.Channel = b
			case b:
				d.Channel = a
			}
		}
	}
}

// beyond is an output that no channel comes to, in percent.
const beyond = 1000

// deadServos leaves hinged parts where the servo's centre puts them. A dead motor stands
// still. An extra stays where it rests, if its channel drives nothing else.
func deadServos(l *lister) {
	l.eachDrive(func(part, drive int, p *mixcore.Part, d *mixcore.Drive) {
		name := servo(p, drive)
		w := words{name + " is unplugged or dead", "unplug " + name, "plug " + name + " in, or replace it"}
		place := where.Drive(l.m, part, drive, "channel")
		switch p.Motion {
		case mixcore.Power:
			l.addOnModel(w, place, func(s *mixcore.Setup) {
				m := s.Parts[part].Motor
				m.Idle, m.Full = mixcore.PulseOf(beyond), mixcore.PulseOf(beyond+100)
			})
		case mixcore.OutIn:
			if l.alone(d.Channel) {
				out := l.resting(d.Channel)
				l.addOnModel(w, place, func(s *mixcore.Setup) {
					c := &s.Channels[d.Channel]
					c.Mix, c.Reversed, c.SubTrim, c.EndPoints = nil, false, out, mixcore.Both(100)
					c.Failsafe = mixcore.Failsafe{Hold: true}
				})
			}
		default:
			at := float64(l.m.Plan.DriveAngle(part, drive, 0))
			l.addOnModel(w, place, func(s *mixcore.Setup) {
				d := &s.Parts[part].Drives[drive]
				d.Linkage, d.Table = nil, []mixcore.Point{{X: -beyond, Y: at}, {X: beyond, Y: at}}
			})
		}
	})
}

// alone says whether a channel drives only one thing.
func (l *lister) alone(channel int) bool {
	count := 0
	l.eachDrive(func(_, _ int, _ *mixcore.Part, d *mixcore.Drive) {
		if d.Channel == channel {
			count++
		}
	})
	return count == 1
}

// resting is what leaves a channel with everything at rest.
func (l *lister) resting(channel int) mixcore.Percent {
	rest, out := l.m.Plan.Rest(), l.m.Plan.NewOutput()
	l.m.Plan.Eval(&rest, out)
	return out.Channels[channel].Output
}

func yLeads(l *lister) {
	for _, pair := range poses.Pairs(l.s) {
		for _, order := range [][2]int{{pair.Port, pair.Starboard}, {pair.Starboard, pair.Port}} {
			part, other := order[0], order[1]
			p, q := &l.s.Parts[part], &l.s.Parts[other]
			for drive := range min(len(p.Drives), len(q.Drives)) {
				was, to := p.Drives[drive].Channel, q.Drives[drive].Channel
				if was == to {
					continue
				}
				name := servo(p, drive)
				l.addOnModel(words{
					name + " hangs on " + l.channel(to) + " by a Y-lead, with the " + q.Name,
					"put " + name + " on " + l.channel(to) + " by a Y-lead",
					"put " + name + " on " + l.channel(was),
				}, where.Drive(l.m, part, drive, "channel"), func(s *mixcore.Setup) { s.Parts[part].Drives[drive].Channel = to })
			}
		}
	}
}

func wrongHorns(l *lister) {
	l.eachDrive(func(part, drive int, p *mixcore.Part, d *mixcore.Drive) {
		of := "the " + p.Name
		if len(p.Drives) > 1 {
			of = fmt.Sprintf("servo %d of the %s", drive+1, p.Name)
		}
		switch {
		case d.Linkage != nil:
			l.addOnModel(back("the pushrod of "+of+" is on the other side of its horn", "move the pushrod of "+of+" to the other side of its horn"),
				where.Drive(l.m, part, drive, "linkage.horn", "linkage"), func(s *mixcore.Setup) { s.Parts[part].Drives[drive].Sign *= -1 })
		case d.Table != nil:
			l.addOnModel(back("the linkage of "+of+" works the other way than it was measured", "turn the linkage of "+of+" about: pushrod to the other side of its horn"),
				where.Drive(l.m, part, drive, "measured"), func(s *mixcore.Setup) {
					table := s.Parts[part].Drives[drive].Table
					for i := range table {
						table[i].Y = -table[i].Y
					}
				})
		}
	})
}

func wrongArms(l *lister) {
	l.eachDrive(func(part, drive int, p *mixcore.Part, d *mixcore.Drive) {
		if d.Linkage == nil {
			return
		}
		name := servo(p, drive)
		l.addOnModel(back("the arm of "+name+" points to the other side, or it turns the other way", "turn the arm of "+name+" to the other side"),
			where.Drive(l.m, part, drive, "servo.plus_swings", "servo"), func(s *mixcore.Setup) {
				d := &s.Parts[part].Drives[drive]
				d.Servo.PlusAft = !d.Servo.PlusAft
			})
	})
}

func swappedHoles(l *lister) {
	l.eachDrive(func(part, drive int, p *mixcore.Part, d *mixcore.Drive) {
		if d.Linkage == nil || d.Linkage.Arm == d.Linkage.Horn {
			return
		}
		of := "the " + p.Name
		if len(p.Drives) > 1 {
			of = servo(p, drive)
		}
		lengths := wording.SetLength(mixcore.Millimetres(d.Linkage.Arm)) + " and " + wording.SetLength(mixcore.Millimetres(d.Linkage.Horn))
		l.addOnModel(back("the holes of arm and horn of "+of+" are exchanged ("+lengths+")", "exchange the holes of arm and horn of "+of),
			where.Drive(l.m, part, drive, "linkage"), func(s *mixcore.Setup) {
				g := s.Parts[part].Drives[drive].Linkage
				g.Arm, g.Horn = g.Horn, g.Arm
			})
	})
}

// idleOff is how far a motor's controller takes its idle end too low, in microseconds.
const idleOff mixcore.Microseconds = 150

func wrongIdles(l *lister) {
	for i := range l.s.Parts {
		p := &l.s.Parts[i]
		if p.Motion != mixcore.Power {
			continue
		}
		was, is := wording.Pulse(p.Motor.Idle), wording.Pulse(p.Motor.Idle-idleOff)
		l.addOnModel(words{
			fmt.Sprintf("the controller of the %s takes %s for idle instead of %s", p.Name, is, was),
			fmt.Sprintf("teach the controller of the %s that idle is %s", p.Name, is),
			fmt.Sprintf("teach the controller of the %s that idle is %s", p.Name, was),
		}, where.Part(l.m, i, "idle_us"), func(s *mixcore.Setup) { s.Parts[i].Motor.Idle -= idleOff })
	}
}
