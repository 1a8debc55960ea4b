package table

import (
	"slices"

	"example.com/hingeline/mixcore"
)

// conditions are the states in which a condition of the set-up is just true or just
// not, for the parts whose mix or rates rest on it: with what scales and feeds the mix
// at rest and then wide open, as they stand and with each stick moved.
func (c *collector) conditions() {
	for part := range c.setup.Parts {
		wide := c.wide(part)
		for _, condition := range c.conditionsOf(part) {
			for _, state := range c.decisive(condition) {
				open := state.Clone()
				for i, at := range wide {
					if open.Position[i] == c.rest.Position[i] {
						open.Position[i] = at
					}
				}
				for _, in := range []mixcore.Input{state, open} {
					c.add(in)
					c.deflect(in, c.reach[part], false)
				}
			}
		}
	}
}

// conditionsOf are the conditions in the mix and the rates behind a part.
func (c *collector) conditionsOf(part int) []*mixcore.Condition {
	var list []*mixcore.Condition
	take := func(condition *mixcore.Condition) {
		if condition != nil && !slices.Contains(list, condition) {
			list = append(list, condition)
		}
	}
	c.eachLine(part, func(line *mixcore.MixLine) {
		take(line.When)
		if line.Op == mixcore.Add || line.Op == mixcore.ScaleBy {
			for _, rate := range c.setup.Demands[line.Demand].Rates {
				take(rate.When)
			}
		}
	})
	if motor := c.setup.Parts[part].Motor; motor != nil {
		take(motor.StoppedWhen)
	}
	return list
}

func (c *collector) eachLine(part int, visit func(*mixcore.MixLine)) {
	for _, drive := range c.setup.Parts[part].Drives {
		mix := c.setup.Channels[drive.Channel].Mix
		for k := range mix {
			visit(&mix[k])
		}
	}
}

// wide says where the levers that feed or scale a part's mix make the most of it, by
// control.
func (c *collector) wide(part int) map[int]float64 {
	wide := map[int]float64{}
	out := c.plan.NewOutput()
	c.eachLine(part, func(line *mixcore.MixLine) {
		if line.Op != mixcore.Add && line.Op != mixcore.ScaleBy {
			return
		}
		from := c.setup.Demands[line.Demand].From
		if c.setup.Controls[from].Kind != mixcore.LeverControl {
			return
		}
		if _, known := wide[from]; known && line.Op == mixcore.Add {
			return // what it scales counts before what it adds
		}
		best := 0.0
		in := c.rest.Clone()
		for i, at := range c.hand.main[from] {
			in.Position[from] = at
			c.plan.Eval(&in, out)
			if much := float64(out.Demands[line.Demand]); i == 0 || much > best {
				best, wide[from] = much, at
			}
		}
	})
	return wide
}
