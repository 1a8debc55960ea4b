package findings

import (
	"fmt"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/wording"
)

func (f *finder) partFindings() {
	for i := range f.parts {
		r := &f.parts[i]
		if r.servo.seen {
			f.servoMaximum(i, r.servo.position)
		}
		if r.stop.seen {
			f.stopReached(i, r.stop.position)
		}
		if r.fight.seen {
			f.servosFight(i, r.fight.position)
		}
		if r.complete && r.most-r.least < float64(wording.NeutralBelow) {
			f.nothingMoves(i)
		}
	}
}

func (f *finder) partBites(part int, limit mixcore.Limit) func() bool {
	return func() bool { return f.out.Parts[part].Limits&limit != 0 }
}

func (f *finder) servoMaximum(part int, seen []float64) {
	p := &f.s.Parts[part]
	bites := f.partBites(part, mixcore.ServoMax)
	position := f.simplest(seen, bites)
	t := f.plan.Trace(&mixcore.Input{Position: position}).Parts[part]
	for i, d := range t.Drives {
		if d.Limits&mixcore.ServoMax == 0 {
			continue
		}
		most := p.Drives[i].Servo.Max
		f.warn(where.Drive(f.m, part, i, "servo.max_deg", "servo"), codeTravel,
			fmt.Sprintf("the servo of %s runs out of travel %s: its arm is asked for %s and goes to %s%s",
				p.Name, f.with(position), wording.AngleBeside(d.Wanted, most), wording.SetAngle(most), f.idleEnd(position, bites)),
			"take travel off with the throw, share, limit or end points, or use a longer arm and less of its swing")
		return
	}
}

func (f *finder) stopReached(part int, seen []float64) {
	p := &f.s.Parts[part]
	bites := f.partBites(part, mixcore.AtStop)
	position := f.simplest(seen, bites)
	wanted := mixcore.Degrees(f.plan.Trace(&mixcore.Input{Position: position}).Parts[part].Wanted)
	stop := p.Stops.Minus
	if wanted > 0 {
		stop = p.Stops.Plus
	}
	side := wording.Direction(p.Motion, wanted > 0)
	f.warn(where.Part(f.m, part, "stops."+strings.ToLower(side), "stops"), codeStop,
		fmt.Sprintf("%s is driven against its stop %s: it would go %s %s, the stop is at %s and the servo stalls there%s",
			p.Name, f.with(position), side, wording.AngleBeside(wanted, stop), wording.SetAngle(stop), f.idleEnd(position, bites)),
		"take travel off with the throw, share or end points until it stays clear of the stop")
}

func (f *finder) servosFight(part int, seen []float64) {
	p := &f.s.Parts[part]
	position := f.simplest(seen, f.partBites(part, mixcore.ServosFight))
	t := f.plan.Trace(&mixcore.Input{Position: position}).Parts[part]
	said := make([]string, len(t.Drives))
	for i, d := range t.Drives {
		said[i] = wording.Turn(p.Motion, d.Angle)
	}
	f.warn(where.Part(f.m, part, "servos"), codeFight,
		fmt.Sprintf("the servos of %s fight each other %s: they ask for %s, %s apart",
			p.Name, f.with(position), wording.Listed(said), wording.AngleBeside(t.Spread, mixcore.FightSpread)),
		"make them agree within "+wording.Angle(mixcore.FightSpread)+" over the whole travel, with end points, sub-trim or the linkages")
}

func (f *finder) nothingMoves(part int) {
	p := &f.s.Parts[part]
	var channels []string
	for i := range p.Drives {
		channels = append(channels, channelName(&f.s.Channels[p.Drives[i].Channel]))
	}
	stands := "stays at " + wording.Turn(p.Motion, mixcore.Degrees(f.parts[part].least))
	if !p.Motion.Hinged() {
		stands = "stays at " + wording.Percent(mixcore.Percent(f.parts[part].least))
	}
	f.warn(where.Part(f.m, part), codeNothingMoves,
		fmt.Sprintf("nothing moves %s: whatever the controls do, it %s", p.Name, stands),
		"look at the mix of "+wording.Listed(channels)+": its demands, shares and conditions")
}
