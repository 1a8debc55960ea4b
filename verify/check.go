// Package verify judges a model: it brings the airframe, the script and what
// Hingeline finds odd by itself together into one report.
//
// It never reads a file and never prints: what it takes was read by airframes,
// what it gives is plain values of package result, in words ready to be shown.
// Start at [Check]; [Show] is one position of the controls.
package verify

import (
	"context"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/findings"
	"example.com/hingeline/verify/resolved"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/sense"
	"example.com/hingeline/verify/sheet"
)

// Check runs scripts against a model: the pass/fail control check. If there is
// a mistake in a script or in the selection it returns nil and every problem;
// else the report, in which every warning is a finding. A report of no checks
// says so in its verdict: it never passes.
func Check(m *airframes.Model, files []script.File, sel script.Selection) (*result.Report, []diag.Problem) {
	r, _, problems := examine(m, files, sel)
	return r, problems
}

// CheckOnPaper is Check with what a report in the hand has beside, and digests of what was
// checked. If ctx is done, what is slow about that ends early and says so; the checks
// themselves do not.
func CheckOnPaper(ctx context.Context, m *airframes.Model, files []script.File, sel script.Selection) (*result.Report, []diag.Problem) {
	r, record, problems := examine(m, files, sel)
	if r != nil {
		r.Paper = sheet.Of(ctx, m, record)
		r.SetUp = resolved.Digest(resolved.SetUp(m))
		asked, _ := resolved.Script(m, files) // script.Run has taken the scripts
		r.Asked = resolved.ScriptDigest(asked)
	}
	return r, problems
}

// examine makes the report and gives the record that it was made from.
func examine(m *airframes.Model, files []script.File, sel script.Selection) (*result.Report, *script.Record, []diag.Problem) {
	record, problems := script.Run(m, files, sel)
	if diag.HasErrors(problems) {
		return nil, nil, problems
	}
	r := &result.Report{
		Tool:        Version,
		Model:       result.Model{Name: m.Name, File: m.Source.Name},
		Rest:        rest(&m.Setup),
		Checks:      record.Checks,
		Script:      sense.Look(m, record.Asked),
		NotSelected: record.NotSelected,
		Prints:      prints(m, files),
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
	for i := range r.Script {
		quotePlace(&r.Script[i].Place, sources)
	}
	r.Verdict = verdict(r)
	return r, &record, nil
}

// Strict makes every warning about the script fail the check; what the pilot says
// is on purpose stays the pilot's own decision.
func Strict(r *result.Report) {
	for i := range r.Script {
		r.Script[i].Fails = !r.Script[i].OnPurpose
	}
	r.Verdict = verdict(r)
}

// verdict is the answer to the checks that ran, and to the script: one that fights
// the aeroplane proves nothing.
func verdict(r *result.Report) result.Verdict {
	wrong, _, _ := r.ScriptCounts()
	switch passed, failed := r.Counts(); {
	case failed > 0, wrong > 0:
		return result.Failed
	case passed > 0 && r.NotSelected > 0:
		return result.PassedInPart
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
		found = append(found, finding(p, sources))
	}
	return found
}

// quote puts beside every place of a check the line that stands there.
func quote(c *result.Check, sources []*diag.Source) {
	quotePlace(&c.Place, sources)
	for i := range c.Why {
		quoteReason(&c.Why[i], sources)
	}
}

func quoteReason(r *result.Reason, sources []*diag.Source) {
	quoteSteps(r.Chain, sources)
	for k := range r.LookAt {
		quotePlace(&r.LookAt[k], sources)
	}
}

func quoteSteps(steps []result.Step, sources []*diag.Source) {
	for i := range steps {
		quotePlace(&steps[i].Place, sources)
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
