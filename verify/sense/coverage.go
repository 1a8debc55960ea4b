package sense

import (
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/wording"
)

// tells is true for an outcome that shows which way something goes. That nothing
// moved, or that no limit was reached, shows nothing about the control that was
// moved.
func tells(o *phrase.Outcome) bool {
	if o.Not {
		return false
	}
	switch o.Verb {
	case phrase.Move, phrase.Stand, phrase.Turn, phrase.Together, phrase.Opposite,
		phrase.PowerAt, phrase.PulseAt, phrase.OutputAt, phrase.Stops, phrase.Running, phrase.Rising:
		return true
	}
	return false
}

// unmentioned finds the parts that no sentence is about.
func (l *looker) unmentioned() {
	seen := make([]bool, len(l.s.Parts))
	for i := range l.asked {
		o := &l.asked[i].Outcome
		for _, part := range o.Subject.Parts {
			// A servo's torque says nothing about which way its part moves.
			seen[part] = seen[part] || !o.Subject.Servos
		}
		if o.Verb.Compares() {
			seen[o.Other] = true
		}
		for _, channel := range o.Subject.Channels {
			for k := range l.s.Parts {
				if drives := l.s.Parts[k].Drives; len(drives) == 1 && drives[0].Channel == channel {
					seen[k] = true
				}
			}
		}
	}
	var names []string
	first := slices.Index(seen, false)
	for i, is := range seen {
		if !is {
			names = append(names, "the "+l.s.Parts[i].Name)
		}
	}
	if first < 0 {
		return
	}
	l.add(missing(l.m.Places.Parts[first], codePart, "no sentence says what "+wording.Listed(names)+either(len(names) == 1, " does", " do"),
		"whatever is wrong there passes", l.sentenceFor(first)))
}

// sentenceFor is a sentence that a part should pass, by the first axis that it is
// there for; empty if there is none.
func (l *looker) sentenceFor(part int) string {
	for i := range l.s.Controls {
		c := &l.s.Controls[i]
		if c.Kind != mixcore.AxisControl {
			continue
		}
		if way := l.helps(part, cue{axis: l.axisOf(i), plus: true}); way != phrase.NoWay {
			return "with " + l.full(i) + ", the " + l.s.Parts[part].Name + " " + doesWords[way]
		}
	}
	return ""
}

// full is a stick or trim at its plus end, in the words of a script.
func (l *looker) full(control int) string {
	c := &l.s.Controls[control]
	return c.Name + " full " + either(c.Axis == mixcore.Pitch, "back", "right")
}

// controls finds the controls that no sentence tries: sticks, levers and switches
// that never leave their rest, trims and second controls of an axis that no
// sentence has moved by themselves.
func (l *looker) controls() {
	away, alone := make([]bool, len(l.s.Controls)), make([]bool, len(l.s.Controls))
	for i := range l.asked {
		a := &l.asked[i]
		l.leaveRest(away, &a.At.Now)
		if a.At.Moved {
			l.leaveRest(away, &a.At.Before)
		}
		for c, r := range a.Outcome.Roams(l.s, &a.At) {
			away[c] = away[c] || r.Free && !a.Outcome.Verb.OnlyLimits()
		}
		if moved := l.moved(a); tells(&a.Outcome) && !a.At.Before.Lost && !a.At.Now.Lost {
			for _, c := range moved {
				alone[c] = alone[c] || !slices.ContainsFunc(moved, func(other int) bool {
					return other != c && l.s.Controls[other].Axis == l.s.Controls[c].Axis && l.s.Controls[c].Axis != mixcore.NoAxis
				})
			}
		}
	}
	var unmoved, trims, seconds []int
	for i := range l.s.Controls {
		switch c := &l.s.Controls[i]; {
		case c.Kind == mixcore.TrimControl:
			if !alone[i] {
				trims = append(trims, i)
			}
		case c.Kind == mixcore.AxisControl && l.sharesAxis(i) && !alone[i]:
			seconds = append(seconds, i)
		case !away[i]:
			unmoved = append(unmoved, i)
		}
	}
	if len(unmoved) > 0 {
		l.add(missing(l.m.Places.Controls[unmoved[0]], codeControl, "no sentence moves "+l.theControls(unmoved),
			"whatever it does passes, and so does nothing at all", ""))
	}
	if len(trims) > 0 {
		l.add(missing(l.m.Places.Controls[trims[0]], codeTrim, "no sentence says which way the model answers "+l.theControls(trims),
			"a reversed trim is found in the air, where every click makes it worse", l.turnFor(trims[0])))
	}
	for _, i := range seconds {
		l.add(missing(l.m.Places.Controls[i], codeSecond, "no sentence moves the "+l.s.Controls[i].Name+" by itself, one of several controls for "+axisNames[l.s.Controls[i].Axis],
			"that one of them is right says nothing about the others: each may have a sign of its own", l.turnFor(i)))
	}
}

// moved are the controls that an outcome speaks of as moving.
func (l *looker) moved(a *phrase.Asked) []int {
	list := a.At.MovedControls()
	for c, r := range a.Outcome.Roams(l.s, &a.At) {
		if r.Moves {
			list = append(list, c)
		}
	}
	return list
}

func (l *looker) leaveRest(away []bool, p *phrase.Pose) {
	for i, at := range p.Position {
		away[i] = away[i] || at != l.s.Controls[i].Rest()
	}
}

// sharesAxis is true for a stick whose axis has another one.
func (l *looker) sharesAxis(control int) bool {
	for i := range l.s.Controls {
		c := &l.s.Controls[i]
		if i != control && c.Kind == mixcore.AxisControl && c.Axis == l.s.Controls[control].Axis {
			return true
		}
	}
	return false
}

func (l *looker) theControls(indices []int) string {
	var names []string
	for _, i := range indices {
		names = append(names, "the "+l.s.Controls[i].Name)
	}
	return wording.Listed(names)
}

// turnFor is the sentence that every model should pass with a stick or trim at
// its plus end.
func (l *looker) turnFor(control int) string {
	axis := l.axisOf(control)
	return "with " + l.full(control) + ", the model " + turnVerb(axis) + " " + turnSide(axis, true)
}
