package verify

import (
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/wording"
)

// View is one position of the controls to look at.
type View struct {
	From  *phrase.Pose    // where the controls came from; nil once everything has come to rest
	To    phrase.Pose     // where they stand
	After mixcore.Seconds // how long ago they moved; needs From
	Parts []int           // the parts wanted, all if nil
	Speed float64         // airspeed in metres a second for roll rate and servo loads; 0 is that of the airframe file
}

// Show says what every part does at one position of the controls, and why; and,
// unless only some parts are wanted, what that does to the aeroplane.
// Make the poses of the view with MoveTo.
func Show(m *airframes.Model, v View) *result.Shown {
	to, hand := v.To.Input(), v.To.Shown()
	shown := &result.Shown{
		Tool:  Version,
		Model: result.Model{Name: m.Name, File: m.Source.Name},
		Pose:  wording.Pose(&m.Setup, &hand),
	}
	var trace *mixcore.Trace
	if v.From == nil {
		trace = m.Plan.Trace(&to)
	} else {
		from, handBefore := v.From.Input(), v.From.Shown()
		trace = m.Plan.TraceAfter(&from, &to, v.After)
		shown.From = wording.Pose(&m.Setup, &handBefore)
		shown.After = wording.Time(v.After)
	}
	if v.Parts == nil {
		speed := v.Speed
		if speed == 0 {
			speed = m.AirspeedMs
		}
		shown.Effect = effectOf(m, trace, speed)
	}
	for _, stage := range result.Stages {
		for i := range m.Setup.Parts {
			part := &m.Setup.Parts[i]
			if script.PartStage(part) != stage || v.Parts != nil && !slices.Contains(v.Parts, i) {
				continue
			}
			steps := chain.Part(m, trace, i)
			quoteSteps(steps, []*diag.Source{m.Source})
			shown.Parts = append(shown.Parts, result.ShownPart{
				Stage:    stage,
				Name:     part.Name,
				Position: wording.Position(part, trace.Output.Parts[i]),
				Limits:   chain.Limits(m, trace, i),
				Chain:    steps,
			})
		}
	}
	return shown
}
