package script

import (
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/phrase"
)

// Trial is scripts read once for a model, to be held against many variants of
// it: which mistakes would they miss? It judges each check as Run does, but
// without godog and without a record.
type Trial struct {
	scenarios  []*scenario
	vocabulary *phrase.Vocabulary
}

// NewTrial reads scripts. It returns every problem; the trial is nil if one of
// them is an error.
func NewTrial(m *airframes.Model, files []File) (*Trial, []diag.Problem) {
	scenarios, vocabulary, problems := prepare(m, files)
	if diag.HasErrors(problems) {
		return nil, problems
	}
	return &Trial{scenarios, vocabulary}, problems
}

// Failing names what the failing checks on a variant are about, each once, in
// the script's order, and stops when it has named most. The variant must have
// the model's controls, parts and channels in the same places.
func (t *Trial) Failing(variant *airframes.Model, most int) []string {
	v := t.vocabulary.On(variant)
	var subjects []string
	each(t.scenarios, func(ch *check) {
		if len(subjects) >= most || slices.Contains(subjects, ch.subject) {
			return
		}
		if !v.Holds(&ch.outcome, ch.at) {
			subjects = append(subjects, ch.subject)
		}
	})
	return subjects
}
