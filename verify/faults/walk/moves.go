package walk

import (
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
)

// moves counts what a hand has to do to walk steps one after the other.
//
// A stick comes back by itself when it is let go, so it costs a movement wherever it is
// held or moved. Everything else, the signal too, stays where it was left, so it costs
// one where the next step needs it elsewhere.
type moves struct {
	setup *mixcore.Setup
	steps []sight.Step
	rest  mixcore.Input
	known [][]int // by step before, start first, and step: what it costs to come to it; nil where it was not asked
}

func newMoves(plan *mixcore.Plan, steps []sight.Step) *moves {
	return &moves{plan.Setup(), steps, plan.Rest(), make([][]int, len(steps)+1)}
}

// within is how many controls a step itself moves.
func (m *moves) within(step int) int {
	s := &m.steps[step]
	n := 0
	for i := range s.From.Position {
		if s.From.Position[i] != s.To.Position[i] {
			n++
		}
	}
	if s.From.SignalLost != s.To.SignalLost {
		n++
	}
	return n
}

// between is how many controls have to be brought elsewhere behind one step, or start,
// and before another.
func (m *moves) between(before, step int) int {
	left := &m.rest
	if before != start {
		left = &m.steps[before].To
	}
	from := &m.steps[step].From
	n := 0
	for i := range from.Position {
		switch {
		case m.setup.Controls[i].Kind == mixcore.AxisControl:
			if from.Position[i] != 0 {
				n++
			}
		case left.Position[i] != from.Position[i]:
			n++
		}
	}
	if left.SignalLost != from.SignalLost {
		n++
	}
	return n
}

// start is, in place of a step, everything at rest.
const start = -1

// after is all that a step costs behind another one, or start.
func (m *moves) after(before, step int) int {
	row := m.known[before+1]
	if row == nil {
		row = make([]int, len(m.steps))
		for i := range row {
			row[i] = unknown
		}
		m.known[before+1] = row
	}
	if row[step] == unknown {
		row[step] = m.between(before, step) + m.within(step)
	}
	return row[step]
}

const unknown = -1

// nearest is what steps cost where one always goes on with the cheapest: more than the
// best order, and quick.
func (m *moves) nearest(steps []int) (sum int) {
	left := slices.Clone(steps)
	for at := start; len(left) > 0; {
		best, least := 0, m.after(at, left[0])
		for i, step := range left[1:] {
			if cost := m.after(at, step); cost < least {
				best, least = i+1, cost
			}
		}
		at, sum = left[best], sum+least
		left = slices.Delete(left, best, best+1)
	}
	return sum
}

// costs are all movements of some steps: to begin with each, and from one to another.
type costs struct {
	first []int
	next  [][]int
}

func (m *moves) costs(steps []int) costs {
	n := len(steps)
	c := costs{make([]int, n), make([][]int, n)}
	all := make([]int, n*n)
	for to := range n {
		c.first[to] = m.after(start, steps[to])
		c.next[to] = all[to*n : (to+1)*n]
		for before := range n {
			if before != to {
				all[before*n+to] = m.after(steps[before], steps[to])
			}
		}
	}
	return c
}

// of is what an order costs.
func (c *costs) of(order []int) int {
	if len(order) == 0 {
		return 0
	}
	sum := c.first[order[0]]
	for i := 1; i < len(order); i++ {
		sum += c.next[order[i-1]][order[i]]
	}
	return sum
}
