package draft_test

import (
	"os"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/draft"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

func shipped(t *testing.T, name string) *airframes.Model {
	t.Helper()
	text, _ := airframes.ReadShipped(name)
	return loaded(t, name+".yaml", text)
}

func loaded(t *testing.T, name string, text []byte) *airframes.Model {
	t.Helper()
	m, problems := airframes.Load(name, text)
	if m == nil {
		t.Fatal(said(problems, diag.NewSource(name, text)))
	}
	return m
}

func said(problems []diag.Problem, sources ...*diag.Source) string {
	var b strings.Builder
	diag.Write(&b, problems, sources...)
	return b.String()
}

// check holds a draft against a model, which need not be the one that it was
// drafted for.
func check(t *testing.T, m *airframes.Model, d draft.Draft) *result.Report {
	t.Helper()
	file := script.File{Name: "draft.feature", Text: d.Text}
	r, problems := verify.Check(m, []script.File{file}, script.Selection{})
	if r == nil {
		t.Fatalf("the draft is no script:\n%s\n%s", said(problems, diag.NewSource(file.Name, file.Text)), d.Text)
	}
	return r
}

func failures(r *result.Report) []string {
	var list []string
	for i := range r.Checks {
		if c := &r.Checks[i]; !c.Passed {
			list = append(list, c.Scenario+": "+c.Sentence+": "+c.Subject+": wanted "+c.Wanted+", got "+c.Got)
		}
	}
	return list
}

func TestDraftsOfShippedModelsPass(t *testing.T) {
	for _, name := range airframes.Shipped() {
		t.Run(name, func(t *testing.T) {
			m := shipped(t, name)
			d := draft.Script(m)
			os.WriteFile("/tmp/drafts/"+name+".feature", d.Text, 0o644)
			r := check(t, m, d)
			if r.Verdict != result.Passed {
				t.Errorf("%s: %s", r.Verdict, strings.Join(failures(r), "\n"))
			}
			if len(r.Uncovered.Parts)+len(r.Uncovered.Controls)+len(r.Uncovered.Positions) > 0 {
				t.Errorf("not covered: %+v", r.Uncovered)
			}
		})
	}
}
