package cover

import (
	"cmp"
	"encoding/binary"
	"slices"
)

// table is a problem being made smaller: rows as sets of columns and columns as sets of
// rows, with what is still in it.
type table struct {
	names []int  // of each column: its index in the problem
	rows  []Bits // by row, over columns
	cols  []Bits // by column, over rows
	row   Bits   // rows that are left
	col   Bits   // columns that are left
	must  []int  // columns that were taken, by their index here
}

// newTable keeps each different row and each different column once.
func newTable(p Problem) *table {
	rows := distinctRows(p.Rows)
	columns := make([]Bits, p.Columns)
	for c := range columns {
		columns[c] = NewBits(len(rows))
	}
	for r, row := range rows {
		row.Each(func(c int) bool { columns[c].Add(r); return true })
	}
	t := &table{}
	seen := map[string]bool{}
	for c, col := range columns {
		key := keyOf(col)
		if col.Count() > 0 && !seen[key] {
			seen[key] = true
			t.names, t.cols = append(t.names, c), append(t.cols, col)
		}
	}
	t.row, t.col = NewBits(len(rows)), NewBits(len(t.cols))
	for r := range rows {
		t.row.Add(r)
		t.rows = append(t.rows, NewBits(len(t.cols)))
	}
	for c, col := range t.cols {
		t.col.Add(c)
		col.Each(func(r int) bool { t.rows[r].Add(c); return true })
	}
	return t
}

func keyOf(b Bits) string {
	key := make([]byte, 0, 8*len(b))
	for _, w := range b {
		key = binary.LittleEndian.AppendUint64(key, w)
	}
	return string(key)
}

// distinctRows are the rows that no other row implies: one that has all columns of
// another is hit with it.
func distinctRows(rows []Bits) (kept []Bits) {
	seen := map[string]bool{}
	for _, row := range rows {
		if key := keyOf(row); !seen[key] {
			seen[key] = true
			kept = append(kept, row)
		}
	}
	slices.SortStableFunc(kept, func(a, b Bits) int { return cmp.Compare(a.Count(), b.Count()) })
	least := kept[:0:0]
	for _, row := range kept {
		if !slices.ContainsFunc(least, func(less Bits) bool { return less.within(row) }) {
			least = append(least, row)
		}
	}
	return least
}

// reduce settles what can be settled without a search, and returns the columns that must
// be taken.
func (t *table) reduce() []int {
	for changed := true; changed; {
		changed = t.takeNeeded() || t.dropRows() || t.dropColumns()
	}
	return slices.Clone(t.must)
}

// takeNeeded takes a column that is the only one to hit some row.
func (t *table) takeNeeded() (took bool) {
	t.row.Each(func(r int) bool {
		if t.rows[r].common(t.col) == 1 {
			t.within(r).Each(func(c int) bool { t.take(c); return false })
			took = true
			return false
		}
		return true
	})
	return took
}

// within is what is left of a row.
func (t *table) within(row int) Bits {
	left := t.rows[row].clone()
	for i := range left {
		left[i] &= t.col[i]
	}
	return left
}

func (t *table) take(c int) {
	t.must = append(t.must, c)
	for i := range t.row {
		t.row[i] &^= t.cols[c][i]
	}
	t.col.Drop(c)
}

// dropRows drops rows that another one implies.
func (t *table) dropRows() (dropped bool) {
	var list []int
	left := make([]Bits, len(t.rows))
	t.row.Each(func(r int) bool { list, left[r] = append(list, r), t.within(r); return true })
	slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(left[a].Count(), left[b].Count()) })
	for i, r := range list {
		if slices.ContainsFunc(list[:i], func(less int) bool { return t.row.Has(less) && left[less].within(left[r]) }) {
			t.row.Drop(r)
			dropped = true
		}
	}
	return dropped
}

// dropColumns drops columns that another one outdoes; of two that are the same the first
// stays.
func (t *table) dropColumns() (dropped bool) {
	var list []int
	left := make([]Bits, len(t.cols))
	t.col.Each(func(c int) bool {
		left[c] = t.cols[c].clone()
		for i := range left[c] {
			left[c][i] &= t.row[i]
		}
		list = append(list, c)
		return true
	})
	slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(left[b].Count(), left[a].Count()) })
	for i, c := range list {
		if left[c].Count() == 0 || slices.ContainsFunc(list[:i], func(more int) bool { return t.col.Has(more) && left[c].within(left[more]) }) {
			t.col.Drop(c)
			dropped = true
		}
	}
	return dropped
}

// apart are the parts of the table that have no column in common. They share the rows
// and columns of the whole.
func (t *table) apart() (parts []*table) {
	rest := t.row.clone()
	for rest.Count() > 0 {
		part := *t
		part.row, part.col = NewBits(len(t.rows)), NewBits(len(t.cols))
		var grow func(r int)
		grow = func(r int) {
			part.row.Add(r)
			rest.Drop(r)
			t.within(r).Each(func(c int) bool {
				if !part.col.Has(c) {
					part.col.Add(c)
					t.cols[c].Each(func(next int) bool {
						if rest.Has(next) {
							grow(next)
						}
						return true
					})
				}
				return true
			})
		}
		rest.Each(func(r int) bool { grow(r); return false })
		parts = append(parts, &part)
	}
	return parts
}
