package script

import (
	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
)

// Asked is one sentence of a script that asks something, with all the steps before it that
// bear on it: a background's and those of its scenario, an outline's row filled in.
type Asked struct {
	Before   []Said // settings and movements, in their order
	Sentence string // in one spelling: see phrase.Plain
	Scenario string // for people; it does not count
	Text     string // as the script has it; it does not count
	Place    diag.Place
	Checked  result.Place // of the checks that it comes to, as a record has it
}

// Said is one step that sets or moves controls.
type Said struct {
	// Keyword is what the step's own comes to: "given", "when", or "and" for what is moved
	// together with the step before. A given that is apart from those before it is
	// "given then", where that makes a difference.
	Keyword  string
	Sentence string // in one spelling
}

// Resolve reads scripts and returns everything they ask, in the order of the files. It
// returns every problem; there is nothing else where one of them is an error.
func Resolve(m *airframes.Model, files []File) ([]Asked, []diag.Problem) {
	scenarios, _, problems := prepare(m, files)
	if diag.HasErrors(problems) {
		return nil, problems
	}
	var all []Asked
	for _, s := range scenarios {
		all = append(all, s.asks()...)
	}
	return all, problems
}

// asks are what a scenario asks.
func (s *scenario) asks() (all []Asked) {
	var before []Said
	for i := range s.steps {
		st := &s.steps[i]
		if !st.set {
			all = append(all, Asked{Before: before[:len(before):len(before)], Sentence: phrase.Plain(st.text), Scenario: s.name, Text: st.text, Place: st.place, Checked: st.checks[0].result.Place})
			continue
		}
		before = append(before, Said{s.keyword(st, len(before) == 0), phrase.Plain(st.text)})
	}
	return all
}

// keyword: givens add up, in however many groups, unless one of them puts everything back
// to rest.
func (s *scenario) keyword(st *step, first bool) string {
	switch {
	case st.role == phrase.Given && st.begun && !first && s.rests():
		return "given then"
	case st.role == phrase.Given:
		return "given"
	case st.begun:
		return "when"
	}
	return "and"
}

func (s *scenario) rests() bool {
	for i := range s.steps {
		if s.steps[i].rests {
			return true
		}
	}
	return false
}
