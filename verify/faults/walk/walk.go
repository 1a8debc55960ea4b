// Package walk finds the shortest walk-around of a model: the fewest steps at which
// somebody who watches which way everything goes, or measures how far, notices every
// mistake of the catalogue that can be noticed at all; of those the ones, in the order,
// that move the fewest controls.
//
// That no walk-around has fewer steps is proved, of the steps that are tried: see
// table.Steps. It says nothing of a model with two mistakes at once. Start at [Shortest].
package walk

import (
	"context"
	"errors"
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/cover"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
)

// Options say whose walk-around it is.
type Options struct {
	Look     sight.Look         // the zero Look is sight.Eye
	Others   []*airframes.Model // of which the file may be loaded by mistake
	Progress func(text string)  // is told what is being done; may be nil
}

// Found is a walk-around.
type Found struct {
	Table    *table.Table
	Look     sight.Look
	Order    []int // steps of the table, in the order in which to walk
	AtLeast  int   // proved: fewer steps miss a mistake
	Moves    int   // controls to move by hand
	MovesMin int   // proved: no order of these steps needs fewer
	Cut      bool  // more steps could have been tried
	Stopped  bool  // the search was stopped before it was done

	Left *mixcore.Input // how the controls stand before the first step; nil: at rest

	shows []cover.Bits // by mistake: the steps that show it
}

// Shortest finds the shortest walk-around of a model. Where ctx is done before the
// search is, it returns the best that it found and says so.
func Shortest(ctx context.Context, m *airframes.Model, o Options) *Found {
	if o.Look == (sight.Look{}) {
		o.Look = sight.Eye
	}
	t, cut := Candidates(m, o.Others, o.Progress)
	f := After(ctx, t, o.Look, nil)
	f.Cut = cut
	return f
}

// Candidates is every mistake of the catalogue at every step that is tried; cut where
// more steps could have been tried. progress is told what is being done; it may be nil.
func Candidates(m *airframes.Model, others []*airframes.Model, progress func(text string)) (t *table.Table, cut bool) {
	if progress == nil {
		progress = func(string) {}
	}
	progress("listing steps and mistakes")
	steps, cut := table.Candidates(m)
	mistakes := mistake.All(m, mistake.Options{Others: others})
	progress("trying every mistake at every step")
	t = table.New(m, mistakes, steps)
	progress("looking for the fewest steps")
	return t, cut
}

// After is a walk-around that begins with given steps of a table, in their order, and goes
// on with the fewest that show what those do not. AtLeast counts them all; Moves and
// MovesMin are of what follows the given steps.
func After(ctx context.Context, t *table.Table, look sight.Look, given []int) *Found {
	f := &Found{Table: t, Look: look, Order: slices.Clone(given)}
	problem := cover.Problem{Columns: len(t.Steps)}
	for _, row := range t.Shows(look) {
		bits := cover.Bits(row)
		f.shows = append(f.shows, bits)
		if bits.Count() > 0 && !slices.ContainsFunc(given, bits.Has) {
			problem.Rows = append(problem.Rows, bits)
		}
	}
	answer, err := cover.Fewest(ctx, problem, cover.Options{})
	if errors.Is(err, cover.ErrUncoverable) {
		panic("walk: a mistake that shows at some step is shown by none")
	}
	f.AtLeast, f.Stopped = len(given)+answer.AtLeast, ctx.Err() != nil || !answer.Exact
	hand := newMoves(t.Model.Plan, t.Steps)
	chosen := cover.Swap(problem, answer.Chosen, func(steps []int) int {
		return hand.nearest(steps)*(halves+1) + min(f.halfWay(steps), halves)
	})
	c := hand.costs(chosen)
	order, atLeast := c.order()
	f.Moves, f.MovesMin = c.of(order), atLeast
	for _, i := range order {
		f.Order = append(f.Order, chosen[i])
	}
	return f
}

// halves is more than the sticks that are half way over in any walk.
const halves = 1 << 10

// halfWay is how many sticks are neither centred nor at an end in steps: of walks with
// as many movements those are better that do not ask for it.
func (f *Found) halfWay(steps []int) (n int) {
	for _, s := range steps {
		for i, at := range f.Table.Steps[s].To.Position {
			c := &f.Table.Model.Setup.Controls[i]
			if low, high := c.Range(); c.Kind == mixcore.AxisControl && at != 0 && at != low && at != high {
				n++
			}
		}
	}
	return n
}

// Visible says whether a mistake shows at some step.
func (f *Found) Visible(mistake int) bool { return f.shows[mistake].Count() > 0 }

// First is the step of the walk, from 0, that shows a mistake first; -1 if none does.
func (f *Found) First(mistake int) int {
	return slices.IndexFunc(f.Order, func(step int) bool { return f.shows[mistake].Has(step) })
}
