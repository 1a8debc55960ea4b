package walk_test

import (
	"context"
	"slices"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/walk"
	"example.com/hingeline/verify/verifytest"
)

// A walk that begins with each stick alone goes both ways with every stick that moves
// something, and still shows every mistake that can be seen at all.
func TestPlainStepsComeFirst(t *testing.T) {
	for _, m := range verifytest.EveryShipped(t) {
		tab, _ := walk.Candidates(m, nil, nil)
		plain := walk.Plain(tab, sight.Eye)
		moved := map[int][]bool{}
		for _, k := range plain {
			st := &tab.Steps[k]
			var sticks []int
			for i, at := range st.To.Position {
				if at != st.From.Position[i] {
					sticks = append(sticks, i)
				}
			}
			if len(sticks) != 1 || m.Setup.Controls[sticks[0]].Kind != mixcore.AxisControl {
				t.Fatalf("%s: step %d is not that of one stick: %v", m.Name, k, sticks)
			}
			moved[sticks[0]] = append(moved[sticks[0]], st.To.Position[sticks[0]] > 0)
		}
		for stick, ways := range moved {
			if !slices.Contains(ways, true) || !slices.Contains(ways, false) || len(ways) != 2 {
				t.Errorf("%s: %s is not moved once either way: %v", m.Name, m.Setup.Controls[stick].Name, ways)
			}
		}
		if len(moved) == 0 {
			t.Errorf("%s: no stick is moved alone", m.Name)
		}
		found := walk.After(context.Background(), tab, sight.Eye, plain)
		if !slices.Equal(found.Order[:len(plain)], plain) {
			t.Errorf("%s begins otherwise", m.Name)
		}
		for i := range tab.Mistakes {
			if found.Visible(i) && found.First(i) < 0 {
				t.Errorf("%s: %s is shown by no step", m.Name, tab.Mistakes[i].Text)
			}
		}
		shortest := walk.Shortest(context.Background(), m, walk.Options{})
		t.Logf("%s: %d steps, %d of them plain; the shortest has %d", m.Name, len(found.Order), len(plain), len(shortest.Order))
		if len(found.Order) > len(shortest.Order)+len(plain) || found.AtLeast < shortest.AtLeast {
			t.Errorf("%s: %d steps (at least %d), the shortest has %d", m.Name, len(found.Order), found.AtLeast, len(shortest.Order))
		}
	}
}
