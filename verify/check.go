// Package verify judges a model: it brings the airframe, the script and what
// Hingeline finds odd by itself together into one report.
//
// It never reads a file and never prints: what it takes was read by airframes,
// what it gives is plain values of package result, in words ready to be shown.
// Start at [Check]; [Show] is one position of the controls.
package verify

import (
	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/findings"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// Check runs scripts against a model: the pass/fail control check. If there is
// a mistake in a script or in the selection it returns nil and every problem;
// else the report, in which every warning is a finding. A report of no checks
// says so in its verdict: it never passes.
func Check(m *airframes.Model, files []script.File, sel script.Selection) (*result.Report, []diag.Problem) {
	record, problems := script.Run(m, files, sel)
	if diag.HasErrors(problems) {
		return nil, problems
	}
	r := &result.Report{
		Tool:        Version,
		Model:       result.Model{Name: m.Name, File: m.Source.Name},
		Checks:      record.Checks,
		NotSelected: record.NotSelected,
		Uncovered:   record.Uncovered,
		Cautions:    cautions(m),
	}
	sources := []*diag.Source{m.Source}
	for _, f := range files {
		r.Scripts = append(r.Scripts, f.Name)
		sources = append(sources, diag.NewSource(f.Name, f.Text))
	}
	warnings := append(findings.Find(m), problems...)
	r.Findings = Findings(warnings, sources...)
	for i := range r.Checks {
		quote(&r.Checks[i], sources)
	}
	r.Verdict = verdict(r)
	return r, nil
}

// verdict is the answer to the checks that ran.
func verdict(r *result.Report) result.Verdict {
	switch passed, failed := r.Counts(); {
	case failed > 0:
		return result.Failed
	case passed > 0:
		return result.Passed
	}
	return result.NothingChecked
}

// Findings are warnings as a report shows them, with the line of the file they
// speak of. Errors among the problems are left out: they are no findings.
func Findings(problems []diag.Problem, sources ...*diag.Source) []result.Finding {
	var found []result.Finding
	for _, p := range problems {
		if p.Severity == diag.Error {
			continue
		}
		place := result.Place{File: p.File, Line: p.Line, Column: p.Column}
		quotePlace(&place, sources)
		found = append(found, result.Finding{Code: p.Code, Message: p.Message, Hint: p.Hint, Place: place})
	}
	return found
}

// quote puts beside every place of a check the line that stands there.
func quote(c *result.Check, sources []*diag.Source) {
	quotePlace(&c.Place, sources)
	for i := range c.LookAt {
		quotePlace(&c.LookAt[i], sources)
	}
	for i := range c.Chain {
		quotePlace(&c.Chain[i].Place, sources)
	}
}

func quotePlace(p *result.Place, sources []*diag.Source) {
	for _, s := range sources {
		if s.Name == p.File {
			p.Excerpt, _ = s.Line(p.Line)
			return
		}
	}
}
