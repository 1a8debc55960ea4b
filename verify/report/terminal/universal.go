package terminal

import (
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// howDecided says of a failed sentence about every position whether it was
// disproved, and how that can be seen, or is without an answer.
func (p *page) howDecided(c *result.Proof, m result.Model) {
	if c == nil {
		return
	}
	decided, do := said.HowDecided(c)
	p.hang("   decided  ", p.faint, decided, plain)
	switch said.AnswerTo(c) {
	case result.Disproved:
		if c.Counter != nil {
			p.showCommand(c.Counter, m)
		}
	case result.Undecided:
		if c.Over != "" {
			p.hang("   over     ", p.faint, c.Over, plain)
		}
	}
	if do != "" {
		p.hang("   do       ", p.strong, do, plain)
	}
}
