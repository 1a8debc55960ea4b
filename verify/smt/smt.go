package smt

import (
	"io"
	"math/big"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

// ErrNotWritten is a claim that cannot be written, and why: lower case, without the
// claim itself.
type ErrNotWritten struct{ Why string }

func (e ErrNotWritten) Error() string { return e.Why }

// Write writes the negation of a claim about a plan as SMT-LIB 2: unsat means that the
// claim holds. The title is for people. Its errors are ErrNotWritten, before anything
// is written, and those of w.
func Write(w io.Writer, plan *mixcore.Plan, c *prove.Claim, title string) error {
	s, failure, err := build(plan, c, new(big.Rat))
	if err != nil {
		return err
	}
	_, err = w.Write(s.assemble(title, failure))
	return err
}

// build makes the script of a claim that must fail by more than a clearance.
func build(plan *mixcore.Plan, c *prove.Claim, clearance *big.Rat) (s *script, failure truth, err error) {
	defer func() {
		switch r := recover().(type) {
		case nil:
		case ErrNotWritten:
			err = r
		default:
			panic(r)
		}
	}()
	s = &script{plan: plan, setup: plan.Setup(), claim: c, clearance: clearance,
		taken: map[string]bool{}, defined: map[string]string{}, error: new(big.Rat)}
	_, rising := c.Want.(prove.Rising)
	s.now = s.newView(false, c.Lost)
	s.other = s.newView(true, c.OtherLost || rising && c.Lost)
	if c.When != nil {
		s.counts(s.now)
		if rising { // the control moves from a place that counts to another
			s.counts(s.other)
		}
	}
	failure = s.fails()
	return s, failure, nil
}

// counts says that the claim is about a position only where its condition holds.
func (s *script) counts(v *view) {
	t := s.state(v.name("the claim counts"), "The claim is only about positions where this holds.", v.holds(s.claim.When))
	if !t.known || !t.holds {
		s.assert(t)
	}
}
