package draft

import (
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
)

// untouched writes what no control should move: a sentence for each, with the
// parts that it does not bear on at all.
func (d *drafter) untouched() {
	titled := false
	for c := range d.s.Controls {
		var parts []int
		for i := range d.s.Parts {
			if d.s.Parts[i].Motion != mixcore.Power && !d.reach[i][c] && !d.spokenOf[c][i] {
				parts = append(parts, i)
			}
		}
		if len(parts) == 0 {
			continue
		}
		if !titled {
			d.gap()
			d.line(1, "Scenario: %s", d.ownTitle("Every control leaves the rest alone"))
			titled = true
		}
		d.line(2, "* %s, %s", d.movement(d.furthest(c)), d.sentence(parts, verbWords[phrase.Still]))
	}
}

// furthest is the step of a control from rest to where it is furthest from it.
func (d *drafter) furthest(control int) step {
	c := &d.s.Controls[control]
	_, to := c.Range()
	if places := d.places[control]; places != nil {
		to = places[len(places)-1]
	}
	return step{control, c.Rest(), to}
}
