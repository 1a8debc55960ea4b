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

// improved moves runs of steps elsewhere, and turns them round, while that saves
// movements.
func (c *costs) improved(order []int) []int {
	least := c.of(order)
	for again := true; again; {
		again = false
		for length := 1; length <= min(len(order)-1, 4); length++ {
			for from := 0; from+length <= len(order); from++ {
				run := slices.Clone(order[from : from+length])
				others := slices.Delete(slices.Clone(order), from, from+length)
				turned := slices.Clone(run)
				slices.Reverse(turned)
				for to := 0; to <= len(others); to++ {
					for _, piece := range [][]int{run, turned} {
						next := slices.Insert(slices.Clone(others), to, piece...)
						if cost := c.of(next); cost < least {
							order, least, again = next, cost, true
						}
					}
				}
			}
		}
	}
	return order
}
