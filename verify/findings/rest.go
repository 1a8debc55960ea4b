package findings

import (
	"fmt"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/wording"
)

// atRest looks at what nobody thinks of moving: motors that run and measured
// tables that are off neutral with every control where it rests.
func (f *finder) atRest() {
	for i := range f.s.Parts {
		f.motorAtRest(i)
		f.tablesWithoutCentre(i)
	}
}

func (f *finder) motorAtRest(part int) {
	p := &f.s.Parts[part]
	if p.Motor == nil {
		return
	}
	f.plan.Eval(&f.rest, f.out)
	o := f.out.Parts[part]
	if p.Motor.Stopped(o.Amount) {
		return
	}
	if safe := p.Motor.StoppedWhen; safe != nil && f.plan.Holds(safe, &f.rest) {
		return // motor-runs-when-safe says it
	}
	f.warn(where.Part(f.m, part), codeMotorAtRest,
		fmt.Sprintf("%s runs with everything at rest: it stands at %s, with %s", p.Name, wording.Position(p, o), f.restingFor(p.Drives[0].Channel)),
		"a throttle lever's demand wants curve: {0%: -100%, 100%: 100%}; and a switch rests at its first position, so list the one that stops the motor first")
}

// restingFor says where the controls rest that reach a channel.
func (f *finder) restingFor(channel int) string {
	var said []string
	for _, control := range f.ChannelReach(channel).Controls() {
		said = append(said, wording.Setting(f.s, control, f.rest.Position[control]))
	}
	if said == nil {
		return "no control to stop it"
	}
	return wording.Listed(said)
}

// tablesWithoutCentre finds measured tables that nobody measured at 0 %, where
// the straight line from a point one way to a point the other way is off
// neutral.
func (f *finder) tablesWithoutCentre(part int) {
	p := &f.s.Parts[part]
	for i := range p.Drives {
		table := p.Drives[i].Table
		right := slices.IndexFunc(table, func(at mixcore.Point) bool { return at.X >= 0 })
		if right <= 0 || table[right].X == 0 || table[right-1].Y*table[right].Y >= 0 {
			continue
		}
		angle := f.plan.DriveAngle(part, i, 0)
		if max(angle, -angle) <= f.m.Still {
			continue
		}
		f.warn(where.Drive(f.m, part, i, "measured"), codeNoCentre,
			fmt.Sprintf("the measured table of %s has no point at 0 %%, so a straight line between its neighbours puts it at %s there",
				p.Name, wording.Turn(p.Motion, angle)),
			"measure at 0 % too; if it is neutral there, add 0%: 0°")
	}
}
