package terminal

import (
	"fmt"
	"strings"

	"example.com/hingeline/verify/result"
)

// warnings are what is odd about the set-up or the script, asked for or not.
func (p *page) warnings(found []result.Finding, beside string) {
	if len(found) == 0 {
		return
	}
	p.blank()
	p.para(0, "WARNINGS: "+count(len(found), "thing")+" to look at "+beside, p.warn)
	for i, f := range found {
		p.hang(fmt.Sprintf("%3d. ▲ ", i+1), p.warn, f.Message+" ["+f.Code+"]", plain)
		if f.Place.File != "" {
			p.para(7, at(f.Place), p.faint)
			p.line(f.Place)
		}
		if f.Hint != "" {
			p.para(7, f.Hint, plain)
		}
	}
}

// warningsInBrief names every warning, without where it is and what to do.
func (p *page) warningsInBrief(found []result.Finding) {
	if len(found) == 0 {
		return
	}
	p.blank()
	for _, f := range found {
		p.hang("▲ warning: ", p.warn, f.Message+" ["+f.Code+"]", plain)
	}
}

// uncovered is what no check touched. That there is nothing is said too: left
// out, it might as well be unknown.
func (p *page) uncovered(r *result.Report) {
	u := r.Uncovered
	if len(u.Parts)+len(u.Controls)+len(u.Positions)+r.NotSelected == 0 {
		if len(r.Checks) > 0 {
			p.blank()
			p.hang("NOT COVERED: ", p.strong, "nothing; every part, control and named position is in a check", plain)
		}
		return
	}
	p.blank()
	p.para(0, "NOT COVERED", p.strong)
	p.listed("  parts that no check looks at: ", u.Parts)
	p.listed("  controls that no check moves: ", u.Controls)
	p.listed("  positions that no check uses: ", u.Positions)
	if r.NotSelected > 0 {
		p.para(2, count(r.NotSelected, "check")+" left out by --only", plain)
	}
}

func (p *page) listed(label string, names []string) {
	if len(names) > 0 {
		p.hang(label, plain, strings.Join(names, ", "), plain)
	}
}

func (p *page) cautions(all []string) {
	if len(all) == 0 {
		return
	}
	p.blank()
	p.para(0, "LEFT TO DO, with the model in front of you", p.strong)
	for _, c := range all {
		p.hang("  - ", plain, c, plain)
	}
}

// verdict is the last line: something a person can act on. What passed in part,
// or with a warning, never reads as a plain pass.
func (p *page) verdict(r *result.Report) {
	p.blank()
	passed, failed := r.Counts()
	all := len(r.Checks)
	switch r.Verdict {
	case result.Passed, result.PassedInPart:
		sign, word, ink := "✓ ", "PASSED", p.good
		if r.Verdict == result.PassedInPart {
			sign, word, ink = "▲ ", "PASSED IN PART", p.warn
			all += r.NotSelected
		}
		if warned := warned(r); warned != "" {
			sign, ink = "▲ ", p.warn
			word += ", BUT " + warned + "."
		} else {
			word += ":"
		}
		p.hang(sign, ink, fmt.Sprintf("%s %d of %s%s: the set-up as written does what %s.%s %s",
			word, passed, count(all, "check"), proofsAmong(r), asked(r), scriptRemarks(r)+notChecked(r), afterwards), ink)
	case result.Failed:
		p.hang("✗ ", p.bad, fmt.Sprintf(
			"DO NOT FLY: %s%d of %s failed%s, %d passed%s.%s",
			scriptWrong(r), failed, count(all, "check"), undecidedAmong(r), passed, proofsAmong(r), remaining(r)), p.bad)
	default:
		p.hang("▲ ", p.warn, "NOTHING WAS CHECKED: no check ran, so this says nothing about the model."+remaining(r), p.warn)
	}
}

// warned says how many warnings there are, with the first in full; a warning
// about the script counts where the set-up has none.
func warned(r *result.Report) string {
	if n := len(r.Findings); n > 0 {
		return strings.ToUpper(count(n, "warning")) + ": " + r.Findings[0].Message
	}
	_, n, _ := r.ScriptCounts()
	for i := range r.Script {
		if f := &r.Script[i]; !f.Fails && !f.OnPurpose {
			return strings.ToUpper(count(n, "warning")) + " ABOUT THE SCRIPT: " + f.Message
		}
	}
	return ""
}

// asked is what a pass speaks for.
func asked(r *result.Report) string {
	if r.Verdict == result.PassedInPart {
		return "this part of the script asks"
	}
	return "the script asks"
}

// firstFailure is what to mend first, in one line, for someone who sees no more
// than the end of the report.
func (p *page) firstFailure(r *result.Report) {
	for i := range r.Checks {
		if c := &r.Checks[i]; !c.Passed {
			what := c.Miss
			if what == "" {
				what = "GOT " + p.answer(r, i)
			}
			p.oneLine("  first: "+c.Sentence+gap+what, p.bad)
			return
		}
	}
	for i := range r.Script {
		if f := &r.Script[i]; f.Fails {
			p.oneLine("  first: "+f.Message, p.bad)
			return
		}
	}
}

// oneLine is text that is cut, not wrapped.
func (p *page) oneLine(text string, c paint) {
	p.row(inked{cut(p.say(text), p.width, p.say("…")), c})
}

// afterwards is what a pass does not say.
const afterwards = "The model itself is still to be checked: walk-around, range check and " +
	"loss-of-signal check, propeller off or model restrained, before it flies."

// remaining says what wants a look and what was not checked.
func remaining(r *result.Report) string {
	return wantLook(r.Findings) + scriptRemarks(r) + notChecked(r)
}

// wantLook says how many warnings there are, as a sentence.
func wantLook(found []result.Finding) string {
	n := len(found)
	if n == 0 {
		return ""
	}
	return fmt.Sprintf(" %s %s a look.", count(n, "warning"), number(n, "wants", "want"))
}

// notChecked says what was not checked.
func notChecked(r *result.Report) string {
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
			not = append(not, count(u.n, u.noun))
		}
	}
	if r.NotSelected > 0 {
		not = append(not, count(r.NotSelected, "check")+" left out by --only")
	}
	if len(not) == 0 {
		return ""
	}
	return " Not checked: " + strings.Join(not, ", ") + "."
}
