package poses

import (
	"maps"
	"math/bits"
	"slices"

	"example.com/hingeline/mixcore"
)

// Decisive is the truth table of a condition, and what shows that each of its tests
// decides: modified condition/decision coverage. (The worked example that it is tested
// against: TU Delft OCW, software testing, 3.4.3.)
type Decisive struct {
	Tests []mixcore.Condition // each different one once, in the order in which they are named
	Rows  []Row               // every truth of every test, from all true to all false
	// Pairs are, by test, rows that differ in that test alone and in what comes of the
	// condition.
	Pairs [][][2]int
	// Sets are the smallest sets of rows that hold a pair of every test that has one.
	Sets [][]int
}

// Row is one line of a truth table.
type Row struct {
	Truths []bool // by test
	Holds  bool
	At     *mixcore.Input // controls that make it so, as few as can be off rest; nil where no place does
}

// MostTests is of how many tests a truth table is made at most; of a condition of more
// there is none.
const MostTests = 8

// Decisive makes the truth table of a condition. places are where each control may be
// put, its rest first. What the tests of one control cannot be together has no place.
func (p *Probe) Decisive(c *mixcore.Condition, places [][]float64) Decisive {
	var d Decisive
	p.setup.EachTest(c, func(t *mixcore.Condition) {
		if d.index(t) < 0 {
			d.Tests = append(d.Tests, *t)
		}
	})
	n := len(d.Tests)
	if n > MostTests {
		return Decisive{}
	}
	for row := range 1 << n {
		r := Row{Truths: make([]bool, n)}
		for i := range n {
			r.Truths[i] = row>>(n-1-i)&1 == 0
		}
		r.Holds = d.holds(p.setup, c, r.Truths)
		r.At = p.at(&d, r.Truths, places)
		d.Rows = append(d.Rows, r)
	}
	d.Pairs = make([][][2]int, n)
	for i := range n {
		for a := range d.Rows {
			b := a | 1<<(n-1-i)
			if a != b && d.Rows[a].At != nil && d.Rows[b].At != nil && d.Rows[a].Holds != d.Rows[b].Holds {
				d.Pairs[i] = append(d.Pairs[i], [2]int{a, b})
			}
		}
	}
	d.Sets = smallest(d.Pairs)
	return d
}

// index is the index of a test among those of the table, or -1.
func (d *Decisive) index(t *mixcore.Condition) int {
	return slices.IndexFunc(d.Tests, func(u mixcore.Condition) bool {
		low, high := t.Bounds()
		otherLow, otherHigh := u.Bounds()
		return u.Control == t.Control && low == otherLow && high == otherHigh
	})
}

// holds is what comes of the condition with given truths of its tests.
func (d *Decisive) holds(s *mixcore.Setup, c *mixcore.Condition, truths []bool) bool {
	switch c.Op {
	case mixcore.And:
		return !slices.ContainsFunc(c.Args, func(a mixcore.Condition) bool { return !d.holds(s, &a, truths) })
	case mixcore.Or:
		return slices.ContainsFunc(c.Args, func(a mixcore.Condition) bool { return d.holds(s, &a, truths) })
	case mixcore.Not:
		return !d.holds(s, &c.Args[0], truths)
	case mixcore.InPhase:
		return d.holds(s, &s.Phases[c.Phase].When, truths)
	}
	return truths[d.index(c)]
}

// at are the controls of a row, each at the first of its places that fits.
func (p *Probe) at(d *Decisive, truths []bool, places [][]float64) *mixcore.Input {
	in := p.rest.Clone()
	for i := range d.Tests {
		control := d.Tests[i].Control
		fits := slices.IndexFunc(places[control], func(at float64) bool {
			for k := range d.Tests {
				low, high := d.Tests[k].Bounds()
				if d.Tests[k].Control == control && (low <= at && at <= high) != truths[k] {
					return false
				}
			}
			return true
		})
		if fits < 0 {
			return nil
		}
		in.Position[control] = places[control][fits]
	}
	return &in
}

// mostSets is up to how many sets of rows are all kept in mind.
const mostSets = 20_000

// smallest are the smallest sets of rows that hold one of the pairs of each test that has
// any, in order.
func smallest(pairs [][][2]int) (sets [][]int) {
	// A set of rows is a set of bits, of up to 256 rows.
	type rows [4]uint64
	size := func(r rows) (n int) {
		for _, w := range r {
			n += bits.OnesCount64(w)
		}
		return n
	}
	reached := map[rows]bool{{}: true}
	for _, list := range pairs {
		if len(list) == 0 {
			continue
		}
		next := map[rows]bool{}
		least := 1 << 10
		for set := range reached {
			for _, pair := range list {
				with := set
				for _, row := range pair {
					with[row/64] |= 1 << (row % 64)
				}
				next[with] = true
				least = min(least, size(with))
			}
		}
		if len(next) > mostSets { // then only the smallest go on
			maps.DeleteFunc(next, func(set rows, _ bool) bool { return size(set) > least+1 })
		}
		reached = next
	}
	least := 1 << 10
	for set := range reached {
		least = min(least, size(set))
	}
	for set := range reached {
		if size(set) != least || least == 0 {
			continue
		}
		var list []int
		for row := range 256 {
			if set[row/64]>>(row%64)&1 == 1 {
				list = append(list, row)
			}
		}
		sets = append(sets, list)
	}
	slices.SortFunc(sets, slices.Compare[[]int])
	return sets
}
