package findings

import (
	"fmt"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/wording"
)

// How close to an end counts as parked at it.
const (
	endReach = mixcore.Degrees(1) // and less is no travel worth having
	endShare = 0.05               // of the whole travel, for surfaces that move little
)

// parked looks at how far each surface can go from where it stands with
// everything at rest, and how near its linkage comes to locking.
func (f *finder) parked() {
	low, high := f.atFullOutput(-200), f.atFullOutput(+200)
	if low == nil || high == nil {
		return
	}
	f.plan.Eval(&f.rest, f.out)
	for i := range f.s.Parts {
		p := &f.s.Parts[i]
		if !p.Motion.Hinged() {
			continue
		}
		f.lock(i, low.Parts[i].Drives, high.Parts[i].Drives)
		if p.Kind != "spoiler" && p.Kind != "airbrake" { // these rest on their seat
			f.parkedAtEnd(i, low.Parts[i].Drives, high.Parts[i].Drives)
		}
	}
}

// atFullOutput is a trace of the model with every channel's mix replaced by a
// fixed percent, so that all its limits, end points, servos and linkages say how
// far it can go.
func (f *finder) atFullOutput(sum mixcore.Percent) *mixcore.Trace {
	s := *f.s
	s.Channels = append([]mixcore.Channel(nil), s.Channels...)
	for i := range s.Channels {
		s.Channels[i].Mix = []mixcore.MixLine{{Op: mixcore.Fixed, Value: sum}}
	}
	plan, faults := mixcore.Compile(s)
	if faults != nil {
		return nil
	}
	return plan.Trace(&f.rest)
}

func (f *finder) parkedAtEnd(part int, low, high []mixcore.DriveTrace) {
	p, at := &f.s.Parts[part], f.out.Parts[part].Angle
	var least, most mixcore.Degrees
	for i := range low {
		least += min(low[i].Angle, high[i].Angle)
		most += max(low[i].Angle, high[i].Angle)
	}
	n := mixcore.Degrees(len(low))
	least, most = max(least/n, -p.Stops.Minus), min(most/n, p.Stops.Plus)
	near := min(endReach, endShare*(most-least))
	if most-least < wording.NeutralBelow {
		return // it cannot move at all: nothing-moves
	}
	plus := most-at < near
	left, other := most-at, at-least
	if !plus {
		left, other = other, left
	}
	if left >= near {
		return
	}
	way, back := wording.Direction(p.Motion, plus), wording.Direction(p.Motion, !plus)
	message := fmt.Sprintf("%s rests at the end of its travel: with everything at rest it stands at %s, with %s left going %s and %s going %s",
		p.Name, wording.Turn(p.Motion, at), wording.Angle(max(left, 0)), way, wording.Angle(other), back)
	message += ", so it cannot " + cannot(p, way)
	if f.rolls(part) {
		message += " and cannot follow roll"
	}
	f.warn(where.Part(f.m, part), codeParkedAtEnd, message,
		"let it rest near the middle of its servo's travel: turn the arm on its shaft, set the pushrod anew, and let its lever start from there")
}

// cannot is what a part does not do that has no travel left one way.
func cannot(p *mixcore.Part, way string) string {
	switch {
	case p.Motion == mixcore.LeftRight:
		return "move " + way
	case way == wording.Direction(p.Motion, false):
		return "rise"
	}
	return "drop"
}

// rolls says whether a roll stick bears on a part.
func (f *finder) rolls(part int) bool {
	for _, c := range f.PartReach(part).Controls() {
		if f.s.Controls[c].Kind == mixcore.AxisControl && f.s.Controls[c].Axis == mixcore.Roll {
			return true
		}
	}
	return false
}
