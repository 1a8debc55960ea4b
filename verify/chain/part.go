package chain

import (
	"fmt"
	"math"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// mixesAndDrives adds, for each servo of a part, its channel (once, where two
// servos share one), the servo and the linkage.
func (b *builder) mixesAndDrives(part int) {
	p := &b.s.Parts[part]
	done := map[int]bool{}
	for i := range p.Drives {
		if c := p.Drives[i].Channel; !done[c] {
			done[c] = true
			b.mix(c)
			b.channel(c, p.Name)
			b.yLead(c, part)
		}
		if p.Motion.Hinged() {
			b.drive(part, i)
		}
	}
}

// yLead names the other parts on a channel, in the text of its pulse.
func (b *builder) yLead(channel, part int) {
	var others []string
	for i := range b.s.Parts {
		p := &b.s.Parts[i]
		for j := range p.Drives {
			if i != part && p.Drives[j].Channel == channel {
				others = append(others, p.Name)
				break
			}
		}
	}
	if others != nil {
		b.steps[len(b.steps)-1].Text += "; Y-lead with " + strings.Join(others, ", ")
	}
}

func (b *builder) drive(part, i int) {
	p, d, dt := &b.s.Parts[part], &b.s.Parts[part].Drives[i], &b.t.Parts[part].Drives[i]
	name, ofServo := p.Name, ""
	if len(p.Drives) > 1 {
		name, ofServo = fmt.Sprintf("%s servo %d", p.Name, i+1), fmt.Sprintf(" of servo %d", i+1)
	}
	if lags(dt, &b.t.Channels[d.Channel]) {
		b.add(result.Step{Stage: "servo", Name: name, Text: "still under way",
			Place: found(where.Drive(b.m, part, i, "servo.seconds_per_60deg", "servo"))}, percent(dt.Output))
	}
	if d.Linkage == nil {
		b.add(result.Step{Stage: "table", Name: name, Text: "measured at " + wording.Percent(dt.Output),
			Place: found(where.Drive(b.m, part, i, "measured"))}, turn(p.Motion, dt.Angle))
		return
	}
	servo := result.Step{Stage: "servo", Name: name,
		Text:  wording.SetAngle(d.Servo.Swing) + " × " + wording.Percent(dt.Output) + ", plus swings " + foreOrAft(d.Servo.PlusAft),
		Place: found(where.Drive(b.m, part, i, "servo.plus_swings", "servo"))}
	if dt.Limits&mixcore.ServoMax != 0 {
		asked, most, way := wording.AngleBeside(dt.Wanted, d.Servo.Max), wording.SetAngle(d.Servo.Max), foreOrAft(dt.Wanted > 0)
		servo.Text = asked + " held to " + most
		b.bite(&servo, mixcore.ServoMax, ofServo, asked+" "+way, most+" "+way)
		servo.Place = found(where.Drive(b.m, part, i, "servo.max_deg", "servo"))
	}
	b.add(servo, swing(dt.Swing))
	b.add(result.Step{Stage: "linkage", Name: name,
		Text:  "arm " + wording.SetLength(mixcore.Millimetres(d.Linkage.Arm)) + ", horn " + wording.SetLength(mixcore.Millimetres(d.Linkage.Horn)) + hornSide(p, d),
		Place: found(where.Drive(b.m, part, i, "linkage.horn", "linkage"))}, turn(p.Motion, dt.Angle))
}

// lags reports whether a servo has not yet arrived where its channel asks.
func lags(dt *mixcore.DriveTrace, ct *mixcore.ChannelTrace) bool {
	return math.Abs(float64(dt.Output-ct.Output)) > mixcore.Hair
}

// part adds the last step: where the part stands.
func (b *builder) part(i int) {
	p, pt := &b.s.Parts[i], &b.t.Parts[i]
	step := result.Step{Stage: "part", Name: p.Name, Place: found(where.Part(b.m, i))}
	switch p.Motion {
	case mixcore.Power:
		step.Text = wording.Pulse(p.Motor.Idle) + " is 0 %, " + wording.Pulse(p.Motor.Full) + " is 100 %"
	case mixcore.OutIn:
		step.Text = "plus moves it out"
		if p.PlusIn {
			step.Text = "plus moves it in"
		}
	default:
		b.hinged(p, i, &step)
	}
	if pt.Limits&mixcore.PartEnd != 0 {
		asked := wording.PercentBeside(mixcore.Percent(pt.Wanted), pt.Amount)
		step.Text += "; " + asked + " asked"
		b.bite(&step, mixcore.PartEnd, "", asked, wording.Setpoint(pt.Amount))
	}
	b.add(step, position(p, b.t.Output.Parts[i]))
}

func (b *builder) hinged(p *mixcore.Part, i int, step *result.Step) {
	pt := &b.t.Parts[i]
	var said []string
	if n := len(p.Drives); n > 1 {
		said = append(said, fmt.Sprintf("mean of %d servos, %s apart", n, wording.Angle(pt.Spread)))
	}
	if pt.Limits&mixcore.ServosFight != 0 {
		asked := make([]string, len(pt.Drives))
		for j := range pt.Drives {
			asked[j] = wording.Turn(p.Motion, pt.Drives[j].Angle)
		}
		b.bite(step, mixcore.ServosFight, "", wording.Listed(asked), wording.Turn(p.Motion, mixcore.Degrees(pt.Wanted)))
	}
	if pt.Limits&mixcore.AtStop != 0 {
		stop, side := p.Stops.Minus, wording.Direction(p.Motion, false)
		if pt.Wanted > 0 {
			stop, side = p.Stops.Plus, wording.Direction(p.Motion, true)
		}
		asked := side + " " + wording.AngleBeside(mixcore.Degrees(pt.Wanted), stop)
		said = append(said, asked+" asked, stop at "+wording.SetAngle(stop))
		b.bite(step, mixcore.AtStop, "", asked, side+" "+wording.SetAngle(stop))
		step.Place = found(where.Part(b.m, i, "stops."+strings.ToLower(side), "stops"))
	}
	if said == nil && p.Chord > 0 {
		said = append(said, "chord "+wording.SetLength(p.Chord))
	}
	step.Text = strings.Join(said, "; ")
}

// hornSide is the side of a surface that the horn stands on, as the airframe
// file says it: a horn tip that goes aft pushes the trailing edge away from its
// side. It is left out for wheels, where it depends on where the wheel is.
func hornSide(p *mixcore.Part, d *mixcore.Drive) string {
	switch {
	case p.Motion == mixcore.UpDown && d.Sign > 0:
		return " above"
	case p.Motion == mixcore.UpDown:
		return " below"
	case p.Kind == "rudder" && d.Sign > 0:
		return " starboard"
	case p.Kind == "rudder":
		return " port"
	}
	return ""
}
