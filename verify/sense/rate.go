package sense

import (
	"fmt"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// rates finds the rates that are in force in no sentence that moves their
// control: low rates and high rates both fly.
func (l *looker) rates() {
	for d := range l.s.Demands {
		demand := &l.s.Demands[d]
		if len(demand.Rates) < 2 {
			continue
		}
		tried := make([]bool, len(demand.Rates))
		for i := range l.asked {
			if a := &l.asked[i]; l.shows(a, demand.From) {
				for _, in := range l.tried(a, demand) {
					tried[l.rateAt(demand, &in)] = true
				}
			}
		}
		for k := range tried {
			if !tried[k] {
				l.add(l.untried(d, k))
			}
		}
	}
}

// shows is true for a sentence that shows which way something goes with a control
// moved, or off its rest.
func (l *looker) shows(a *phrase.Asked, control int) bool {
	if !tells(&a.Outcome) || a.At.Now.Lost {
		return false
	}
	if a.Outcome.Roams(l.s, &a.At)[control].Free {
		return true
	}
	now, rest := a.At.Now.Position[control], l.s.Controls[control].Rest()
	return now != rest || a.At.Moved && a.At.Before.Position[control] != now
}

// rateAt is the rate that is in force once everything has come to rest.
func (l *looker) rateAt(demand *mixcore.Demand, in *mixcore.Input) int {
	for k := range demand.Rates {
		if when := demand.Rates[k].When; when == nil || l.m.Plan.Holds(when, in) {
			return k
		}
	}
	return len(demand.Rates) - 1
}

func (l *looker) untried(demand, rate int) result.ScriptFinding {
	d := &l.s.Demands[demand]
	at := l.m.Places.Demands[demand]
	if places := l.m.Places.Rates[demand]; rate < len(places) {
		at = places[rate]
	}
	force := "the last rate is in force, which holds where no other does"
	if when := d.Rates[rate].When; when != nil {
		force = wording.Condition(l.s, when)
	}
	return missing(at, codeRate,
		fmt.Sprintf("no sentence moves the %s while %s (rate %d of %d of demand %s)", l.s.Controls[d.From].Name, force, rate+1, len(d.Rates), d.Name),
		"the model is flown with every rate that there is: each wants a sentence of its own", "")
}
