package said

import (
	"fmt"
	"strings"

	"example.com/hingeline/verify/result"
)

// Tone is how a verdict is meant, for a sign and a colour beside its words.
type Tone uint8

// The tones.
const (
	Heed Tone = iota // look at it: what passed in part or with a warning, or says nothing
	Good
	Bad
)

// Verdict is something a person can act on: Word, in large letters where there is room,
// and what follows it. What passed in part, or with a warning, never reads as a plain pass.
type Verdict struct {
	Tone Tone
	Word string // "DO NOT FLY", "PASSED, BUT 1 WARNING"
	Text string // begins with its punctuation: ": 2 of 6 checks failed, 4 passed."
}

// String is the whole verdict as one line.
func (v Verdict) String() string { return v.Word + v.Text }

// VerdictOf is the verdict of a report.
func VerdictOf(r *result.Report) Verdict { return verdictOf(r, LeftOut(r)) }

// OnPaper is the verdict of a report for who has no command line before them.
func OnPaper(r *result.Report) Verdict { return verdictOf(r, LeftOutOnPaper(r)) }

func verdictOf(r *result.Report, leftOut string) Verdict {
	passed, failed := r.Counts()
	all := len(r.Checks)
	if unlikeItsModel(r) {
		return Verdict{Bad, "DO NOT FLY", fmt.Sprintf(": %d of %s passed, but at the bench the model was not as expected, and no signature stands over that. Put it right and walk around anew.%s",
			passed, Count(all, "check"), remaining(r, leftOut))}
	}
	switch r.Verdict {
	case result.Passed, result.PassedInPart:
		v := Verdict{Good, "PASSED", ": "}
		if r.Verdict == result.PassedInPart {
			v.Tone, v.Word = Heed, "PASSED IN PART"
			all += r.NotSelected
		}
		if word, first := warned(r); word != "" {
			v.Tone = Heed
			v.Word += ", BUT " + word
			v.Text = ": " + first + ". "
		}
		v.Text += fmt.Sprintf("%d of %s%s: the set-up as written does what %s.%s %s",
			passed, Count(all, "check"), proofsAmong(r), asked(r), scriptRemarks(r)+notChecked(r, leftOut), Afterwards)
		return v
	case result.Failed:
		return Verdict{Bad, "DO NOT FLY", fmt.Sprintf(": %s%d of %s failed%s, %d passed%s.%s",
			scriptWrong(r), failed, Count(all, "check"), undecidedAmong(r), passed, proofsAmong(r), remaining(r, leftOut))}
	}
	return Verdict{Heed, "NOTHING WAS CHECKED", ": no check ran, so this says nothing about the model." + remaining(r, leftOut)}
}

// unlikeItsModel says whether a check passes, and the model was seen to be otherwise than its
// set-up.
func unlikeItsModel(r *result.Report) bool {
	passes := r.Verdict == result.Passed || r.Verdict == result.PassedInPart
	return passes && r.Standing != nil && r.Standing.Since != ""
}

// OnEachPage is the verdict for the edge of a page, which may be all that somebody sees.
func (v Verdict) OnEachPage() string {
	words := "control check on paper: " + v.Word
	if v.Tone != Bad {
		words += "; the model is still to be checked"
	}
	return words
}

// Afterwards is what a pass does not say.
const Afterwards = "The model itself is still to be checked: walk-around, range check and " +
	"loss-of-signal check, propeller off or model restrained, before it flies."

// warned says how many warnings there are, and the first in full; a warning about the
// script counts where the set-up has none.
func warned(r *result.Report) (word, first string) {
	if n := len(r.Findings); n > 0 {
		return strings.ToUpper(Count(n, "warning")), r.Findings[0].Message
	}
	_, n, _ := r.ScriptCounts()
	for i := range r.Script {
		if f := &r.Script[i]; !f.Fails && !f.OnPurpose {
			return strings.ToUpper(Count(n, "warning")) + " ABOUT THE SCRIPT", f.Message
		}
	}
	return "", ""
}

// asked is what a pass speaks for.
func asked(r *result.Report) string {
	if r.Verdict == result.PassedInPart {
		return "this part of the script asks"
	}
	return "the script asks"
}

// proofsAmong says how many of the checks that passed are proofs.
func proofsAmong(r *result.Report) string {
	if n := r.Proofs(); n > 0 {
		return fmt.Sprintf(" (%d proved for every position)", n)
	}
	return ""
}

// undecidedAmong says how many of the checks that failed have no answer.
func undecidedAmong(r *result.Report) string {
	n := 0
	for i := range r.Checks {
		if c := &r.Checks[i]; !c.Passed && c.Proof != nil && AnswerTo(c.Proof) == result.Undecided {
			n++
		}
	}
	if n == 0 {
		return ""
	}
	return fmt.Sprintf(", %d of them undecided", n)
}

// remaining says what wants a look and what was not checked.
func remaining(r *result.Report, leftOut string) string {
	return WantLook(r.Findings) + scriptRemarks(r) + notChecked(r, leftOut)
}

// WantLook says how many warnings there are, as a sentence after another; empty for none.
func WantLook(found []result.Finding) string {
	n := len(found)
	if n == 0 {
		return ""
	}
	return fmt.Sprintf(" %s %s a look.", Count(n, "warning"), Number(n, "wants", "want"))
}

// notChecked says what was not checked.
func notChecked(r *result.Report, leftOut string) string {
	var not []string
	for _, u := range []struct {
		n    int
		noun string
	}{
		{len(r.Uncovered.Parts), "part"},
		{len(r.Uncovered.Controls), "control"},
		{len(r.Uncovered.Positions), "position"},
	} {
		if u.n > 0 {
			not = append(not, Count(u.n, u.noun))
		}
	}
	if r.NotSelected > 0 {
		not = append(not, leftOut)
	}
	if len(not) == 0 {
		return ""
	}
	return " Not checked: " + strings.Join(not, ", ") + "."
}

// AllTouched is what there is to say where no check leaves anything out by name. It is
// far from all that can be set, and nobody is to take it for that.
const AllTouched = "no part, control or named position is left out; not every way and combination of them is tried"

// LeftOut says how many checks were not run.
func LeftOut(r *result.Report) string {
	return Count(r.NotSelected, "check") + " left out by --only"
}

// LeftOutOnPaper is LeftOut for who has no command line before them.
func LeftOutOnPaper(r *result.Report) string {
	return Count(r.NotSelected, "check") + " left out by choice"
}

// ScriptParts are the numbers of findings about the script, in words.
func ScriptParts(fail, warn, onPurpose int) []string {
	var parts []string
	if fail > 0 {
		parts = append(parts, Count(fail, "thing")+" wrong")
	}
	if warn > 0 {
		parts = append(parts, Count(warn, "thing")+" to look at")
	}
	if onPurpose > 0 {
		parts = append(parts, Count(onPurpose, "sentence")+" kept on purpose")
	}
	return parts
}

// scriptWrong begins what follows the verdict where the script itself fails the check.
func scriptWrong(r *result.Report) string {
	fail, _, _ := r.ScriptCounts()
	if fail == 0 {
		return ""
	}
	return fmt.Sprintf("the script is wrong in %s, so it proves nothing; ", Count(fail, "place"))
}

// scriptRemarks says what of the script wants a look, as a sentence.
func scriptRemarks(r *result.Report) string {
	_, warn, onPurpose := r.ScriptCounts()
	if warn+onPurpose == 0 {
		return ""
	}
	return " About the script: " + strings.Join(ScriptParts(0, warn, onPurpose), ", ") + "."
}
