package sentence

import (
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/wording"
)

// How close a sentence holds what stands now: about as close as a surface is set on the
// bench (common practice, no source), and a motor's or an extra's travel.
const (
	closeDegrees = 1.0
	closePercent = 5.0
)

// Written is a scenario made of a pose.
type Written struct {
	Text    string   // "Scenario: …", of whole lines
	LeftOut []string // parts of which no sentence could be written that holds
}

// Scenario is what the parts do at a pose as a scenario that stands by itself: everything
// rests, the controls that do not are put where they are, and each part stands where the
// set-up has it. Every line can be read and holds for the model now; what would not is
// left out and named. parts are indexes into Setup.Parts, nil for all. at must be fit for
// Plan.Eval.
func Scenario(m *airframes.Model, at *mixcore.Input, parts []int) Written {
	if parts == nil {
		for i := range m.Setup.Parts {
			parts = append(parts, i)
		}
	}
	given := settings(m, at)
	var w Written
	var then []string
	out := m.Plan.NewOutput()
	m.Plan.Eval(at, out)
	for _, i := range parts {
		p := &m.Setup.Parts[i]
		line := "the " + p.Name + " " + Stands(p, out.Parts[i], m.Still, tolerance(p))
		if holds(m, scenario(m, at, given, []string{line})) {
			then = append(then, line)
		} else {
			w.LeftOut = append(w.LeftOut, p.Name)
		}
	}
	if len(then) > 0 {
		w.Text = scenario(m, at, given, then)
	}
	return w
}

func tolerance(p *mixcore.Part) float64 {
	if p.Motion.Hinged() {
		return closeDegrees
	}
	return closePercent
}

// settings are the steps that bring the controls where they are, as a hand would.
func settings(m *airframes.Model, at *mixcore.Input) []string {
	steps := []string{"everything rests"}
	for _, i := range poses.FromRest(&m.Setup, at) {
		c, position := &m.Setup.Controls[i], at.Position[i]
		if position == c.Rest() {
			continue
		}
		place := strings.ReplaceAll(wording.Stand(c, position), " %", "%")
		if k := strings.Index(place, "% ("); c.Kind == mixcore.LeverControl && k > 0 {
			place = place[:k+1] // beside a detent: the number says where it is
		}
		steps = append(steps, "the "+c.Name+" is "+map[bool]string{true: "at "}[c.Kind == mixcore.LeverControl]+place)
	}
	if at.SignalLost {
		steps = append(steps, "the signal is lost")
	}
	return steps
}

// scenario puts steps together.
func scenario(m *airframes.Model, at *mixcore.Input, given, then []string) string {
	var b strings.Builder
	title := "at rest"
	if pose := wording.Pose(&m.Setup, at); len(pose) > 0 {
		title = strings.Join(pose, ", ")
	}
	b.WriteString("  Scenario: " + title + "\n")
	keyword := "Given "
	for _, step := range given {
		b.WriteString("    " + keyword + step + "\n")
		keyword = "And "
	}
	keyword = "Then "
	for _, step := range then {
		b.WriteString("    " + keyword + step + "\n")
		keyword = "And "
	}
	return b.String()
}

// holds says whether a scenario can be read by itself and passes.
func holds(m *airframes.Model, text string) bool {
	trial, _ := script.NewTrial(m, []script.File{{Name: "sentence.feature", Text: []byte("Feature: one pose\n\n" + text)}})
	return trial != nil && len(trial.Failing(m, 1)) == 0
}
