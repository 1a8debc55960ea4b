package faults

import (
	"cmp"
	"math"
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/same"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// showing is where a mistake shows: a step, and a part that is not where it should be
// there; at a time on the way, or once all is at rest.
type showing struct {
	step  sight.Step
	part  int
	after mixcore.Seconds // 0: once all is at rest
}

func (j *judge) shows(d *same.Decision) showing {
	return showing{step: sight.StepTo(&j.m.Setup, d.Pose), part: d.Part}
}

// times are the moments at which a movement is looked at on its way, in seconds.
var times = []mixcore.Seconds{0.1, 0.2, 0.5, 1, 2, 3, 5, 10}

// mostJourneys is in how many movements a mistake that is about time is followed: those
// in which it is furthest off at once, for it shows best there.
const mostJourneys = 8

// atOnce is when a movement is looked at to know whether it is off, in seconds.
const atOnce = 0.01

// late finds where a mistake that is about time shows best: with one control moved from
// rest, or one with another one set.
func (j *judge) late(variant *airframes.Model, touched []int) (best showing, found bool) {
	right, wrong := j.m.Plan.NewOutput(), variant.Plan.NewOutput()
	off := func(step *sight.Step, after mixcore.Seconds) (part int, by float64) {
		j.m.Plan.EvalAfter(&step.From, &step.To, after, right)
		variant.Plan.EvalAfter(&step.From, &step.To, after, wrong)
		for _, i := range touched {
			if d := math.Abs(sight.PlaceOf(&j.m.Setup, i, right) - sight.PlaceOf(&variant.Setup, i, wrong)); d > by {
				part, by = i, d
			}
		}
		return part, by
	}
	type journey struct {
		step sight.Step
		by   float64
	}
	var all []journey
	j.eachJourney(touched, func(step *sight.Step) {
		if _, by := off(step, atOnce); by > phrase.Rounding {
			all = append(all, journey{*step, by})
		}
	})
	slices.SortStableFunc(all, func(a, b journey) int { return cmp.Compare(b.by, a.by) })
	widest := 0.0
	for _, one := range all[:min(mostJourneys, len(all))] {
		for _, after := range times {
			if part, by := off(&one.step, after); by > 2*j.still(part) && by > widest*1.05 {
				widest, found = by, true
				best = showing{step: one.step, part: part, after: after}
			}
		}
	}
	return best, found
}

// eachJourney visits movements of one control that bears on some parts, between rest and
// each of its places, with all else at rest and with another switch or lever set.
func (j *judge) eachJourney(parts []int, visit func(*sight.Step)) {
	probe := poses.New(j.m.Plan)
	reach := probe.Nothing()
	for _, part := range parts {
		reach.AddAll(probe.PartReach(part))
	}
	controls := reach.Controls()
	rest := j.m.Plan.Rest()
	from := func(base mixcore.Input, fixed int) {
		for _, c := range controls {
			if c == fixed {
				continue
			}
			for _, at := range probe.Points[c][1:] {
				step := sight.Step{From: base.Clone(), To: base.Clone()}
				step.To.Position[c] = at
				visit(&step)
			}
		}
	}
	from(rest, -1)
	for _, c := range controls {
		if kind := j.m.Setup.Controls[c].Kind; kind != mixcore.SwitchControl && kind != mixcore.LeverControl {
			continue
		}
		for _, at := range probe.Points[c][1:] {
			base := rest.Clone()
			base.Position[c] = at
			from(base, c)
		}
	}
}

// neverMoves says whether no journey moves any of some parts.
func (j *judge) neverMoves(parts []int) bool {
	moves := false
	before, after := j.m.Plan.NewOutput(), j.m.Plan.NewOutput()
	some := j.m.Plan.Some(parts)
	j.eachJourney(parts, func(step *sight.Step) {
		j.m.Plan.EvalSome(&step.From, &some, before)
		j.m.Plan.EvalSome(&step.To, &some, after)
		for _, part := range parts {
			moves = moves || math.Abs(sight.PlaceOf(&j.m.Setup, part, after)-sight.PlaceOf(&j.m.Setup, part, before)) > j.still(part)
		}
	})
	return !moves
}

// outputs are what a model does before and after a step.
func outputs(plan *mixcore.Plan, s *showing) (from, to *mixcore.Output) {
	from, to = plan.NewOutput(), plan.NewOutput()
	plan.Eval(&s.step.From, from)
	if s.after > 0 {
		plan.EvalAfter(&s.step.From, &s.step.To, s.after, to)
	} else {
		plan.Eval(&s.step.To, to)
	}
	return from, to
}

// tell writes down what a mistake that slips through does: the worst that it does to the
// aeroplane, and where that shows.
func (j *judge) tell(f *result.Fault, variant *airframes.Model, shows *showing) {
	worst := j.effects.worst(variant, shows)
	f.Rank, f.Consequence = worst.rank, worst.text
	if worst.at != nil {
		*shows = *worst.at
	}
	s := &j.m.Setup
	_, right := outputs(j.m.Plan, shows)
	_, wrong := outputs(variant.Plan, shows)
	f.Witness = &result.Counter{Pose: wording.Pose(s, &shows.step.To), Set: wording.Sets(s, &shows.step.To)}
	if !shows.step.Stands() {
		f.Witness.Before, f.Witness.Moved = wording.Moves(s, &shows.step.From, &shows.step.To)
	}
	p := &s.Parts[shows.part]
	when := ""
	if shows.after > 0 {
		when = "after " + wording.Time(shows.after) + ": "
	}
	f.Witness.Got = p.Name + " " + when + wording.Position(&variant.Setup.Parts[shows.part], wrong.Parts[shows.part])
	f.Wanted = when + wording.Position(p, right.Parts[shows.part])
}
