package script

import (
	"cmp"
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// Record is what happened.
type Record struct {
	Checks      []result.Check // in walk-around order, then in the script's
	NotSelected int            // checks that the selection left out
	Uncovered   result.Uncovered
}

// judge holds the check against the model and writes down what came of it.
func (ch *check) judge(m *airframes.Model, v *phrase.Vocabulary) {
	ch.verdict = v.Judge(&ch.outcome, ch.at)[0]
	shown := ch.at.Now.Shown()
	r := &ch.result
	r.Pose, r.Rests = wording.Pose(&m.Setup, &shown), true
	r.Before, r.Moved = movement(&m.Setup, ch.at)
	r.Wanted, r.Got, r.Passed = ch.verdict.Wanted, ch.verdict.Got, ch.verdict.Passed
	if !r.Passed {
		trace := ch.trace(m)
		if ch.verdict.Part >= 0 {
			r.Chain, r.LookAt = chain.Part(m, trace, ch.verdict.Part)
		} else {
			r.Chain, r.LookAt = chain.Channel(m, trace, ch.verdict.Channel)
		}
	}
	ch.done = true
}

// trace is the evaluation that the verdict came from.
func (ch *check) trace(m *airframes.Model) *mixcore.Trace {
	now := ch.at.Now.Input()
	if ch.verdict.Timed {
		before := ch.at.Before.Input()
		return m.Plan.TraceAfter(&before, &now, ch.verdict.Time)
	}
	return m.Plan.Trace(&now)
}

// recordOf gathers what the checks wrote down.
func recordOf(m *airframes.Model, scenarios []*scenario) Record {
	var rec Record
	each(scenarios, func(ch *check) {
		if ch.selected {
			rec.Checks = append(rec.Checks, ch.result)
		} else {
			rec.NotSelected++
		}
	})
	slices.SortStableFunc(rec.Checks, func(a, b result.Check) int {
		return cmp.Compare(slices.Index(result.Stages, a.Stage), slices.Index(result.Stages, b.Stage))
	})
	rec.Uncovered = uncovered(&m.Setup, scenarios)
	return rec
}
