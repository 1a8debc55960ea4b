package walk

import "slices"

// exactSteps is up to how many steps the best order is found for sure.
const exactSteps = 16

// order finds the order of steps that costs the fewest movements, and what every order
// costs at least: the same where it is proved to be the best.
func (c *costs) order() (best []int, atLeast int) {
	if len(c.first) <= exactSteps {
		best = c.exact()
		return best, c.of(best)
	}
	best = c.improved(c.nearest())
	return best, min(c.of(best), c.arborescence())
}

// exact is the best order by dynamic programming over sets of steps (Held and Karp,
// Journal of the SIAM 10(1), 1962). Of equal orders it takes the one that begins with
// the lowest numbers.
func (c *costs) exact() []int {
	n := len(c.first)
	if n == 0 {
		return nil
	}
	// rest[set*n+last] is the least that it costs to go on from last, with set done.
	rest := make([]int32, n<<n)
	for set := 1<<n - 2; set > 0; set-- {
		for last := range n {
			if set>>last&1 == 0 {
				continue
			}
			least := int32(1 << 30)
			for next := range n {
				if set>>next&1 == 0 {
					least = min(least, int32(c.next[last][next])+rest[(set|1<<next)*n+next])
				}
			}
			rest[set*n+last] = least
		}
	}
	order := make([]int, 0, n)
	set := 0
	for len(order) < n {
		best, least := -1, int32(1<<30)
		for next := range n {
			if set>>next&1 != 0 {
				continue
			}
			cost := c.first[next]
			if len(order) > 0 {
				cost = c.next[order[len(order)-1]][next]
			}
			if whole := int32(cost) + rest[(set|1<<next)*n+next]; whole < least {
				best, least = next, whole
			}
		}
		order = append(order, best)
		set |= 1 << best
	}
	return order
}

// nearest always goes on with the step that costs least.
func (c *costs) nearest() []int {
	n := len(c.first)
	order := make([]int, 0, n)
	done := make([]bool, n)
	for len(order) < n {
		best, least := -1, 0
		for next := range n {
			if done[next] {
				continue
			}
			cost := c.first[next]
			if len(order) > 0 {
				cost = c.next[order[len(order)-1]][next]
			}
			if best < 0 || cost < least {
				best, least = next, cost
			}
		}
		order, done[best] = append(order, best), true
	}
	return order
}

// longestRun is how many steps are moved elsewhere together at most.
const longestRun = 4

// improved moves runs of steps elsewhere, turned round or not, while that saves
// movements.
func (c *costs) improved(order []int) []int {
	for {
		better := c.better(order)
		if better == nil {
			return order
		}
		order = better
	}
}

// better is an order that a run of steps moved elsewhere makes cheaper, or nil.
func (c *costs) better(order []int) []int {
	for length := 1; length <= min(len(order)-1, longestRun); length++ {
		for from := 0; from+length <= len(order); from++ {
			run := order[from : from+length]
			others := slices.Delete(slices.Clone(order), from, from+length)
			turned := slices.Clone(run)
			slices.Reverse(turned)
			saved := c.edge(order, from-1, from) + c.edge(order, from+length-1, from+length) - c.edge(others, from-1, from)
			turn := c.of(turned) - c.first[turned[0]] - c.of(run) + c.first[run[0]]
			for to := 0; to <= len(others); to++ {
				here := c.edge(others, to-1, to)
				if c.into(others, to, run)-here < saved {
					return slices.Insert(others, to, slices.Clone(run)...)
				}
				if c.into(others, to, turned)-here+turn < saved {
					return slices.Insert(others, to, turned...)
				}
			}
		}
	}
	return nil
}

// edge is what it costs to go on from one place of an order to the next; before its
// beginning stands the start, and behind its end nothing.
func (c *costs) edge(order []int, from, to int) int {
	switch {
	case to == len(order):
		return 0
	case from < 0:
		return c.first[order[to]]
	}
	return c.next[order[from]][order[to]]
}

// into is what it costs to come to a run that is put into an order, and to go on behind
// it.
func (c *costs) into(order []int, at int, run []int) int {
	cost := 0
	if at == 0 {
		cost = c.first[run[0]]
	} else {
		cost = c.next[order[at-1]][run[0]]
	}
	if at < len(order) {
		cost += c.next[run[len(run)-1]][order[at]]
	}
	return cost
}
