package beside

import (
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

// Controls are those of two set-ups as one list: what both have once, then what only the
// one or the other has.
type Controls struct {
	Both     []mixcore.Control
	was, is  []int   // for each control of the two: its index in Both
	isPlaces [][]int // for each control of the newer set-up: of a switch, where its positions are in Both's
	shared   []bool  // for each of Both: both set-ups have it
	places   [][]int // for each of Both, of a switch that both have: the positions that both have
	rest     []float64
}

// Same are the controls of two set-ups that have the same ones, in the same order.
func Same(s *mixcore.Setup) *Controls {
	c := &Controls{Both: s.Controls}
	for i := range s.Controls {
		c.was, c.is, c.shared = append(c.was, i), append(c.is, i), append(c.shared, true)
		places := prove.Whole(&s.Controls[i]).Places
		c.isPlaces, c.places = append(c.isPlaces, places), append(c.places, places)
		c.rest = append(c.rest, s.Controls[i].Rest())
	}
	return c
}

// Match matches the controls of two set-ups. Two are one if they have the same name and
// are the same kind of control, of sticks and trims for the same axis, of switches with a
// position that both have. A switch keeps those positions that both give it, by their
// names; a lever its whole travel, wherever its detents are.
func Match(was, is *mixcore.Setup) *Controls {
	c := &Controls{}
	for i := range was.Controls {
		control := was.Controls[i]
		control.Positions = slices.Clone(control.Positions)
		c.was = append(c.was, i)
		c.add(control, false, nil)
	}
	for i := range is.Controls {
		control := &is.Controls[i]
		at := slices.IndexFunc(c.Both[:len(was.Controls)], func(other mixcore.Control) bool { return alike(&other, control) })
		if at < 0 || !meet(&c.Both[at], control) {
			c.is = append(c.is, len(c.Both))
			c.isPlaces = append(c.isPlaces, prove.Whole(control).Places)
			c.add(*control, false, nil)
			continue
		}
		c.is = append(c.is, at)
		c.shared[at] = true
		places := c.join(at, control)
		c.isPlaces = append(c.isPlaces, places)
		c.rest[at] = control.Rest()
		if places != nil {
			c.rest[at] = float64(places[0])
			if !slices.Contains(c.places[at], places[0]) {
				c.rest[at] = float64(c.places[at][0])
			}
		}
	}
	return c
}

func (c *Controls) add(control mixcore.Control, shared bool, places []int) {
	c.Both, c.shared, c.places = append(c.Both, control), append(c.shared, shared), append(c.places, places)
	c.rest = append(c.rest, control.Rest())
}

func alike(a, b *mixcore.Control) bool {
	return a.Kind == b.Kind && a.Axis == b.Axis && airframes.FoldName(a.Name) == airframes.FoldName(b.Name)
}

// meet says whether there is a position that both of two controls can be put to.
func meet(a, b *mixcore.Control) bool {
	return a.Kind != mixcore.SwitchControl || slices.ContainsFunc(b.Positions, func(name string) bool {
		return slices.ContainsFunc(a.Positions, func(other string) bool { return airframes.FoldName(other) == airframes.FoldName(name) })
	})
}

// join adds a switch's positions to those of the switch that it is one with, and says
// where they are there.
func (c *Controls) join(at int, control *mixcore.Control) (places []int) {
	if control.Kind != mixcore.SwitchControl {
		return nil
	}
	both := &c.Both[at]
	before := len(both.Positions)
	for _, name := range control.Positions {
		place := slices.IndexFunc(both.Positions, func(other string) bool { return airframes.FoldName(other) == airframes.FoldName(name) })
		if place < 0 {
			place = len(both.Positions)
			both.Positions = append(both.Positions, name)
		}
		if place < before {
			c.places[at] = append(c.places[at], place)
		}
		places = append(places, place)
	}
	slices.Sort(c.places[at])
	return places
}

// Everywhere is every place of the controls that both set-ups have, and rest of the
// others.
func (c *Controls) Everywhere() []prove.Span {
	spans := make([]prove.Span, len(c.Both))
	for i := range c.Both {
		control := &c.Both[i]
		switch {
		case !c.shared[i] && control.Kind == mixcore.SwitchControl:
			spans[i] = prove.Span{Places: []int{int(c.rest[i])}}
		case !c.shared[i]:
			spans[i] = prove.At(c.rest[i])
		case control.Kind == mixcore.SwitchControl:
			spans[i] = prove.Span{Places: c.places[i]}
		default:
			spans[i] = prove.Whole(control)
		}
	}
	return spans
}

// Was is where a position of both puts the controls of the one set-up.
func (c *Controls) Was(in *mixcore.Input) mixcore.Input {
	out := mixcore.Input{Position: make([]float64, len(c.was)), SignalLost: in.SignalLost}
	for i, at := range c.was {
		out.Position[i] = in.Position[at]
	}
	return out
}

// Is is where a position of both puts the controls of the other set-up.
func (c *Controls) Is(in *mixcore.Input) mixcore.Input {
	out := mixcore.Input{Position: make([]float64, len(c.is)), SignalLost: in.SignalLost}
	for i, at := range c.is {
		out.Position[i] = in.Position[at]
		if places := c.isPlaces[i]; places != nil {
			out.Position[i] = float64(slices.Index(places, int(in.Position[at])))
		}
	}
	return out
}

// OnlyWas and OnlyIs are the controls that only the one or the other set-up has, by their
// index in it.
func (c *Controls) OnlyWas() []int { return c.only(c.was) }

// OnlyIs are those of the newer set-up.
func (c *Controls) OnlyIs() []int { return c.only(c.is) }

func (c *Controls) only(of []int) (list []int) {
	for i, at := range of {
		if !c.shared[at] {
			list = append(list, i)
		}
	}
	return list
}

// LeftOut are the positions of a control of both that only one set-up gives it.
func (c *Controls) LeftOut(control int) (names []string) {
	if !c.shared[control] {
		return nil
	}
	for i, name := range c.Both[control].Positions {
		if !slices.Contains(c.places[control], i) {
			names = append(names, name)
		}
	}
	return names
}

// Rest is where a control of both stands when nobody touches it, as the newer set-up has
// it where it has it.
func (c *Controls) Rest(control int) float64 { return c.rest[control] }

// One says whether a control of the one set-up is one with a control of the other.
func (c *Controls) One(was, is int) bool { return c.was[was] == c.is[is] }
