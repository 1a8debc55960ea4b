package cover

import "context"

// Closely is Fewest without the quick search before.
func Closely(p Problem, nodes int) (a Answer) {
	t := newTable(p)
	taken := t.reduce()
	a.AtLeast = len(taken)
	for _, part := range t.apart() {
		s := search{ctx: context.Background(), table: part, left: nodes}
		s.best = s.greedy(part.row, part.col)
		s.closely()
		if !s.stopped {
			s.atLeast = len(s.best)
		}
		taken, a.AtLeast = append(taken, s.best...), a.AtLeast+s.atLeast
	}
	for _, c := range taken {
		a.Chosen = append(a.Chosen, t.names[c])
	}
	a.Exact = a.AtLeast == len(a.Chosen)
	return a
}

// Proved is what prices prove of a whole table after some rounds: by hand, from the prices
// themselves, and as the search reads it; and the lowest price.
func Proved(p Problem, rounds int) (byHand float64, atLeast, lowest int) {
	t := newTable(p)
	pays := make([]parts, len(t.rows))
	prices := newPrices(t, pays)
	prices.raise(rounds, wholeStep, func(_, _ []parts) int { return len(t.cols) + 1 })
	spent := make([]parts, len(t.cols))
	for i, r := range prices.rows {
		byHand += float64(prices.pays[i])
		lowest = min(lowest, int(prices.pays[i]))
		t.rows[r].Each(func(c int) bool { spent[c] += prices.pays[i]; return true })
	}
	for _, s := range spent {
		byHand -= float64(max(0, s-one))
	}
	return byHand / float64(one), prices.atLeast(), lowest
}
