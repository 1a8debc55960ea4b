package resolved

import (
	"fmt"
	"math"
)

// What it costs to take two items of a list for one that has changed. Two that are not
// alike at all are still taken for one sooner than for one gone and one new, unless their
// names say otherwise.
const (
	sameItem     = 0.0
	likeItem     = 1.0 // the same match
	otherItem    = 3.0
	loneItem     = 2.0 // gone, or new
	neverTheSame = 1e9
)

func cost(a, b *node, same bool) float64 {
	switch {
	case same:
		return sameItem
	case a.match == b.match:
		return likeItem
	case a.fixed:
		return neverTheSame
	}
	return otherItem
}

// aligned pairs the items of two lists in order, so that they differ the least; of an item
// without a partner the other index is −1.
func aligned(a, b []*node) (pairs [][2]int) {
	were, are := contents(a), contents(b)
	costs := func(i, k int) float64 { return cost(a[i], b[k], were[i] == are[k]) }
	least := make([][]float64, len(a)+1)
	for i := range least {
		least[i] = make([]float64, len(b)+1)
		for k := range least[i] {
			switch {
			case i == 0:
				least[i][k] = loneItem * float64(k)
			case k == 0:
				least[i][k] = loneItem * float64(i)
			default:
				least[i][k] = math.Min(least[i-1][k-1]+costs(i-1, k-1), loneItem+math.Min(least[i-1][k], least[i][k-1]))
			}
		}
	}
	for i, k := len(a), len(b); i > 0 || k > 0; {
		switch {
		case i > 0 && k > 0 && least[i][k] == least[i-1][k-1]+costs(i-1, k-1):
			i, k = i-1, k-1
			pairs = append(pairs, [2]int{i, k})
		case k > 0 && least[i][k] == least[i][k-1]+loneItem:
			k--
			pairs = append(pairs, [2]int{-1, k})
		default:
			i--
			pairs = append(pairs, [2]int{i, -1})
		}
	}
	for i, k := 0, len(pairs)-1; i < k; i, k = i+1, k-1 {
		pairs[i], pairs[k] = pairs[k], pairs[i]
	}
	return pairs
}

func contents(items []*node) []string {
	all := make([]string, len(items))
	for i, n := range items {
		all[i] = n.content()
	}
	return all
}

// listed compares two lists of which the order counts.
func (d *differ) listed(path string, was, is *node, a, b []*node) {
	pairs := aligned(a, b)
	moved := movedItems(a, b, pairs)
	for _, p := range pairs {
		at := fmt.Sprintf("%s%02d/", path, p[1]+1)
		switch {
		case p[0] < 0 && moved[p[1]] > 0:
			t := b[p[1]]
			d.list = append(d.list, Difference{Text: fmt.Sprintf("%s: the %s%s is number %d now, not number %d", is.title, t.sort, behind(t), p[1]+1, moved[p[1]]),
				Path: at, Was: fmt.Sprint(moved[p[1]]), Is: fmt.Sprint(p[1] + 1), Place: t.place, Parts: union(is.bears, was.bears)})
		case p[0] < 0:
			t := b[p[1]]
			d.list = append(d.list, Difference{Text: comes(is, t), Path: at, Is: summary(t), Place: t.place, Parts: is.bears})
		case p[1] < 0 && !goneButThere(moved, p[0]+1):
			t := a[p[0]]
			d.list = append(d.list, Difference{Text: goes(is, t), Path: fmt.Sprintf("%s%02d/", path, p[0]+1), Was: summary(t), Place: t.place, Gone: true, Parts: was.bears})
		case p[1] < 0:
		case a[p[0]].match != b[p[1]].match && otherAltogether(a[p[0]], b[p[1]]):
			old, now := a[p[0]], b[p[1]]
			d.list = append(d.list, Difference{Text: fmt.Sprintf("%s: %s %d was %s, and is %s", is.title, now.sort, p[1]+1, old.says, now.says),
				Path: at, Was: summary(old), Is: summary(now), Place: now.place, Parts: union(is.bears, was.bears)})
		default:
			d.nodes(at, a[p[0]], b[p[1]])
		}
	}
}

// otherAltogether is true of a line that does another thing now: what it did and what it
// does are said whole.
func otherAltogether(a, b *node) bool {
	was, is := a.leaf("does"), b.leaf("does")
	return was != nil && is != nil && was.Value != is.Value
}

// movedItems finds the items that are the same as before and only stand elsewhere: where
// they stood, from 1, by where they stand now.
func movedItems(a, b []*node, pairs [][2]int) map[int]int {
	moved := map[int]int{}
	taken := map[int]bool{}
	for _, p := range pairs {
		if p[0] >= 0 {
			continue
		}
		for _, q := range pairs {
			if q[1] < 0 && !taken[q[0]] && a[q[0]].content() == b[p[1]].content() {
				moved[p[1]], taken[q[0]] = q[0]+1, true
				break
			}
		}
	}
	return moved
}

func goneButThere(moved map[int]int, place int) bool {
	for _, was := range moved {
		if was == place {
			return true
		}
	}
	return false
}
