package walk

import (
	"context"
	"os"
	"testing"
	"time"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
	"example.com/hingeline/verify/wording"
)

func TestScratch(t *testing.T) {
	run := func(name string, text []byte) {
		m, p := airframes.Load(name, text)
		if m == nil {
			t.Fatal(p)
		}
		a := time.Now()
		steps, cut := table.Candidates(m)
		b := time.Now()
		list := mistake.All(m, mistake.Options{})
		tab := table.New(m, list, steps)
		c := time.Now()
		t.Logf("%s: %d steps %v (%v), %d mistakes, table %v", name, len(steps), cut, b.Sub(a), len(list), c.Sub(b))
		for _, look := range []sight.Look{sight.Eye, sight.Measured} {
			a := time.Now()
			f := Of(context.Background(), tab, look)
			d := time.Since(a)
			seen := 0
			for i := range list {
				if f.Visible(i) {
					seen++
				} else if look.Ruler || len(list) < 120 {
					t.Logf("     unseen %s", list[i].Text)
				}
			}
			t.Logf("   ruler %v: %d of %d seen, %d steps (at least %d), moves %d (at least %d) %v", look.Ruler, seen, len(list), len(f.Order), f.AtLeast, f.Moves, f.MovesMin, d)
			for _, s := range f.Order {
				st := &tab.Steps[s]
				t.Logf("       %q -> %q", wording.Pose(&m.Setup, &st.From), wording.Pose(&m.Setup, &st.To))
			}
		}
	}
	for _, n := range airframes.Shipped() {
		text, _ := airframes.ReadShipped(n)
		run(n, text)
	}
	text, _ := os.ReadFile("../../../testdata/benchmark/twelve.yaml")
	run("twelve", text)
}
