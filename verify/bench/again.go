package bench

import (
	"slices"

	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/result"
)

// found is a part that was not as expected in a step.
type found struct {
	step     string // its key, which walks of one set-up have in common
	part     int
	moves    bool      // it must be seen to do something
	measured []reading // that alone told it; nil where an eye did
}

// looked is what a walk has to say of one part in one step.
type looked struct {
	sure, moves bool // whoever looks must see something, or surely nothing
	read        map[reading]float64
}

// found are the parts that are not as expected in the steps that were chosen, or where
// nothing differs in those, in the steps behind them, which somebody who walks around
// anew may never come to.
func (w *Walk) found(steps []stepState) (list []found) {
	for i := range steps {
		if i == w.chosen && len(list) > 0 {
			break
		}
		s := &w.Steps[i]
		for k := range s.Expect {
			if e := &s.Expect[k]; w.differs(s, e, &steps[i]) {
				list = append(list, found{keyOf(&s.Step), e.Part, e.Moves, w.byRulerOnly(s, e, &steps[i])})
			}
		}
	}
	return list
}

// byRulerOnly are the readings that alone tell that a part is not as expected.
func (w *Walk) byRulerOnly(s *Step, e *Expect, st *stepState) (list []reading) {
	said := *st
	said.read = nil
	if w.differs(s, e, &said) {
		return nil
	}
	p := &w.Model.Setup.Parts[e.Part]
	for r := range w.off(e, st) {
		should := e.Move.To
		if r.before {
			should = e.Move.From
		}
		stands := sight.Eye.Way(p, sight.Move{To: st.read[r]})
		if stands != sight.Unclear && sight.Eye.Ways(p, sight.Move{To: should})&sight.Of(stands) == 0 {
			return nil // on the other side of neutral, or there
		}
		list = append(list, r)
	}
	return list
}

// looks is what was looked at in the steps that were gone through.
func (w *Walk) looks(steps []stepState) map[string]map[int]looked {
	all := map[string]map[int]looked{}
	for i := range steps {
		switch w.become(i, &steps[i]) {
		case result.StepAsExpected, result.StepByEye, result.StepDiffers:
		default:
			continue
		}
		s := &w.Steps[i]
		parts := map[int]looked{}
		for k := range s.Expect {
			e := &s.Expect[k]
			parts[e.Part] = looked{e.Sure || w.differs(s, e, &steps[i]), e.Moves, steps[i].read}
		}
		all[keyOf(&s.Step)] = parts
	}
	return all
}

// again says whether a part that was not as expected was looked at again in the same step,
// whatever was seen then: with a ruler where only a ruler told it.
func (f *found) again(in map[string]map[int]looked) bool {
	l, ok := in[f.step][f.part]
	return ok && (l.sure && l.moves == f.moves || f.measured != nil) && !slices.ContainsFunc(f.measured, func(r reading) bool {
		_, read := l.read[r]
		return !read
	})
}

// notAgain are those that were not looked at again.
func notAgain(list []found, in map[string]map[int]looked) []found {
	return slices.DeleteFunc(slices.Clone(list), func(f found) bool { return f.again(in) })
}

// Replaces says whether what one walk says of a set-up holds in place of what another
// said before: it was gone through to its end, every step was seen, and whatever was not
// as expected in the other was looked at again, in the same step. Other is nil where
// nobody can tell what the other said.
func (s *Seal) Replaces(other *Seal) bool {
	n := s.Steps
	return s.Ended && n.AsExpected+n.ByEye+n.Differ == n.All && n.AsExpected+n.Differ > 0 &&
		(other == nil || len(notAgain(other.found, s.looks)) == 0)
}

// Against says whether something was not as expected, and was not seen otherwise since.
func (s *Seal) Against() bool { return len(s.found) > 0 }
