package script

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
)

// coverage is what the checks that ran looked at.
type coverage struct {
	setup    *mixcore.Setup
	parts    []bool
	controls []bool   // was away from rest
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
		c.parts[i] = true
	}
	switch ch.outcome.Verb {
	case phrase.Together, phrase.Opposite, phrase.AsFar, phrase.LessThan, phrase.MoreThan:
		c.parts[ch.outcome.Other] = true
	}
	for _, channel := range ch.outcome.Subject.Channels {
		for i := range c.setup.Parts {
			if len(c.setup.Parts[i].Drives) == 1 && c.setup.Parts[i].Drives[0].Channel == channel {
				c.parts[i] = true
			}
		}
	}
	c.pose(ch.at.Now)
	if ch.at.Moved {
		c.pose(ch.at.Before)
	}
}

func (c *coverage) pose(p phrase.Pose) {
	for i, at := range p.Position {
		control := &c.setup.Controls[i]
		if at != control.Rest() {
			c.controls[i] = true
		}
		if control.Kind == mixcore.SwitchControl {
			c.places[i][int(at)] = true
		}
		for k, detent := range control.Detents {
			if math.Abs(at-float64(detent.At)) <= float64(mixcore.DetentReach) {
				c.places[i][k] = true
			}
		}
	}
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
