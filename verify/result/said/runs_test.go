package said_test

import (
	"testing"

	"example.com/hingeline/verify/result/said"
)

func TestRuns(t *testing.T) {
	for _, c := range []struct {
		numbers []int
		want    string
	}{
		{[]int{1}, "1"}, {[]int{1, 2}, "1, 2"}, {[]int{1, 2, 3, 7}, "1 to 3, 7"}, {[]int{2, 4, 5, 6}, "2, 4 to 6"},
	} {
		if got := said.Runs(c.numbers); got != c.want {
			t.Errorf("%v is %q, wanted %q", c.numbers, got, c.want)
		}
	}
}
