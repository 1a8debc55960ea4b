package fit_test

import (
	"math"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/fit"
)

// A table that is written in place of a linkage does what the linkage does, all over its
// travel, to what a straight line between its points may be off; all else is kept.
func TestTableInPlaceOfALinkage(t *testing.T) {
	text, _ := airframes.ReadShipped("bracken-20")
	block := strings.Replace(string(text), "    linkage: {arm_mm: 13, horn_mm: 20, pivots_mm: 560, offset_mm: 22, horn: below}\n",
		"    linkage:\n      arm_mm: 13\n      horn_mm: 20\n      pivots_mm: 560\n      offset_mm: 22\n      horn: below\n", 1)
	if block == string(text) {
		t.Fatal("there is no such linkage any more")
	}
	for name, text := range map[string]string{"in brackets": string(text), "in lines": block, "from elsewhere": strings.ReplaceAll(block, "\n", "\r\n")} {
		m, problems := airframes.Load("bracken.yaml", []byte(text))
		if m == nil {
			t.Fatal(problems)
		}
		tried := 0
		for part := range m.Setup.Parts {
			p := &m.Setup.Parts[part]
			if len(p.Drives) != 1 || p.Drives[0].Linkage == nil {
				continue
			}
			tried++
			low, high := m.Setup.Channels[p.Drives[0].Channel].Reach()
			table, err := fit.TableOf(&p.Drives[0], low, high)
			if err != nil {
				t.Errorf("%s: %v", p.Name, err)
				continue
			}
			written, err := fit.Rewrite(m, []fit.Correction{{Part: part, Table: table}})
			if err != nil {
				t.Errorf("%s, %s: %v", name, p.Name, err)
				continue
			}
			now, problems := airframes.Load("bracken.yaml", written)
			if now == nil {
				t.Fatal(problems)
			}
			was, is := m.Plan.NewOutput(), now.Plan.NewOutput()
			for _, stick := range []float64{-100, -60, -20, 0, 30, 70, 100} {
				in := m.Plan.Rest()
				for c := range 3 {
					in.Position[c] = stick
				}
				m.Plan.Eval(&in, was)
				now.Plan.Eval(&in, is)
				if off := math.Abs(float64(was.Parts[part].Angle - is.Parts[part].Angle)); off > 0.5 {
					t.Errorf("%s, %s at %v %%: off by %v°", name, p.Name, stick, off)
				}
			}
		}
		if tried < 4 {
			t.Errorf("%d linkages", tried)
		}
	}
	marked := strings.Replace(string(text), "horn_mm: 20, pivots_mm: 560, offset_mm: 22,", "horn_mm: 20, # outer hole\n      pivots_mm: 560, offset_mm: 22,", 1)
	m, problems := airframes.Load("bracken.yaml", []byte(marked))
	if m == nil {
		t.Fatal(problems)
	}
	for part := range m.Setup.Parts {
		if d := &m.Setup.Parts[part].Drives[0]; m.Setup.Parts[part].Name == "elevator" {
			table, err := fit.TableOf(d, -100, 100)
			if err != nil {
				t.Fatal(err)
			}
			if _, err := fit.Rewrite(m, []fit.Correction{{Part: part, Table: table}}); err == nil || !strings.Contains(err.Error(), "by hand") {
				t.Errorf("a remark would be lost: %v", err)
			}
		}
	}
}
