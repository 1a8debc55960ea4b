package said

import (
	"strings"

	"example.com/hingeline/verify/result"
)

// PoseOf is how the controls stand at a check, as one phrase; empty where nothing is known
// of it.
func PoseOf(c *result.Check) string {
	if c.Proof != nil && c.Proof.Answer != result.Disproved {
		return everyPosition(c)
	}
	return Pose(c.Pose, c.Before, c.Moved, c.Rests)
}

// everyPosition stands in place of a position where a sentence speaks of many.
func everyPosition(c *result.Check) string {
	words := "every position that the sentence speaks of"
	if len(c.Pose) > 0 {
		return strings.Join(c.Pose, ", ") + "; " + words
	}
	return words
}

// Pose is how the controls stand, or stood before and what was then moved, as one phrase;
// rests: all others rest.
func Pose(stand, before, moved []string, rests bool) string {
	words := strings.Join(stand, ", ")
	if len(moved) > 0 {
		words = "then " + strings.Join(moved, ", ")
		if len(before) > 0 {
			words = strings.Join(before, ", ") + "; " + words
		}
		words = strings.TrimPrefix(words, "then ")
	}
	switch {
	case words == "" && rests:
		return "everything rests"
	case rests:
		return words + "; everything else rests"
	}
	return words
}

// Assuming is what a proof needs that it could not show, after what it says; empty for none.
func Assuming(c *result.Proof) string {
	if c == nil || len(c.Assumes) == 0 {
		return ""
	}
	return "; assumed: " + strings.Join(c.Assumes, ", ")
}

// AnswerTo is the answer to a claim; what is none of the known ones is no answer.
func AnswerTo(c *result.Proof) result.ProofAnswer {
	switch c.Answer {
	case result.Proved, result.Disproved, result.Empty:
		return c.Answer
	}
	return result.Undecided
}

// NeverMet is what a claim is worth that speaks of no position.
const NeverMet = "there is no position at which it would have to hold, so it says nothing"

// Neither is why a search that reached its limit has no answer.
func Neither(limit int) string {
	return "neither a proof nor a counterexample was found within the limit of " + Count(limit, "box") + " of the controls' travel"
}

// HowDecided says of a failed sentence about every position whether it was disproved or
// is without an answer, and what can be done about that; empty for other sentences.
func HowDecided(c *result.Proof) (decided, do string) {
	if c == nil {
		return "", ""
	}
	switch AnswerTo(c) {
	case result.Disproved:
		return "disproved at this position, searched over " + c.Over, ""
	case result.Empty:
		return NeverMet, ""
	}
	decided = "undecided"
	if c.Limit > 0 {
		decided += ": " + Neither(c.Limit)
	}
	return decided, "set some of the controls with Given, or ask for one control at a time"
}

// Checks are the checks of a report with what must be known of all to say one.
type Checks struct {
	report *result.Report
	poses  []string         // of each check
	asks   map[question]int // how many checks ask each question
}

// question is what makes two checks parts of one sentence, asked once.
type question struct {
	file     string
	line     int
	sentence string
	pose     string
}

// ChecksOf looks at all checks of a report once.
func ChecksOf(r *result.Report) *Checks {
	all := &Checks{r, make([]string, len(r.Checks)), make(map[question]int, len(r.Checks))}
	for i := range r.Checks {
		all.poses[i] = PoseOf(&r.Checks[i])
		all.asks[all.question(i)]++
	}
	return all
}

func (all *Checks) question(i int) question {
	c := &all.report.Checks[i]
	return question{c.Place.File, c.Place.Line, c.Sentence, all.poses[i]}
}

// Pose is PoseOf of check i.
func (all *Checks) Pose(i int) string { return all.poses[i] }

// Got is what check i got, and of which part where the sentence leaves that open: it does
// not name the part, or it asks about several.
func (all *Checks) Got(i int) string { return all.of(i) + all.report.Checks[i].Got }

// Wanted is what check i wanted, in the manner of Got.
func (all *Checks) Wanted(i int) string { return all.of(i) + all.report.Checks[i].Wanted }

func (all *Checks) of(i int) string {
	c := &all.report.Checks[i]
	if c.Subject == "" ||
		all.asks[all.question(i)] == 1 && strings.Contains(strings.ToLower(c.Sentence), strings.ToLower(c.Subject)) {
		return ""
	}
	return c.Subject + ": "
}
