package prove

import (
	"context"

	"example.com/hingeline/mixcore"
)

// Prover decides claims about one set-up. It keeps what it found out, so that the
// next claim is decided faster; it must not be used from two goroutines at once.
type Prover struct {
	plan *mixcore.Plan
}

// New makes a prover for a plan.
func New(plan *mixcore.Plan) *Prover { return &Prover{plan: plan} }

// Decide decides a claim. If ctx is done it answers Undecided.
func (p *Prover) Decide(ctx context.Context, c *Claim, o Options) Decision { return Decision{} }

// Margin is the margin of a claim at one pose, by the Plan: negative where it does not
// hold there.
func (p *Prover) Margin(c *Claim, at Pose) float64 { return 0 }
