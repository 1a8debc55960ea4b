package terminal

import (
	"fmt"
	"strings"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// warnings are what is odd about the set-up or the script, asked for or not.
func (p *page) warnings(found []result.Finding, beside string) {
	if len(found) == 0 {
		return
	}
	p.blank()
	p.para(0, "WARNINGS: "+said.Count(len(found), "thing")+" to look at "+beside, p.warn)
	for i, f := range found {
		p.hang(fmt.Sprintf("%3d. ▲ ", i+1), p.warn, f.Message+" ["+f.Code+"]", plain)
		if f.Place.File != "" {
			p.para(7, said.At(f.Place), p.faint)
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
			p.hang("NOT COVERED: ", p.strong, said.AllTouched+`: "hingeline faults" tells which mistakes no check sees`, plain)
		}
		return
	}
	p.blank()
	p.para(0, "NOT COVERED", p.strong)
	p.listed("  parts that no check looks at: ", u.Parts)
	p.listed("  controls that no check moves: ", u.Controls)
	p.listed("  positions that no check uses: ", u.Positions)
	if r.NotSelected > 0 {
		p.para(2, said.LeftOut(r), plain)
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

// signed says in a line who stands by the set-up; nothing where nobody has signed it.
func (p *page) signed(s *result.Standing) {
	if s == nil {
		return
	}
	tone, _ := said.StandingOf(s)
	p.blank()
	p.toned(tone, s.Summary)
}

// verdict is the last line.
func (p *page) verdict(r *result.Report) {
	p.blank()
	v := said.VerdictOf(r)
	p.toned(v.Tone, v.String())
}

// toned is words with the sign and the colour of how they are meant.
func (p *page) toned(tone said.Tone, words string) {
	sign, ink := p.signOf(tone)
	p.hang(sign, ink, words, ink)
}

func (p *page) signOf(tone said.Tone) (sign string, ink paint) {
	switch tone {
	case said.Good:
		return "✓ ", p.good
	case said.Bad:
		return "✗ ", p.bad
	}
	return "▲ ", p.warn
}

// firstFailure is what to mend first, in one line, for someone who sees no more
// than the end of the report.
func (p *page) firstFailure(r *result.Report) {
	for i := range r.Checks {
		if c := &r.Checks[i]; !c.Passed {
			what := c.Miss
			if what == "" {
				what = "GOT " + p.checks.Got(i)
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
