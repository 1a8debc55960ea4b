package draft_test

import (
	"fmt"
	"testing"

	"example.com/hingeline/verify/draft"
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
				if r := passes(t, m, d); len(r.Findings) > 0 {
					t.Errorf("findings: %+v", r.Findings)
				}
			})
		})
	}
}

func TestAirframeRefusesWhatNoFileMayHold(t *testing.T) {
	l, _ := draft.FindLayout("Flying Wing")
	for name, c := range map[string]draft.Choices{
		"too much trim":  {Name: "Wren", Trim: draft.MostTrim + 1},
		"less than none": {Name: "Wren", Trim: -1},
		"two lines":      {Name: "Wren\nhingeline: 2"},
	} {
		if text, err := l.Airframe(c); err == nil {
			t.Errorf("%s: got no error but %q", name, text)
		}
	}
}

// A model may be called anything that can be seen.
func TestAirframeKeepsTheNameAsItIsSaid(t *testing.T) {
	l, _ := draft.FindLayout("trainer")
	for _, name := range []string{"Wren", "Wren 2", "true", "null", "2", "12:30", "a: b # c", `"Wren" \ 'n`, "- Wren", "{x}", "Möwe"} {
		c := l.Usual()
		c.Name, c.Script = name, "wren.feature"
		text, err := l.Airframe(c)
		if err != nil {
			t.Fatal(err)
		}
		if m := loaded(t, "wren.yaml", text); m.Name != name {
			t.Errorf("the model is called %q, want %q", m.Name, name)
		}
	}
}
