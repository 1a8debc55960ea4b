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
	if !cover.Covers(p, a.Chosen) {
		t.Fatalf("%v is no cover", a.Chosen)
	}
	if a.AtLeast > len(a.Chosen) || a.Exact != (a.AtLeast == len(a.Chosen)) || !slices.IsSorted(a.Chosen) {
		t.Fatalf("%+v does not hold together", a)
	}
	return a
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
		if cover.Covers(p, chosen) {
			least = n
		}
	}
	return least
}

func TestFewestIsFewest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := cover.Problem{Columns: rapid.IntRange(1, 12).Draw(t, "columns")}
		for range rapid.IntRange(0, 14).Draw(t, "rows") {
			row := cover.NewBits(p.Columns)
			for _, c := range rapid.SliceOfN(rapid.IntRange(0, p.Columns-1), 1, 5).Draw(t, "row") {
				row.Add(c)
			}
			p.Rows = append(p.Rows, row)
		}
		a, err := cover.Fewest(context.Background(), p, cover.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if want := byHand(p); !a.Exact || len(a.Chosen) != want || !cover.Covers(p, a.Chosen) {
			t.Fatalf("got %+v, want %d columns", a, want)
		}
		few, _ := cover.Fewest(context.Background(), p, cover.Options{Nodes: 1})
		if few.AtLeast > len(a.Chosen) || !cover.Covers(p, few.Chosen) {
			t.Fatalf("with one node: %+v, but %d are enough", few, len(a.Chosen))
		}
	})
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
		p := cover.Problem{Columns: points}
		for _, tr := range triples(points) {
			row := cover.NewBits(points)
			for _, c := range tr {
				row.Add(c)
			}
			p.Rows = append(p.Rows, row)
		}
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
	if cover.Covers(p, []int{0}) || !cover.Covers(p, []int{0, 1}) {
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
	if !cover.Covers(p, s) || len(s) != len(a.Chosen) || cost(s) > cost(a.Chosen) {
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

// The baseline takes the column that hits most, and never learns how good that is.
func BenchmarkFewest(b *testing.B) {
	p := walk(200, 400, 7)
	b.Run("exact", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			a := fewest(b, p, cover.Options{})
			if !a.Exact {
				b.Fatal("not exact")
			}
			b.ReportMetric(float64(len(a.Chosen)), "columns")
		}
	})
	b.Run("greedy", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			b.ReportMetric(float64(greedy(p)), "columns")
		}
	})
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
