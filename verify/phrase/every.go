package phrase

import (
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

// Every says over which positions of the controls an outcome must hold: at every
// place of the controls that are free. The others stand where the scenario has them.
type Every struct {
	Named []Free             // controls that the sentence names
	Kinds []KindFree         // every control of a kind that neither it nor the scenario names
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

// Free is one control that a sentence sets free.
type Free struct {
	Control int
	Over    prove.Span
	How     Freedom
	At      Span
}

// KindFree is a kind of control that a sentence sets free.
type KindFree struct {
	Kind mixcore.ControlKind
	How  Freedom
}

// Freedom is how a free control takes part.
type Freedom uint8

// The freedoms.
const (
	Moving   Freedom = iota // it moves there from where the scenario has it: "whatever the roll stick does"
	Standing                // it stands there before and after: "at every position of the flap lever"
	Watched                 // a condition names it: it moves if it is of the kind that does, else it stands
)

// kinds are all kinds of control, those that move the model first: see
// [reader.splitMovement].
var kinds = []mixcore.ControlKind{mixcore.AxisControl, mixcore.TrimControl, mixcore.LeverControl, mixcore.SwitchControl}

// everythingMoves is every control that the scenario has not set, free to move.
func everythingMoves() Every {
	var e Every
	for _, kind := range kinds {
		e.Kinds = append(e.Kinds, KindFree{kind, Moving})
	}
	return e
}

// and is both: what either sets free, where either's condition holds.
func (e Every) and(more *Every) Every {
	both := Every{usual: max(e.usual, more.usual), Named: slices.Concat(e.Named, more.Named), Kinds: slices.Concat(e.Kinds, more.Kinds), When: e.When}
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
		for _, k := range e.Kinds {
			if k.Kind == c.Kind && !at.sets(i) && (!r.Free || k.How == Standing) {
				*r = Roam{Free: true, Moves: k.How == Moving, Over: prove.Whole(c)}
			}
		}
		named := false
		for _, f := range e.Named {
			if f.Control != i || named && f.How == Watched {
				continue
			}
			named = true
			*r = Roam{Free: true, Moves: f.How == Moving || f.How == Watched && slices.Contains(moved, c.Kind), Over: f.Over}
		}
		r.Moves = r.Moves && !at.Moved && !at.Now.Lost
	}
	return list
}

// watchedKinds are the kinds of control that move where only a condition names them,
// by the rule of the one-line form.
func (e *Every) watchedKinds(setup *mixcore.Setup) []mixcore.ControlKind {
	there := map[mixcore.ControlKind]bool{}
	for _, f := range e.Named {
		if f.How == Watched {
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
	return slices.ContainsFunc(e.Kinds, func(k KindFree) bool { return k.How == Moving }) ||
		slices.ContainsFunc(e.Named, func(f Free) bool { return f.How != Standing })
}

// saysWhatMoves is true if a prefix with "whatever" is among what sets free.
func (e *Every) saysWhatMoves() bool {
	return slices.ContainsFunc(e.Kinds, func(k KindFree) bool { return k.How == Moving }) ||
		slices.ContainsFunc(e.Named, func(f Free) bool { return f.How == Moving })
}

// sets is true for a control that the scenario has set.
func (s *Situation) sets(control int) bool { return control < len(s.Set) && s.Set[control] }
