package table

import "example.com/hingeline/mixcore"

// decisive are states that show what each test decides in a condition: the fewest that
// show it of all.
func (c *collector) decisive(condition *mixcore.Condition) (states []mixcore.Input) {
	d := c.probe.Decisive(condition, c.hand.main)
	if len(d.Sets) == 0 {
		return nil
	}
	for _, row := range d.Sets[0] {
		states = append(states, *d.Rows[row].At)
	}
	return states
}
