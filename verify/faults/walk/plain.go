package walk

import (
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
)

// Plain are the steps of a table that every pilot asks for first: each stick alone, as
// far as it goes either way, everything else at rest. Steps at which nothing is seen to
// move are left out.
func Plain(t *table.Table, look sight.Look) (list []int) {
	m := t.Model
	rest := m.Plan.Rest()
	for i := range m.Setup.Controls {
		if m.Setup.Controls[i].Kind != mixcore.AxisControl {
			continue
		}
		for _, way := range []float64{1, -1} {
			furthest, at := 0.0, -1
			for k := range t.Steps {
				st := &t.Steps[k]
				if by := way * st.To.Position[i]; by > furthest && restsBut(&rest, &st.From, -1) && restsBut(&rest, &st.To, i) {
					furthest, at = by, k
				}
			}
			if at >= 0 && somethingMoves(t, look, at) {
				list = append(list, at)
			}
		}
	}
	return list
}

// restsBut says whether every control but one is at rest, and the signal there.
func restsBut(rest, in *mixcore.Input, but int) bool {
	for i, at := range in.Position {
		if i != but && at != rest.Position[i] {
			return false
		}
	}
	return !in.SignalLost
}

func somethingMoves(t *table.Table, look sight.Look, step int) bool {
	for i := range t.Model.Setup.Parts {
		switch look.Way(&t.Model.Setup.Parts[i], t.Move(table.None, step, i)) {
		case sight.Plus, sight.Minus:
			return true
		}
	}
	return false
}
