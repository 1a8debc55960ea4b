package sense

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
)

// movedWay is the way in which an outcome wants a part to have moved.
func movedWay(o *phrase.Outcome) phrase.Way {
	switch o.Verb {
	case phrase.Move:
		return o.Way
	case phrase.Stops:
		return phrase.Slower
	}
	return phrase.NoWay
}

// standsFromNeutral is true for an outcome that wants a part off neutral, once
// at rest, where it would be at neutral in another position of the controls: then
// it says which way the part has to go from there.
func (l *looker) standsFromNeutral(a *phrase.Asked, other *mixcore.Input) bool {
	if a.Outcome.Verb != phrase.Stand || a.Outcome.Clock == phrase.After {
		return false
	}
	out := l.m.Plan.NewOutput()
	l.m.Plan.Eval(other, out)
	part := a.Outcome.Subject.Parts[0]
	if l.s.Parts[part].Motion == mixcore.OutIn {
		return a.Outcome.Way == phrase.Out && float64(out.Parts[part].Amount) <= phrase.EndReach
	}
	return math.Abs(float64(out.Parts[part].Angle)) < float64(l.m.Still)
}
