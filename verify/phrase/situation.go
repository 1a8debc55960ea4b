package phrase

import (
	"slices"

	"example.com/hingeline/mixcore"
)

// Pose is where the controls stand and whether the signal is there. Once the
// signal is lost, moving a control changes nothing on the model.
type Pose struct {
	Position []float64 // as the hand has them, as in mixcore.Input
	Lost     bool
	held     []float64 // while lost: where they stood when the signal went
}

// RestPose is everything at rest, with a signal.
func RestPose(setup *mixcore.Setup) Pose {
	p := Pose{Position: make([]float64, len(setup.Controls))}
	for i := range setup.Controls {
		p.Position[i] = setup.Controls[i].Rest()
	}
	return p
}

// Take is the pose after a group of settings. Controls move first, then the
// signal changes.
func (p Pose) Take(setup *mixcore.Setup, g *Group) Pose {
	next := Pose{Position: slices.Clone(p.Position), Lost: p.Lost, held: p.held}
	if g.Rests {
		next.Position = RestPose(setup).Position
	}
	for _, s := range g.Settings {
		next.Position[s.Control] = s.Position
	}
	switch {
	case g.Signal == SignalLost && !p.Lost:
		next.Lost, next.held = true, slices.Clone(next.Position)
	case g.Signal == SignalBack:
		next.Lost, next.held = false, nil
	}
	return next
}

// Stand is the pose as a state that the settings describe: what was set before
// and what the group sets hold together. Where the signal is lost, the controls
// stood so when it went, in whatever order the settings were written.
func (p Pose) Stand(setup *mixcore.Setup, g *Group) Pose {
	next := p.Take(setup, g)
	if next.Lost {
		next.held = slices.Clone(next.Position)
	}
	return next
}

// Shown is the pose as the hand has it, for people.
func (p Pose) Shown() mixcore.Input {
	return mixcore.Input{Position: slices.Clone(p.Position), SignalLost: p.Lost}
}

// Input is the pose as the model has it: with the signal lost, as it was when
// the signal went.
func (p Pose) Input() mixcore.Input {
	if p.Lost {
		return mixcore.Input{Position: slices.Clone(p.held), SignalLost: true}
	}
	return p.Shown()
}

// Same is true if nothing was moved and the signal did not change.
func (p Pose) Same(q Pose) bool { return p.Lost == q.Lost && slices.Equal(p.Position, q.Position) }

// Situation is what a sentence is judged at.
type Situation struct {
	Before Pose // of a movement
	Now    Pose
	Moved  bool   // a movement led from Before to Now
	Set    []bool // by control: the scenario has set it; nil: none
}

// Merge adds what another step of the same group sets.
func (g *Group) Merge(setup *mixcore.Setup, more *Group) *Problem {
	for _, s := range more.Settings {
		if problem := g.conflict(setup, s); problem != nil {
			return problem
		}
	}
	if g.Signal != SignalKept && more.Signal != SignalKept && g.Signal != more.Signal {
		return &Problem{Column: more.SignalAt.Column, Width: more.SignalAt.Width, Code: CodeConflict,
			Message: "the signal is both lost and back in one go", Hint: "say one of them"}
	}
	g.Rests = g.Rests || more.Rests
	g.Settings = append(g.Settings, more.Settings...)
	if more.Signal != SignalKept {
		g.Signal, g.SignalAt = more.Signal, more.SignalAt
	}
	return nil
}

// CheckOrder refuses a movement that loses the signal and moves a control at
// once: what the model does depends on which came first.
func (g *Group) CheckOrder() *Problem {
	if g.Signal != SignalLost || len(g.Settings) == 0 && !g.Rests {
		return nil
	}
	return &Problem{Column: g.SignalAt.Column, Width: g.SignalAt.Width, Code: CodeUnclearOrder,
		Message: "the signal goes while a control moves: which comes first?",
		Hint:    "write one When for the control and a second When for the signal"}
}
