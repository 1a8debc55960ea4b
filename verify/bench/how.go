package bench

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/wording"
)

// how is in a few words in what way a part differs in a step, the same words wherever it
// does the same: "the other way", "short". It is empty where it does not differ.
func (w *Walk) how(s *Step, e *Expect, st *stepState) string {
	if !w.differs(s, e, st) {
		return ""
	}
	p := &w.Model.Setup.Parts[e.Part]
	saw, said := st.saw[e.Part]
	if said && (saw == TooLittle || saw == TooMuch || saw == WrongTime || p.Motion == mixcore.Power) {
		return string(saw)
	}
	if was, ok := st.before[e.Part]; ok && !said {
		return string(was) + " before the movement"
	}
	if !said {
		return w.howFar(s, e, st)
	}
	seen, _ := w.seen(s, e, st, false)
	switch way := w.Look.Way(p, e.Move); {
	case w.Look.Ways(p, e.Move)&sight.Of(seen.Way) != 0:
		return w.howFar(s, e, st)
	case seen.Way == sight.Still:
		return string(DidNot)
	case way == sight.Still || way == sight.Unclear:
		return string(saw) + ", and should not"
	}
	return string(OtherWay)
}

// howFar is in a few words how a part that was measured is off.
func (w *Walk) howFar(s *Step, e *Expect, st *stepState) string {
	off := w.off(s, e, st)
	for _, r := range []reading{{part: e.Part}, {part: e.Part, before: true}} {
		if _, ok := off[r]; !ok {
			continue
		}
		at, should := st.read[r], w.should(s, e, r)
		switch neutral := float64(wording.NeutralBelow); {
		case w.Model.Setup.Parts[e.Part].Motion.Hinged() && (math.Abs(should) < neutral || at*should < 0 && math.Abs(at) >= neutral):
			return "not where it should be"
		case math.Abs(at) < math.Abs(should):
			return "short"
		}
		return "too far"
	}
	if len(off) > 0 {
		return "one servo alone not where it should be"
	}
	return "not as it should"
}

// measured is how many parts of a step were measured.
func (s *stepState) measured() int {
	parts := map[int]bool{}
	for r := range s.read {
		parts[r.part] = true
	}
	return len(parts)
}
