package mistake

import (
	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
)

// Kind is a row of the catalogue: one way in which people go wrong.
type Kind struct {
	Code  string // "channel-reversed"
	Title string // "Channel reversed"
	Means string // how it comes about and what it looks like, in a sentence
	// Odds say how often people make it: 3 often, 2 now and then, 1 seldom. They rank
	// what explains an observation, and nothing else. Common practice, no source.
	Odds int
	// Timed mistakes change how fast something happens, not where it ends.
	Timed bool

	list func(*lister)
}

// Mistake is one thing wrong with a set-up, or with the model that it describes.
type Mistake struct {
	Kind *Kind
	Text string // what is wrong: "channel 4 (port flap) is reversed"
	// Change is the edit as an instruction, for where the edit is the repair:
	// "reverse channel 4 (port flap)". Undo is the instruction that takes the mistake
	// back: of most they are the same, or differ in a number.
	Change, Undo string
	// OnModel is true of what is changed on the model (a horn, an arm, a plug) and not
	// in the transmitter; the airframe file then has to be changed to match.
	OnModel bool
	Edit    func(*mixcore.Setup)

	place diag.Place
}

// Place is the line of the airframe file that the mistake is about: the setting
// itself, or where it would stand.
func (m *Mistake) Place() diag.Place { return m.place }

// Variant is the model with the mistake made. It returns the faults where the
// set-up cannot be built so, because a linkage would lock for one: then nothing
// can be said about the mistake.
func (m *Mistake) Variant(of *airframes.Model) (*airframes.Model, []mixcore.Fault) {
	return of.With(m.Edit)
}

// Touched are the parts, ascending, that may do something else in a variant than in
// the model. It looks at the two set-ups, not at the mistake, and leaves out a part only
// where all that it follows is the same in both.
func Touched(model, variant *mixcore.Plan) []int { return touched(model.Setup(), variant.Setup()) }

// All are the single mistakes of the catalogue that can be made in a model, each
// once, kind by kind. Edits that leave the set-up as it was are not listed.
func All(m *airframes.Model, o Options) []Mistake { return all(m, o) }

// Options say which mistakes to make.
type Options struct {
	Others []*airframes.Model // of which the file may be loaded by mistake
	Only   []string           // codes of kinds; nil is all
	Pairs  bool               // pairs that may hide each other as well
}
