package compare

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/resolved"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// Which scripts ask a check.
const (
	newerScript = "newer"
	olderScript = "older"
	bothScripts = "both"
)

// asking is what scripts ask, held against both set-ups.
type asking struct {
	scripts string // newerScript or olderScript
	was, is []judged
	unread  string // why they could not be held against both; else empty
}

// judged is one check and what came of it.
type judged struct {
	key string // what is asked of whom, whatever the script
	result.Check
}

// judged holds both scripts against both set-ups.
func (c *comparison) judged() {
	same := len(c.out.Asked) == 0 && len(c.old.Scripts) > 0 && len(c.new.Scripts) > 0
	if c.out.SetUp == nil && same {
		return
	}
	var newer, older asking
	if len(c.new.Scripts) > 0 {
		newer = hold(newerScript, c.new.Scripts, c.inNewWords(), c.new.Model)
		c.note(newer.unread)
	}
	if len(c.old.Scripts) > 0 && !same {
		older = hold(olderScript, c.old.Scripts, c.old.Model, resolved.InWordsOf(c.new.Model, c.old.Model))
		c.note(older.unread)
	}
	asked := map[string]string{} // by key: which scripts
	for _, j := range newer.all() {
		asked[j.key] = newerScript
	}
	for _, j := range older.all() {
		if asked[j.key] == "" {
			asked[j.key] = olderScript
		} else if asked[j.key] == newerScript {
			asked[j.key] = bothScripts
		}
	}
	if same {
		for key := range asked {
			asked[key] = bothScripts
		}
	}
	told := map[string]bool{}
	for _, a := range []asking{newer, older} {
		c.tell(a, asked, told)
	}
	rank := func(ch *result.CheckChange) int {
		switch {
		case ch.Worse():
			return 0
		case ch.Better():
			return 1
		case ch.Was != ch.Is:
			return 2
		}
		return 3
	}
	slices.SortStableFunc(c.out.Checks, func(a, b result.CheckChange) int { return rank(&a) - rank(&b) })
}

func (c *comparison) inNewWords() *airframes.Model {
	if c.was == nil { // the set-ups are the same
		c.was = c.old.Model
	}
	return c.was
}

func (c *comparison) note(text string) {
	if text != "" {
		c.out.Notes = append(c.out.Notes, text)
	}
}

// all are the checks of an asking, those that only one set-up has among them.
func (a *asking) all() []judged {
	all := slices.Clone(a.is)
	for _, j := range a.was {
		if find(a.is, j.key) == nil {
			all = append(all, j)
		}
	}
	return all
}

func find(list []judged, key string) *judged {
	for i := range list {
		if list[i].key == key {
			return &list[i]
		}
	}
	return nil
}

// tell adds what is not as before of one asking, and what only its scripts ask.
func (c *comparison) tell(a asking, asked map[string]string, told map[string]bool) {
	for _, j := range a.all() {
		if told[j.key] {
			continue
		}
		told[j.key] = true
		was, is := find(a.was, j.key), find(a.is, j.key)
		ch := result.CheckChange{Stage: j.Stage, Scenario: j.Scenario, Sentence: j.Sentence, Subject: j.Subject, Place: j.Place,
			Pose: j.Pose, Wanted: j.Wanted, Script: asked[j.key]}
		if was != nil {
			ch.Was, ch.GotWas = word(was), was.Got
		}
		if is != nil {
			ch.Is, ch.GotIs = word(is), is.Got
		}
		if was != nil && is != nil {
			c.out.Both++
			if !was.Passed && !is.Passed {
				c.out.Failing++
			}
		}
		if ch.Was != ch.Is || ch.Script != bothScripts && len(c.old.Scripts) > 0 && len(c.new.Scripts) > 0 {
			c.out.Checks = append(c.out.Checks, ch)
		}
	}
}

func word(j *judged) string {
	if j.Passed {
		return "passed"
	}
	return "failed"
}

// hold runs scripts against both set-ups.
func hold(which string, files []script.File, was, is *airframes.Model) asking {
	a := asking{scripts: which}
	var problems []diag.Problem
	if a.was, problems = run(files, was); diag.HasErrors(problems) {
		a.unread = unread(which, "older", problems)
	}
	if a.is, problems = run(files, is); diag.HasErrors(problems) {
		a.unread = unread(which, "newer", problems)
	}
	return a
}

func unread(which, other string, problems []diag.Problem) string {
	for _, p := range problems {
		if p.Severity == diag.Error {
			return fmt.Sprintf("the %s script cannot be held against the %s set-up: line %d: %s", which, other, p.Line, p.Message)
		}
	}
	return ""
}

// run judges every check of scripts on a model.
func run(files []script.File, m *airframes.Model) ([]judged, []diag.Problem) {
	record, problems := script.Run(m, files, script.Selection{})
	if diag.HasErrors(problems) {
		return nil, problems
	}
	asked, _ := script.Resolve(m, files)
	type at struct {
		place    result.Place
		sentence string
	}
	says := map[at]string{}
	for i := range asked {
		says[at{asked[i].Checked, asked[i].Text}] = resolved.Text(&asked[i])
	}
	var list []judged
	count := map[string]int{}
	for _, ch := range record.Checks {
		place := result.Place{File: ch.Place.File, Line: ch.Place.Line, Column: ch.Place.Column}
		key := says[at{place, ch.Sentence}] + "\n" + strings.ToLower(ch.Subject)
		count[key]++
		list = append(list, judged{fmt.Sprintf("%s\n%d", key, count[key]), ch})
	}
	return list, problems
}
