package terminal

import (
	"fmt"
	"io"
	"math"
	"strings"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// RenderProofs writes what holds at every position of the controls, law by law,
// then what does not and where, what could not be decided, what the proofs rest
// on, and the verdict; if Options.Brief, only what is not proved and the verdict.
// The error is the writer's.
func RenderProofs(w io.Writer, r *result.Proofs, o Options) error {
	p := newPage(o)
	if !o.Brief {
		p.proofHeading(r)
		p.laws(r)
	}
	p.disproved(r)
	p.undecided(r, o.Brief)
	if o.Brief {
		p.warningsInBrief(r.Findings)
	} else {
		p.warnings(r.Findings, "beside the claims")
		p.grounds(r)
		p.cautions(r.Cautions)
	}
	p.proofVerdict(r)
	if o.Brief {
		p.firstDisproved(r)
	}
	return p.flush(w)
}

func (p *page) proofHeading(r *result.Proofs) {
	p.para(0, r.Model.Name+": proofs, over every position of the controls", p.strong)
	if len(r.Cautions) > 0 {
		p.hang("▲ ", p.warn, r.Cautions[0], p.warn)
	}
	p.about(r.Model, nil, r.Tool)
}

// laws lists every claim, law by law. Laws without a claim come last.
func (p *page) laws(r *result.Proofs) {
	number, disproved := 0, 0
	var none []*result.Law
	for i := range r.Laws {
		l := &r.Laws[i]
		if len(l.Claims) == 0 {
			none = append(none, l)
			continue
		}
		p.blank()
		p.para(0, lawHeading(l), p.strong)
		p.para(2, l.Means, plain)
		if over := covers(l); over != "" {
			p.para(2, over, p.faint)
		}
		for k := range l.Claims {
			number++
			c := &l.Claims[k]
			switch said.AnswerTo(c) {
			case result.Proved:
				p.claim(number, markProved, p.good, c.Claim, leastToSpare(c.Margin))
			case result.Disproved:
				disproved++
				p.claim(number, markDisproved, p.bad, c.Claim, fmt.Sprintf("disproved %d below", disproved))
			case result.Empty:
				p.claim(number, markEmpty, p.warn, c.Claim, said.NeverMet)
			default:
				p.claim(number, markUndecided, p.warn, c.Claim, "")
			}
		}
	}
	if len(none) == 0 {
		return
	}
	p.blank()
	p.para(0, "NOTHING TO PROVE", p.strong)
	for _, l := range none {
		why := l.None
		if why == "" {
			why = "this model has nothing of the kind"
		}
		p.hang("  - ", plain, l.Title+": "+why+" ["+l.Code+"]", plain)
	}
}

func lawHeading(l *result.Law) string {
	c := l.Counts()
	heading := fmt.Sprintf("%s: %s", strings.ToUpper(l.Title), said.Count(c.Claims, "claim"))
	if c.Disproved > 0 {
		heading += fmt.Sprintf(", %d DISPROVED", c.Disproved)
	}
	if c.Undecided > 0 {
		heading += fmt.Sprintf(", %d UNDECIDED", c.Undecided)
	}
	return heading + " [" + l.Code + "]"
}

// covers is what the claims of a law speak of: the same, or the most that one does.
func covers(l *result.Law) string {
	states, same, over := 0, true, ""
	for i := range l.Claims {
		c := &l.Claims[i]
		if c.Answer == result.Empty {
			continue
		}
		same = same && (over == "" || c.Over == over)
		states, over = max(states, c.States), c.Over
	}
	if !same {
		return "over up to " + said.Count(states, "switch state") + ", and every place of all that bears on it"
	}
	if over != "" {
		over = "over " + over
	}
	return over
}

// The marks of the answers, each a word and a sign.
const (
	markProved    = "proved ✓"
	markDisproved = "DISPROVED ✗"
	markUndecided = "UNDECIDED ▲"
	markEmpty     = "empty ▲"
)

// claim is one claim with its answer, on one line if it fits, else with what was
// found below it.
func (p *page) claim(number int, mark string, ink paint, claim, found string) {
	label := fmt.Sprintf("  %3d %s  ", number, pad(p.say(mark), columns(p.say(markProved))))
	if both := claim + gap + found; found == "" || columns(p.say(both)) <= p.width-columns(p.say(label)) {
		p.hang(label, ink, strings.TrimSuffix(both, gap), plain)
		return
	}
	p.hang(label, ink, claim, plain)
	p.para(columns(p.say(label)), found, plain)
}

// leastToSpare is the smallest margin and where it is; empty if there is none.
func leastToSpare(m *result.Margin) string {
	if m == nil {
		return ""
	}
	where := "everything at rest"
	if len(m.Pose) > 0 {
		where = strings.Join(m.Pose, ", ")
	}
	return fmt.Sprintf("at the least %s%s, with %s", m.Text, provedLess(m), where)
}

// provedLess says what is proved where that is notably less than the smallest
// margin that was found; else nothing.
func provedLess(m *result.Margin) string {
	if math.Abs(m.AtLeast) > downMost || !(m.Value-m.AtLeast > marginNotable*max(m.Value, -m.Value)) {
		return ""
	}
	unit := m.Unit
	if unit == "%" {
		unit = " %"
	}
	return fmt.Sprintf(" (proved: nowhere under %s%s)", roundedDown(m.AtLeast), unit)
}
