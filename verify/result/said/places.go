package said

import (
	"slices"

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
