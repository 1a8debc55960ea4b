package said

import (
	"slices"
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

// SignalLost is the phrase of a pose that says so.
const SignalLost = "signal lost"

// Unseen reports whether a check asks about something that nobody can see on the model:
// what a channel puts out, the torque of a servo, so many percent of power, or what the
// parts do to the whole model. Where it turns the model, there are parts that move: whether
// each goes its way is to be seen.
func Unseen(c *result.Check) bool {
	switch {
	case c.Subject == "the model":
		return !turns(c)
	case OfChannel(c), strings.Contains(c.Wanted, "torque"), strings.Contains(c.Wanted, "% to the roll"):
		return true
	}
	return strings.HasPrefix(c.Got, "power ") && strings.Contains(c.Wanted, "%")
}

// turns reports whether a check of the model says which way it turns, and not that it does
// not, or how much there is beside it.
func turns(c *result.Check) bool {
	verb, way, _ := strings.Cut(c.Wanted, " ")
	return way != "" && (verb == "rolls" || verb == "pitches" || verb == "yaws")
}

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

// Walk are the stops with what can be seen at them; those without are left out.
func (all *Checks) Walk() []Stop { return all.stopsWith(false) }

// Asked are the stops with what the set-up is asked there and nobody can see.
func (all *Checks) Asked() []Stop { return all.stopsWith(true) }

func (all *Checks) stopsWith(unseen bool) []Stop {
	var stops []Stop
	for _, s := range all.Stops() {
		s.Checks = slices.DeleteFunc(s.Checks, func(i int) bool { return Unseen(&all.report.Checks[i]) != unseen })
		if len(s.Checks) > 0 {
			stops = append(stops, s)
		}
	}
	return stops
}

// AskedTitle heads what is asked and cannot be seen.
func AskedTitle(stops []Stop) string {
	n := 0
	for _, s := range stops {
		n += len(s.Checks)
	}
	return "Asked of the set-up, not to be seen on the model: " + Count(n, "check")
}

// AskedNote says why there is nothing to tick there.
const AskedNote = "Pulses, travel, torque, percent of power and what the parts do together were worked out from the set-up as written. There is nothing to tick."

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
