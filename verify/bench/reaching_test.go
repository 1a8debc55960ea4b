package bench_test

import (
	"context"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
)

// With a ruler every channel that alone moves a surface comes, in the walk, within 5 % of
// the furthest that any step takes it, both ways; by eye nothing is added.
func TestRulerWalksReachBothEnds(t *testing.T) {
	for _, name := range airframes.Shipped() {
		m, ruler := usual(t, name, sight.Measured)
		short := bench.Shortest(context.Background(), m, sight.Eye, nil)
		t.Logf("%s: %d steps by eye at least, %d with a ruler", name, len(short.Steps), len(ruler.Steps))
		walked, all := reach(m, ruler.Steps), reach(m, table.Steps(m))
		for i := range m.Setup.Parts {
			p := &m.Setup.Parts[i]
			if !p.Motion.Hinged() {
				continue
			}
			for _, d := range p.Drives {
				if is, could := walked[d.Channel], all[d.Channel]; is[0] > could[0]+5 || is[1] < could[1]-5 {
					t.Errorf("%s: %s is taken over %v, and could be over %v", name, p.Name, is, could)
				}
			}
		}
	}
}

// reach is the least and the most that each channel puts out where steps end.
func reach(m *airframes.Model, steps []sight.Step) [][2]mixcore.Percent {
	list := make([][2]mixcore.Percent, len(m.Setup.Channels))
	out := m.Plan.NewOutput()
	first := true
	for i := range steps {
		if steps[i].To.SignalLost {
			continue
		}
		m.Plan.Eval(&steps[i].To, out)
		for c := range list {
			at := out.Channels[c].Output
			if first {
				list[c] = [2]mixcore.Percent{at, at}
			}
			list[c] = [2]mixcore.Percent{min(list[c][0], at), max(list[c][1], at)}
		}
		first = false
	}
	return list
}
