package sense

import (
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
)

// toothless finds sentences that hold whatever the set-up does. Amounts that
// nothing could miss, and movements that a lost signal keeps from the model, are
// refused where sentences are read; what is left is a turn that nothing on the
// model could make.
func (l *looker) toothless() {
	for i := range l.asked {
		a := &l.asked[i]
		if a.Outcome.Verb == phrase.NoTurn && !l.couldTurn(a.Outcome.Axis) {
			verb := turnVerb(a.Outcome.Axis)
			l.add(about(a, codeToothless, "no set-up could fail this: nothing on this model "+verb+" it, whichever way it moves",
				"a sentence that cannot fail finds nothing",
				"drop it, or ask for what each part does"))
		}
	}
}

// plainly is a movement, in degrees or percent, that shows what a part does.
const plainly = 10

// couldTurn is true if some part turns the model about an axis when it moves, by
// ever so little, or may do so.
func (l *looker) couldTurn(axis mixcore.Axis) bool {
	for i := range l.s.Parts {
		placed, acts := l.air.Placed(i)
		if acts && (axis == mixcore.Pitch && !placed.AftKnown || l.air.Alone(i, plainly).Parts[i].About(axis) != 0) {
			return true
		}
	}
	return false
}
