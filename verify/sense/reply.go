package sense

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
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
// the same axis, all moved the same way. Levers and switches may move with them,
// where they leave alone what is asked about.
func (l *looker) movedCue(a *phrase.Asked) (cue, bool) {
	at := &a.At
	if at.Before.Lost || at.Now.Lost {
		return cue{}, false
	}
	var c cue
	var sticks []int
	moved := at.MovedControls()
	for _, i := range moved {
		if !isStick(&l.s.Controls[i]) {
			continue
		}
		plus := at.Now.Position[i] > at.Before.Position[i]
		if !l.joins(&c, len(sticks) == 0, i, plus) {
			return cue{}, false
		}
		sticks = append(sticks, i)
	}
	return c, len(sticks) > 0 && (len(sticks) == len(moved) || l.restLeaves(a, sticks))
}

// restLeaves says whether the controls that a movement put elsewhere, but for
// some of them, leave alone what an outcome is about: then it is these that move
// it. They stand where they stood before or where they stand now: if the rest does
// nothing in one of the two, the step of these alone is the whole movement.
func (l *looker) restLeaves(a *phrase.Asked, but []int) bool {
	from, to := l.m.Plan.NewOutput(), l.m.Plan.NewOutput()
	for _, stand := range []*phrase.Pose{&a.At.Before, &a.At.Now} {
		was, is := a.At.Before.Input().Clone(), a.At.Now.Input().Clone()
		for _, i := range but {
			was.Position[i], is.Position[i] = stand.Position[i], stand.Position[i]
		}
		l.m.Plan.Eval(&was, from)
		l.m.Plan.Eval(&is, to)
		if l.alike(&a.Outcome, from, to) {
			return true
		}
	}
	return false
}

// alike is true if what an outcome is about is the same in two outputs.
func (l *looker) alike(o *phrase.Outcome, from, to *mixcore.Output) bool {
	if o.Verb == phrase.Turn {
		change := l.air.Change(from, to)
		return change.Answer(o.Axis) == effect.None
	}
	parts := slices.Clone(o.Subject.Parts)
	if o.Verb.Compares() {
		parts = append(parts, o.Other)
	}
	return !slices.ContainsFunc(parts, func(i int) bool {
		return math.Abs(to.Parts[i].Place()-from.Parts[i].Place()) > hair
	})
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
