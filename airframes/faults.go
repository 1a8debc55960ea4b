package airframes

import (
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
)

// faultPlace is where the file speaks of what only the arithmetic could see to
// be wrong.
func (r *reader) faultPlace(fault mixcore.Fault) diag.Place {
	places := &r.model.Places
	switch {
	case fault.Part >= 0 && fault.Part < len(places.Parts):
		return r.drivePlace(fault.Part, fault.Drive, "linkage", "measured", "channel")
	case fault.Channel < 0 || fault.Channel >= len(places.Channels):
		return r.source.Whole()
	case fault.Line >= 0 && fault.Line < len(places.Mix[fault.Channel]):
		return places.Mix[fault.Channel][fault.Line]
	}
	return places.Channels[fault.Channel]
}

// compile makes the plan and reports what stands in its way. Where parts have
// problems already, the others are looked at all the same; where what drives
// them has, nothing can be said.
func (r *reader) compile() {
	if !r.sound {
		return
	}
	setup := *r.setup
	var whole []int
	if len(r.broken) > 0 {
		setup.Parts = nil
		for i, part := range r.setup.Parts {
			if !r.broken[i] {
				setup.Parts = append(setup.Parts, part)
				whole = append(whole, i)
			}
		}
	}
	plan, faults := mixcore.Compile(setup)
	for _, fault := range faults {
		if fault.Part >= 0 && fault.Part < len(whole) {
			fault.Part = whole[fault.Part]
		}
		r.fail(r.faultPlace(fault), fault.Code, fault.Hint, "%s", fault.Message)
	}
	r.model.Plan = plan
}
