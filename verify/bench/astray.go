package bench

import (
	"fmt"
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
)

// wrong says of the first thing that went another way than it should, or not at all, what
// that was: then the set-up is not that of the model, and what channels put out is not
// known. It is empty where nothing did. How far something goes, and how soon, tells nothing
// of that.
func (w *Walk) wrong(steps []stepState) string {
	for i := range w.Steps {
		s, st := &w.Steps[i], &steps[i]
		for k := range s.Expect {
			if did := w.astray(s, &s.Expect[k], st); did != "" {
				return fmt.Sprintf("the %s %s in step %d", w.Model.Setup.Parts[s.Expect[k].Part].Name, did, i+1)
			}
		}
	}
	return ""
}

// astray is what one part did instead of what it should, where that is no matter of size;
// else it is empty.
func (w *Walk) astray(s *Step, e *Expect, st *stepState) string {
	p := &w.Model.Setup.Parts[e.Part]
	saw := st.saw[e.Part]
	if saw == TooLittle || saw == TooMuch || saw == WrongTime {
		return ""
	}
	if p.Motion == mixcore.Power {
		if len(w.off(s, e, st)) == 0 && w.differs(s, e, st) {
			return "did not do what it should"
		}
		return ""
	}
	for r, at := range st.read {
		should := w.should(s, e, r)
		sure := visible(w.Look, p)
		if r.part == e.Part && at*should < 0 && math.Abs(at) >= sure && math.Abs(should) >= sure {
			return "was on the other side of neutral"
		}
	}
	seen, _ := w.seen(s, e, st, false)
	way := w.Look.Way(p, e.Move)
	switch {
	case seen.Way == sight.Unclear, w.Look.Ways(p, e.Move)&sight.Of(seen.Way) != 0:
		return ""
	case seen.Way == sight.Still:
		_, said := st.saw[e.Part]
		if !said { // measured before and after: it may go the right way by too little to be seen
			return ""
		}
		return "did not move"
	case way == sight.Plus, way == sight.Minus:
		return "went the other way"
	}
	if _, said := st.saw[e.Part]; !said {
		return ""
	}
	return "moved, and should not"
}
