package cover_test

import (
	"context"
	"math/bits"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/verify/faults/cover"
)

func fewest(t testing.TB, p cover.Problem, o cover.Options) cover.Answer {
	t.Helper()
	a, err := cover.Fewest(context.Background(), p, o)
	if err != nil {
		t.Fatal(err)
	}
	if !covers(p, a.Chosen) {
		t.Fatalf("%v is no cover", a.Chosen)
	}
	if a.AtLeast > len(a.Chosen) || a.Exact != (a.AtLeast == len(a.Chosen)) || !slices.IsSorted(a.Chosen) {
		t.Fatalf("%+v does not hold together", a)
	}
	return a
}

// covers says whether every row is hit by one of the columns.
func covers(p cover.Problem, chosen []int) bool {
	for _, row := range p.Rows {
		if !slices.ContainsFunc(chosen, row.Has) {
			return false
		}
	}
	return true
}

// byHand tries every set of columns.
func byHand(p cover.Problem) int {
	least := p.Columns
	for set := range 1 << p.Columns {
		n := bits.OnesCount(uint(set))
		if n >= least {
			continue
		}
		var chosen []int
		for c := range p.Columns {
			if set>>c&1 == 1 {
				chosen = append(chosen, c)
			}
		}
		if covers(p, chosen) {
			least = n
		}
	}
	return least
}

// table is a random table.
func table(t *rapid.T) cover.Problem {
	p := cover.Problem{Columns: rapid.IntRange(1, 12).Draw(t, "columns")}
	for range rapid.IntRange(0, 14).Draw(t, "rows") {
		row := cover.NewBits(p.Columns)
		for _, c := range rapid.SliceOfN(rapid.IntRange(0, p.Columns-1), 1, 5).Draw(t, "row") {
			row.Add(c)
		}
		p.Rows = append(p.Rows, row)
	}
	return p
}

func TestFewestIsFewest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := table(t)
		a, err := cover.Fewest(context.Background(), p, cover.Options{})
		if err != nil {
			t.Fatal(err)
		}
		want := byHand(p)
		if !a.Exact || len(a.Chosen) != want || !covers(p, a.Chosen) {
			t.Fatalf("got %+v, want %d columns", a, want)
		}
		if a := cover.Closely(p, cover.UsualNodes); !a.Exact || len(a.Chosen) != want || !covers(p, a.Chosen) {
			t.Fatalf("with prices: got %+v, want %d columns", a, want)
		}
		few, _ := cover.Fewest(context.Background(), p, cover.Options{Nodes: 1})
		for _, a := range []cover.Answer{few, cover.Closely(p, 1)} {
			if a.AtLeast > want || !covers(p, a.Chosen) {
				t.Fatalf("with one node: %+v, but %d are enough", a, want)
			}
		}
	})
}

// What prices prove no cover is below, whatever the prices.
func TestPricesProveNoMoreThanIsTrue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := table(t)
		proved, atLeast, lowest := cover.Proved(p, rapid.IntRange(0, 60).Draw(t, "rounds"))
		if want := byHand(p); atLeast > want || proved > float64(atLeast) || float64(atLeast) >= max(0, proved)+1 {
			t.Fatalf("prices prove %v, read as %d; %d are enough", proved, atLeast, want)
		}
		if lowest < 0 {
			t.Fatalf("a price is %d; those below 0 prove nothing", lowest)
		}
	})
}

// lines are the lines of the projective space over two values with so many points: of any
// two points, the third is where they differ.
func lines(points int) (list [][3]int) {
	for a := 1; a <= points; a++ {
		for b := a + 1; b <= points; b++ {
			if c := a ^ b; c > b {
				list = append(list, [3]int{a - 1, b - 1, c - 1})
			}
		}
	}
	return list
}

func ofTriples(points int, list [][3]int) cover.Problem {
	p := cover.Problem{Columns: points}
	for _, tr := range list {
		row := cover.NewBits(points)
		for _, c := range tr {
			row.Add(c)
		}
		p.Rows = append(p.Rows, row)
	}
	return p
}

// The smallest set that meets every line is a hyperplane, which has half of the points
// less a half (Bose and Burton, Journal of Combinatorial Theory 1, 1966; from memory).
func TestFewestOfLinesIsAHyperplane(t *testing.T) {
	for _, points := range []int{3, 7, 15} {
		if a := fewest(t, ofTriples(points, lines(points)), cover.Options{}); !a.Exact || len(a.Chosen) != points/2 {
			t.Errorf("%d points: %+v, want %d", points, a, points/2)
		}
	}
}

