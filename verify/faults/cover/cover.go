// Package cover finds a smallest set of columns that hits every row of a table: the
// fewest steps of a walk-around that show every mistake. It is exact, and says so only
// where it is.
//
// It knows nothing of models. Start at [Fewest].
package cover

import (
	"context"
	"errors"
	"slices"
)

// Problem is a table of rows, each the set of columns that hit it.
type Problem struct {
	Rows    []Bits // each with room for Columns
	Columns int
}

// Options say how long to search.
type Options struct {
	Nodes int // most nodes of the search; 0 is UsualNodes
}

// UsualNodes is the limit of a search that is not given one.
const UsualNodes = 200_000

// Answer is a cover.
type Answer struct {
	Chosen  []int // columns, ascending
	AtLeast int   // proved: no cover has fewer columns
	Exact   bool  // Chosen has AtLeast columns
	Nodes   int   // what it cost
}

// ErrUncoverable is returned for a row that no column hits.
var ErrUncoverable = errors.New("no column hits a row")

// Fewest finds a cover of the fewest columns: rows that another row implies, columns
// that another column outdoes and columns that must be taken are settled first, what
// falls apart is searched part by part, and the search branches on the row that the
// fewest columns hit: first quickly, then, where that is not soon done, with prices that
// prove more at every node. At the limit, or where ctx is done, it returns the best cover found
// and what is proved. The same problem always gives the same cover.
func Fewest(ctx context.Context, p Problem, o Options) (Answer, error) {
	for _, row := range p.Rows {
		if row.Count() == 0 {
			return Answer{}, ErrUncoverable
		}
	}
	left := o.Nodes
	if left == 0 {
		left = UsualNodes
	}
	limit := left
	t := newTable(p)
	var a Answer
	taken := t.reduce()
	for _, part := range t.apart() {
		s := search{ctx: ctx, table: part, left: left}
		s.run()
		left = s.left
		taken = append(taken, s.best...)
		a.AtLeast += s.atLeast
	}
	a.AtLeast += len(t.must)
	for _, c := range taken {
		a.Chosen = append(a.Chosen, t.names[c])
	}
	slices.Sort(a.Chosen)
	a.Exact, a.Nodes = a.AtLeast == len(a.Chosen), limit-left
	return a, nil
}

// Swap lowers a second cost of a cover without making it bigger: while exchanging one of
// its columns for another keeps every row hit and costs less, it makes the best such
// exchange. Where cost depends on the columns together it finds a cover that no single
// exchange betters, not the best of all.
func Swap(p Problem, chosen []int, cost func([]int) int) []int {
	best := slices.Clone(chosen)
	lowest := cost(best)
	for {
		var better []int
		for at := range best {
			for _, c := range exchanges(p, best, at) {
				next := slices.Clone(best)
				next[at] = c
				slices.Sort(next)
				if k := cost(next); k < lowest {
					lowest, better = k, next
				}
			}
		}
		if better == nil {
			return best
		}
		best = better
	}
}

// exchanges are the columns that can stand in for one of a cover: they hit every row that
// only it hits.
func exchanges(p Problem, chosen []int, at int) []int {
	can := NewBits(p.Columns)
	for i := range p.Columns {
		can.Add(i)
	}
	for _, row := range p.Rows {
		only := true
		for k, c := range chosen {
			only = only && (k == at || !row.Has(c))
		}
		if only {
			for i := range can {
				can[i] &= row[i]
			}
		}
	}
	for _, c := range chosen {
		can.Drop(c)
	}
	return can.list()
}
