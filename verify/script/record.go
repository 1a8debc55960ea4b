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
	Judged      []Judged       // how each of Checks was judged
	Asked       []phrase.Asked // every outcome in the script's order, those not selected too
	NotSelected int            // checks that the selection left out
	Uncovered   result.Uncovered
}

// Judged is how one check was judged: for who draws it.
type Judged struct {
	Outcome phrase.Outcome // of one part or channel, or of the whole
	At      phrase.Situation
	Verdict phrase.Verdict
}

// judge holds the check against the model and writes down what came of it.
func (ch *check) judge(m *airframes.Model, v *phrase.Vocabulary) {
	ch.verdict = v.Judge(&ch.outcome, ch.at)[0]
	at := ch.judgedAt()
	shown := at.Now.Shown()
	r := &ch.result
	r.Pose, r.Rests = wording.Pose(&m.Setup, &shown), true
	r.Before, r.Moved = movement(&m.Setup, at)
	r.Proof = ch.verdict.Proof
	r.Wanted, r.Got, r.Passed = ch.verdict.Wanted, ch.verdict.Got, ch.verdict.Passed
	if !r.Passed {
		ch.explain(m, v)
	}
	ch.done = true
}

// judgedAt is where the controls stand that the verdict speaks of: of an outcome about
// every position that does not hold, where it fails.
func (ch *check) judgedAt() phrase.Situation {
	if ch.verdict.Found != nil {
		return *ch.verdict.Found
	}
	return ch.at
}

// explain says why a failed check got what it got, and which lines of the
// airframe file to look at; of a comparison for both parts, of an outcome about
// the model for the two parts that tell most.
func (ch *check) explain(m *airframes.Model, v *phrase.Vocabulary) {
	at := ch.judgedAt()
	if ch.outcome.Every != nil && ch.verdict.Found == nil {
		return // nothing was found to explain
	}
	c := chain.Case{Now: ch.trace(m, at)}
	var from *mixcore.Output
	if at.Moved {
		before := at.Before.Input()
		c.Before = m.Plan.Trace(&before)
		from = &c.Before.Output
	}
	part := func(i int, doubt chain.Doubt) {
		c.Doubt = doubt
		ch.result.Why = append(ch.result.Why, result.Reason{
			Of: m.Setup.Parts[i].Name, Chain: chain.Part(m, c.Now, i), LookAt: chain.LookAtPart(m, c, i),
		})
	}
	switch verdict := &ch.verdict; {
	case verdict.Part >= 0:
		doubt := v.Doubt(&ch.outcome, verdict, from, &c.Now.Output)
		ch.result.Miss = v.Miss(&ch.outcome, verdict, from, &c.Now.Output)
		part(verdict.Part, doubt)
		if ch.outcome.Verb.Compares() {
			part(ch.outcome.Other, doubt)
		}
	case verdict.Channel >= 0:
		c.Doubt = v.Doubt(&ch.outcome, verdict, from, &c.Now.Output)
		ch.result.Miss = v.Miss(&ch.outcome, verdict, from, &c.Now.Output)
		ch.result.Why = []result.Reason{{
			Of: ch.subject, Chain: chain.Channel(m, c.Now, verdict.Channel), LookAt: chain.LookAtChannel(m, c, verdict.Channel),
		}}
	default:
		for _, e := range verdict.Explain {
			part(e.Part, e.Doubt)
		}
	}
}

// trace is the evaluation that the verdict came from.
func (ch *check) trace(m *airframes.Model, at phrase.Situation) *mixcore.Trace {
	now := at.Now.Input()
	if ch.verdict.Timed {
		before := at.Before.Input()
		return m.Plan.TraceAfter(&before, &now, ch.verdict.Time)
	}
	return m.Plan.Trace(&now)
}

// recordOf gathers what the checks wrote down.
func recordOf(m *airframes.Model, scenarios []*scenario) Record {
	var rec Record
	var order []int // of each check that ran: its index in Asked
	each(scenarios, func(ch *check) {
		r := &ch.result
		if ch.selected {
			order = append(order, len(rec.Asked))
			rec.Checks = append(rec.Checks, *r)
			rec.Judged = append(rec.Judged, Judged{Outcome: ch.outcome, At: ch.at, Verdict: ch.verdict})
		} else {
			rec.NotSelected++
		}
		rec.Asked = append(rec.Asked, phrase.Asked{Outcome: ch.outcome, At: ch.at, Title: ch.subject, Check: -1,
			Feature: r.Feature, Scenario: r.Scenario, Sentence: r.Sentence, Place: r.Place})
	})
	walk := make([]int, len(rec.Checks)) // indices of Checks, in walk-around order
	for i := range walk {
		walk[i] = i
	}
	slices.SortStableFunc(walk, func(a, b int) int {
		return cmp.Compare(slices.Index(result.Stages, rec.Checks[a].Stage), slices.Index(result.Stages, rec.Checks[b].Stage))
	})
	walked, judged := make([]result.Check, len(walk)), make([]Judged, len(walk))
	for at, i := range walk {
		walked[at], judged[at], rec.Asked[order[i]].Check = rec.Checks[i], rec.Judged[i], at
	}
	rec.Checks, rec.Judged = walked, judged
	rec.Uncovered = uncovered(&m.Setup, scenarios)
	return rec
}