// triples are Steiner triple systems: every pair of points is in one triple. The three
// times bigger one has the triples of three copies and, for each triple or point of the
// small one, those across.
func triples(points int) (list [][3]int) {
	if points == 3 {
		return [][3]int{{0, 1, 2}}
	}
	third := points / 3
	small := triples(third)
	for copy := range 3 {
		for _, tr := range small {
			list = append(list, [3]int{copy*third + tr[0], copy*third + tr[1], copy*third + tr[2]})
		}
	}
	for i := range third {
		list = append(list, [3]int{i, third + i, 2*third + i})
	}
	for _, tr := range small {
		for _, o := range [][3]int{{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}} {
			list = append(list, [3]int{tr[o[0]], third + tr[o[1]], 2*third + tr[o[2]]})
		}
	}
	return list
}

// The smallest sets that hit every triple of a Steiner system: 5 for 9 points, 18 for 27
// (Fulkerson, Nemhauser and Trotter, Mathematical Programming Study 2, 1974; values from
// memory).
func TestFewestOfSteinerTriples(t *testing.T) {
	for points, want := range map[int]int{9: 5, 27: 18} {
		p := ofTriples(points, triples(points))
		if pairs := points * (points - 1) / 6; len(p.Rows) != pairs {
			t.Fatalf("%d triples of %d points, want %d", len(p.Rows), points, pairs)
		}
		if a := fewest(t, p, cover.Options{}); !a.Exact || len(a.Chosen) != want {
			t.Errorf("%d points: %+v, want %d", points, a, want)
		}
	}
}

func TestFewestRefusesARowThatNothingHits(t *testing.T) {
	p := cover.Problem{Rows: []cover.Bits{cover.NewBits(3)}, Columns: 3}
	if _, err := cover.Fewest(context.Background(), p, cover.Options{}); err != cover.ErrUncoverable {
		t.Errorf("got %v", err)
	}
}

func TestCoversSeesARowThatIsLeftOut(t *testing.T) {
	p := cover.Problem{Columns: 2}
	for c := range 2 {
		row := cover.NewBits(2)
		row.Add(c)
		p.Rows = append(p.Rows, row)
	}
	if covers(p, []int{0}) || !covers(p, []int{0, 1}) {
		t.Error("want two columns for two rows")
	}
}

func TestSwapLowersTheOtherCost(t *testing.T) {
	p := walk(40, 60, 5)
	a := fewest(t, p, cover.Options{})
	cost := func(chosen []int) (sum int) {
		for _, c := range chosen {
			sum += c
		}
		return sum
	}
	s := cover.Swap(p, a.Chosen, cost)
	if !covers(p, s) || len(s) != len(a.Chosen) || cost(s) > cost(a.Chosen) {
		t.Errorf("%v became %v", a.Chosen, s)
	}
}

// walk is a table like those of walk-arounds: many columns are variations of one another,
// most rows are hit by many columns and some by few.
func walk(rows, columns int, seed uint64) cover.Problem {
	r := rand.New(rand.NewPCG(seed, 1))
	p := cover.Problem{Columns: columns}
	for range rows {
		row := cover.NewBits(columns)
		group, width := r.IntN(columns), 1+r.IntN(columns/8)
		for i := range width {
			if r.IntN(3) > 0 {
				row.Add((group + i) % columns)
			}
		}
		row.Add(group)
		p.Rows = append(p.Rows, row)
	}
	return p
}

func TestFewestAlwaysGivesTheSame(t *testing.T) {
	p := walk(200, 300, 3)
	a, b := fewest(t, p, cover.Options{}), fewest(t, p, cover.Options{})
	if !slices.Equal(a.Chosen, b.Chosen) {
		t.Errorf("%v and %v", a.Chosen, b.Chosen)
	}
}

// random is a table of which every row is hit by about so many columns.
func random(rows, columns, hits int, seed uint64) cover.Problem {
	r := rand.New(rand.NewPCG(seed, 2))
	p := cover.Problem{Columns: columns}
	for range rows {
		row := cover.NewBits(columns)
		for range hits {
			row.Add(r.IntN(columns))
		}
		p.Rows = append(p.Rows, row)
	}
	return p
}

