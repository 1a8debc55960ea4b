package walk

import (
	"context"
	"os"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/script"
)

func TestScratchScript(t *testing.T) {
	for _, n := range airframes.Shipped() {
		text, _ := airframes.ReadShipped(n)
		m, _ := airframes.Load(n+".yaml", text)
		if n == "skerry" {
			continue
		}
		for _, look := range []sight.Look{sight.Eye, sight.Measured} {
			f := Shortest(context.Background(), m, Options{Look: look})
			s := f.Script()
			name := "/tmp/walkstub/" + n + map[bool]string{false: "-eye", true: "-ruler"}[look.Ruler] + ".feature"
			os.WriteFile(name, s, 0o644)
			trial, problems := script.NewTrial(m, []script.File{{Name: "walk.feature", Text: s}})
			if len(problems) > 0 {
				var b strings.Builder
				diag.Write(&b, problems, diag.NewSource("walk.feature", s))
				t.Errorf("%s: %s", n, b.String())
			}
			if trial == nil {
				continue
			}
			if failing := trial.Failing(m, 10); len(failing) > 0 {
				t.Errorf("%s %v: fails: %q", n, look.Ruler, failing)
			}
			for i := range f.Table.Mistakes {
				if !f.Visible(i) {
					continue
				}
				v, _ := f.Table.Mistakes[i].Variant(m)
				if len(trial.Failing(v, 1)) == 0 {
					st := f.Order[f.First(i)]
					t.Errorf("%s %v: slips: %s (step %d, %v)", n, look.Ruler, f.Table.Mistakes[i].Text, f.First(i)+1, f.Table.Late(i, st, 0))
				}
			}
			r := f.Result()
			if n == "bracken-20" {
				for _, s := range r.Steps {
					t.Logf("%+v", s)
				}
			}
			t.Logf("%s: %d steps, further %d groups %d of %d", n, len(r.Steps), r.Further, r.Groups, r.Mistakes)
		}
	}
}
