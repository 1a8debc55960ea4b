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
	"example.com/hingeline/verify/prove"
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

// takeTime says whether something that takes time, a slowed channel or a fading phase,
// bears on some parts: then they may be late or early, though they end where they should.
func takeTime(s *mixcore.Setup, parts []int) bool {
	return slices.ContainsFunc(parts, func(part int) bool {
		return fadesBearOn(s, part) ||
			slices.ContainsFunc(s.Parts[part].Drives, func(d mixcore.Drive) bool { return s.Channels[d.Channel].Slow > 0 })
	})
}

// fadesBearOn says whether a phase that takes time to come or go bears on a part.
func fadesBearOn(s *mixcore.Setup, part int) bool {
	fades := func(m mixcore.MixLine) bool {
		follows := m.Op == mixcore.Add || m.Op == mixcore.ScaleBy
		return s.Fades(m.When) || follows && slices.ContainsFunc(s.Demands[m.Demand].Rates, func(r mixcore.Rate) bool { return s.Fades(r.When) })
	}
	return slices.ContainsFunc(s.Parts[part].Drives, func(d mixcore.Drive) bool {
		return slices.ContainsFunc(s.Channels[d.Channel].Mix, fades)
	})
}

// late finds where a mistake that is about time shows best: with one control moved from
// rest, or one with another one set.
func (j *judge) late(variant *airframes.Model, touched []int) (best showing, found bool) {
	right, wrong := j.m.Plan.NewOutput(), variant.Plan.NewOutput()
	off := func(step *sight.Step, after mixcore.Seconds) (part int, by float64) {
		j.m.Plan.EvalAfter(&step.From, &step.To, after, right)
		variant.Plan.EvalAfter(&step.From, &step.To, after, wrong)
		for _, i := range touched {
			if d := math.Abs(right.Parts[i].Place() - wrong.Parts[i].Place()); d > by {
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
	try := func(step *sight.Step) {
		if _, by := off(step, atOnce); by > phrase.Rounding {
			all = append(all, journey{*step, by})
		}
	}
	j.eachJourney(touched, try)
	if len(all) == 0 {
		poses, _ := j.moving(touched)
		for i := range poses {
			j.eachWayTo(&poses[i], try)
		}
	}
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

// eachWayTo visits the movements of one control that end at a pose, and that from rest.
func (j *judge) eachWayTo(pose *mixcore.Input, visit func(*sight.Step)) {
	rest := j.m.Plan.Rest()
	for i := range pose.Position {
		if pose.Position[i] != rest.Position[i] {
			step := sight.Step{From: pose.Clone(), To: pose.Clone()}
			step.From.Position[i] = rest.Position[i]
			visit(&step)
		}
	}
	visit(&sight.Step{From: rest, To: pose.Clone()})
}

// moving is for each of some parts that moves a pose at which it is away from where it
// rests, with as few controls off rest as were found. never is true where it is proved
// that none of them ever moves, neither at rest nor on the way. The loss of the signal does
// not count: what a channel puts out then comes at once, and so does what it put out before.
func (j *judge) moving(parts []int) (poses []mixcore.Input, never bool) {
	never = true
	rest, out := j.m.Plan.Rest(), j.m.Plan.NewOutput()
	j.m.Plan.Eval(&rest, out)
	p := prove.New(j.m.Plan)
	for _, part := range parts {
		if fadesBearOn(&j.m.Setup, part) {
			never = false // on the way it may be where it never rests
		}
		at := out.Parts[part].Place()
		claim := prove.Claim{Now: prove.Everywhere(&j.m.Setup), Want: prove.Place{Part: part, Low: at - j.still(part)/2, High: at + j.still(part)/2}}
		d := p.Decide(j.ctx, &claim, prove.Options{Boxes: cmp.Or(j.o.Boxes, UsualBoxes), Plain: true})
		never = never && d.Answer == prove.Proved
		if d.Answer == prove.Disproved {
			poses = append(poses, j.plainer(part, at, &d.Pose.Now))
		}
	}
	return poses, never
}

// plainer brings one control after another of a pose to rest, while a part stays away
// from a place.
func (j *judge) plainer(part int, from float64, pose *mixcore.Input) mixcore.Input {
	in, rest, out := pose.Clone(), j.m.Plan.Rest(), j.m.Plan.NewOutput()
	for i := range in.Position {
		was := in.Position[i]
		low, high := j.m.Setup.Controls[i].Range()
		for _, in.Position[i] = range []float64{rest.Position[i], high, low, was} {
			j.m.Plan.Eval(&in, out)
			if math.Abs(out.Parts[part].Place()-from) > j.still(part)/2 {
				break
			}
		}
	}
	return in
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
