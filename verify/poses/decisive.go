package poses

import (
	"cmp"
	"maps"
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

// mostTests is of how many tests a truth table is made at most; of a condition of more
// there is none.
const mostTests = 8

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
	if n > mostTests {
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

// mostSets is how many sets are gone on with at once.
const mostSets = 10_000

// rows are a set of lines of a truth table, as bits.
type rows [1 << mostTests / 64]uint64

func (r *rows) add(row int)      { r[row/64] |= 1 << (row % 64) }
func (r *rows) has(row int) bool { return r[row/64]>>(row%64)&1 == 1 }

func (r *rows) list() (list []int) {
	for row := range 1 << mostTests {
		if r.has(row) {
			list = append(list, row)
		}
	}
	return list
}

// sought is how the smallest sets are found. Rows of a set that are pairs of tests hang
// together like the branches of trees: going round in a circle would use a test twice. A
// set in one piece has one row more than there are tests, and every other piece costs one
// more. So sets in one piece are looked for first, grown row by row, then those in two.
type sought struct {
	tests []int   // those that have pairs
	other [][]int // by test and row: the other row of the pair; -1 if there is none
	pairs [][][2]int
}

// smallest are the smallest sets of rows that hold one of the pairs of each test that has
// any, in order. Where more than mostSets are grown at once they are not all found.
func smallest(pairs [][][2]int) [][]int {
	s := sought{other: make([][]int, len(pairs)), pairs: pairs}
	for test, list := range pairs {
		s.other[test] = slices.Repeat([]int{-1}, 1<<mostTests)
		for _, pair := range list {
			s.other[test][pair[0]], s.other[test][pair[1]] = pair[1], pair[0]
		}
		if len(list) > 0 {
			s.tests = append(s.tests, test)
		}
	}
	for spare := range s.tests {
		if sets := s.inPieces(spare); len(sets) > 0 {
			return sets
		}
	}
	return nil
}

// grown is a set on the way, with how many pieces more it may have.
type grown struct {
	rows  rows
	spare int
}

// inPieces are the sets that have so many pieces more than one.
func (s *sought) inPieces(spare int) (sets [][]int) {
	reached := map[grown]bool{}
	for _, pair := range s.pairs[s.tests[0]] {
		reached[with(grown{spare: spare}, pair[:])] = true
	}
	for range len(s.tests) - 1 {
		next := map[grown]bool{}
		for set := range reached {
			for _, test := range s.open(&set.rows) {
				for _, row := range set.rows.list() {
					if other := s.other[test][row]; other >= 0 {
						next[with(set, []int{other})] = true
					}
				}
				if set.spare > 0 {
					for _, pair := range s.pairs[test] {
						more := with(set, pair[:])
						more.spare--
						next[more] = true
					}
				}
			}
		}
		reached = fewer(next)
	}
	for set := range reached {
		if len(s.open(&set.rows)) == 0 {
			sets = append(sets, set.rows.list())
		}
	}
	slices.SortFunc(sets, slices.Compare[[]int])
	return slices.CompactFunc(sets, slices.Equal[[]int])
}

func with(set grown, more []int) grown {
	for _, row := range more {
		set.rows.add(row)
	}
	return set
}

// open are the tests of which a set has no pair yet.
func (s *sought) open(set *rows) (tests []int) {
	for _, test := range s.tests {
		if !slices.ContainsFunc(s.pairs[test], func(p [2]int) bool { return set.has(p[0]) && set.has(p[1]) }) {
			tests = append(tests, test)
		}
	}
	return tests
}

// fewer are at most mostSets of some sets, always the same ones.
func fewer(sets map[grown]bool) map[grown]bool {
	if len(sets) <= mostSets {
		return sets
	}
	list := slices.SortedFunc(maps.Keys(sets), func(a, b grown) int {
		return cmp.Or(slices.Compare(a.rows[:], b.rows[:]), cmp.Compare(a.spare, b.spare))
	})
	kept := map[grown]bool{}
	for _, set := range list[:mostSets] {
		kept[set] = true
	}
	return kept
}
