package draft_test

import (
	"fmt"
	"strings"
	"testing"

	"example.com/hingeline/verify/draft"
	"example.com/hingeline/verify/result"
)

// eachChoice visits every set of choices that a layout allows, with the least,
// the usual and the most trim.
func eachChoice(l draft.Layout, visit func(draft.Choices)) {
	of := func(may, has bool) []bool {
		if may {
			return []bool{true, false}
		}
		return []bool{has}
	}
	for _, motor := range of(l.MayMotor, l.HasMotor) {
		for _, flaps := range of(l.MayFlaps, l.HasFlaps) {
			for _, rates := range []bool{true, false} {
				for _, trim := range []int{0, l.Usual().Trim, draft.MostTrim} {
					visit(draft.Choices{Name: "Wren", Script: "wren.feature", Motor: motor, Flaps: flaps, Rates: rates, Trim: trim})
				}
			}
		}
	}
}

func TestLayoutsLoadAndTheirDraftsPass(t *testing.T) {
	for _, l := range draft.Layouts() {
		eachChoice(l, func(c draft.Choices) {
			t.Run(fmt.Sprintf("%s/%+v", l.Name, c), func(t *testing.T) {
				text, err := l.Airframe(c)
				if err != nil {
					t.Fatal(err)
				}
				m := loaded(t, "wren.yaml", text)
				d := draft.Script(m)
				r := check(t, m, d)
				if r.Verdict != result.Passed {
					t.Errorf("%s: %s", r.Verdict, strings.Join(failures(r), "\n"))
				}
				if len(r.Findings) > 0 {
					t.Errorf("findings: %+v", r.Findings)
				}
				if len(r.Uncovered.Parts)+len(r.Uncovered.Controls)+len(r.Uncovered.Positions) > 0 {
					t.Errorf("not covered: %+v\n%s", r.Uncovered, d.Text)
				}
			})
		})
	}
}
