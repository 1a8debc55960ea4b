package terminal

import (
	"fmt"
	"strings"

	"example.com/hingeline/verify/result"
)

// warnings are what is odd about the set-up or the script, asked for or not.
func (p *page) warnings(r *result.Report) {
	if len(r.Findings) == 0 {
		return
	}
	p.blank()
	p.para(0, "WARNINGS: "+count(len(r.Findings), "thing")+" to look at that no check decides", p.warn)
	for i, f := range r.Findings {
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

// uncovered is what no check touched.
func (p *page) uncovered(r *result.Report) {
	u := r.Uncovered
	if len(u.Parts)+len(u.Controls)+len(u.Positions) == 0 && r.NotSelected == 0 {
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

func (p *page) cautions(r *result.Report) {
	if len(r.Cautions) == 0 {
		return
	}
	p.blank()
	p.para(0, "LEFT TO DO, with the model in front of you", p.strong)
	for _, c := range r.Cautions {
		p.hang("  - ", plain, c, plain)
	}
}

// verdict is the last line: something a person can act on.
func (p *page) verdict(r *result.Report) {
	p.blank()
	passed, failed := r.Counts()
	all := len(r.Checks)
	switch r.Verdict {
	case result.Passed:
		p.hang("✓ ", p.good, fmt.Sprintf(
			"PASSED: %d of %s: the set-up as written does what the script asks.%s %s",
			passed, count(all, "check"), remaining(r), afterwards), p.good)
	case result.Failed:
		p.hang("✗ ", p.bad, fmt.Sprintf(
			"DO NOT FLY: %d of %s failed, %d passed.%s",
			failed, count(all, "check"), passed, remaining(r)), p.bad)
	default:
		p.hang("▲ ", p.warn, "NOTHING WAS CHECKED: no check ran, so this says nothing about the model."+remaining(r), p.warn)
	}
}

// afterwards is what a pass does not say.
const afterwards = "The model itself is still to be checked: walk-around, range check and " +
	"loss-of-signal check, propeller off or model restrained, before it flies."

// remaining says what was not checked and what wants a look.
func remaining(r *result.Report) string {
	var b strings.Builder
	if n := len(r.Findings); n > 0 {
		fmt.Fprintf(&b, " %s %s a look.", count(n, "warning"), number(n, "wants", "want"))
	}
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
	if len(not) > 0 {
		fmt.Fprintf(&b, " Not checked: %s.", strings.Join(not, ", "))
	}
	return b.String()
}
