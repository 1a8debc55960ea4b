package terminal

import (
	"fmt"
	"strings"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// failures shows every failed check with what is needed to put it right.
func (p *page) failures(r *result.Report) {
	_, failed := r.Counts()
	if failed == 0 {
		return
	}
	p.blank()
	p.para(0, fmt.Sprintf("FAILED: %d of %s", failed, said.Count(len(r.Checks), "check")), p.bad)
	n := 0
	for i := range r.Checks {
		if c := &r.Checks[i]; !c.Passed {
			n++
			p.blank()
			p.failure(n, i+1, c, p.checks.Pose(i), p.checks.Got(i), r.Model)
		}
	}
	p.common(r)
}

// common names the lines of the airframe file that most failures point at.
func (p *page) common(r *result.Report) {
	shared := said.SharedPlaces(r)
	if len(shared) == 0 {
		return
	}
	p.blank()
	p.para(0, "NAMED MOST OFTEN by these failures, which may have one cause", p.strong)
	for _, s := range shared {
		p.para(3, fmt.Sprintf("%s, by %s", said.At(s.Place), said.Count(s.Failures, "failure")), plain)
		p.line(s.Place)
	}
}

func (p *page) failure(n, number int, c *result.Check, pose, got string, m result.Model) {
	p.hang(fmt.Sprintf("%d. FAIL ✗  ", n), p.bad, c.Sentence, p.strong)
	if c.Miss != "" {
		p.para(3, c.Miss, p.bad)
	}
	p.hang("   check    ", p.faint, fmt.Sprintf("%d, %s, %s", number, c.Stage, c.Scenario), plain)
	p.hang("   script   ", p.faint, said.At(c.Place), plain)
	if pose != "" {
		p.hang("   controls ", p.faint, pose, plain)
	}
	p.hang("   WANTED   ", p.strong, c.Wanted, plain)
	p.hang("   GOT      ", p.bad, got, plain)
	p.howDecided(c.Proof, m)
	for i, why := range c.Why {
		switch {
		case i > 0:
			p.chain("   and to "+said.WithArticle(why.Of)+":", why.Chain)
		case len(c.Why) > 1 || why.Of != c.Subject:
			p.chain("   why, from the pilot's hand to "+said.WithArticle(why.Of)+":", why.Chain)
		default:
			p.chain("   why, from the pilot's hand to the surface:", why.Chain)
		}
		p.lookAt(why.LookAt)
	}
}

// lookAt shows the lines of the airframe file to look at, most telling first.
func (p *page) lookAt(places []result.Place) {
	for i, place := range said.MostTelling(places) {
		label := "   look at  "
		if i > 0 {
			label = "   and at   "
		}
		where := said.At(place)
		if place.Note != "" {
			where += gap + place.Note
		}
		p.hang(label, p.strong, where, plain)
		p.line(place)
	}
}

// line shows the line of the file that a place speaks of, if it is at hand.
func (p *page) line(place result.Place) {
	if strings.TrimSpace(place.Excerpt) != "" && place.Line > 0 {
		p.excerpt(3, fmt.Sprintf("%5d | ", place.Line), place.Excerpt, place.Column)
	}
}
