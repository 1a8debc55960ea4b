// Package sight is what a person with the model in hand sees of it: which way each
// part goes and, with a ruler, how far. Two set-ups that look alike at a step of the
// walk-around cannot be told apart there, however much they differ on paper.
//
// It knows no mistakes and no scripts; it decides only what can be seen, and is
// careful: what lies between "it moves" and "it does not" tells nothing. Start at
// [Look].
package sight

import (
	"math"

	"example.com/hingeline/mixcore"
)

// Look is how somebody looks.
type Look struct {
	Visible  mixcore.Degrees // a movement of this and more is seen; of less than half of it is not
	Ruler    bool            // how far is measured, not only which way
	Accuracy mixcore.Degrees // with a ruler: what two angles must be apart to read differently
}

// The usual looks. How much of a movement a person notices: a modelling choice, no
// source.
const (
	UsualVisible  mixcore.Degrees = 2
	UsualAccuracy mixcore.Degrees = 1
)

// Of motors and extras, in percent: what is seen, and what reads differently on a
// meter or a scale. A modelling choice, no source.
const (
	VisibleAmount  mixcore.Percent = 10
	AccuracyAmount mixcore.Percent = 5
)

// Eye is the look of somebody without a ruler.
var Eye = Look{Visible: UsualVisible}

// Measured is the look of somebody with a ruler.
var Measured = Look{Visible: UsualVisible, Ruler: true, Accuracy: UsualAccuracy}

// Step is one thing to do with the model in hand: bring the controls to From, look,
// move them to To, and see which way everything goes. Where From and To are the same
// the model is looked at as it stands: against neutral.
type Step struct{ From, To mixcore.Input }

// Stands says whether nothing is moved.
func (s *Step) Stands() bool {
	if s.From.SignalLost != s.To.SignalLost {
		return false
	}
	for i := range s.From.Position {
		if s.From.Position[i] != s.To.Position[i] {
			return false
		}
	}
	return true
}

// Move is what one part does in a step: where it is before and after, in degrees with
// mixcore's sign or percent. Of a step that stands, From is neutral: 0.
type Move struct{ From, To float64 }

// By is how far it moves, with its sign.
func (m Move) By() float64 { return m.To - m.From }

// Way is what an eye says of a movement.
type Way uint8

// The ways.
const (
	Unclear Way = iota // between moving and not: nobody would swear to either
	Still
	Plus
	Minus
)

// MoveOf reads a part's movement from what a plan does before and after.
func MoveOf(s *mixcore.Setup, part int, step *Step, from, to *mixcore.Output) Move {
	if step.Stands() {
		return Move{0, to.Parts[part].Place()}
	}
	return Move{from.Parts[part].Place(), to.Parts[part].Place()}
}

// Way says which way a part goes as an eye sees it.
func (l Look) Way(p *mixcore.Part, m Move) Way {
	visible := float64(VisibleAmount)
	if p.Motion.Hinged() {
		visible = float64(l.Visible)
	}
	switch by := m.By(); {
	case by >= visible:
		return Plus
	case by <= -visible:
		return Minus
	case math.Abs(by) < visible/2:
		return Still
	}
	return Unclear
}

// Ways is a set of ways.
type Ways uint8

// Of is the set of one way.
func Of(w Way) Ways { return 1 << w }

// Ways are the ways that somebody may say of a movement: one, or where it is between
// moving and not, that the part stands still or that it goes where it goes. Nobody says
// of a little that it goes the other way.
func (l Look) Ways(p *mixcore.Part, m Move) Ways {
	switch way := l.Way(p, m); {
	case way != Unclear:
		return Of(way)
	case m.By() > 0:
		return Of(Still) | Of(Plus)
	}
	return Of(Still) | Of(Minus)
}

// Differ says whether somebody who expects one movement of a part and sees another
// surely notices: another way, a motor that runs or stands, or with a ruler another
// place before or after.
func (l Look) Differ(p *mixcore.Part, wanted, seen Move) bool {
	if l.Ways(p, wanted)&l.Ways(p, seen) == 0 {
		return true
	}
	if p.Motion == mixcore.Power && (startles(p, wanted.From, seen.From) || startles(p, wanted.To, seen.To)) {
		return true
	}
	if !l.Ruler {
		return false
	}
	accuracy := float64(AccuracyAmount)
	if p.Motion.Hinged() {
		accuracy = float64(l.Accuracy)
	}
	return math.Abs(wanted.To-seen.To) >= accuracy || math.Abs(wanted.From-seen.From) >= accuracy
}

// Propeller says what is sure of a propeller at a power in percent: that it stands, or that
// it turns. Neither is where it creeps, and may be taken for either.
func Propeller(p *mixcore.Part, power float64) (stands, turns bool) {
	return p.Motor.Stopped(mixcore.Percent(power)), !p.Motor.Stopped(mixcore.Percent(power) - VisibleAmount/2)
}

// startles says whether a propeller stands at one power and clearly turns at the other.
func startles(p *mixcore.Part, a, b float64) bool {
	stands, _ := Propeller(p, min(a, b))
	_, turns := Propeller(p, max(a, b))
	return stands && turns
}

// StepTo is the step that shows a pose: the switches and levers first, then the sticks
// and trims; with a lost signal, the loss at that pose. With neither stick nor trim off
// centre all is moved from rest.
func StepTo(s *mixcore.Setup, to mixcore.Input) Step {
	from := to.Clone()
	if to.SignalLost {
		from.SignalLost = false
		return Step{From: from, To: to}
	}
	centred := true
	for i := range s.Controls {
		if c := &s.Controls[i]; c.Kind == mixcore.AxisControl || c.Kind == mixcore.TrimControl {
			centred = centred && to.Position[i] == c.Rest()
			from.Position[i] = c.Rest()
		}
	}
	if centred {
		for i := range s.Controls {
			from.Position[i] = s.Controls[i].Rest()
		}
	}
	return Step{From: from, To: to}
}
