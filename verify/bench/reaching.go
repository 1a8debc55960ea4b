package bench

import (
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
)

// nearEnd is how near to the ends of its travel, in percent of output, a channel must come
// in a walk whose measurements are to tell the whole of its linkage.
const nearEnd mixcore.Percent = 5

// reaching are steps of a table that a walk lacks so that with a ruler every surface is
// measured at both ends of all that the channel of each of its servos puts out; the plainest
// first.
func reaching(t *table.Table, walk []sight.Step) (list []sight.Step) {
	s, plan := &t.Model.Setup, t.Model.Plan
	put := func(in *mixcore.Input) []mixcore.Percent {
		out := plan.NewOutput()
		plan.Eval(in, out)
		outputs := make([]mixcore.Percent, len(out.Channels))
		for i := range outputs {
			outputs[i] = out.Channels[i].Output
		}
		return outputs
	}
	var all [][]mixcore.Percent // by step; nil where it is not measured
	for i := range t.Steps {
		all = append(all, nil)
		if !t.Steps[i].To.SignalLost {
			all[i] = put(&t.Steps[i].To)
		}
	}
	var done [][]mixcore.Percent
	for i := range walk {
		if !walk[i].To.SignalLost {
			done = append(done, put(&walk[i].To))
		}
	}
	for i := range s.Parts {
		p := &s.Parts[i]
		if !p.Motion.Hinged() {
			continue
		}
		for end := range 2 * len(p.Drives) {
			channel, way := p.Drives[end/2].Channel, mixcore.Percent(1-end%2*2)
			furthest := -1
			for k, outputs := range all {
				if outputs != nil && (furthest < 0 || way*outputs[channel] > way*all[furthest][channel]) {
					furthest = k
				}
			}
			near := func(outputs []mixcore.Percent) bool {
				return way*outputs[channel] >= way*all[furthest][channel]-nearEnd
			}
			if furthest < 0 || slices.ContainsFunc(done, near) {
				continue
			}
			list = append(list, t.Steps[furthest])
			done = append(done, all[furthest])
		}
	}
	return list
}
