package draft_test

import (
	"bytes"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
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
		m = planted(m, atOnce) // what takes a minute would make the script too long to run
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

// atOnce takes out of a set-up all that takes time.
func atOnce(s *mixcore.Setup) {
	s.Phases = slices.Clone(s.Phases)
	for i := range s.Phases {
		s.Phases[i].Fade = 0
	}
	for i := range s.Channels {
		s.Channels[i].Slow = 0
	}
	for i := range s.Parts {
		for k := range s.Parts[i].Drives {
			s.Parts[i].Drives[k].Servo.SecondsPer60Deg = 0
		}
	}
}
