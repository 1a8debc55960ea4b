package cover

import (
	"cmp"
	"slices"
)

// How many rounds the prices are raised and with which step, at the first node and at
// those under it, which start from good ones; and how often a cover is tried at the first.
const (
	firstRounds = 800
	firstStep   = 2 * wholeStep
	laterRounds = 40
	laterStep   = wholeStep / 2
	tryEvery    = 5
)

// closely searches the whole part again, with prices at every node.
func (s *search) closely() {
	t := s.table
	pays := make([]parts, len(t.rows))
	t.row.Each(func(r int) bool {
		most := 1
		t.within(r).Each(func(c int) bool { most = max(most, t.cols[c].common(t.row)); return true })
		pays[r] = one / parts(most) // so that no column is overpaid
		return true
	})
	s.close(t.row.clone(), t.col.clone(), nil, pays)
}

// close searches what is left, from prices by row.
func (s *search) close(row, col Bits, chosen []int, pays []parts) {
	first := chosen == nil
	if s.enough() {
		return
	}
	t := table{rows: s.table.rows, cols: s.table.cols, row: row, col: col}
	for t.takeNeeded() {
	}
	chosen = append(slices.Clip(chosen), t.must...)
	t.must = nil
	if row.Count() == 0 {
		s.keep(chosen)
		return
	}
	if t.narrowest().Count() == 0 {
		return
	}
	p := newPrices(&t, pays)
	s.raise(p, chosen, first)
	if first {
		s.atLeast = max(s.atLeast, p.atLeast())
	}
	room := len(s.best) - len(chosen)
	if p.atLeast() >= room {
		return
	}
	p.settle(&t, room)
	t.reduce()
	chosen = append(slices.Clip(chosen), t.must...)
	if row.Count() == 0 {
		s.keep(chosen)
		return
	}
	s.each(&t, p, chosen)
}

// raise raises prices and keeps the covers that they lead to.
func (s *search) raise(p *prices, chosen []int, first bool) {
	try := func(pays, dear []parts) {
		with := slices.Clone(chosen)
		for _, c := range p.cover(pays, dear) {
			with = append(with, p.cols[c])
		}
		s.keep(with)
	}
	rounds, step, round := laterRounds, parts(laterStep), 0
	if first {
		rounds, step = firstRounds, firstStep
	}
	p.raise(rounds, step, func(pays, dear []parts) int {
		if round++; first && round%tryEvery == 0 {
			try(pays, dear)
		}
		return len(s.best) - len(chosen)
	})
	if p.atLeast() < len(s.best)-len(chosen) {
		try(p.pays, p.dear)
	}
}

// each takes one column after the other of the row that the fewest columns hit, the one
// that is cheapest at the prices first, and then does without it.
func (s *search) each(t *table, p *prices, chosen []int) {
	pays := make([]parts, len(t.rows))
	for i, r := range p.rows {
		pays[r] = p.pays[i]
	}
	dear := make([]parts, len(t.cols))
	for i, c := range p.cols {
		dear[c] = p.dear[i]
	}
	list := t.narrowest().list()
	slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(dear[a], dear[b]) })
	for _, c := range list {
		t.col.Drop(c)
		s.close(t.without(c), t.col.clone(), append(slices.Clip(chosen), c), pays)
		if s.stopped {
			return
		}
	}
}
