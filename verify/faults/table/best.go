package table

import (
	"cmp"
	"slices"

	"example.com/hingeline/verify/faults/sight"
)

// mostWeighed is how many steps are weighed exactly for the best, of those that look
// best at first sight.
const mostWeighed = 8

// Best is the step that tells candidates apart best, mistakes and None: that which
// leaves the fewest in question. groups are what the things that can be seen there
// leave of them. What is seen of a candidate that moves a part a little may be said
// either way: it goes into every group that it might be taken for, so groups may
// overlap. Steps in except are not taken. Where no step tells any two of the
// candidates apart for sure, step is -1 and there is one group: everybody.
func (t *Table) Best(look sight.Look, candidates []int, except ...int) (step int, groups [][]int) {
	best := t.split(look, t.ready(look), candidates, except)
	if best.step < 0 {
		return -1, [][]int{slices.Clone(candidates)}
	}
	return best.step, best.groups()
}

// Left are the candidates that are left to somebody who sees one of them in a step, says
// it honestly and leaves out what nobody could be sure of.
func (t *Table) Left(look sight.Look, as int, candidates []int, step int) []int {
	var left []int
	v := t.view(look)
	for _, c := range candidates {
		if !t.rulesOut(look, v, as, c, step) {
			left = append(left, c)
		}
	}
	return left
}

// split is how a step parts candidates.
type split struct {
	step  int
	sorts [][]int // candidates that look exactly the same
	sets  []set   // of sorts: what each thing that can be seen leaves
	sum   int     // the most that may be left of each candidate, summed
}

// groups are the candidates that each thing that can be seen leaves.
func (s *split) groups() [][]int {
	var groups [][]int
	for _, set := range s.sets {
		var group []int
		for i := range s.sorts {
			if set.has(i) {
				group = append(group, s.sorts[i]...)
			}
		}
		slices.Sort(group)
		groups = append(groups, group)
	}
	return groups
}

// split finds the best of the steps that are asked, or one with step -1.
func (t *Table) split(look sight.Look, v *view, candidates, except []int) split {
	type rated struct{ step, sum int }
	var rating []rated
	sizes := map[uint64]int{}
	for i, step := range v.asked {
		if slices.Contains(except, step) {
			continue
		}
		clear(sizes)
		alike := 0
		for _, c := range candidates {
			if key := v.askedRough[i][c+1]; key != 0 {
				sizes[key]++
			} else {
				alike++
			}
		}
		sum := alike * alike
		for _, n := range sizes {
			sum += n * n
		}
		if sum < len(candidates)*len(candidates) {
			rating = append(rating, rated{step, sum})
		}
	}
	slices.SortStableFunc(rating, func(a, b rated) int { return cmp.Compare(a.sum, b.sum) })
	best := split{step: -1, sum: len(candidates) * len(candidates)}
	for i, r := range rating {
		if i >= mostWeighed && best.step >= 0 {
			break
		}
		if s := t.splitAt(look, v, candidates, r.step); s.sum < best.sum {
			best = s
		}
	}
	return best
}

// splitAt is how one step parts candidates.
func (t *Table) splitAt(look sight.Look, v *view, candidates []int, step int) split {
	s := split{step: step}
	known := map[uint64]int{}
	for _, c := range candidates {
		key := t.key(v.exact, c, step)
		n, ok := known[key]
		if !ok {
			n = len(s.sorts)
			known[key] = n
			s.sorts = append(s.sorts, nil)
		}
		s.sorts[n] = append(s.sorts[n], c)
	}
	of := make([]int, len(s.sorts))
	for i := range s.sorts {
		of[i] = s.sorts[i][0]
	}
	s.sets = t.reports(look, of, step)
	most := make([]int, len(s.sorts))
	for _, set := range s.sets {
		size := 0
		for i := range s.sorts {
			if set.has(i) {
				size += len(s.sorts[i])
			}
		}
		for i := range s.sorts {
			if set.has(i) {
				most[i] = max(most[i], size)
			}
		}
	}
	for i := range s.sorts {
		s.sum += most[i] * len(s.sorts[i])
	}
	return s
}

// Named is how many steps name a mistake at most, and None with them, to somebody who
// says honestly what is seen, leaves out what nobody could be sure of, and each time
// does the step that Best takes for what is still in question and that was not done yet,
// until no step tells any of it apart. kinds is how many mistakes, and None, were found
// of which any two can be told apart.
func (t *Table) Named(look sight.Look) (steps, kinds int) {
	v := t.ready(look)
	n := naming{t: t, look: look, view: v}
	all := t.sorts(v)
	if steps = n.below(all, all, nil); n.work > mostWork {
		steps = len(v.asked) // no step is done twice
	}
	return steps, v.kinds
}

// mostWork is up to how many candidates are looked at, over all steps, to know how many
// steps name a mistake; beyond it the answer is as many as are asked at all.
const mostWork = 10_000_000

// ready is the view of a look with the steps that are asked.
func (t *Table) ready(look sight.Look) *view {
	v := t.view(look)
	v.once.Do(func() {
		v.asked, v.kinds = t.tells(look, v, t.sorts(v))
		for _, step := range v.asked {
			rough := make([]uint64, len(t.wrong)+1) // None first
			for m := range t.wrong {
				rough[m+1] = t.key(v.rough, m, step)
			}
			v.askedRough = append(v.askedRough, rough)
		}
	})
	return v
}

// sorts are None and of mistakes that look the same at every step the first, without
// those that look as they should.
func (t *Table) sorts(v *view) []int {
	list := []int{None}
	for m := range t.wrong {
		if t.faults[m] == nil && v.twin[m] == m && !t.hidden(v, m) {
			list = append(list, m)
		}
	}
	return list
}

// hidden is true of a mistake that looks as it should at every step.
func (t *Table) hidden(v *view, mistake int) bool {
	return !slices.ContainsFunc(v.steps, func(step int) bool { return t.key(v.exact, mistake, step) != 0 })
}

// naming is the walk over all ways in which questions may go.
type naming struct {
	t    *Table
	look sight.Look
	view *view
	work int
}

// below is how many steps are needed from here for those of the candidates that are
// true, one at a time. done are the steps before.
func (n *naming) below(candidates, truths, done []int) int {
	if n.work += len(candidates) * len(n.view.asked); len(candidates) < 2 || n.work > mostWork {
		return 0
	}
	best := n.t.split(n.look, n.view, candidates, done)
	if best.step < 0 {
		return 0
	}
	depth := 0
	next := append(slices.Clone(done), best.step)
	known := map[uint64]bool{}
	for _, truth := range truths {
		key := n.t.key(n.view.exact, truth, best.step)
		if known[key] {
			continue
		}
		known[key] = true
		var here []int
		for _, c := range truths {
			if n.t.key(n.view.exact, c, best.step) == key {
				here = append(here, c)
			}
		}
		depth = max(depth, 1+n.below(n.t.Left(n.look, truth, candidates, best.step), here, next))
	}
	return depth
}
