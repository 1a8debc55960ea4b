package mistake

import (
	"slices"

	"example.com/hingeline/mixcore"
)

// hiding are the kinds of which two in one place may hide each other: what both turn
// about comes out right, as long as nothing else is asked.
var hiding = []string{"channel-reversed", "plugs-swapped", "horn-side", "arm-side", "share-sign", "control-reversed", "curve-wrong"}

// Pair is the kind of two mistakes at once. It is none of Kinds: only Options.Pairs makes
// them.
func Pair() *Kind { return pair }

var pair = &Kind{
	Code: "pair", Title: "Two mistakes that may hide each other", Odds: seldom,
	Means: "Two mistakes on the way to one surface, each of which turns it about: a reversed servo and a horn on the wrong side. " +
		"The directions come out right; what is not symmetrical does not.",
}

// pairs adds two single mistakes of the hiding kinds together, where both touch a common
// part.
func (l *lister) pairs() {
	type single struct {
		*Mistake
		parts []int
	}
	var singles []single
	for i := range l.found {
		m := &l.found[i]
		if !slices.Contains(hiding, m.Kind.Code) {
			continue
		}
		if plan, faults := l.m.Plan.Vary(m.Edit); faults == nil {
			singles = append(singles, single{m, Touched(l.m.Plan, plan)})
		}
	}
	for i, a := range singles {
		for _, b := range singles[:i] {
			if !overlap(a.parts, b.parts) || sameKindElsewhere(b.Mistake, a.Mistake) {
				continue
			}
			first, second := b.Edit, a.Edit
			both := func(s *mixcore.Setup) {
				first(s)
				second(s)
			}
			if l.isTwo(both, b.Mistake, a.Mistake) {
				l.found = append(l.found, Mistake{
					Kind: pair, Text: b.Text + ", and " + a.Text,
					Change: b.Change + ", and " + a.Change, Undo: b.Undo + ", and " + a.Undo,
					OnModel: a.OnModel && b.OnModel, place: b.place,
					Edit: both,
				})
			}
		}
	}
}

// isTwo says whether two mistakes together are more than one of them, and more than none:
// a curve that is upside down and missing is missing, and no more.
func (l *lister) isTwo(both func(*mixcore.Setup), a, b *Mistake) bool {
	is := l.s.Clone()
	both(&is)
	for _, one := range []func(*mixcore.Setup){func(*mixcore.Setup) {}, a.Edit, b.Edit} {
		was := l.s.Clone()
		one(&was)
		if len(touched(&was, &is)) == 0 {
			return false
		}
	}
	return true
}

// sameKindElsewhere is true of two swaps of plugs, which are one longer exchange and no
// mistakes that hide each other.
func sameKindElsewhere(a, b *Mistake) bool {
	return a.Kind == b.Kind && a.Kind.Code == "plugs-swapped"
}

func overlap(a, b []int) bool {
	return slices.ContainsFunc(a, func(i int) bool { return slices.Contains(b, i) })
}
