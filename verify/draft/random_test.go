package draft_test

import (
	"bytes"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/draft"
	"example.com/hingeline/verify/script"
)

// Whatever an airframe file holds, its draft is a script that can be run, and
// always the same.
func TestDraftsOfRandomModelsAreScripts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := airframestest.Generate(t)
		m, problems := airframes.Load("random.yaml", text)
		if m == nil {
			t.Fatalf("%s", said(problems, diag.NewSource("random.yaml", text)))
		}
		d := draft.Script(m)
		if again := draft.Script(m); !bytes.Equal(d.Text, again.Text) || d.Undecided != again.Undecided {
			t.Fatalf("two drafts of one model differ:\n%s\n%s", d.Text, again.Text)
		}
		if !bytes.Contains(d.Text, []byte("Scenario")) {
			return // all of it is left to the pilot
		}
		file := script.File{Name: "draft.feature", Text: d.Text}
		_, problems = script.Run(m, []script.File{file}, script.Selection{})
		if diag.HasErrors(problems) {
			t.Fatalf("%s\n%s", said(problems, diag.NewSource(file.Name, file.Text)), text)
		}
	})
}
