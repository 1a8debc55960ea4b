package sheet

import (
	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
)

// Moves is where every part stands once everything has come to rest after a movement of the
// controls, about which nothing was asked; from and to must be fit for Plan.Eval.
func Moves(m *airframes.Model, from, to *mixcore.Input) result.Picture {
	d := depicter{m: m, words: phrase.NewVocabulary(m), before: m.Plan.NewOutput(), now: m.Plan.NewOutput()}
	m.Plan.Eval(from, d.before)
	m.Plan.Eval(to, d.now)
	p := result.Picture{Moves: true}
	for i := range m.Setup.Parts {
		p.Stands = append(p.Stands, d.stand(i, d.before))
	}
	return p
}
