package verify

import (
	"context"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/findings"
	"example.com/hingeline/verify/laws"
	"example.com/hingeline/verify/result"
)

// Prove decides what a modeller expects of every model, over every position of its
// controls, and reports it with what Hingeline finds odd. Ask laws.CheckOnly first
// whether the selection fits. If ctx is done, what was decided stays.
func Prove(ctx context.Context, m *airframes.Model, o laws.Options) *result.Proofs {
	r := laws.Prove(ctx, m, o)
	sources := []*diag.Source{m.Source}
	r.Tool = Version
	r.Model = result.Model{Name: m.Name, File: m.Source.Name}
	r.Findings = Findings(findings.Find(m), sources...)
	r.Cautions = cautions(m)
	for i := range r.Laws {
		for k := range r.Laws[i].Claims {
			quoteProof(&r.Laws[i].Claims[k], sources)
		}
	}
	return r
}

// quoteProof puts beside every place of a proof the line that stands there.
func quoteProof(p *result.Proof, sources []*diag.Source) {
	for i := range p.LookAt {
		quotePlace(&p.LookAt[i], sources)
	}
	if p.Counter == nil {
		return
	}
	for i := range p.Counter.Why {
		quoteReason(&p.Counter.Why[i], sources)
	}
}
