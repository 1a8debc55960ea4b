package laws

import (
	"context"
	"errors"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/result"
)

// Options say what to prove, and how long to try.
type Options struct {
	Only     []string // codes of laws, or words of their titles; empty is all. See CheckOnly
	Boxes    int      // most boxes to look at for one claim; 0 is prove.UsualBoxes
	Replay   bool     // give every counterexample its cause chain
	Progress func(done, all int, claim string, boxes int)
}

// Prove decides every claim of the laws about a model. If ctx is done, what was
// decided stays and the rest is undecided. Tool, Model, Findings and Cautions are the
// caller's to fill.
func Prove(ctx context.Context, m *airframes.Model, o Options) *result.Proofs {
	r := &run{ctx: ctx, options: o, prover: prove.New(m.Plan)}
	proofs := &result.Proofs{}
	var makers []*maker
	base := newMaker(m)
	for i := range all {
		if !selected(o.Only, &all[i]) {
			proofs.Left++
			continue
		}
		mk := base.under(&all[i])
		makers = append(makers, mk)
		r.all += len(mk.claims)
		proofs.Laws = append(proofs.Laws, result.Law{Code: all[i].Code, Title: all[i].Title, Means: mk.means(all[i].Means), None: mk.none})
	}
	for i, mk := range makers {
		for k := range mk.claims {
			proofs.Laws[i].Claims = append(proofs.Laws[i].Claims, r.proof(mk, &mk.claims[k]))
			r.done++
		}
	}
	proofs.Stopped = stopped(ctx)
	proofs.Verdict = verdict(proofs)
	return proofs
}

// means is what a law asks, with what it leaves out of this model.
func (mk *maker) means(text string) string {
	for _, remark := range mk.remarks {
		text += " " + remark
	}
	return text
}

func stopped(ctx context.Context) string {
	switch err := ctx.Err(); {
	case err == nil:
		return ""
	case errors.Is(err, context.DeadlineExceeded):
		return "stopped when its time was up"
	}
	return "stopped by hand"
}

func verdict(p *result.Proofs) result.ProofVerdict {
	switch c := p.Counts(); {
	case c.Disproved > 0:
		return result.SomeDisproved
	case c.Undecided > 0, c.Empty > 0 && c.Proved > 0: // what never had to hold was not shown
		return result.SomeUndecided
	case c.Proved > 0:
		return result.AllProved
	}
	return result.NothingProved
}

// run is one run over the laws.
type run struct {
	ctx       context.Context
	options   Options
	prover    *prove.Prover
	done, all int // claims
}
