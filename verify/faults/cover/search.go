package cover

import (
	"cmp"
	"context"
	"math"
	"slices"
)

// search is a branch and bound over one part of a table.
type search struct {
	ctx     context.Context
	table   *table
	left    int // nodes
	best    []int
	atLeast int
	stopped bool
}

// quickNodes is how many nodes are searched with a bound that is quick to find. Most
// tables are done by then; of the others every node is worth a closer look.
const quickNodes = 100

// run finds the best cover, and how few columns any cover must have.
func (s *search) run() {
	t := s.table
	s.best = s.greedy(t.row, t.col)
	s.atLeast = s.bound(t.row, t.col)
	later := max(0, s.left-quickNodes)
	s.left -= later
	s.branch(t.row.clone(), t.col.clone(), nil)
	s.left += later
	if s.stopped && s.left > 0 && s.ctx.Err() == nil {
		s.stopped = false
		s.closely()
	}
	if !s.stopped {
		s.atLeast = len(s.best)
	}
	s.atLeast = min(s.atLeast, len(s.best))
}

// enough says whether the search has to stop, and counts a node if not.
func (s *search) enough() bool {
	if s.left == 0 || s.left%64 == 0 && s.ctx.Err() != nil {
		s.stopped = true
		return true
	}
	s.left--
	return false
}

// greedy takes the column that hits the most rows, again and again, and then leaves out
// what is not needed.
func (s *search) greedy(row, col Bits) (chosen []int) {
	row = row.clone()
	for row.Count() > 0 {
		best, most := -1, 0
		col.Each(func(c int) bool {
			if n := s.table.cols[c].common(row); n > most {
				best, most = c, n
			}
			return true
		})
		chosen = append(chosen, best)
		for i := range row {
			row[i] &^= s.table.cols[best][i]
		}
	}
	for i := 0; i < len(chosen); i++ {
		if without := slices.Delete(slices.Clone(chosen), i, i+1); s.hits(without) {
			chosen = without
			i--
		}
	}
	return chosen
}

// hits says whether columns hit every row of the part.
func (s *search) hits(chosen []int) bool {
	all := true
	s.table.row.Each(func(r int) bool {
		all = slices.ContainsFunc(chosen, s.table.rows[r].Has)
		return all
	})
	return all
}

// tiny is what sums of fractions may be off by.
const tiny = 1e-9

// bound is a number of columns that no cover is below. Rows pay for the columns that hit
// them, no column more than 1 altogether: what the rows can pay is a feasible solution of
// the dual of the linear programme, and so at most what any cover costs. Rows that few
// columns hit pay first.
func (s *search) bound(row, col Bits) int {
	var list []int
	count := make([]int, len(s.table.rows))
	row.Each(func(r int) bool {
		list, count[r] = append(list, r), s.table.rows[r].common(col)
		return true
	})
	slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(count[a], count[b]) })
	spare := make([]float64, len(s.table.cols))
	for i := range spare {
		spare[i] = 1
	}
	paid, each := 0.0, 0.0
	for _, r := range list {
		pays := math.Inf(1)
		s.table.rows[r].Each(func(c int) bool {
			if col.Has(c) {
				pays = min(pays, spare[c])
			}
			return pays > 0
		})
		if pays == 0 {
			continue
		}
		paid += pays
		s.table.rows[r].Each(func(c int) bool { spare[c] -= pays; return true })
	}
	// Where every column hits few rows, counting them is better.
	widest := 0
	col.Each(func(c int) bool { widest = max(widest, s.table.cols[c].common(row)); return true })
	if widest > 0 {
		each = float64(len(list)) / float64(widest)
	}
	return int(math.Ceil(max(paid, each) - tiny))
}

// branch searches what is left: it takes each column of the row that the fewest columns
// hit, and then does without it.
func (s *search) branch(row, col Bits, chosen []int) {
	if s.enough() {
		return
	}
	t := table{rows: s.table.rows, cols: s.table.cols, row: row, col: col}
	t.reduce()
	chosen = append(slices.Clip(chosen), t.must...)
	if row.Count() == 0 {
		s.keep(chosen)
		return
	}
	narrow := t.narrowest()
	if narrow.Count() == 0 || len(chosen)+s.bound(row, col) >= len(s.best) {
		return
	}
	list := narrow.list()
	slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(t.cols[b].common(row), t.cols[a].common(row)) })
	for _, c := range list {
		col.Drop(c)
		s.branch(t.without(c), col.clone(), append(slices.Clip(chosen), c))
		if s.stopped {
			return
		}
	}
}

// keep remembers a cover that is better than the best so far.
func (s *search) keep(chosen []int) {
	if len(chosen) < len(s.best) {
		s.best = slices.Clone(chosen)
	}
}

// narrowest are the columns of the row that the fewest hit; none where a row has lost all
// of its columns.
func (t *table) narrowest() Bits {
	narrow, fewest := -1, math.MaxInt
	t.row.Each(func(r int) bool {
		if n := t.rows[r].common(t.col); n < fewest {
			narrow, fewest = r, n
		}
		return fewest > 0
	})
	return t.within(narrow)
}

// without are the rows that a column leaves.
func (t *table) without(c int) Bits {
	row := t.row.clone()
	for i := range row {
		row[i] &^= t.cols[c][i]
	}
	return row
}
