package bench

import (
	"fmt"
	"math"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// furthest is the furthest that a part was measured to go one way. Angles are without
// their way, 0 or more.
type furthest struct {
	step               int
	measured, computed float64
}

// throws are the furthest places that were measured, each part each way, beside what is
// computed there, and how left and right differ.
func (w *Walk) throws(steps []stepState) (list []result.BenchThrow) {
	all := map[[2]int]furthest{} // by part, and 1 for plus
	for i := range steps {
		for r, at := range steps[i].read {
			if r.before || r.servo > 0 || !w.Model.Setup.Parts[r.part].Motion.Hinged() || math.Abs(at) < float64(w.Model.Still) {
				continue
			}
			key := [2]int{r.part, 0}
			sign := -1.0
			if at > 0 {
				key[1], sign = 1, 1
			}
			e := &w.Steps[i].Expect[w.place(&w.Steps[i], r.part)]
			if best, ok := all[key]; !ok || sign*at > best.measured {
				all[key] = furthest{i, sign * at, sign * e.Move.To}
			}
		}
	}
	for _, part := range w.numbers {
		for _, plus := range wayOrder(w.Model.Setup.Parts[part].Motion) {
			if f, ok := all[[2]int{part, plus}]; ok {
				list = append(list, w.throw(part, plus, f, all))
			}
		}
	}
	return list
}

// wayOrder is UP before DOWN, LEFT before RIGHT.
func wayOrder(m mixcore.Motion) []int {
	if m == mixcore.LeftRight {
		return []int{1, 0}
	}
	return []int{0, 1}
}

func (w *Walk) throw(part, plus int, f furthest, all map[[2]int]furthest) result.BenchThrow {
	p := &w.Model.Setup.Parts[part]
	s := &w.Steps[f.step]
	t := result.BenchThrow{
		Part: p.Name, Way: wording.Direction(p.Motion, plus == 1), At: wording.Pose(&w.Model.Setup, &s.To),
		Measured: sizeOf(p, f.measured), Computed: sizeOf(p, math.Abs(f.computed)),
	}
	if f.computed <= -float64(wording.NeutralBelow) {
		t.Other = wording.Direction(p.Motion, plus == 0)
	}
	accuracy := accuracyOf(w.Look, p)
	if by := f.measured - f.computed; t.Other == "" {
		t.Off = moreOrLess(by, accuracy, "computed")
	} else if by >= accuracy {
		t.Off = wording.Angle(mixcore.Degrees(by)) + " off"
	}
	other, ok := poses.Partner(&w.Model.Setup, part)
	if !ok {
		return t
	}
	theirs := plus
	if p.Motion == mixcore.LeftRight { // what is LEFT here is RIGHT there
		theirs = 1 - plus
	}
	o, ok := all[[2]int{other, theirs}]
	if !ok {
		return t
	}
	measured, computed := f.measured-o.measured, f.computed-o.computed
	if math.Abs(measured-computed) < accuracy {
		return t
	}
	name := "the " + w.Model.Setup.Parts[other].Name
	if math.Abs(computed) < float64(wording.NeutralBelow) {
		t.Partner = moreOrLess(measured, 0, name) + ", computed alike"
	} else { // measured at poses that are not alike
		t.Partner = moreOrLess(measured-computed, 0, "it should be beside "+name)
	}
	return t
}

// moreOrLess is "1.9° less than computed"; empty below what can be told.
func moreOrLess(by, least float64, than string) string {
	if math.Abs(by) < least {
		return ""
	}
	word := "more"
	if by < 0 {
		word = "less"
	}
	return fmt.Sprintf("%s %s than %s", wording.Angle(mixcore.Degrees(by)), word, than)
}

func sizeOf(p *mixcore.Part, degrees float64) result.ThrowSize {
	size := result.ThrowSize{Degrees: round(degrees)}
	if p.Chord > 0 {
		size.Millimetres = round(float64(mixcore.ChordTravel(p.Chord, mixcore.Degrees(degrees))))
	}
	return size
}

// round is what is shown of a number: it does not hang on the last bits.
func round(x float64) float64 { return airframes.Thousandths(x) }
