package table

import (
	"math/bits"
	"slices"

	"example.com/hingeline/verify/faults/sight"
)

// tells picks steps that together rule out all that any step rules out, whichever of the
// candidates is seen: each time the one that does most that no step before did. How few they
// are is not proved. kinds is how many candidates of which any two are told apart it
// found.
func (t *Table) tells(look sight.Look, v *view, candidates []int) (steps []int, kinds int) {
	n := len(candidates)
	open := make([]set, n) // by candidate: those that no step rules out yet for who sees it
	for i := range open {
		open[i] = newSet(n)
		for k := range n {
			if k != i {
				open[i].put(k)
			}
		}
	}
	rated := make([]pairing, len(v.steps))
	for i, step := range v.steps {
		rated[i] = t.pairing(look, v, candidates, step)
		rated[i].gain = rated[i].closes(open)
	}
	for {
		// A gain only falls, so the best that still has it is the best.
		best := -1
		for {
			next := -1
			for i := range rated {
				if rated[i].gain > 0 && (next < 0 || rated[i].gain > rated[next].gain) {
					next = i
				}
			}
			if next < 0 || next == best {
				break
			}
			best = next
			rated[best].gain = rated[best].closes(open)
		}
		if best < 0 || rated[best].gain == 0 {
			break
		}
		steps = append(steps, rated[best].step)
		rated[best].close(open)
		rated[best].gain = 0
	}
	// Whoever is told from all that were counted before, and they from it, counts as well.
	var counted []int
	for i := range n {
		if !slices.ContainsFunc(counted, func(k int) bool { return open[i].has(k) || open[k].has(i) }) {
			counted = append(counted, i)
		}
	}
	return steps, len(counted)
}

// pairing is which candidates a step leaves to who sees one of them.
type pairing struct {
	step   int
	sort   []int32 // by candidate
	beside []set   // by sort: the candidates that are left to who sees it
	gain   int
}

func (t *Table) pairing(look sight.Look, v *view, candidates []int, step int) pairing {
	p := pairing{step: step, sort: make([]int32, len(candidates))}
	known := map[uint64]int32{}
	var of []int
	for i, c := range candidates {
		key := t.key(v.exact, c, step)
		n, ok := known[key]
		if !ok {
			n = int32(len(of))
			known[key] = n
			of = append(of, c)
		}
		p.sort[i] = n
	}
	members := make([]set, len(of))
	for i := range members {
		members[i] = newSet(len(candidates))
	}
	for i, n := range p.sort {
		members[n].put(i)
	}
	p.beside = make([]set, len(of))
	for a := range of {
		p.beside[a] = slices.Clone(members[a])
	}
	for a := range of {
		for b := range of {
			if a != b && !t.rulesOut(look, v, of[a], of[b], step) {
				p.beside[a].join(members[b])
			}
		}
	}
	return p
}

// closes is how many open pairs a step closes.
func (p *pairing) closes(open []set) (n int) {
	for i, o := range open {
		beside := p.beside[p.sort[i]]
		for w := range o {
			n += bits.OnesCount64(o[w] &^ beside[w])
		}
	}
	return n
}

func (p *pairing) close(open []set) {
	for i, o := range open {
		beside := p.beside[p.sort[i]]
		for w := range o {
			o[w] &= beside[w]
		}
	}
}

func (s set) join(o set) {
	for i := range s {
		s[i] |= o[i]
	}
}
