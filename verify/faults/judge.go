package faults

import (
	"cmp"
	"context"
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/same"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// Options say which mistakes to make, and how long to search.
type Options struct {
	mistake.Options
	Boxes    int                 // most boxes of one proof; 0 is UsualBoxes
	Progress func(done, all int) // called before each mistake; may be nil
}

// UsualBoxes is the limit of the proof that a mistake changes nothing.
const UsualBoxes = 20_000

// Judge makes one mistake after another in a model and holds the scripts against it. It
// returns every problem of the scripts, and nil where one is an error. If ctx is done, the
// mistakes that are left are undecided and Stopped says so.
func Judge(ctx context.Context, m *airframes.Model, files []script.File, o Options) (*result.Faults, []diag.Problem) {
	trial, problems := script.NewTrial(m, files)
	if trial == nil {
		return nil, problems
	}
	r := &result.Faults{Checks: trial.Len()}
	for _, f := range files {
		r.Scripts = append(r.Scripts, f.Name)
	}
	if len(o.Only) > 0 {
		r.Left = len(mistake.Kinds()) - len(o.Only)
	}
	fails := 0
	trial.TryAll(m, func(_ int, h phrase.Holding) bool {
		if h != phrase.Holds {
			fails++
		}
		return true
	})
	if fails > 0 {
		r.Verdict = result.AlreadyWrong
		return r, problems
	}
	j := newJudge(ctx, m, trial, &o)
	for i := range j.mistakes {
		if o.Progress != nil {
			o.Progress(i, len(j.mistakes))
		}
		r.Faults = append(r.Faults, j.judge(i))
	}
	if ctx.Err() != nil {
		r.Stopped = "stopped by hand"
	}
	j.addSentences(r.Faults)
	r.Spare = j.spare()
	slices.SortStableFunc(r.Faults, func(a, b result.Fault) int {
		return cmp.Or(cmp.Compare(slices.Index(order, a.State), slices.Index(order, b.State)), cmp.Compare(a.Rank, b.Rank))
	})
	r.Verdict = verdict(r)
	return r, problems
}

// order is that of the states in a report.
var order = []result.FaultState{result.Missed, result.Open, result.Invisible, result.NotBuilt, result.Caught}

func verdict(r *result.Faults) result.FaultsVerdict {
	switch s := r.Score(); {
	case len(r.Faults) == 0:
		return result.NoMistakes
	case s.Missed > 0, s.Open > 0:
		return result.SomeMissed
	}
	return result.NoneMissed
}

// judge is one run.
type judge struct {
	ctx      context.Context
	m        *airframes.Model
	trial    *script.Trial
	o        *Options
	mistakes []mistake.Mistake
	missed   []missed
	needed   []bool // by scenario: some mistake is caught by no other one
	effects  *effects
}

// missed is a mistake that slips through.
type missed struct {
	fault   int // index among the report's faults, before they are sorted
	variant *airframes.Model
	touched []int
	shows   showing
}

func newJudge(ctx context.Context, m *airframes.Model, trial *script.Trial, o *Options) *judge {
	return &judge{
		ctx: ctx, m: m, trial: trial, o: o, mistakes: mistake.All(m, o.Options),
		needed: make([]bool, trial.Scenarios()), effects: newEffects(m),
	}
}

// still is up to which two places of a part count as the same, in degrees or percent.
func (j *judge) still(part int) float64 { return j.m.StillOf(&j.m.Setup.Parts[part]) }

func (j *judge) judge(index int) result.Fault {
	wrong := &j.mistakes[index]
	place := wrong.Place()
	f := result.Fault{
		Kind: wrong.Kind.Code, Title: wrong.Kind.Title, Text: wrong.Text,
		Place: result.Place{File: place.File, Line: place.Line, Column: place.Column},
	}
	if j.ctx.Err() != nil {
		f.State, f.Reason = result.Open, "stopped by hand before it was tried"
		return f
	}
	variant, faults := wrong.Variant(j.m)
	if faults != nil {
		f.State, f.Reason = result.NotBuilt, faults[0].Message
		return f
	}
	touched := mistake.Touched(j.m.Plan, variant.Plan)
	if f.By = j.caught(variant, touched); len(f.By) > 0 {
		f.State = result.Caught
		return f
	}
	d := same.Decide(j.ctx, j.m.Plan, variant.Plan, touched, same.Options{Still: j.still, Boxes: cmp.Or(j.o.Boxes, UsualBoxes)})
	shows, late := showing{}, false
	if d.Answer == same.Same && (wrong.Kind.Timed || takeTime(&j.m.Setup, touched) || takeTime(&variant.Setup, touched)) {
		shows, late = j.late(variant, touched)
	}
	switch {
	case late:
	case d.Answer == same.Different:
		shows = j.shows(&d)
	case d.Answer == same.Same && wrong.Kind.Timed && !j.never(touched):
		f.State, f.Reason = result.Open, "it ends where it should, and no movement was found in which it is late or early"
		return f
	case d.Answer == same.Same:
		f.State, f.Reason = result.Invisible, d.Reason()
		if len(touched) == 0 {
			f.Reason = "nothing in the file hangs on it: it drives no part"
		}
		return f
	default:
		f.State, f.Reason = result.Open, "the search for a difference reached its limit"
		return f
	}
	f.State = result.Missed
	j.tell(&f, variant, &shows)
	j.missed = append(j.missed, missed{fault: index, variant: variant, touched: touched, shows: shows})
	return f
}

// never says whether it is proved that none of some parts ever moves.
func (j *judge) never(parts []int) bool {
	_, never := j.moving(parts)
	return never
}

// mostBy is how many checks are named that catch a mistake.
const mostBy = 3

// caught are checks that fail on a variant, and nil if none does. It looks on until two
// scenarios catch it, to learn which scenarios nothing can stand in for.
func (j *judge) caught(variant *airframes.Model, touched []int) []result.CaughtBy {
	var by []result.CaughtBy
	only := -1
	j.trial.Try(variant, touched, func(i int, h phrase.Holding) bool {
		if h != phrase.Fails {
			return j.ctx.Err() == nil
		}
		about, scenario := j.trial.Check(i)
		if len(by) < mostBy {
			by = append(by, about)
		}
		if only >= 0 && only != scenario {
			only = -1
			return false
		}
		only = scenario
		return true
	})
	if only >= 0 {
		j.needed[only] = true
	}
	return by
}

// spare are the scenarios that another one can stand in for, each by itself.
func (j *judge) spare() (list []result.Spare) {
	if j.ctx.Err() != nil || len(j.o.Only) > 0 {
		return nil // not every mistake was tried
	}
	told := make([]bool, len(j.needed))
	for i := range j.trial.Len() {
		about, scenario := j.trial.Check(i)
		if !j.needed[scenario] && !told[scenario] {
			told[scenario] = true
			list = append(list, result.Spare{Scenario: about.Scenario, Place: about.Place})
		}
	}
	return list
}
