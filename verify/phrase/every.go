package phrase

import (
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

// Every says over which positions of the controls an outcome must hold: at every
// place of the controls that are free. The others stand where the scenario has them.
type Every struct {
	named []freeControl      // controls that the sentence names
	kinds []freeKind         // every control of a kind that neither it nor the scenario names
	When  *mixcore.Condition // only positions at which it holds count; nil: all

	// usual is what an outcome sets free by its own words, such as "never": it counts
	// only as far as nothing before it says more exactly what moves.
	usual scope
}

// scope is what an outcome sets free by its own words.
type scope uint8

const (
	given scope = iota // nothing
	unset              // everything that the scenario has not set, unless a prefix says over what: "no channel runs out of travel"
	ever               // the same, unless "whatever" says what moves: "never", "always", "no motor ever runs"
)

// freeControl is one control that a sentence sets free.
type freeControl struct {
	Control int
	Over    prove.Span
	How     freedom
	At      Span
}

// freeKind is a kind of control that a sentence sets free.
type freeKind struct {
	Kind mixcore.ControlKind
	How  freedom
}

// freedom is how a free control takes part.
type freedom uint8

// The freedoms.
const (
	freeMoving   freedom = iota // it moves there from where the scenario has it: "whatever the roll stick does"
	freeStanding                // it stands there before and after: "at every position of the flap lever"
	freeWatched                 // a condition names it: it moves if it is of the kind that does, else it stands
)

// kinds are all kinds of control, those that move the model first: see
// [reader.splitMovement].
var kinds = []mixcore.ControlKind{mixcore.AxisControl, mixcore.TrimControl, mixcore.LeverControl, mixcore.SwitchControl}

// everythingMoves is every control that the scenario has not set, free to move.
func everythingMoves() Every {
	var e Every
	for _, kind := range kinds {
		e.kinds = append(e.kinds, freeKind{kind, freeMoving})
	}
	return e
}

// and is both: what either sets free, where either's condition holds.
func (e Every) and(more *Every) Every {
	both := Every{usual: max(e.usual, more.usual), named: slices.Concat(e.named, more.named), kinds: slices.Concat(e.kinds, more.kinds), When: e.When}
	switch {
	case both.When == nil:
		both.When = more.When
	case more.When != nil && more.When != both.When:
		both.When = &mixcore.Condition{Op: mixcore.And, Args: []mixcore.Condition{*e.When, *more.When}}
	}
	return both
}

// Roam is what one control does under an outcome about every position.
type Roam struct {
	Free  bool
	Moves bool // it moves there; else it stands there before and after
	Over  prove.Span
}

// Roams says of each control what it does under an outcome in a situation: nothing is
// free of a plain one. Behind a movement of the scenario, and where the signal is lost,
// whatever is free stands: the movement is the scenario's, or nothing could hear it.
func (o *Outcome) Roams(setup *mixcore.Setup, at *Situation) []Roam {
	if o.Every == nil {
		return make([]Roam, len(setup.Controls))
	}
	list := o.Every.roams(setup, at)
	for i := range list {
		named := o.Verb == Rising && o.Control == i
		if named || o.Verb == DependsOn && !at.sets(i) {
			list[i] = Roam{Free: true, Moves: named, Over: prove.Whole(&setup.Controls[i])}
		}
	}
	return list
}

func (e *Every) roams(setup *mixcore.Setup, at *Situation) []Roam {
	list := make([]Roam, len(setup.Controls))
	moved := e.watchedKinds(setup)
	for i := range list {
		c := &setup.Controls[i]
		r := &list[i]
		for _, k := range e.kinds {
			if k.Kind == c.Kind && !at.sets(i) && (!r.Free || k.How == freeStanding) {
				*r = Roam{Free: true, Moves: k.How == freeMoving, Over: prove.Whole(c)}
			}
		}
		named := false
		for _, f := range e.named {
			if f.Control != i || named && f.How == freeWatched {
				continue
			}
			named = true
			*r = Roam{Free: true, Moves: f.How == freeMoving || f.How == freeWatched && slices.Contains(moved, c.Kind), Over: f.Over}
		}
		r.Moves = r.Moves && !at.Moved && !at.Now.Lost
	}
	return list
}

// watchedKinds are the kinds of control that move where only a condition names them,
// by the rule of the one-line form.
func (e *Every) watchedKinds(setup *mixcore.Setup) []mixcore.ControlKind {
	there := map[mixcore.ControlKind]bool{}
	for _, f := range e.named {
		if f.How == freeWatched {
			there[setup.Controls[f.Control].Kind] = true
		}
	}
	switch {
	case there[mixcore.AxisControl], there[mixcore.TrimControl]:
		return []mixcore.ControlKind{mixcore.AxisControl, mixcore.TrimControl}
	case there[mixcore.LeverControl]:
		return []mixcore.ControlKind{mixcore.LeverControl}
	}
	return []mixcore.ControlKind{mixcore.SwitchControl}
}

// moving is true if the outcome itself sets a control free to move.
func (e *Every) moving() bool {
	return slices.ContainsFunc(e.kinds, func(k freeKind) bool { return k.How == freeMoving }) ||
		slices.ContainsFunc(e.named, func(f freeControl) bool { return f.How != freeStanding })
}

// saysWhatMoves is true if a prefix with "whatever" is among what sets free.
func (e *Every) saysWhatMoves() bool {
	return slices.ContainsFunc(e.kinds, func(k freeKind) bool { return k.How == freeMoving }) ||
		slices.ContainsFunc(e.named, func(f freeControl) bool { return f.How == freeMoving })
}

// sets is true for a control that the scenario has set.
func (s *Situation) sets(control int) bool { return control < len(s.Set) && s.Set[control] }
