// Package findings is what a second pair of eyes says about a set-up that
// nobody asked about: rules of thumb of the trade, each a placed warning with a
// code of its own. A flap parked at the end of its servo, a pair on a Y-lead
// that is asked to go opposite ways, shares that add up beyond the travel, left
// and right throws that differ, a switch position that changes nothing, a motor
// that its safe position does not stop.
//
// The rules are tried out on the compiled Plan: for each channel and part, at
// poses of the controls that reach it (every switch position; sticks and levers
// at their ends, detents, centre and half-way, and at each threshold and curve
// point). All combinations are tried as long as there are no more of them than
// the budget allows; beyond that those with the fewest controls off rest, and a
// climb towards the ends of each channel. So what a finding says happens does
// happen at the pose it names. What it says does nothing does nothing at every
// pose tried, and is said only where all combinations of them were. Silence is
// not proof: package prove decides for all positions. Only motors that are made
// safe are followed in time, each alone.
//
// It never changes a model and never judges a script. Start at [Find].
package findings

import (
	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/wording"
)

// Find looks a model over. The findings are warnings, placed in the airframe
// file and sorted by place; nil if there are none. One cause gives one finding,
// shown at the pose with the fewest controls off rest.
func Find(m *airframes.Model) []diag.Problem {
	f := newFinder(m, budget)
	f.unused()
	f.survey()
	f.channelFindings()
	f.partFindings()
	f.motorFindings()
	f.atRest()
	f.idleControls()
	f.parked()
	f.pairFindings()
	diag.Sort(f.problems)
	return f.problems
}

// finder is one look over a model.
type finder struct {
	*poses.Probe
	m        *airframes.Model
	s        *mixcore.Setup
	plan     *mixcore.Plan
	rest     mixcore.Input
	out      *mixcore.Output // of the pose being looked at
	left     int             // evaluations that may still be spent
	followed int             // steps of time that motors were followed
	late     map[string]lateStop
	channels []channelRecord
	parts    []partRecord
	controls []controlRecord
	problems []diag.Problem
}

func newFinder(m *airframes.Model, evaluations int) *finder {
	f := &finder{Probe: poses.New(m.Plan), m: m, s: &m.Setup, plan: m.Plan, rest: m.Plan.Rest(), out: m.Plan.NewOutput(), left: evaluations, late: map[string]lateStop{},
		channels: make([]channelRecord, len(m.Setup.Channels)),
		parts:    make([]partRecord, len(m.Setup.Parts)),
		controls: make([]controlRecord, len(m.Setup.Controls))}
	for i := range f.controls {
		f.controls[i].differs = make([]bool, len(f.Points[i]))
		f.controls[i].complete = true
	}
	return f
}

func (f *finder) warn(at diag.Place, code, message, hint string) {
	f.problems = append(f.problems, diag.Problem{Place: at, Severity: diag.Warning, Code: code, Message: message, Hint: hint})
}

// with says a pose within a sentence.
func (f *finder) with(position []float64) string {
	return "with " + f.poseWords(position)
}

func (f *finder) poseWords(position []float64) string {
	said := wording.Pose(f.s, &mixcore.Input{Position: position})
	if len(said) == 0 {
		return "everything at rest"
	}
	return wording.Listed(said)
}
