package walk

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/wording"
)

// Say is a step of a table in words, with what every part does on the model as it
// should be. Ready is as from rest; what the step shows, and its stages, are left to
// those who know which mistakes are in question.
func Say(t *table.Table, look sight.Look, step int) result.WalkStep {
	rest := t.Model.Plan.Rest()
	return SayAfter(t, look, step, &rest)
}

// SayAfter is Say where the controls are left somewhere else than at rest.
func SayAfter(t *table.Table, look sight.Look, step int, left *mixcore.Input) result.WalkStep {
	plan, s, st := t.Model.Plan, &t.Model.Setup, &t.Steps[step]
	said := result.WalkStep{
		Ready:  ready(s, left, &st.From),
		Stand:  wording.Pose(s, &st.From),
		Move:   moved(s, st),
		Beware: beware(plan, s, left, st),
	}
	for _, i := range script.PartOrder(s) {
		said.Parts = append(said.Parts, result.WalkPart{
			Name: s.Parts[i].Name, Stage: script.PartStage(&s.Parts[i]),
			Way: way(look, &s.Parts[i], st, t.Move(table.None, step, i)), Exact: exact(&s.Parts[i], st, t.Move(table.None, step, i)),
		})
	}
	return said
}

// ready is what must be brought elsewhere before a step: what does not come by itself,
// and sticks to be held.
func ready(s *mixcore.Setup, left, from *mixcore.Input) (list []string) {
	for _, i := range poses.HandOrder(s, left, from) {
		at, was := from.Position[i], left.Position[i]
		if s.Controls[i].Kind == mixcore.AxisControl {
			was = 0
		}
		if at != was {
			list = append(list, wording.Setting(s, i, at))
		}
	}
	if left.SignalLost && !from.SignalLost {
		list = append(list, "signal back")
	}
	return list
}

// moved is what a step moves, as it then stands.
func moved(s *mixcore.Setup, st *sight.Step) (list []string) {
	for _, i := range poses.HandOrder(s, &st.From, &st.To) {
		if at := st.To.Position[i]; at != st.From.Position[i] {
			list = append(list, wording.Setting(s, i, at))
		}
	}
	if st.To.SignalLost && !st.From.SignalLost {
		list = append(list, wording.SignalLost)
	}
	return list
}

// way is what an eye sees of a part in a step, in a word.
func way(look sight.Look, p *mixcore.Part, st *sight.Step, m sight.Move) string {
	if p.Motion == mixcore.Power {
		return powerWay(look, p, st, m)
	}
	switch look.Way(p, m) {
	case sight.Plus:
		return wording.Direction(p.Motion, true)
	case sight.Minus:
		return wording.Direction(p.Motion, false)
	case sight.Unclear:
		return result.ALittle
	}
	switch {
	case !st.Stands():
		return "STAYS"
	case p.Motion == mixcore.OutIn:
		return "IN"
	}
	return "AT NEUTRAL"
}

func powerWay(look sight.Look, p *mixcore.Part, st *sight.Step, m sight.Move) string {
	was, is := p.Motor.Stopped(mixcore.Percent(m.From)), p.Motor.Stopped(mixcore.Percent(m.To))
	switch {
	case is && (was || st.Stands()):
		return "STOPPED"
	case is:
		return "STOPS"
	case was || st.Stands():
		return "RUNS"
	}
	switch look.Way(p, m) {
	case sight.Plus:
		return "FASTER"
	case sight.Minus:
		return "SLOWER"
	case sight.Unclear:
		return result.ALittle
	}
	return "STAYS"
}

// exact is where a part stands before and after a step: "18.4° UP to 12° UP (10.4 mm)".
func exact(p *mixcore.Part, st *sight.Step, m sight.Move) string {
	to := place(p, m.To)
	if travel := mixcore.ChordTravel(p.Chord, mixcore.Degrees(math.Abs(m.To))); p.Motion.Hinged() && travel > 0 && to != neutral {
		to += " (" + wording.Length(travel) + ")"
	}
	if from := place(p, m.From); !st.Stands() && from != place(p, m.To) {
		return from + " to " + to
	}
	return to
}

const neutral = "neutral"

// place says where a part is.
func place(p *mixcore.Part, at float64) string {
	switch {
	case p.Motion == mixcore.Power && p.Motor.Stopped(mixcore.Percent(at)):
		return "stopped"
	case p.Motion == mixcore.Power:
		return wording.Percent(mixcore.Percent(at))
	case p.Motion == mixcore.OutIn:
		return wording.Percent(mixcore.Percent(at)) + " out"
	case math.Abs(at) < float64(wording.NeutralBelow):
		return neutral
	}
	return wording.Angle(mixcore.Degrees(at)) + " " + wording.Direction(p.Motion, at > 0)
}
