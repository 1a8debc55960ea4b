package terminal

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hingeline/verify/result"
)

// failures shows every failed check with what is needed to put it right.
func (p *page) failures(r *result.Report) {
	_, failed := r.Counts()
	if failed == 0 {
		return
	}
	p.blank()
	p.para(0, fmt.Sprintf("FAILED: %d of %s", failed, count(len(r.Checks), "check")), p.bad)
	n := 0
	for i := range r.Checks {
		if c := &r.Checks[i]; !c.Passed {
			n++
			p.blank()
			p.failure(n, i+1, c, p.poses[i], p.answer(r, i), r.Model)
		}
	}
	p.common(r, failed)
}

// manyFailures is from how many failures on the report says what they have in
// common, and commonLines how many lines of the airframe file it names then.
const (
	manyFailures = 3
	commonLines  = 3
)

// common names the lines of the airframe file that most failures point at: many
// failures often have one cause.
func (p *page) common(r *result.Report, failed int) {
	if failed < manyFailures {
		return
	}
	pointed := map[result.Place]int{}
	var places []result.Place
	for i := range r.Checks {
		for _, place := range shownPlaces(&r.Checks[i]) {
			place.Note = ""
			if pointed[place] == 0 {
				places = append(places, place)
			}
			pointed[place]++
		}
	}
	slices.SortStableFunc(places, func(a, b result.Place) int { return pointed[b] - pointed[a] })
	if len(places) == 0 || pointed[places[0]] < 2 {
		return
	}
	p.blank()
	p.para(0, "NAMED MOST OFTEN by these failures, which may have one cause", p.strong)
	for _, place := range places[:min(len(places), commonLines)] {
		if pointed[place] > 1 {
			p.para(3, fmt.Sprintf("%s, by %s", at(place), count(pointed[place], "failure")), plain)
			p.line(place)
		}
	}
}

// shownPlaces are the places that a failed check shows, each once.
func shownPlaces(c *result.Check) []result.Place {
	if c.Passed {
		return nil
	}
	var places []result.Place
	for _, why := range c.Why {
		for _, place := range mostTelling(why.LookAt) {
			sameLine := func(q result.Place) bool { return q.File == place.File && q.Line == place.Line }
			if !slices.ContainsFunc(places, sameLine) {
				places = append(places, place)
			}
		}
	}
	return places
}

func (p *page) failure(n, number int, c *result.Check, pose, got string, m result.Model) {
	p.hang(fmt.Sprintf("%d. FAIL ✗  ", n), p.bad, c.Sentence, p.strong)
	if c.Miss != "" {
		p.para(3, c.Miss, p.bad)
	}
	p.hang("   check    ", p.faint, fmt.Sprintf("%d, %s, %s", number, c.Stage, c.Scenario), plain)
	p.hang("   script   ", p.faint, at(c.Place), plain)
	if pose != "" {
		p.hang("   controls ", p.faint, pose, plain)
	}
	p.hang("   WANTED   ", p.strong, c.Wanted, plain)
	p.hang("   GOT      ", p.bad, got, plain)
	p.howDecided(c.Proof, m)
	for i, why := range c.Why {
		switch {
		case i > 0:
			p.chain("   and to "+withArticle(why.Of)+":", why.Chain)
		case len(c.Why) > 1 || why.Of != c.Subject:
			p.chain("   why, from the pilot's hand to "+withArticle(why.Of)+":", why.Chain)
		default:
			p.chain("   why, from the pilot's hand to the surface:", why.Chain)
		}
		p.lookAt(why.LookAt)
	}
}

// withArticle is a part or channel in a sentence: the port flap, channel 3.
func withArticle(of string) string {
	if strings.HasPrefix(of, "channel ") {
		return of
	}
	return "the " + of
}

// mostLookedAt is how many lines of the airframe file a failure shows: the most
// telling ones. More would only hide them.
const mostLookedAt = 5

func mostTelling(places []result.Place) []result.Place {
	return places[:min(len(places), mostLookedAt)]
}

// lookAt shows the lines of the airframe file to look at, most telling first.
func (p *page) lookAt(places []result.Place) {
	for i, place := range mostTelling(places) {
		label := "   look at  "
		if i > 0 {
			label = "   and at   "
		}
		where := at(place)
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

// at is a place the way editors and terminals make it a link.
func at(place result.Place) string {
	var b strings.Builder
	b.WriteString(place.File)
	if place.Line > 0 {
		fmt.Fprintf(&b, ":%d", place.Line)
		if place.Column > 0 {
			fmt.Fprintf(&b, ":%d", place.Column)
		}
	}
	return b.String()
}
