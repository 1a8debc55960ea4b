package table_test

import (
	"slices"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
	"example.com/hingeline/verify/verifytest"
)

// everybody is None and the mistakes that show at some step.
func everybody(tab *table.Table, look sight.Look) []int {
	list := []int{table.None}
	for k, row := range tab.Shows(look) {
		if slices.ContainsFunc(row, func(w uint64) bool { return w != 0 }) {
			list = append(list, k)
		}
	}
	return list
}

func TestBestGroupsHoldEverybodyAndNobodySurelyApart(t *testing.T) {
	for _, name := range []string{"bracken-20", "quoin-delta", "pellin-park"} {
		tab := tableOf(verifytest.Shipped(t, name))
		for _, look := range looks {
			all := everybody(tab, look)
			step, groups := tab.Best(look, all)
			if step < 0 || len(groups) < 2 {
				t.Fatalf("%s: step %d, %d groups", name, step, len(groups))
			}
			for _, c := range all {
				if !slices.ContainsFunc(groups, func(g []int) bool { return slices.Contains(g, c) }) {
					t.Errorf("%s: %d is in no group", name, c)
				}
			}
			for _, g := range groups {
				for i, a := range g {
					for _, b := range g[:i] {
						if tab.Apart(look, a, b, step) {
							t.Errorf("%s: %d and %d are in one group, and apart", name, a, b)
						}
					}
				}
			}
		}
	}
}

func TestBestHasNoStepWhereNothingIsApart(t *testing.T) {
	tab := tableOf(verifytest.Shipped(t, "bracken-20"))
	for _, list := range [][]int{{table.None}, {3}, nil} {
		if step, groups := tab.Best(sight.Eye, list); step != -1 || len(groups) != 1 || !slices.Equal(groups[0], list) {
			t.Errorf("%v: step %d, groups %v", list, step, groups)
		}
	}
}

// fewTruths is of how many mistakes the whole way to their name is gone.
const fewTruths = 20

// Whatever any step tells apart, the questions in the end do too, and in no more steps
// than are said: for every mistake of every shipped model, honestly observed.
func TestNamedIsHowManyStepsNameEveryMistake(t *testing.T) {
	for _, name := range airframes.Shipped() {
		tab := tableOf(verifytest.Shipped(t, name))
		for _, look := range looks {
			most, kinds := tab.Named(look)
			all := everybody(tab, look)
			if kinds < 2 || kinds > len(all) {
				t.Errorf("%s: %d kinds of %d", name, kinds, len(all))
			}
			deepest := 0
			truths := all
			if len(truths) > fewTruths { // some of them, the same each time
				truths = nil
				for i := 0; i < len(all); i += len(all)/fewTruths + 1 {
					truths = append(truths, all[i])
				}
			}
			for _, truth := range truths {
				left, asked := all, []int(nil)
				for {
					step, _ := tab.Best(look, left, asked...)
					if step < 0 {
						break
					}
					asked = append(asked, step)
					left = tab.Left(look, truth, left, step)
				}
				deepest = max(deepest, len(asked))
				if len(asked) > most {
					t.Errorf("%s, ruler %v: %d steps to name %d, want %d at most", name, look.Ruler, len(asked), truth, most)
				}
				for _, other := range left {
					for step := range tab.Steps {
						if len(tab.Left(look, truth, []int{other}, step)) == 0 {
							t.Fatalf("%s: %d and %d are left, and step %d tells them apart", name, truth, other, step)
						}
					}
				}
			}
			if deepest == 0 {
				t.Errorf("%s: nothing was asked", name)
			}
		}
	}
}
