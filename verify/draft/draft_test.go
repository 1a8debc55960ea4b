package draft_test

import (
	"flag"
	"path/filepath"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
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
			passes(t, m, d)
			if marks := strings.Count(string(d.Text), draft.YouDecide); d.Undecided != marks {
				t.Errorf("%d lines undecided, but %d marks", d.Undecided, marks)
			}
		})
	}
}

// passes wants a draft to pass on its own model, to leave nothing out, and to be
// a script that nothing is odd about.
func passes(t *testing.T, m *airframes.Model, d draft.Draft) *result.Report {
	t.Helper()
	r := check(t, m, d)
	if r.Verdict != result.Passed {
		t.Errorf("%s: %s", r.Verdict, strings.Join(failures(r), "\n"))
	}
	if len(r.Uncovered.Parts)+len(r.Uncovered.Controls)+len(r.Uncovered.Positions) > 0 {
		t.Errorf("not covered: %+v\n%s", r.Uncovered, d.Text)
	}
	for _, f := range r.Script {
		t.Errorf("the script is odd: %+v", f)
	}
	return r
}

// What a draft asks once every mark is taken away holds on the set-up: the lines
// left to the pilot say what the set-up does, and are sentences.
func TestUndecidedLinesSayWhatTheSetUpDoes(t *testing.T) {
	for _, name := range airframes.Shipped() {
		t.Run(name, func(t *testing.T) {
			m := shipped(t, name)
			d := draft.Script(m)
			decided := inScenarios(strings.ReplaceAll(string(d.Text), draft.YouDecide, ""))
			record, problems := script.Run(m, []script.File{{Name: "decided.feature", Text: []byte(decided)}}, script.Selection{})
			if diag.HasErrors(problems) {
				t.Fatalf("%s\n%s", said(problems), decided)
			}
			for i := range record.Checks {
				if c := &record.Checks[i]; !c.Passed {
					t.Errorf("%s: %s: got %s", c.Sentence, c.Subject, c.Got)
				}
			}
		})
	}
}

// inScenarios gives sentences that stood in comments outside of a scenario one of
// their own.
func inScenarios(text string) string {
	var b strings.Builder
	for _, line := range strings.SplitAfter(text, "\n") {
		if strings.HasPrefix(line, "  # ") {
			line = "  Scenario: " + line[len("  # "):]
		}
		b.WriteString(line)
	}
	return b.String()
}

func TestDraftsOfLayoutsAreAsShown(t *testing.T) {
	for _, name := range []string{"glider", "twin"} {
		l, _ := draft.FindLayout(name)
		c := l.Usual()
		c.Name, c.Script = "Wren", name+".feature"
		text, err := l.Airframe(c)
		if err != nil {
			t.Fatal(err)
		}
		golden(t, name+".yaml", text)
		golden(t, name+".feature", draft.Script(loaded(t, name+".yaml", text)).Text)
	}
}

var update = flag.Bool("update", false, "write the golden files anew")

func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	airframestest.Golden(t, filepath.Join("..", "..", "testdata", "drafts", name), got, *update)
}
