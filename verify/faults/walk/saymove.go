package walk

import (
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
)

// SayMove is what is seen of one part in a step with a mistake made, or table.None:
// "port aileron UP"; with a ruler "port aileron UP: neutral to 9.7° UP (7.1 mm)".
func SayMove(t *table.Table, look sight.Look, step, made, part int) string {
	p, st, m := &t.Model.Setup.Parts[part], &t.Steps[step], t.Move(made, step, part)
	said := p.Name + " " + way(look, p, st, m)
	if look.Ruler {
		said += ": " + exact(p, st, m)
	}
	return said
}
