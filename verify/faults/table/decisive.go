package table

import (
	"slices"

	"example.com/hingeline/mixcore"
)

// mostTried is in how many states of its controls a condition is tried.
const mostTried = 512

// decisive are states that show what each control decides in a condition: for each,
// two that differ in it alone and in what comes of the condition, those with the
// fewest controls off rest.
func (c *collector) decisive(condition *mixcore.Condition) []mixcore.Input {
	controls := c.probe.Nothing()
	c.probe.AddCondition(controls, condition)
	type tried struct {
		in    mixcore.Input
		holds bool
		moved int
	}
	var all []tried
	in := c.rest.Clone()
	list := controls.Controls()
	var choose func(i, moved int)
	choose = func(i, moved int) {
		if len(all) >= mostTried {
			return
		}
		if i == len(list) {
			all = append(all, tried{in.Clone(), c.plan.Holds(condition, &in), moved})
			return
		}
		places := c.hand.main[list[i]]
		for k, at := range places {
			in.Position[list[i]] = at
			choose(i+1, moved+min(k, 1))
		}
		in.Position[list[i]] = places[0]
	}
	choose(0, 0)
	slices.SortStableFunc(all, func(a, b tried) int { return a.moved - b.moved })
	differOnlyIn := func(a, b *mixcore.Input, control int) bool {
		for i := range a.Position {
			if (a.Position[i] != b.Position[i]) != (i == control) {
				return false
			}
		}
		return true
	}
	var states []mixcore.Input
	for _, control := range list {
		found := false
		for b := range all {
			for a := range b {
				if !found && all[a].holds != all[b].holds && differOnlyIn(&all[a].in, &all[b].in, control) {
					states, found = append(states, all[a].in, all[b].in), true
				}
			}
		}
	}
	return states
}
