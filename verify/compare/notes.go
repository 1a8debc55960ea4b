package compare

import (
	"fmt"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/beside"
	"example.com/hingeline/verify/wording"
)

// notes says which controls were not moved in both alike.
func (c *comparison) notes() {
	controls := c.halves.Controls
	for _, side := range []struct {
		s    *mixcore.Setup
		only []int
		name string
	}{{&c.was.Setup, controls.OnlyWas(), "older"}, {&c.new.Model.Setup, controls.OnlyIs(), "newer"}} {
		for _, i := range side.only {
			c.out.Apart = append(c.out.Apart, fmt.Sprintf("only the %s set-up has the %s; it was left at %s",
				side.name, side.s.Controls[i].Name, wording.Stand(&side.s.Controls[i], side.s.Controls[i].Rest())))
		}
	}
	for i := range controls.Both {
		if names := controls.LeftOut(i); len(names) > 0 {
			c.out.Apart = append(c.out.Apart, fmt.Sprintf("only one set-up has %s %s: not compared there", controls.Both[i].Name, strings.Join(names, " and ")))
		}
	}
	if stands := restsElsewhere(c.halves); len(stands) > 0 {
		c.out.Apart = append(c.out.Apart, stands...)
	}
}

// restsElsewhere names the controls that rest somewhere else in the newer set-up: a pose
// does not say where they stand if that is where they rest now.
func restsElsewhere(h *beside.Halves) (list []string) {
	for i := range h.Is.Controls {
		is := &h.Is.Controls[i]
		for k := range h.Was.Controls {
			was := &h.Was.Controls[k]
			if !h.Controls.One(k, i) {
				continue
			}
			before, now := wording.Stand(was, was.Rest()), wording.Stand(is, is.Rest())
			if before != now {
				list = append(list, fmt.Sprintf("%s rests at %s now, not at %s; both were compared at the same places", is.Name, now, before))
			}
		}
	}
	return list
}
