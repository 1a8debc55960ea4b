package said

import (
	"slices"
	"strconv"

	"example.com/hingeline/verify/result"
)

// mostLookedAt is how many lines of the airframe file a failure shows. More would only
// hide them.
const mostLookedAt = 5

// MostTelling are the lines of the airframe file that a failure shows, of all that are to
// be looked at.
func MostTelling(places []result.Place) []result.Place {
	return places[:min(len(places), mostLookedAt)]
}

// manyFailures is from how many failures on a report says what they have in common, and
// commonLines how many lines of the airframe file it names then.
const (
	manyFailures = 3
	commonLines  = 3
)

// Shared is a line of the airframe file that several failures point at.
type Shared struct {
	Place    result.Place
	Failures int
}

// SharedPlaces are the lines that most failures point at, most first: many failures often
// have one cause. There are none where few checks failed.
func SharedPlaces(r *result.Report) []Shared {
	if _, failed := r.Counts(); failed < manyFailures {
		return nil
	}
	index := map[result.Place]int{}
	var all []Shared
	for i := range r.Checks {
		for _, place := range shownPlaces(&r.Checks[i]) {
			place.Note = ""
			k, seen := index[place]
			if !seen {
				k = len(all)
				index[place] = k
				all = append(all, Shared{Place: place})
			}
			all[k].Failures++
		}
	}
	slices.SortStableFunc(all, func(a, b Shared) int { return b.Failures - a.Failures })
	all = all[:min(len(all), commonLines)]
	return slices.DeleteFunc(all, func(s Shared) bool { return s.Failures < 2 })
}

// ByCause are the failed checks, those together that seem to have one cause: they are of
// the same parts and point first at the same line of the airframe file.
func ByCause(r *result.Report) [][]int {
	var groups [][]int
	var causes []string
	for i := range r.Checks {
		c := &r.Checks[i]
		if c.Passed {
			continue
		}
		cause := causeOf(c)
		k := slices.Index(causes, cause)
		if k < 0 || cause == "" {
			causes, groups = append(causes, cause), append(groups, nil)
			k = len(groups) - 1
		}
		groups[k] = append(groups[k], i)
	}
	return groups
}

// causeOf is what the failures of one cause have in common; empty where nothing says.
func causeOf(c *result.Check) string {
	places := shownPlaces(c)
	if len(places) == 0 {
		return ""
	}
	cause := places[0].File + ":" + strconv.Itoa(places[0].Line)
	for _, why := range c.Why {
		cause += "\n" + why.Of
	}
	return cause
}

// Besides are the limits that bite at one failure and the lines that it points at, without
// those of another.
func Besides(c, other *result.Check) []string {
	var more []string
	add := func(words string) {
		if !slices.Contains(more, words) {
			more = append(more, words)
		}
	}
	known := limits(other)
	for _, limit := range limits(c) {
		if !slices.Contains(known, limit) {
			add("LIMIT " + limit)
		}
	}
	places := shownPlaces(other)
	for _, place := range shownPlaces(c) {
		if !slices.ContainsFunc(places, func(q result.Place) bool { return q.File == place.File && q.Line == place.Line }) {
			add("look at " + At(place))
		}
	}
	return more
}

// limits are those that bite on the way to what a check got.
func limits(c *result.Check) []string {
	var all []string
	for _, why := range c.Why {
		for _, s := range why.Chain {
			if s.Limit != "" {
				all = append(all, s.Limit)
			}
		}
	}
	return all
}

// shownPlaces are the places that a failed check shows, each once.
func shownPlaces(c *result.Check) []result.Place {
	if c.Passed {
		return nil
	}
	var places []result.Place
	for _, why := range c.Why {
		for _, place := range MostTelling(why.LookAt) {
			sameLine := func(q result.Place) bool { return q.File == place.File && q.Line == place.Line }
			if !slices.ContainsFunc(places, sameLine) {
				places = append(places, place)
			}
		}
	}
	return places
}
