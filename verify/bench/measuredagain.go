package bench

// measuring is one part that is measured at one pose, in any walk of the same set-up.
type measuring struct {
	step   string // the key of its poses
	part   int
	before bool
}

// MeasuredAgain says whether all that another walk measured and did not find where it must be
// was measured again in this one: at the same poses, or anywhere in a walk with a ruler in
// which all was as expected. What a ruler found no eye takes back.
func (s *Seal) MeasuredAgain(other *Seal) bool {
	for at, right := range other.read {
		if !right && !s.right(at) {
			return false
		}
	}
	return true
}

// right says whether a part was measured again, and was where it must be.
func (s *Seal) right(at measuring) bool {
	if right, read := s.read[at]; read || !s.ruler || !s.AsExpected {
		return right
	}
	for other := range s.read {
		if other.part == at.part {
			return true
		}
	}
	return false
}

// measurings are all that was measured.
func (g *Guide) measurings() map[measuring]bool {
	list := map[measuring]bool{}
	for i := range g.steps {
		s, st := &g.walk.Steps[i], &g.steps[i]
		for k := range s.Expect {
			off := g.walk.off(&s.Expect[k], st)
			for _, before := range []bool{true, false} {
				r := reading{s.Expect[k].Part, before}
				if _, read := st.read[r]; read {
					_, wrong := off[r]
					list[measuring{keyOf(&s.Step), r.part, before}] = !wrong
				}
			}
		}
	}
	return list
}
