package walk

// arborescence is the least that steps cost if after each of them, and from the start,
// one could go on in several ways at once: every order is such a tree, so none costs
// less (Chu and Liu, Scientia Sinica 14, 1965; Edmonds, Journal of Research of the
// National Bureau of Standards 71B, 1967).
func (c *costs) arborescence() int {
	n := len(c.first)
	type edge struct{ from, to, cost int }
	var edges []edge
	for to := range n {
		edges = append(edges, edge{n, to, c.first[to]})
		for from := range n {
			if from != to {
				edges = append(edges, edge{from, to, c.next[from][to]})
			}
		}
	}
	total, nodes, root := 0, n+1, n
	for {
		least, from := make([]int, nodes), make([]int, nodes)
		for i := range least {
			least[i] = -1
		}
		for _, e := range edges {
			if e.to != root && (least[e.to] < 0 || e.cost < least[e.to]) {
				least[e.to], from[e.to] = e.cost, e.from
			}
		}
		for node := range nodes {
			if node != root {
				total += least[node]
			}
		}
		ring, rings := circles(from, root)
		if rings == 0 {
			return total
		}
		// What lies on a circle becomes one node; the rest follow.
		next := rings
		for node := range nodes {
			if ring[node] < 0 {
				ring[node] = next
				next++
			}
		}
		var kept []edge
		for _, e := range edges {
			if a, b := ring[e.from], ring[e.to]; a != b {
				cost := e.cost
				if e.to != root {
					cost -= least[e.to]
				}
				kept = append(kept, edge{a, b, cost})
			}
		}
		edges, nodes, root = kept, next, ring[root]
	}
}

// circles numbers the circles among cheapest ways in, and says of each node on which it
// lies, -1 if on none.
func circles(from []int, root int) (ring []int, rings int) {
	ring, seen := make([]int, len(from)), make([]int, len(from))
	for i := range ring {
		ring[i], seen[i] = -1, -1
	}
	for node := range from {
		at := node
		for at != root && seen[at] < 0 {
			seen[at] = node
			at = from[at]
		}
		if at == root || seen[at] != node || ring[at] >= 0 {
			continue
		}
		for turn := at; ring[turn] < 0; turn = from[turn] {
			ring[turn] = rings
		}
		rings++
	}
	return ring, rings
}