// The quick search leaves these tables open; with prices they take some hundred nodes. The
// numbers are those that HiGHS finds (testdata/cover/milp.py).
func TestFewestOfHardTables(t *testing.T) {
	for _, c := range []struct{ hits, want int }{{8, 17}, {12, 13}, {20, 9}} {
		if a := fewest(t, random(60, 200, c.hits, 0), cover.Options{}); !a.Exact || len(a.Chosen) != c.want || a.Nodes > 2000 {
			t.Errorf("%d hits: %+v, want %d columns", c.hits, a, c.want)
		}
	}
}

// A search that is stopped says what it found and what is proved, which is less.
func TestFewestThatIsStoppedSaysSo(t *testing.T) {
	p := random(60, 200, 20, 0)
	for _, nodes := range []int{1, 50, 101, 130} {
		if a := fewest(t, p, cover.Options{Nodes: nodes}); a.Exact || a.AtLeast > 9 || len(a.Chosen) < 9 || a.Nodes > nodes {
			t.Errorf("%d nodes: %+v", nodes, a)
		}
	}
	for seed := range uint64(60) {
		p := random(40, 40, 3, seed)
		all := fewest(t, p, cover.Options{})
		for _, nodes := range []int{1, 5} {
			if a := fewest(t, p, cover.Options{Nodes: nodes}); a.AtLeast > all.AtLeast {
				t.Errorf("table %d, %d nodes: %+v, but %d are enough", seed, nodes, a, len(all.Chosen))
			}
		}
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if a, err := cover.Fewest(ctx, p, cover.Options{}); err != nil || a.Exact || a.Nodes > 64 || !covers(p, a.Chosen) {
		t.Errorf("cancelled: %+v, %v", a, err)
	}
}

// likeAModel is a table of mistakes over steps. A step stands in one of twelve states and
// moves one stick or two of eight, each one way or the other; a mistake shows wherever its
// stick moves, in one state, in some or in all, and some show one way only.
func likeAModel(rows, columns int) cover.Problem {
	const states, sticks = 12, 8
	r := rand.New(rand.NewPCG(5, 3))
	type step struct {
		state int
		way   [sticks]int
	}
	steps := make([]step, columns)
	for i := range steps {
		steps[i].state = r.IntN(states)
		for range 1 + r.IntN(2) {
			steps[i].way[r.IntN(sticks)] = 1 - 2*r.IntN(2)
		}
	}
	p := cover.Problem{Columns: columns}
	for len(p.Rows) < rows {
		stick, way := r.IntN(sticks), r.IntN(3)-1 // 0 is both ways
		in := 1 + r.IntN(1<<states-1)
		switch r.IntN(3) {
		case 0:
			in = 1 << r.IntN(states)
		case 1:
			in = 1<<states - 1
		}
		row := cover.NewBits(columns)
		for c, s := range steps {
			if in>>s.state&1 == 1 && s.way[stick] != 0 && (way == 0 || s.way[stick] == way) {
				row.Add(c)
			}
		}
		if row.Count() > 0 {
			p.Rows = append(p.Rows, row)
		}
	}
	return p
}

// The baseline takes the column that hits most, and never learns how good that is.
func BenchmarkFewest(b *testing.B) {
	for _, t := range []struct {
		name string
		p    cover.Problem
	}{
		{"model 1000 × 2000", likeAModel(1000, 2000)},
		{"near 200 × 400", walk(200, 400, 7)},
		{"random 60 × 200", random(60, 200, 12, 0)},
	} {
		b.Run(t.name+"/exact", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				a := fewest(b, t.p, cover.Options{})
				if !a.Exact {
					b.Fatal("not exact")
				}
				b.ReportMetric(float64(len(a.Chosen)), "columns")
			}
		})
		b.Run(t.name+"/greedy", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				b.ReportMetric(float64(greedy(t.p)), "columns")
			}
		})
	}
}

func greedy(p cover.Problem) (columns int) {
	left := slices.Clone(p.Rows)
	for len(left) > 0 {
		count := make([]int, p.Columns)
		for _, row := range left {
			row.Each(func(c int) bool { count[c]++; return true })
		}
		best := slices.Index(count, slices.Max(count))
		left = slices.DeleteFunc(left, func(row cover.Bits) bool { return row.Has(best) })
		columns++
	}
	return columns
}
