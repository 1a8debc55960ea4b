package terminal

import (
	"fmt"
	"strings"

	"example.com/hingeline/verify/result"
)

// everyPosition stands in place of a position where a sentence speaks of many.
func everyPosition(c *result.Check) string {
	words := "every position that the sentence speaks of"
	if len(c.Pose) > 0 {
		return strings.Join(c.Pose, ", ") + "; " + words
	}
	return words
}

// assuming is what a proof needs that it could not show; empty for none.
func assuming(c *result.Proof) string {
	if c == nil || len(c.Assumes) == 0 {
		return ""
	}
	return "; assumed: " + strings.Join(c.Assumes, ", ")
}

// howDecided says of a failed sentence about every position whether it was
// disproved, and how that can be seen, or is without an answer.
func (p *page) howDecided(c *result.Proof, m result.Model) {
	if c == nil {
		return
	}
	const label = "   decided  "
	switch answerOf(c) {
	case result.Disproved:
		p.hang(label, p.faint, "disproved at this position, searched over "+c.Over, plain)
		if c.Counter != nil {
			p.showCommand(c.Counter, m)
		}
	case result.Empty:
		p.hang(label, p.faint, neverMet, plain)
	default:
		why := "undecided"
		if c.Limit > 0 {
			why += ": " + neither(c.Limit)
		}
		p.hang(label, p.faint, why, plain)
		if c.Over != "" {
			p.hang("   over     ", p.faint, c.Over, plain)
		}
		p.hang("   do       ", p.strong, "set some of the controls with Given, or ask for one control at a time", plain)
	}
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
		if c := &r.Checks[i]; !c.Passed && c.Proof != nil && answerOf(c.Proof) == result.Undecided {
			n++
		}
	}
	if n == 0 {
		return ""
	}
	return fmt.Sprintf(", %d of them undecided", n)
}
