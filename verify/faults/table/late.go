package table

import (
	"cmp"
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
)

// How movements are watched on the way. What a person can tell: a modelling choice, no
// source.
const (
	// watchStep is how often a place on the way is looked at.
	watchStep mixcore.Seconds = 0.02
	// watchLong is how long a part must be away from where it should be for somebody to
	// be sure that it comes too early or too late.
	watchLong mixcore.Seconds = 0.5
	// watchMost is how long a movement is followed.
	watchMost mixcore.Seconds = 10
	// mostJourneys is how many kinds of steps are followed for a mistake and a part:
	// those in which it has the longest way to go, for there it shows best.
	mostJourneys = 4
)

// lateness is by how much a part is away from where it should be on the way, by kind of
// step.
func (t *Table) lateness(variant *mixcore.Plan, c *column) []float64 {
	late := make([]float64, len(c.classes.kinds))
	longest := make([]int, len(late))
	way := func(k int) float64 {
		if kind := &c.classes.kinds[k]; !kind.stands {
			return math.Abs(c.move(kind).By())
		}
		return 0
	}
	for k := range longest {
		longest[k] = k
	}
	slices.SortStableFunc(longest, func(a, b int) int { return cmp.Compare(way(b), way(a)) })
	for _, k := range longest[:min(mostJourneys, len(longest))] {
		if way(k) == 0 {
			break
		}
		step := &t.Steps[c.classes.kinds[k].step]
		right := journey(t.Model.Plan, step, c.part)
		late[k] = apart(right, journey(variant, step, c.part))
	}
	return late
}

// journey is where a part is on the way, from watchStep to watchStep until it rests.
func journey(plan *mixcore.Plan, step *sight.Step, part int) []float64 {
	var places []float64
	next := mixcore.Seconds(0)
	plan.During(&step.From, &step.To, watchMost, func(now mixcore.Seconds, out *mixcore.Output) bool {
		if now >= next {
			places = append(places, out.Parts[part].Place())
			next += watchStep
		}
		return true
	})
	out := plan.NewOutput()
	plan.Eval(&step.To, out)
	return append(places, out.Parts[part].Place())
}

// apart is the most by which two journeys are apart for watchLong on end.
func apart(a, b []float64) float64 {
	long := int(math.Round(float64(watchLong / watchStep)))
	at := func(list []float64, i int) float64 { return list[min(i, len(list)-1)] }
	most := 0.0
	for i := 0; i < max(len(a), len(b)); i++ {
		least := math.Inf(1)
		for k := i; k <= i+long && least > most; k++ {
			least = math.Min(least, math.Abs(at(a, k)-at(b, k)))
		}
		most = math.Max(most, least)
	}
	return most
}

// Moment is when to look at a part on the way, to half a second, in a step that shows
// mistakes in time by it: where the first of them, as it should not be, is furthest away
// from where it should be. It is false where none shows.
func (t *Table) Moment(look sight.Look, step, part int) (mixcore.Seconds, bool) {
	for m := range t.wrong {
		for i := range t.wrong[m] {
			c := &t.wrong[m][i]
			if c.part != part || c.lateBy(step) < visible(look, &t.Model.Setup.Parts[part]) {
				continue
			}
			variant, faults := t.Model.Plan.Vary(t.Mistakes[m].Edit)
			if faults != nil {
				continue
			}
			right, wrong := journey(t.Model.Plan, &t.Steps[step], part), journey(variant, &t.Steps[step], part)
			return furthest(right, wrong), true
		}
	}
	return 0, false
}

// furthest is the half second at which two journeys are furthest apart.
func furthest(a, b []float64) mixcore.Seconds {
	half := int(math.Round(float64(watchLong / watchStep)))
	best, most := half, 0.0
	for i := half; i < max(len(a), len(b)); i += half {
		if away := math.Abs(a[min(i, len(a)-1)] - b[min(i, len(b)-1)]); away > most {
			best, most = i, away
		}
	}
	return watchStep * mixcore.Seconds(best)
}
