package terminal

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// proofVerdict is the last line: something a person can act on. What is proved in
// part, or with a warning, never reads as plainly proved.
func (p *page) proofVerdict(r *result.Proofs) {
	p.blank()
	c := r.Counts()
	rest := unproved(r, c)
	switch r.Verdict {
	case result.AllProved:
		sign, word, ink := "✓ ", "PROVED", p.good
		if r.Left > 0 {
			sign, word, ink = "▲ ", "PROVED IN PART", p.warn
		}
		if n := len(r.Findings); n > 0 {
			sign, ink = "▲ ", p.warn
			word += ", BUT " + strings.ToUpper(said.Count(n, "warning")) + ": " + r.Findings[0].Message + "."
		} else {
			word += ":"
		}
		p.hang(sign, ink, fmt.Sprintf("%s %d of %s: the set-up as written keeps %s at every position of the controls%s.%s %s",
			word, c.Proved, said.Count(c.Claims, "claim"), kept(r), provided(r), rest, said.Afterwards), ink)
	case result.SomeDisproved:
		p.hang("✗ ", p.bad, fmt.Sprintf("DISPROVED, DO NOT FLY: %d of %s %s not hold; %d proved.%s%s",
			c.Disproved, said.Count(c.Claims, "claim"), said.Number(c.Disproved, "does", "do"), c.Proved, rest, said.WantLook(r.Findings)), p.bad)
	case result.SomeUndecided:
		p.hang("▲ ", p.warn, fmt.Sprintf("UNDECIDED, which is not a yes: %d of %s without proof; %d proved, none disproved.%s%s",
			c.Undecided+c.Empty, said.Count(c.Claims, "claim"), c.Proved, rest, said.WantLook(r.Findings)), p.warn)
	default:
		p.hang("▲ ", p.warn, "NOTHING WAS PROVED: there was nothing to prove, so this says nothing about the model."+rest+said.WantLook(r.Findings), p.warn)
	}
}

// kept is what a full proof speaks for.
func kept(r *result.Proofs) string {
	if r.Left > 0 {
		return "the laws that were selected"
	}
	return "the laws of this report"
}

// provided is what the proofs assume, said in the verdict too.
func provided(r *result.Proofs) string {
	words := ""
	var said []string
	for _, c := range answered(r, result.Proved) {
		for _, a := range c.Assumes {
			if !slices.Contains(said, a) {
				said = append(said, a)
				words += ", " + a
			}
		}
	}
	return words
}

// unproved says what else has no proof, and why the run ended early.
func unproved(r *result.Proofs, c result.ProofCounts) string {
	var not []string
	if c.Undecided > 0 && r.Verdict != result.SomeUndecided {
		not = append(not, fmt.Sprintf("%d undecided", c.Undecided))
	}
	if c.Empty > 0 {
		not = append(not, fmt.Sprintf("%d without a position to hold at", c.Empty))
	}
	if r.Left > 0 {
		not = append(not, said.Count(r.Left, "law")+" left out by --only")
	}
	words := ""
	if len(not) > 0 {
		words = " Not proved: " + strings.Join(not, ", ") + "."
	}
	if r.Stopped != "" {
		words += " The run was " + r.Stopped + "."
	}
	return words
}

// firstDisproved is what to mend first, in one line, for someone who sees no more
// than the end of the report.
func (p *page) firstDisproved(r *result.Proofs) {
	claims := answered(r, result.Disproved)
	if len(claims) == 0 {
		return
	}
	line := "  first: " + claims[0].Claim
	if c := claims[0].Counter; c != nil {
		line += gap + c.Got
	}
	p.oneLine(line, p.bad)
}
