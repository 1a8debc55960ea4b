package said

import (
	"strings"

	"example.com/hingeline/verify/result"
)

// Stop is one stop of the walk-around: checks of one stage that are looked at together,
// because the controls stand alike.
type Stop struct {
	Stage  result.Stage
	Pose   string
	Checks []int // by their index in the report
}

// Everywhere reports whether a check speaks of more positions than can be set and looked at.
func Everywhere(c *result.Check) bool {
	return c.Proof != nil && c.Proof.Answer != result.Disproved
}

// OfChannel reports whether a check is about what a channel puts out, which cannot be seen
// on the model.
func OfChannel(c *result.Check) bool { return strings.HasPrefix(c.Subject, "channel ") }

// Stops are the stops of a report, in walking order. Checks of more positions than can be
// set are in none.
func (all *Checks) Stops() []Stop {
	var stops []Stop
	for i := range all.report.Checks {
		c := &all.report.Checks[i]
		if Everywhere(c) {
			continue
		}
		joined := false
		for k := len(stops) - 1; k >= 0 && stops[k].Stage == c.Stage && !joined; k-- {
			if joined = stops[k].Pose == all.poses[i]; joined {
				stops[k].Checks = append(stops[k].Checks, i)
			}
		}
		if !joined {
			stops = append(stops, Stop{c.Stage, all.poses[i], []int{i}})
		}
	}
	return stops
}

// Everywhere are the checks that are in no stop.
func (all *Checks) Everywhere() []int {
	var checks []int
	for i := range all.report.Checks {
		if Everywhere(&all.report.Checks[i]) {
			checks = append(checks, i)
		}
	}
	return checks
}

// Sight is what is to be seen for one sentence: checks that ask the same of one part or of
// several, with one answer each.
type Sight struct {
	Sentence string
	Passed   bool
	Checks   []int
}

// Sights are checks gathered by their sentences, in their order. Failed ones stand alone.
func (all *Checks) Sights(checks []int) []Sight {
	var sights []Sight
	for _, i := range checks {
		c := &all.report.Checks[i]
		joined := false
		for k := 0; k < len(sights) && c.Passed && !joined; k++ {
			if joined = sights[k].Passed && sights[k].Sentence == c.Sentence; joined {
				sights[k].Checks = append(sights[k].Checks, i)
			}
		}
		if !joined {
			sights = append(sights, Sight{c.Sentence, c.Passed, []int{i}})
		}
	}
	return sights
}
