package sense

import (
	"fmt"
	"slices"

	"example.com/hingeline/verify/phrase"
)

// said is a claim with the sentence that makes it.
type said struct {
	values []span
	by     *phrase.Asked
}

// contradictions finds sentences that cannot both hold: the same movement or
// position of the controls, the same thing asked about, and no answer that would
// do for both. Each sentence is reported once, against the first that it
// contradicts.
func (l *looker) contradictions() {
	before := map[string][]said{}
	for i := range l.asked {
		a := &l.asked[i]
		against := (*phrase.Asked)(nil)
		for _, c := range l.claims(&a.Outcome) {
			for _, when := range instants(a, c.moves) {
				key := c.of + when
				known := false
				for _, other := range before[key] {
					known = known || slices.Equal(other.values, c.values)
					if against == nil && !overlap(other.values, c.values) {
						against = other.by
					}
				}
				if !known {
					before[key] = append(before[key], said{c.values, a})
				}
			}
		}
		if against != nil {
			l.add(about(a, codeContradiction,
				fmt.Sprintf("this and %s (“%s”) cannot both hold: the controls do the same in both", lineOf(against, a), against.Sentence),
				"whatever the set-up does, one of the two fails",
				"decide which is right, and change or drop the other"))
		}
	}
}

// lineOf says where a sentence stands, seen from another.
func lineOf(a, from *phrase.Asked) string {
	line := fmt.Sprint("line ", a.Place.Line)
	if a.Place.File != from.Place.File {
		line += " of " + a.Place.File
	}
	return line
}

// instants are the moments at which an outcome is held against the model, each as
// a text that is the same for the same moment. Where the controls came from
// matters for what compares, and while something is under way.
func instants(a *phrase.Asked, moves bool) []string {
	at, o := &a.At, &a.Outcome
	here := poseText(&at.Now)
	late := fmt.Sprint(here, " from", poseText(&at.Before), " after ", float64(o.Time))
	if moves {
		here += " from" + poseText(&at.Before)
	}
	switch o.Clock {
	case phrase.After:
		return []string{late}
	case phrase.Within:
		return []string{here, late}
	}
	return []string{here}
}

func poseText(p *phrase.Pose) string {
	in := p.Input()
	return fmt.Sprint(" ", in.Position, in.SignalLost)
}
