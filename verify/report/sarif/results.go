package sarif

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strings"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// The rules of what has no problem code.
const (
	ruleFailed  = "check-failed"
	ruleNothing = "nothing-checked"
	ruleLeftOut = "checks-left-out"
)

// results are what was found, with the rules that it goes by.
type results struct {
	list  []resultJSON
	rules []string
	index map[string]int
	seen  map[string]int // of each fingerprint's words: how often
}

func resultsOf(r *result.Report) *results {
	found := &results{list: []resultJSON{}, index: map[string]int{}, seen: map[string]int{}}
	found.checks(r)
	for i := range r.Script {
		found.script(&r.Script[i])
	}
	for _, f := range r.Findings {
		found.add(resultJSON{
			Rule: f.Code, Level: levelWarning, Message: messageJSON{joined(f.Message, f.Hint)}, Locations: locations(f.Place),
		}, f.Place.File, f.Message)
	}
	if r.NotSelected > 0 {
		text := said.LeftOut(r) + ": what is here speaks for a part of the script"
		found.add(resultJSON{Rule: ruleLeftOut, Level: levelNote, Message: messageJSON{text}, Locations: locations(result.Place{File: r.Model.File})})
	}
	if r.Verdict == result.NothingChecked || len(r.Checks) == 0 {
		found.whole(ruleNothing, r)
	} else if r.Verdict == result.Failed && !found.failing() {
		found.whole(ruleFailed, r)
	}
	return found
}

// whole adds what the verdict says of the airframe file as a whole.
func (found *results) whole(rule string, r *result.Report) {
	found.add(resultJSON{Rule: rule, Level: levelError, Message: messageJSON{said.VerdictOf(r).String()},
		Locations: locations(result.Place{File: r.Model.File})})
}

func (found *results) failing() bool {
	for i := range found.list {
		if found.list[i].Level == levelError {
			return true
		}
	}
	return false
}

// checks adds the checks that failed.
func (found *results) checks(r *result.Report) {
	all := said.ChecksOf(r)
	for i := range r.Checks {
		c := &r.Checks[i]
		if c.Passed {
			continue
		}
		text := all.Sentence(i) + "\n" + strings.Join(all.Failure(i), "\n")
		one := resultJSON{Rule: ruleFailed, Level: levelError, Message: messageJSON{text}, Locations: locations(c.Place)}
		for _, why := range c.Why {
			for _, place := range said.MostTelling(why.LookAt) {
				for _, l := range locations(place) {
					l.Message = &messageJSON{"look at this line, of " + said.WithArticle(why.Of)}
					if place.Note != "" {
						l.Message.Text += ": " + place.Note
					}
					one.Related = append(one.Related, l)
				}
			}
		}
		found.add(one, c.Place.File, c.Feature, c.Scenario, c.Sentence, c.Subject, all.Pose(i))
	}
}

// script adds a finding about the script. One that the pilot has decided is suppressed in
// the script itself.
func (found *results) script(f *result.ScriptFinding) {
	one := resultJSON{Rule: f.Code, Level: levelWarning, Locations: locations(f.Place),
		Message: messageJSON{joined(f.Message, said.ScriptReasons(f)...)}}
	if f.Fails {
		one.Level = levelError
	} else if f.OnPurpose {
		one.Suppressions = []suppressionJSON{{"inSource", "on purpose, the pilot's own decision"}}
	}
	found.add(one, f.Place.File, f.Sentence, f.Message)
}

// add takes a result in. What tells it from others of its rule makes its fingerprint,
// whatever lines are above it; several that are alike are counted.
func (found *results) add(one resultJSON, apart ...string) {
	index, known := found.index[one.Rule]
	if !known {
		index = len(found.rules)
		found.index[one.Rule] = index
		found.rules = append(found.rules, one.Rule)
	}
	one.Index = index
	words := fmt.Sprintf("%q", append([]string{one.Rule}, apart...))
	found.seen[words]++
	sum := sha256.Sum256(fmt.Appendf(nil, "%s %d", words, found.seen[words]))
	one.Fingerprints = map[string]string{"hingeline/v1": hex.EncodeToString(sum[:16])}
	found.list = append(found.list, one)
}

func joined(first string, more ...string) string {
	lines := []string{first}
	for _, m := range more {
		if m != "" {
			lines = append(lines, m)
		}
	}
	return strings.Join(lines, "\n")
}

// rulesOf are the rules that the results go by, in the order in which they come up.
func rulesOf(found *results) []ruleJSON {
	rules := []ruleJSON{}
	for _, id := range found.rules {
		rule := ruleJSON{ID: id}
		rule.Default.Level = levelWarning
		switch id {
		case ruleFailed:
			rule.Short.Text, rule.Default.Level = "The set-up does not do what a sentence of the script asks.", levelError
		case ruleNothing:
			rule.Short.Text, rule.Default.Level = "No check ran: this says nothing about the model.", levelError
		case ruleLeftOut:
			rule.Short.Text, rule.Default.Level = "Checks of the script were left out.", levelNote
		default:
			rule.Short.Text = strings.ToUpper(id[:min(len(id), 1)]) + strings.ReplaceAll(id[min(len(id), 1):], "-", " ") + "."
			rule.Help = &messageJSON{"hingeline explain " + id + " says what it means and what to do."}
		}
		rules = append(rules, rule)
	}
	return rules
}
