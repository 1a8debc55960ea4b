package verify

import (
	"context"
	"strings"
	"testing"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/verifytest"
)

// Nothing that a picture of a shipped model says is cut: a number without its end is another
// number. Every eleventh check is drawn, and every linkage.
func TestPicturesOfShippedModelsSayAllOfIt(t *testing.T) {
	drawn := 0
	for _, m := range verifytest.EveryShipped(t) {
		r, problems := CheckOnPaper(context.Background(), m, verifytest.Scripts(t, strings.TrimSuffix(m.Source.Name, ".yaml")), script.Selection{})
		if r == nil {
			t.Fatal(problems)
		}
		for i := 0; i < len(r.Checks); i += 11 {
			p := &r.Paper.Pictures[i]
			views := []figure.Drawing{figure.Behind(&r.Paper.Shape, p, "a"), figure.Plan(&r.Paper.Shape, p, "a")}
			for _, part := range p.Of {
				views = append(views, figure.Section(&r.Paper.Shape.Parts[part], &p.Stands[part], p.Want, "a"))
			}
			for _, d := range views {
				drawn++
				notCut(t, m.Name+": "+r.Checks[i].Sentence, &d)
			}
		}
		for i := range r.Paper.Linkages {
			d := figure.Linkage(&r.Paper.Linkages[i], "a")
			notCut(t, m.Name+": the linkage of "+r.Paper.Linkages[i].Part, &d)
		}
	}
	if drawn < 300 {
		t.Errorf("only %d pictures were looked at", drawn)
	}
}

func notCut(t *testing.T, what string, d *figure.Drawing) {
	t.Helper()
	for _, item := range d.Items {
		if text, ok := item.(figure.Text); ok && strings.Contains(text.Words, "…") {
			t.Errorf("%s: a picture says %q", what, text.Words)
		}
	}
}
