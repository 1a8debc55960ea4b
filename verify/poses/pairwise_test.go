package poses_test

import (
	"testing"

	"example.com/hingeline/verify/poses"
)

// The largest number of columns that so many rows cover: Rényi, Katona, Kleitman and
// Spencer, in arXiv 1111.0587.
var published = map[int]int{4: 3, 5: 4, 6: 10, 7: 15, 8: 35, 9: 56, 10: 126}

func TestPairwiseHasAsFewRowsAsPublished(t *testing.T) {
	for rows, columns := range published {
		if got := len(poses.Pairwise(columns)); got != rows {
			t.Errorf("%d columns take %d rows, want %d", columns, got, rows)
		}
		if got := len(poses.Pairwise(columns + 1)); got <= rows {
			t.Errorf("%d columns take %d rows, want more than %d", columns+1, got, rows)
		}
	}
}

func TestPairwiseShowsEveryPairInAllFourWays(t *testing.T) {
	for n := 1; n <= 40; n++ {
		rows := poses.Pairwise(n)
		for a := range n {
			for b := range a {
				seen := map[[2]bool]bool{}
				for _, row := range rows {
					seen[[2]bool{row[a], row[b]}] = true
				}
				if len(seen) != 4 {
					t.Fatalf("of %d columns %d and %d meet in %d ways", n, a, b, len(seen))
				}
			}
		}
	}
}

// Trying all sets of columns of four to six rows finds none bigger than published.
func TestNoMoreColumnsFitIntoFourToSixRows(t *testing.T) {
	for rows := 4; rows <= 6; rows++ {
		if got := biggest(rows); got != published[rows] {
			t.Errorf("%d rows: %d columns fit, published are %d", rows, got, published[rows])
		}
	}
}

// biggest is the size of the biggest set of columns, each a number of so many bits, of
// which any two meet in all four ways. A column may be turned about without changing that,
// so only those that begin with 0 are tried.
func biggest(rows int) (most int) {
	all := 1<<rows - 1
	var columns []int
	for c := range 1 << (rows - 1) {
		columns = append(columns, c)
	}
	meet := func(a, b int) bool { return a&b != 0 && a&^b&all != 0 && b&^a&all != 0 && ^(a|b)&all != 0 }
	var grow func(size int, left []int)
	grow = func(size int, left []int) {
		most = max(most, size)
		for i, c := range left {
			if size+len(left)-i <= most {
				return
			}
			var next []int
			for _, other := range left[i+1:] {
				if meet(c, other) {
					next = append(next, other)
				}
			}
			grow(size+1, next)
		}
	}
	grow(0, columns)
	return most
}
