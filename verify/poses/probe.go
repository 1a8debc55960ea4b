// Package poses says where to put the controls of a model to learn what its
// set-up does: which controls bear on a part at all, at which positions of each
// control something can change, and which poses to try when there are too many.
//
// It never judges a set-up and never evaluates one. Start at [New].
package poses

import "example.com/hingeline/mixcore"

// Probe is one set-up, made ready. It never changes after New.
type Probe struct {
	setup  *mixcore.Setup
	rest   mixcore.Input
	Points [][]float64 // for each control: the positions to try, its rest first
}

// New works out the positions to try of each control of a plan's set-up.
func New(plan *mixcore.Plan) *Probe {
	p := &Probe{setup: plan.Setup(), rest: plan.Rest()}
	p.Points = p.points()
	return p
}
