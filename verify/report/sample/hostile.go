package sample

import "example.com/hingeline/verify/result"

// Nasty is a text with all that has a meaning of its own in some format, does not print,
// or turns the direction of what follows.
const Nasty = "a\x00b\x1b[31m\x7f\u0085 ]]> <b>&amp;\"' # SKIP \\# TODO\r\n  ...\nnot ok 9\t--- \u2028\u202e\ufeff\uffff \u2067אב\u2069 {x: 1} %20?#/ \xff 🛩"

// Hostile is a failed check in which every text that comes from a file, or from a file's
// name, is [Nasty].
func Hostile() *result.Report {
	r := Failing()
	r.Model = result.Model{Name: Nasty, File: Nasty}
	r.Scripts = []string{Nasty}
	r.Prints = []result.Print{{File: Nasty, SHA256: "00"}}
	place := result.Place{File: Nasty, Line: 3, Column: 2, Excerpt: Nasty, Note: Nasty}
	for i := range r.Checks {
		c := &r.Checks[i]
		c.Feature, c.Scenario, c.Sentence, c.Subject, c.Wanted, c.Got, c.Place = Nasty, Nasty, Nasty, Nasty, Nasty, Nasty, place
		c.Pose = []string{Nasty}
		if c.Passed {
			continue
		}
		c.Miss = Nasty
		c.Why = []result.Reason{{
			Of: Nasty, LookAt: []result.Place{place},
			Chain: []result.Step{{Stage: "part", Name: Nasty, Text: Nasty, Value: Nasty, Limit: Nasty, Place: place}},
		}}
	}
	r.Findings = []result.Finding{{Code: "bad-name", Message: Nasty, Hint: Nasty, Place: place}}
	r.Script = []result.ScriptFinding{{
		Code: "suspicious-expectation", Message: Nasty, Sentence: Nasty, Place: place, Reason: Nasty, Picture: Nasty, Right: Nasty, Hint: Nasty, Fails: true,
	}}
	r.Uncovered = result.Uncovered{Parts: []string{Nasty}, Controls: []string{Nasty}, Positions: []string{Nasty}}
	r.Cautions = []string{Nasty}
	return r
}
