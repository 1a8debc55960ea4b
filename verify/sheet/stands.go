package sheet

import (
	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/result"
)

// Stands is where every part stands once everything has come to rest with the controls at
// a position, about which nothing was asked. at must be fit for Plan.Eval.
func Stands(m *airframes.Model, at *mixcore.Input) result.Picture {
	d := depicter{m: m, now: m.Plan.NewOutput()}
	m.Plan.Eval(at, d.now)
	var p result.Picture
	for i := range m.Setup.Parts {
		p.Stands = append(p.Stands, d.stand(i, nil))
	}
	return p
}
