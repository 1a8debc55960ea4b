//go:build solvers

package smt

import (
	"context"
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/prove/provetest"
)

// tooClose is a margin that nobody can tell from 0: the prover judges the Plan, which
// rounds, and the solvers judge exact numbers.
const tooClose = 1e-7

// outcome is how the prover and one solver came out on one claim.
type outcome uint8

const (
	noAnswer    outcome = iota // the solver found none in time
	agreed                     // the same answer
	near                       // sat of a proved claim, or the like, where bounds or rounding cannot tell
	alone                      // the prover was undecided, the solver not
	contradicts                // one of the two is wrong
	outcomes
)

var outcomeWords = [outcomes]string{"no answer in time", "agreed", "too close to tell", "only the solver decided", "CONTRADICTED"}

// subject is a claim about a plan. The script is written from writing, which is the
// same plan but where a fault has been planted.
type subject struct {
	name          string
	plan, writing *mixcore.Plan
	claim         prove.Claim
}

// verdict is what the prover says.
func (s *subject) verdict(p *prove.Prover) prove.Decision {
	return p.Decide(context.Background(), &s.claim, prove.Options{Boxes: 5_000, Plain: true})
}

// held compares one solver with the prover. why says what contradicts.
func (s *subject) held(t *testing.T, with *solver, p *prove.Prover, d *prove.Decision) (out outcome, why string) {
	t.Helper()
	q, err := newQuestion(s.writing, &s.claim, new(big.Rat))
	if err != nil {
		t.Errorf("%s: %v", s.name, err)
		return noAnswer, ""
	}
	answer, pose, readable := q.decide(t, with)
	switch {
	case answer == unknown:
		return noAnswer, ""
	case d.Answer == prove.Undecided:
		return alone, ""
	case d.Answer == prove.Disproved && answer == unsat:
		if d.Margin > -tooClose {
			return near, ""
		}
		return contradicts, fmt.Sprintf("%s says unsat, the prover found margin %v at %+v", with.name, d.Margin, d.Pose)
	case (d.Answer == prove.Disproved) == (answer == sat):
		return agreed, ""
	}
	// Proved, or Empty, and the solver has a position at which it fails.
	if readable && provetest.Covers(s.plan, &s.claim, pose) == nil {
		if margin := p.Margin(&s.claim, pose); margin < -tooClose {
			return contradicts, fmt.Sprintf("%s has margin %v at %+v; the prover says %+v", with.name, margin, pose, *d)
		}
	}
	clear := new(big.Rat).Add(q.error, ratOf(tooClose))
	more, err := newQuestion(s.writing, &s.claim, clear)
	if err != nil {
		t.Errorf("%s: %v", s.name, err)
		return noAnswer, ""
	}
	if answer, pose, readable := more.decide(t, with); answer == sat {
		why := fmt.Sprintf("%s: fails by more than %s; the prover says %+v", with.name, clear.FloatString(9), *d)
		if readable {
			why += fmt.Sprintf("; at %+v the Plan has margin %v", pose, p.Margin(&s.claim, pose))
		}
		return contradicts, why
	}
	return near, ""
}

// posesPinned is how many poses of each claim are held against the Plan.
const posesPinned = 4

// pinned asks a solver about single poses, where it has nothing to search: what is
// written must fail exactly where the Plan does, but for what the bounds leave open.
func (s *subject) pinned(t *testing.T, with *solver, p *prove.Prover, d *prove.Decision, r *rand.Rand) (asked int, why string) {
	t.Helper()
	q, err := newQuestion(s.writing, &s.claim, new(big.Rat))
	if err != nil {
		return 0, ""
	}
	var poses []prove.Pose
	if d.Answer == prove.Disproved {
		poses = append(poses, d.Pose)
	}
	draw := provetest.Poses(s.plan, &s.claim, r)
	for range posesPinned {
		if pose, ok := draw.Draw(); ok {
			poses = append(poses, pose)
		}
	}
	if len(poses) == 0 {
		return 0, ""
	}
	answers := with.ask(t, q.text, q.pinned(poses))
	off, _ := q.error.Float64()
	for i, pose := range poses {
		if i >= len(answers) || answers[i] != sat && answers[i] != unsat {
			break
		}
		asked++
		margin := p.Margin(&s.claim, pose)
		if math.Abs(margin) <= tooClose {
			continue
		}
		if margin < 0 && answers[i] == unsat || margin > off+tooClose && answers[i] == sat {
			return asked, fmt.Sprintf("%s says %s, the Plan has margin %v at %v", with.name, answers[i], margin, pose)
		}
	}
	return asked, ""
}
