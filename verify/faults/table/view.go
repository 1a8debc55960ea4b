package table

import (
	"math"
	"sync"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
)

// view is the table as somebody with one look sees it, as numbers that are the same
// where the same is seen.
type view struct {
	// exact and rough are by mistake, column and kind of step: 0 where the part does as
	// it should. What is equal in exact looks the same for sure; what is equal in rough
	// nobody would be sure to tell apart, but with a ruler little that nobody can tell
	// apart is unequal.
	exact, rough [][][]uint64
	tells        [][][]telling // likewise
	twin         []int         // by mistake: the first that looks the same at every step
	steps        []int         // of which no two show the same of every mistake

	once       sync.Once
	asked      []int // of them: enough to tell apart all that can be told apart
	kinds      int
	askedRough [][]uint64 // by asked step: rough by candidate, None first
}

// view is made once for each look.
func (t *Table) view(look sight.Look) *view {
	t.mutex.Lock()
	defer t.mutex.Unlock()
	if v := t.views[look]; v != nil {
		return v
	}
	v := &view{
		exact: make([][][]uint64, len(t.wrong)), rough: make([][][]uint64, len(t.wrong)),
		tells: make([][][]telling, len(t.wrong)),
		twin:  make([]int, len(t.wrong)),
	}
	sums := make([]uint64, len(t.Steps))
	first := map[uint64]int{}
	for m := range t.wrong {
		whole := uint64(0)
		for i := range t.wrong[m] {
			exact, rough := t.seen(look, &t.wrong[m][i])
			v.exact[m], v.rough[m] = append(v.exact[m], exact), append(v.rough[m], rough)
			tells := make([]telling, len(exact))
			for kind := range tells {
				tells[kind] = t.told(look, &t.wrong[m][i], kind)
			}
			v.tells[m] = append(v.tells[m], tells)
		}
		for s := range t.Steps {
			if key := t.key(v.exact, m, s); key != 0 {
				whole += scramble(key ^ scramble(uint64(s)))
				sums[s] += scramble(key ^ scramble(uint64(m)))
			}
		}
		twin, known := first[whole]
		if !known {
			twin, first[whole] = m, m
		}
		v.twin[m] = twin
	}
	shown := map[uint64]bool{0: true}
	for s, sum := range sums {
		if !shown[sum] {
			shown[sum] = true
			v.steps = append(v.steps, s)
		}
	}
	t.views[look] = v
	return v
}

// key is what is seen of a mistake in a step as a number, 0 if it is what should be.
func (t *Table) key(numbers [][][]uint64, mistake, step int) (key uint64) {
	if mistake == None {
		return 0
	}
	for i := range t.wrong[mistake] {
		key += numbers[mistake][i][t.wrong[mistake][i].classes.step[step]]
	}
	return key
}

// seen are the numbers of one column.
func (t *Table) seen(look sight.Look, c *column) (exact, rough []uint64) {
	p := &t.Model.Setup.Parts[c.part]
	exact = make([]uint64, len(c.classes.kinds))
	if look.Ruler {
		rough = make([]uint64, len(exact))
	} else {
		rough = exact
	}
	for i := range c.classes.kinds {
		k := &c.classes.kinds[i]
		wanted, move := c.wanted[i], c.move(k)
		salt := scramble(uint64(c.part) + 1)
		isLate := c.late != nil && c.late[i] >= visible(look, p)
		if isLate {
			salt++
		}
		if a := sightOf(look, p, move, true); isLate || a != sightOf(look, p, wanted, true) {
			exact[i] = scramble(a ^ salt)
		}
		if !look.Ruler {
			continue
		}
		if a := sightOf(look, p, move, false); isLate || a != sightOf(look, p, wanted, false) {
			rough[i] = scramble(a ^ salt)
		}
	}
	return exact, rough
}

// sightOf is what is seen of a movement as a number: with a ruler where it begins and
// ends, exactly or to what the ruler tells apart.
func sightOf(look sight.Look, p *mixcore.Part, m sight.Move, exact bool) uint64 {
	n := uint64(look.Ways(p, m))
	if p.Motion == mixcore.Power {
		n = n<<4 | uint64(turning(p, m.From))<<2 | uint64(turning(p, m.To))
	}
	if !look.Ruler {
		return n
	}
	accuracy := accuracyOf(look, p)
	for _, at := range []float64{m.From, m.To} {
		if exact {
			n = scramble(n ^ math.Float64bits(at+0))
		} else {
			n = scramble(n ^ uint64(int64(math.Floor(at/accuracy))))
		}
	}
	return n
}

// accuracyOf is what two readings of a ruler must be apart to differ.
func accuracyOf(look sight.Look, p *mixcore.Part) float64 {
	if p.Motion.Hinged() {
		return float64(look.Accuracy)
	}
	return float64(sight.AccuracyAmount)
}

// answers is a set of answers to a question.
type answers uint8

// What may be said of a propeller, and of when a part moves.
const (
	stands answers = 1 << iota
	turns
	inTime = stands
	late   = turns
)

// turning is what may be said of a propeller: where it turns slowly, either.
func turning(p *mixcore.Part, power float64) answers {
	switch still, runs := sight.Propeller(p, power); {
	case still:
		return stands
	case runs:
		return turns
	}
	return stands | turns
}

// scramble spreads the bits of a number (the finisher of SplitMix64, Steele, Lea and
// Flood, OOPSLA 2014).
func scramble(x uint64) uint64 {
	x += 0x9e3779b97f4a7c15
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}
