package script

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
)

// coverage is what the checks that ran looked at: every part that a sentence is
// about; of the controls those that a When or a one-line sentence moved while the
// model could hear it, and the positions and detents at which they stood with the
// signal on. A switch, or a lever with detents, that stood away from where it rests
// counts as moved: its positions are listed one by one.
type coverage struct {
	setup    *mixcore.Setup
	parts    []bool
	controls []bool   // was moved
	places   [][]bool // of each control, by position or detent
}

// uncovered is what no check that ran looked at.
func uncovered(setup *mixcore.Setup, scenarios []*scenario) result.Uncovered {
	c := coverage{setup: setup, parts: make([]bool, len(setup.Parts)), controls: make([]bool, len(setup.Controls)), places: make([][]bool, len(setup.Controls))}
	for i := range setup.Controls {
		c.places[i] = make([]bool, len(setup.Controls[i].Positions)+len(setup.Controls[i].Detents))
	}
	each(scenarios, func(ch *check) {
		if ch.selected {
			c.see(ch)
		}
	})
	return c.missed()
}

func (c *coverage) see(ch *check) {
	for _, i := range ch.outcome.Subject.Parts {
		// A servo's torque says nothing about which way its part moves.
		c.parts[i] = c.parts[i] || !ch.outcome.Subject.Servos
	}
	if ch.outcome.Verb.Compares() {
		c.parts[ch.outcome.Other] = true
	}
	for _, channel := range ch.outcome.Subject.Channels {
		for i := range c.setup.Parts {
			if len(c.setup.Parts[i].Drives) == 1 && c.setup.Parts[i].Drives[0].Channel == channel {
				c.parts[i] = true
			}
		}
	}
	for i, r := range ch.outcome.Roams(c.setup, &ch.at) {
		if r.Free && !ch.outcome.Verb.OnlyLimits() && !ch.at.Now.Lost {
			c.roamed(i, &r, ch.outcome.Every.When)
		}
	}
	c.stood(ch.at.Now)
	if ch.at.Moved {
		c.stood(ch.at.Before)
		c.moved(ch.at)
	}
}

// roamed notes a control that runs over places of its own, and those that it comes by,
// unless only some of them count.
func (c *coverage) roamed(i int, r *phrase.Roam, when *mixcore.Condition) {
	c.controls[i] = true
	some := false
	c.setup.EachTest(when, func(t *mixcore.Condition) { some = some || t.Control == i })
	if some {
		return
	}
	for _, at := range r.Over.Places {
		c.places[i][at] = true
	}
	for k, detent := range c.setup.Controls[i].Detents {
		if at := float64(detent.At); r.Over.Low <= at && at <= r.Over.High {
			c.places[i][k] = true
		}
	}
}

// moved notes the controls whose movement the model could hear.
func (c *coverage) moved(at phrase.Situation) {
	before, now := at.Before.Input(), at.Now.Input()
	for i := range c.setup.Controls {
		c.controls[i] = c.controls[i] || math.Abs(now.Position[i]-before.Position[i]) >= phrase.LeastMove
	}
}

// stood notes the positions and detents at which controls stand.
func (c *coverage) stood(p phrase.Pose) {
	if p.Lost {
		return
	}
	for i, at := range p.Position {
		control := &c.setup.Controls[i]
		if control.Kind == mixcore.SwitchControl {
			c.place(i, int(at), at)
		}
		if k := control.DetentAt(at); k >= 0 {
			c.place(i, k, at)
		}
	}
}

func (c *coverage) place(control, index int, at float64) {
	c.places[control][index] = true
	c.controls[control] = c.controls[control] || at != c.setup.Controls[control].Rest()
}

// missed lists what was not seen. A control that was never moved is listed
// once, not by each of its positions.
func (c *coverage) missed() result.Uncovered {
	var u result.Uncovered
	for i, seen := range c.parts {
		if !seen {
			u.Parts = append(u.Parts, c.setup.Parts[i].Name)
		}
	}
	for i := range c.setup.Controls {
		control := &c.setup.Controls[i]
		if !c.controls[i] {
			u.Controls = append(u.Controls, control.Name)
			continue
		}
		names := slices.Clone(control.Positions)
		for _, detent := range control.Detents {
			names = append(names, detent.Name)
		}
		for k, seen := range c.places[i] {
			if !seen {
				u.Positions = append(u.Positions, control.Name+" "+names[k])
			}
		}
	}
	return u
}
