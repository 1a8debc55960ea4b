package cover

import "math"

// parts are what prices are counted in: whole numbers, so that what they prove is exact,
// and the same on every processor.
type parts int64

// one is the price of a column.
const one parts = 1 << 20

// prices are what each row that is left pays for being hit. Whatever they are, a cover of
// these rows costs at least what all rows pay less what columns are overpaid: the
// Lagrangian relaxation of the cover. Prices are raised where no overpaid column hits and
// lowered where several do, step by step.
type prices struct {
	rows, cols []int     // those that are left, by their index in the table
	hits       [][]int32 // by column: the rows that it hits
	hitBy      [][]int32 // by row: the columns that hit it
	pays       []parts   // by row: the best prices found
	dear       []parts   // by column: one less what its rows pay
	proved     parts     // what every cover costs at least
}

// newPrices takes what is left of a table, with prices by the table's rows to start from.
func newPrices(t *table, pays []parts) *prices {
	p := &prices{}
	at := make([]int32, len(t.cols))
	t.col.Each(func(c int) bool {
		at[c] = int32(len(p.cols))
		p.cols = append(p.cols, c)
		return true
	})
	p.hits = make([][]int32, len(p.cols))
	t.row.Each(func(r int) bool {
		var by []int32
		t.within(r).Each(func(c int) bool {
			by = append(by, at[c])
			p.hits[at[c]] = append(p.hits[at[c]], int32(len(p.rows)))
			return true
		})
		p.rows, p.hitBy, p.pays = append(p.rows, r), append(p.hitBy, by), append(p.pays, pays[r])
		return true
	})
	p.dear = make([]parts, len(p.cols))
	p.proved = p.cost(p.pays, p.dear)
	return p
}

// cost is what every cover costs at least at these prices. It writes what is dear.
func (p *prices) cost(pays, dear []parts) (sum parts) {
	for _, pay := range pays {
		sum += pay
	}
	for c, rows := range p.hits {
		dear[c] = one
		for _, r := range rows {
			dear[c] -= pays[r]
		}
		sum += min(0, dear[c])
	}
	return sum
}

// atLeast is how many columns every cover has.
func (p *prices) atLeast() int { return int((max(p.proved, 0) + one - 1) / one) }

// How the prices move: a step is so many parts of wholeStep of what would reach the goal
// if all rows moved together, and is halved when patience rounds brought nothing.
const (
	wholeStep = 256
	patience  = 20
)

// raise looks for prices that prove more, for some rounds from some step on, or until no
// cover of fewer columns than the goal is left. try gets the prices of every round, and
// says the goal.
func (p *prices) raise(rounds int, step parts, try func(pays, dear []parts) (goal int)) {
	pays := append([]parts(nil), p.pays...)
	dear := make([]parts, len(p.cols))
	slope := make([]parts, len(p.rows))
	idle := 0
	for range rounds {
		sum := p.cost(pays, dear)
		if sum > p.proved {
			p.proved, idle = sum, 0
			copy(p.pays, pays)
			copy(p.dear, dear)
		} else if idle++; idle == patience {
			step, idle = step/2, 0
		}
		goal := try(pays, dear)
		if step == 0 || p.atLeast() >= goal {
			return
		}
		for r := range slope {
			slope[r] = 1
		}
		for c, rows := range p.hits {
			if dear[c] < 0 {
				for _, r := range rows {
					slope[r]--
				}
			}
		}
		length := parts(0)
		for r, by := range slope {
			if by > 0 || pays[r] > 0 {
				length += by * by
			}
		}
		if length == 0 {
			return
		}
		move := max(1, step*(parts(goal)*one-sum)/wholeStep/length)
		for r, by := range slope {
			pays[r] = max(0, pays[r]+by*move)
		}
	}
}

// cover takes columns that are cheap at the prices for the rows that they add, and then
// leaves out what is not needed, the dearest first.
func (p *prices) cover(pays, dear []parts) (chosen []int) {
	times := make([]int, len(p.rows)) // that a row is hit
	adds := make([]int, len(p.cols))
	worth := make([]parts, len(p.cols)) // what the column costs beyond the rows that it adds
	for c, rows := range p.hits {
		adds[c], worth[c] = len(rows), dear[c]
	}
	for left := len(p.rows); left > 0; {
		best, least := -1, math.Inf(1)
		for c, n := range adds {
			if n == 0 {
				continue
			}
			score := float64(worth[c]) / float64(n)
			if worth[c] < 0 {
				score = float64(worth[c]) * float64(n)
			}
			if score < least {
				best, least = c, score
			}
		}
		chosen = append(chosen, best)
		for _, r := range p.hits[best] {
			if times[r]++; times[r] > 1 {
				continue
			}
			left--
			for _, c := range p.hitBy[r] {
				adds[c]--
				worth[c] += pays[r]
			}
		}
	}
	return p.needed(chosen, times, dear)
}

// needed leaves out columns while every row stays hit.
func (p *prices) needed(chosen, times []int, dear []parts) []int {
	for {
		spare := -1
		for i, c := range chosen {
			free := true
			for _, r := range p.hits[c] {
				free = free && times[r] > 1
			}
			if free && (spare < 0 || dear[c] > dear[chosen[spare]]) {
				spare = i
			}
		}
		if spare < 0 {
			return chosen
		}
		for _, r := range p.hits[chosen[spare]] {
			times[r]--
		}
		chosen = append(chosen[:spare], chosen[spare+1:]...)
	}
}

// settle drops columns that no cover of fewer than goal columns has, and takes those that
// every such cover has.
func (p *prices) settle(t *table, goal int) {
	most := parts(goal-1) * one
	for i, c := range p.cols {
		switch dear := p.dear[i]; {
		case dear > 0 && p.proved+dear > most:
			t.col.Drop(c)
		case dear < 0 && p.proved-dear > most:
			t.take(c)
		}
	}
}
