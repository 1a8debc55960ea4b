package findings

import (
	"fmt"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
)

// unused reports what the set-up writes down and then does not use: demands,
// phases and channels.
func (f *finder) unused() {
	used := f.usedDemands()
	for i := range f.s.Demands {
		if !used[i] {
			f.warn(where.Demand(f.m, i), codeIdleDemand,
				fmt.Sprintf("no channel takes the demand %s", f.s.Demands[i].Name),
				"add it to a mix, or take it away")
		}
	}
	for i, used := range f.usedPhases() {
		if !used {
			f.warn(where.Phase(f.m, i), codeIdlePhase,
				fmt.Sprintf("the phase %s changes nothing: no condition names it", f.s.Phases[i].Name),
				"name it in a when: of a rate or a mix line, or take it away if no script needs it either")
		}
	}
	driven := make([]bool, len(f.s.Channels))
	for i := range f.s.Parts {
		for j := range f.s.Parts[i].Drives {
			driven[f.s.Parts[i].Drives[j].Channel] = true
		}
	}
	for i, used := range driven {
		if !used {
			f.warn(where.Channel(f.m, i), codeIdleChannel,
				fmt.Sprintf("%s drives nothing: no surface, wheel, motor or extra names it", channelName(&f.s.Channels[i])),
				"write down what it moves, or take it away")
		}
	}
}

func (f *finder) usedDemands() []bool {
	used := make([]bool, len(f.s.Demands))
	for i := range f.s.Channels {
		for j := range f.s.Channels[i].Mix {
			if line := &f.s.Channels[i].Mix[j]; line.Op == mixcore.Add || line.Op == mixcore.ScaleBy {
				used[line.Demand] = true
			}
		}
	}
	return used
}

func (f *finder) usedPhases() []bool {
	used := make([]bool, len(f.s.Phases))
	f.EachWhen(func(c *mixcore.Condition) { namedPhases(c, used) })
	return used
}

func namedPhases(c *mixcore.Condition, named []bool) {
	switch {
	case c == nil:
	case c.Op == mixcore.InPhase:
		named[c.Phase] = true
	default:
		for i := range c.Args {
			namedPhases(&c.Args[i], named)
		}
	}
}

// idleControls reports controls that move nothing and switch positions that
// change nothing. It says so only where every combination was tried, and leaves
// out a control that comes to nothing because its demand or phase is not used.
func (f *finder) idleControls() {
	blamed := f.Nothing() // on a demand that no channel takes or a phase that nothing is for
	for i, used := range f.usedDemands() {
		if !used {
			f.AddDemand(blamed, i)
		}
	}
	for i, used := range f.usedPhases() {
		if !used {
			f.AddCondition(blamed, &f.s.Phases[i].When)
		}
	}
	for i := range f.s.Controls {
		c, r := &f.s.Controls[i], &f.controls[i]
		switch {
		case !r.complete || r.moves && c.Kind != mixcore.SwitchControl || f.trimOfIdle(i):
		case !r.moves && !blamed[i]:
			f.warn(where.Control(f.m, i), codeIdleControl, fmt.Sprintf("%s moves nothing: no channel differs wherever it stands", c.Name),
				"let a demand come from it or a condition name it, or take it away")
		case r.moves:
			f.idlePositions(i)
		}
	}
}

// trimOfIdle says whether a control is the trim of an axis that moves nothing
// itself.
func (f *finder) trimOfIdle(trim int) bool {
	if f.s.Controls[trim].Kind != mixcore.TrimControl {
		return false
	}
	for i := range f.s.Controls {
		c := &f.s.Controls[i]
		if c.Kind == mixcore.AxisControl && c.Axis == f.s.Controls[trim].Axis {
			return !f.controls[i].moves
		}
	}
	return false
}

func (f *finder) idlePositions(control int) {
	c := &f.s.Controls[control]
	for p := 1; p < len(c.Positions); p++ {
		if !f.controls[control].differs[p] {
			f.warn(where.Control(f.m, control), codeIdlePosition,
				fmt.Sprintf("%s %s changes nothing: every channel does what it does at %s", c.Name, c.Positions[p], c.Positions[p-1]),
				"let a condition or a value name it, or take the position away")
		}
	}
}
