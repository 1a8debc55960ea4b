package serve

import (
	"testing"

	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/sheet"
	"example.com/hingeline/verify/verifytest"
)

// TestPartThatMayMoveABitSaysWhichWay moves a stick so little that nobody could be sure.
func TestPartThatMayMoveABitSaysWhichWay(t *testing.T) {
	m := verifytest.Shipped(t, "bracken-20")
	from, to := m.Plan.Rest(), m.Plan.Rest()
	to.Position[namedControl(m, "roll stick")] = 10
	k := &memory{m: m}
	w := bench.NewWalk(m, bench.Chosen{Steps: []sight.Step{{From: from, To: to}}, Watch: [][]int{nil}}, sight.Eye)
	g := bench.NewGuide(w, k, now)
	for range bench.Questions {
		g.Take("yes")
	}
	at := g.Present()
	v := (&table{walk: k.walk(w, g), shape: sheet.Shape(m)}).step(g, &at)
	wanted := map[string]string{"starboard aileron": "may move a bit: neutral to 1.3° UP (1 mm)"} // the port one goes less far DOWN
	for _, p := range v.Parts {
		want, little := wanted[p.Name]
		if p.Little != little {
			t.Errorf("the %s, which must be seen as %q: may move a bit: %t, wanted %t", p.Name, p.Must, p.Little, little)
		}
		if little && p.Must != want {
			t.Errorf("of the %s it is said %q, wanted %q", p.Name, p.Must, want)
		}
	}
}
