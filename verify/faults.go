package verify

import (
	"context"
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/faults"
	"example.com/hingeline/verify/faults/cause"
	"example.com/hingeline/verify/faults/walk"
	"example.com/hingeline/verify/findings"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/sense"
)

// Faults holds scripts against every single mistake of the catalogue. It returns every
// problem of the scripts; the report is nil if one of them is an error.
func Faults(ctx context.Context, m *airframes.Model, files []script.File, o faults.Options) (*result.Faults, []diag.Problem) {
	r, problems := faults.Judge(ctx, m, files, o)
	if r == nil {
		return nil, problems
	}
	sources := sourcesOf(m, files)
	r.Tool, r.Model, r.Cautions, r.Pairs = Version, modelOf(m), cautions(m), o.Pairs
	r.Findings = Findings(append(findings.Find(m), problems...), sources...)
	for i := range r.Faults {
		quotePlace(&r.Faults[i].Place, sources)
		for k := range r.Faults[i].By {
			quotePlace(&r.Faults[i].By[k].Place, sources)
		}
	}
	for i := range r.Spare {
		quotePlace(&r.Spare[i].Place, sources)
	}
	return r, problems
}

// Walk finds the shortest walk-around of a model, as a report and as a script.
func Walk(ctx context.Context, m *airframes.Model, o walk.Options) (*result.Walk, []byte) {
	found := walk.Shortest(ctx, m, o)
	r := found.Result()
	sources := sourcesOf(m, nil)
	r.Tool, r.Model, r.Cautions = Version, modelOf(m), cautions(m)
	r.Findings = Findings(findings.Find(m), sources...)
	for i := range r.Unseen {
		quotePlace(&r.Unseen[i].Place, sources)
	}
	return r, found.Script()
}

// Causes finds what explains what was seen on a model. It returns every problem of the
// files; the report is nil if one of them is an error.
func Causes(ctx context.Context, m *airframes.Model, files []script.File, seen script.File, o cause.Options) (*result.Causes, []diag.Problem) {
	r, problems := cause.Explain(ctx, m, files, seen, o)
	if r == nil {
		return nil, problems
	}
	sources := append(sourcesOf(m, files), diag.NewSource(seen.Name, seen.Text))
	r.Findings = Findings(problems, sources...)
	if ctx.Err() != nil {
		r.Repairs = nil // not all of the laws were held against them
	}
	Finish(r, m, sources)
	return r, problems
}

// Finish puts into a report of causes what stands around it.
func Finish(r *result.Causes, m *airframes.Model, sources []*diag.Source) {
	r.Tool, r.Model, r.Cautions = Version, modelOf(m), cautions(m)
	for i := range r.Wrong {
		quotePlace(&r.Wrong[i].Place, sources)
	}
	for i := range r.Suspects {
		quotePlace(&r.Suspects[i].Place, sources)
	}
	for i := range r.Near {
		near := &r.Near[i]
		quotePlace(&near.Place, sources)
		for k := range near.Against {
			quotePlace(&near.Against[k].Place, sources)
		}
	}
	for i := range r.Edits {
		quotePlace(&r.Edits[i].Place, sources)
	}
	quoteRepairs(r.Repairs, sources)
}

// Offer looks for single changes with which a failed check passes, and puts them into its
// report. It does nothing for a check that did not fail by a check, nor for a script that
// fights the aeroplane: no change is offered to please it. Nor does it where ctx is done
// before the search is: what is offered was tried to the end.
func Offer(ctx context.Context, m *airframes.Model, files []script.File, r *result.Report) {
	if _, failed := r.Counts(); failed == 0 || r.NotSelected > 0 {
		return
	}
	if slices.ContainsFunc(r.Script, sense.Fights) {
		return
	}
	r.Repairs = cause.Repairs(ctx, m, files)
	if ctx.Err() != nil {
		r.Repairs = nil
	}
	if r.Repairs != nil {
		quoteRepairs(r.Repairs.List, sourcesOf(m, files))
	}
}

func quoteRepairs(list []result.Repair, sources []*diag.Source) {
	for i := range list {
		quotePlace(&list[i].Place, sources)
	}
}

func modelOf(m *airframes.Model) result.Model {
	return result.Model{Name: m.Name, File: m.Source.Name}
}

func sourcesOf(m *airframes.Model, files []script.File) []*diag.Source {
	sources := []*diag.Source{m.Source}
	for _, f := range files {
		sources = append(sources, diag.NewSource(f.Name, f.Text))
	}
	return sources
}
