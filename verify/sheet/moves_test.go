package sheet_test

import (
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/sheet"
)

func TestMovesIsFromWhereToWhere(t *testing.T) {
	text, _ := airframes.ReadShipped("bracken-20")
	m, problems := airframes.Load("bracken-20.yaml", text)
	if m == nil {
		t.Fatal(problems)
	}
	from, to := m.Plan.Rest(), m.Plan.Rest()
	for i := range m.Setup.Controls {
		if m.Setup.Controls[i].Name == "roll stick" {
			from.Position[i], to.Position[i] = 100, -100
		}
	}
	p, before, after := sheet.Moves(m, &from, &to), sheet.Stands(m, &from), sheet.Stands(m, &to)
	moved := 0
	for i, s := range p.Stands {
		if s.From != before.Stands[i].At || s.At != after.Stands[i].At || s.Says != after.Stands[i].Says {
			t.Errorf("%s: %+v, wanted from %g to %g", m.Setup.Parts[i].Name, s, before.Stands[i].At, after.Stands[i].At)
		}
		if s.Moved {
			moved++
		}
	}
	if !p.Moves || moved < 2 || moved == len(p.Stands) {
		t.Errorf("%d parts moved, wanted the ailerons", moved)
	}
}
