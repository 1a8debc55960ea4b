package sense

import (
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/wording"
)

// cue is what the pilot's hand asks of the model: a turn about one axis.
type cue struct {
	axis    mixcore.Axis // about which the model should turn
	plus    bool         // right or up
	control int          // the first that asks it
	side    string       // "to the right", "back": of that control
	stands  bool         // it stands there; else it moved that way
}

// words are what the hand does, within a sentence: "the roll stick moves to the
// right".
func (l *looker) words(c cue) string {
	verb := " moves "
	if c.stands {
		verb = " stands "
	}
	return "the " + l.s.Controls[c.control].Name + verb + c.side
}

// movedCue is what a movement asks, if it is one axis alone: sticks and trims of
// the same axis, all moved the same way, and nothing else.
func (l *looker) movedCue(at *phrase.Situation) (cue, bool) {
	if at.Before.Lost || at.Now.Lost {
		return cue{}, false
	}
	var c cue
	moved := at.MovedControls()
	for k, i := range moved {
		plus := at.Now.Position[i] > at.Before.Position[i]
		if !l.joins(&c, k == 0, i, plus) {
			return cue{}, false
		}
	}
	return c, len(moved) > 0
}

// stoodCue is what a position of the controls asks, if sticks and trims of one
// axis alone are off centre, all to the same side. Levers and switches may stand
// anywhere.
func (l *looker) stoodCue(p *phrase.Pose) (cue, bool) {
	if p.Lost {
		return cue{}, false
	}
	c, any := cue{stands: true}, false
	for i, at := range p.Position {
		if at == 0 || !isStick(&l.s.Controls[i]) {
			continue
		}
		if !l.joins(&c, !any, i, at > 0) {
			return cue{}, false
		}
		any = true
	}
	return c, any
}

// joins adds a control to a cue; false if it asks something else.
func (l *looker) joins(c *cue, first bool, control int, plus bool) bool {
	axis := l.axisOf(control)
	if axis == mixcore.NoAxis || !first && (axis != c.axis || plus != c.plus) {
		return false
	}
	if first {
		c.axis, c.plus, c.control = axis, plus, control
		c.side = wording.AxisSide(l.s.Controls[control].Axis, plus)
		if l.s.Controls[control].Axis != mixcore.Pitch {
			c.side = "to the " + c.side
		}
	}
	return true
}

// isStick is true for sticks and trims.
func isStick(c *mixcore.Control) bool {
	return c.Kind == mixcore.AxisControl || c.Kind == mixcore.TrimControl
}

// centred is a pose with its sticks and trims in the middle.
func (l *looker) centred(p *phrase.Pose) mixcore.Input {
	in := p.Shown()
	for i := range in.Position {
		if isStick(&l.s.Controls[i]) {
			in.Position[i] = 0
		}
	}
	return in
}
