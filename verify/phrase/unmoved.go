package phrase

import "math"

// LeastMove is the least that a control must be moved for a movement, in percent
// of full travel. A switch moves by whole positions.
const LeastMove = 1.0

// Unheard is true for a movement of controls that the model cannot hear: the
// signal was lost before it and did not come back.
func (s *Situation) Unheard() bool { return s.Moved && s.Before.Lost && s.Now.Lost }

// Hardly is true for a movement in which the signal stayed as it was and every
// control moved less than LeastMove, or not at all.
func (s *Situation) Hardly() bool {
	if !s.Moved || s.Before.Lost != s.Now.Lost {
		return false
	}
	for _, i := range s.MovedControls() {
		if math.Abs(s.Now.Position[i]-s.Before.Position[i]) >= LeastMove {
			return false
		}
	}
	return true
}

// Unmoved is the problem of an outcome that would show nothing in a situation,
// because nothing moved that the model could answer to; nil if there is none.
func (o *Outcome) Unmoved(at *Situation) *Problem {
	p := &Problem{Column: o.At.Column, Width: o.At.Width, Code: CodeNoMovement}
	switch {
	case at.Unheard():
		p.Message = "while the signal is lost, moving a control changes nothing"
		p.Hint = "put what is set before the loss under Given, or write When the signal is back"
	case !o.NeedsMovement():
		return nil
	case !at.Moved:
		p.Message, p.Hint = "nothing was moved before this", "write a When before it, or \"with right roll, …\" in front of it"
	case at.Before.Same(at.Now):
		p.Message, p.Hint = "the controls stood there already: nothing moves", "set them elsewhere before the When"
	case at.Hardly():
		p.Message, p.Hint = "nothing moves as much as 1 % of its travel, and that shows nothing", "move the control further"
	default:
		return nil
	}
	return p
}
