package bench

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// When a surface counts as one that goes short, or too far, by the same part everywhere:
// modelling choices, no source.
const (
	ratioFrom   = 4.0  // degrees: of less the part is not told, half a degree being too much of it
	ratioAlike  = 0.06 // of what is computed: a linkage with another arm leaves as much over
	ratioLeast  = 0.2  // less is a surface that hardly moves, which is no size
	ratioMost   = 3.0
	ratioPlaces = 2 // different places at least
)

// place is a place of a surface that was measured, and where it is computed to be.
type place struct{ computed, measured float64 }

// places are the places of a surface that were measured where no stop holds it.
func (w *Walk) places(steps []stepState, part int) (list []place) {
	p := &w.Model.Setup.Parts[part]
	atStop := func(at float64) bool {
		return at >= float64(p.Stops.Plus)-stopsNear || at <= -float64(p.Stops.Minus)+stopsNear
	}
	for i := range steps {
		k := w.place(&w.Steps[i], part)
		for _, before := range []bool{true, false} {
			at, ok := steps[i].read[reading{part: part, before: before}]
			if !ok || k < 0 {
				continue
			}
			should := w.Steps[i].Expect[k].Move.To
			if before {
				should = w.Steps[i].Expect[k].Move.From
			}
			if !atStop(at) && !atStop(should) {
				list = append(list, place{should, at})
			}
		}
	}
	return list
}

// ratios are the surfaces that go to the same part of what is computed wherever they were
// measured, or wherever they were to one side.
func (w *Walk) ratios(steps []stepState) (list []result.BenchRatio) {
	for _, part := range w.numbers {
		if !w.Model.Setup.Parts[part].Motion.Hinged() {
			continue
		}
		if r := w.ratio(steps, part); r != nil {
			list = append(list, *r)
		}
	}
	return list
}

func (w *Walk) ratio(steps []stepState, part int) *result.BenchRatio {
	p := &w.Model.Setup.Parts[part]
	all := w.places(steps, part)
	accuracy := accuracyOf(w.Look, p)
	if k, ok := ratioOf(all, accuracy); ok && !alike(all, 1, accuracy) {
		return w.ratioSaid(part, k, all, accuracy)
	}
	for _, plus := range wayOrder(p.Motion) {
		var one, other []place
		for _, at := range all {
			if at.computed > 0 == (plus == 1) && at.computed != 0 {
				one = append(one, at)
			} else {
				other = append(other, at)
			}
		}
		k, ok := ratioOf(one, accuracy)
		if ok && !alike(one, 1, accuracy) && alike(other, 1, accuracy) {
			r := w.ratioSaid(part, k, one, accuracy)
			r.OneWay = slices.ContainsFunc(other, func(at place) bool { return math.Abs(at.computed) >= ratioFrom })
			return r
		}
	}
	return nil
}

// ratioOf is the part of what is computed that all places are at; false where they are not
// at one, or too few were measured to say so.
func ratioOf(all []place, accuracy float64) (k float64, ok bool) {
	both, square := 0.0, 0.0
	for _, at := range all {
		if math.Abs(at.computed) >= ratioFrom {
			both += at.computed * at.measured
			square += at.computed * at.computed
		}
	}
	if len(apart(all, accuracy)) < ratioPlaces {
		return 0, false
	}
	k = both / square
	return k, k >= ratioLeast && k <= ratioMost && alike(all, k, accuracy)
}

// alike says whether all places are at a part of what is computed.
func alike(all []place, k, accuracy float64) bool {
	for _, at := range all {
		within := accuracy
		if k != 1 {
			within = math.Max(accuracy, ratioAlike*math.Abs(at.computed))
		}
		if math.Abs(at.measured-k*at.computed) >= within {
			return false
		}
	}
	return true
}

// apart are the places that tell a part, those that a ruler cannot tell apart once.
func apart(all []place, accuracy float64) (list []place) {
	for _, at := range all {
		near := func(o place) bool { return math.Abs(o.computed-at.computed) < accuracy }
		if math.Abs(at.computed) >= ratioFrom && !slices.ContainsFunc(list, near) {
			list = append(list, at)
		}
	}
	return list
}

func (w *Walk) ratioSaid(part int, k float64, all []place, accuracy float64) *result.BenchRatio {
	p := &w.Model.Setup.Parts[part]
	told := apart(all, accuracy)
	r := &result.BenchRatio{Part: p.Name, Ratio: math.Round(k*100) / 100, Places: len(told)}
	for _, plus := range wayOrder(p.Motion) {
		if slices.ContainsFunc(told, func(at place) bool { return at.computed > 0 == (plus == 1) }) {
			r.Ways = append(r.Ways, wording.Direction(p.Motion, plus == 1))
		}
	}
	return r
}

// beyond is how far a place is off from where it is computed, in words that say it as one
// measures it: short of it, too far, or on the other side of neutral. It is empty where the
// ruler tells no difference.
func (w *Walk) beyond(part int, at, should float64) string {
	p := &w.Model.Setup.Parts[part]
	by := math.Abs(at - should)
	if by < accuracyOf(w.Look, p) {
		return ""
	}
	if !p.Motion.Hinged() {
		return wording.Percent(mixcore.Percent(by)) + map[bool]string{true: " more than computed", false: " less than computed"}[at > should]
	}
	size := wording.Angle(mixcore.Degrees(by))
	neutral := float64(wording.NeutralBelow)
	switch {
	case math.Abs(should) < neutral:
		return "computed at neutral"
	case at*should < 0 && math.Abs(at) >= neutral:
		return size + " off, computed on the other side: " + w.placeWords(part, should)
	case math.Abs(at) < math.Abs(should):
		return size + " short"
	}
	return size + " too far"
}
