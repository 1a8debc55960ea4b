package result

// ProofCounts says how many claims got which answer.
type ProofCounts struct {
	Claims    int
	Proved    int
	Disproved int
	Undecided int
	Empty     int
}

// Counts are the claims of all laws by their answers.
func (p *Proofs) Counts() ProofCounts {
	var c ProofCounts
	for i := range p.Laws {
		c = c.plus(p.Laws[i].Counts())
	}
	return c
}

// Counts are the claims of one law by their answers. An answer that is none of
// the known ones is counted as undecided: it is no yes.
func (l *Law) Counts() ProofCounts {
	c := ProofCounts{Claims: len(l.Claims)}
	for i := range l.Claims {
		switch l.Claims[i].Answer {
		case Proved:
			c.Proved++
		case Disproved:
			c.Disproved++
		case Empty:
			c.Empty++
		default:
			c.Undecided++
		}
	}
	return c
}

func (c ProofCounts) plus(d ProofCounts) ProofCounts {
	return ProofCounts{
		Claims: c.Claims + d.Claims, Proved: c.Proved + d.Proved, Disproved: c.Disproved + d.Disproved,
		Undecided: c.Undecided + d.Undecided, Empty: c.Empty + d.Empty,
	}
}

// Proofs is how many checks that passed were decided for every position of the
// controls, and not at the positions that a sentence names.
func (r *Report) Proofs() int {
	n := 0
	for i := range r.Checks {
		if c := &r.Checks[i]; c.Passed && c.Proof != nil {
			n++
		}
	}
	return n
}
