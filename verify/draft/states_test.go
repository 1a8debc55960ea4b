package draft

import (
	"fmt"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
)

// On the largest models fewer states are looked at, on small ones none is left out.
func TestStatesAreAsManyAsCanBeLookedAt(t *testing.T) {
	for _, c := range []struct{ levers, parts, most int }{{20, 120, 420}, {20, 4, mostStates}, {2, 4, 9}} {
		var b strings.Builder
		b.WriteString("hingeline: 1\nname: Large\ncontrols:\n  roll stick: roll\n")
		for i := range c.levers {
			fmt.Fprintf(&b, "  lever %d: lever\n", i)
		}
		b.WriteString("demands:\n  roll: roll stick\n")
		for i := range c.levers {
			fmt.Fprintf(&b, "  d%d: lever %d\n", i, i)
		}
		b.WriteString("channels:\n  1:\n    mix:\n      - roll\n")
		for i := range c.levers {
			fmt.Fprintf(&b, "      - {add: d%d, share: 5%%}\n", i)
		}
		b.WriteString("surfaces:\n")
		for i := range c.parts {
			fmt.Fprintf(&b, "  port aileron %d: {kind: aileron, channel: 1, measured: {100%%: 20° up}}\n", i)
		}
		m, problems := airframes.Load("large.yaml", []byte(b.String()))
		if m == nil {
			t.Fatalf("%+v", problems)
		}
		d := newDrafter(m)
		if got := len(d.statesFor(0)); got > c.most || got < fullStates && got < c.most {
			t.Errorf("%d levers, %d parts: %d states, want at most %d and no fewer than need be", c.levers, c.parts, got, c.most)
		}
	}
}
