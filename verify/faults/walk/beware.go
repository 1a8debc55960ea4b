package walk

import (
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/wording"
)

// What somebody must know before a step is done.
const (
	motorRuns    = "a motor runs here: propeller off, or the model restrained"
	motorMay     = "a motor may run here if something is wrong: propeller off, or the model restrained"
	switchOnSafe = "throttle closed and motor safe while the transmitter is switched on again"
	backAgain    = "close the throttle and make the motor safe before the transmitter is on again, and before anybody lets go of the model"
	letGo        = "close the throttle and make the motor safe before anybody lets go of the model"
	wheelsIn     = "the wheels come in: hold the model up"
	twoPeople    = "for two: one holds the controls, the other switches the transmitter off and looks"
)

// beware is what somebody must know before a step is done that follows an input left.
func beware(plan *mixcore.Plan, s *mixcore.Setup, left *mixcore.Input, st *sight.Step) (list []string) {
	earlier, before, after := plan.NewOutput(), plan.NewOutput(), plan.NewOutput()
	plan.Eval(left, earlier)
	plan.Eval(&st.From, before)
	plan.Eval(&st.To, after)
	runs, may, in := false, false, false
	for i := range s.Parts {
		p := &s.Parts[i]
		from, to := before.Parts[i].Place(), after.Parts[i].Place()
		switch {
		case p.Kind == "retract":
			in = in || to < from || from < earlier.Parts[i].Place() // with the movement, or as it is set
		case p.Motion == mixcore.Power:
			runs = runs || !p.Motor.Stopped(mixcore.Percent(from)) || !p.Motor.Stopped(mixcore.Percent(to))
			may = may || st.From.SignalLost || st.To.SignalLost || offRest(plan, i, &st.From) || offRest(plan, i, &st.To)
		}
	}
	switch {
	case runs:
		list = append(list, motorRuns)
	case may:
		list = append(list, motorMay)
	}
	if left.SignalLost && !st.From.SignalLost && hasMotor(s) {
		list = append(list, switchOnSafe)
	}
	if first := closedFirst(s, left, &st.From); first != "" {
		list = append(list, first)
	}
	if in {
		list = append(list, wheelsIn)
	}
	if st.To.SignalLost && !st.From.SignalLost && held(s, &st.From) {
		list = append(list, twoPeople)
	}
	return list
}

// closedFirst says what to close before a motor is made live, where the throttle is still
// open as a step is set; empty where it is not.
func closedFirst(s *mixcore.Setup, left, from *mixcore.Input) string {
	var closed, live []string
	for i, starts := range poses.Starters(s) {
		c, was, is := &s.Controls[i], left.Position[i], from.Position[i]
		switch {
		case starts == poses.OpensThrottle && poses.NearerRest(c, was, is):
			closed = append(closed, wording.Setting(s, i, is))
		case starts == poses.SwitchesMotor && is != was && is != c.Rest():
			live = append(live, wording.Setting(s, i, is))
		}
	}
	if closed == nil || live == nil {
		return ""
	}
	return "first " + wording.Listed(closed) + ", and only then " + wording.Listed(live)
}

// Left is what somebody must know who goes away from a model with a motor that stands at one
// of some inputs, with no step behind it; empty where nothing that bears on a motor is off
// rest, and the signal is there.
func Left(plan *mixcore.Plan, s *mixcore.Setup, stands ...*mixcore.Input) string {
	if !hasMotor(s) {
		return ""
	}
	if slices.ContainsFunc(stands, func(in *mixcore.Input) bool { return in.SignalLost }) {
		return backAgain
	}
	out := plan.NewOutput()
	for _, in := range stands {
		plan.Eval(in, out)
		for i := range s.Parts {
			p := &s.Parts[i]
			if p.Motion == mixcore.Power && (!p.Motor.Stopped(mixcore.Percent(out.Parts[i].Place())) || offRest(plan, i, in)) {
				return letGo
			}
		}
	}
	return ""
}

// offRest says whether a control that bears on a part stands elsewhere than at rest.
func offRest(plan *mixcore.Plan, part int, in *mixcore.Input) bool {
	rest := plan.Rest()
	for i, bears := range poses.New(plan).PartReach(part) {
		if bears && in.Position[i] != rest.Position[i] {
			return true
		}
	}
	return false
}

func hasMotor(s *mixcore.Setup) bool {
	for i := range s.Parts {
		if s.Parts[i].Motion == mixcore.Power {
			return true
		}
	}
	return false
}

// held says whether a stick springs back when it is let go.
func held(s *mixcore.Setup, in *mixcore.Input) bool {
	for i, at := range in.Position {
		if s.Controls[i].Kind == mixcore.AxisControl && at != 0 {
			return true
		}
	}
	return false
}
