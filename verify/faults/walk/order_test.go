package walk

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func draw(t *rapid.T, most int) costs {
	n := rapid.IntRange(1, most).Draw(t, "steps")
	c := costs{make([]int, n), make([][]int, n)}
	cost := rapid.IntRange(0, 6)
	for i := range n {
		c.first[i] = cost.Draw(t, "first")
		c.next[i] = make([]int, n)
		for k := range n {
			if k != i {
				c.next[i][k] = cost.Draw(t, "next")
			}
		}
	}
	return c
}

// least is what the best of all orders costs.
func least(c *costs) int {
	best := 1 << 30
	order := make([]int, len(c.first))
	for i := range order {
		order[i] = i
	}
	var permute func(i int)
	permute = func(i int) {
		if i == len(order) {
			best = min(best, c.of(order))
			return
		}
		for k := i; k < len(order); k++ {
			order[i], order[k] = order[k], order[i]
			permute(i + 1)
			order[i], order[k] = order[k], order[i]
		}
	}
	permute(0)
	return best
}

func TestOrderIsTheBestOfAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := draw(t, 6)
		order, atLeast := c.order()
		want := least(&c)
		if got := c.of(order); got != want || atLeast != want {
			t.Errorf("costs %d, at least %d, want %d", got, atLeast, want)
		}
		bound, improved := c.arborescence(), c.improved(c.nearest())
		if bound > want {
			t.Errorf("bound %d above the best order, %d", bound, want)
		}
		if got := c.of(improved); got < want || got > c.of(c.nearest()) {
			t.Errorf("improved to %d, the best is %d", got, want)
		}
		for _, o := range [][]int{order, improved} {
			if sorted := slices.Sorted(slices.Values(o)); len(sorted) != len(c.first) || len(slices.Compact(sorted)) != len(c.first) {
				t.Errorf("order %v of %d steps", o, len(c.first))
			}
		}
	})
}

func TestArborescenceOfOneWayIsThatWay(t *testing.T) {
	const far = 9
	c := costs{[]int{1, far, far}, [][]int{{0, 1, far}, {far, 0, 1}, {far, far, 0}}}
	if got := c.arborescence(); got != 3 {
		t.Errorf("got %d, want 3", got)
	}
	ring := costs{[]int{5, 7}, [][]int{{0, 1}, {1, 0}}} // a circle is cheapest and no way
	if got := ring.arborescence(); got != 6 {
		t.Errorf("got %d, want 6", got)
	}
}
