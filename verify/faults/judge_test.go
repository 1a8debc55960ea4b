package faults_test

import (
	"context"
	"testing"
	"time"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/features"
	"example.com/hingeline/verify/faults"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

func load(t testing.TB, name string) *airframes.Model {
	t.Helper()
	text, _ := airframes.ReadShipped(name)
	m, problems := airframes.Load(name+".yaml", text)
	if m == nil {
		t.Fatalf("%+v", problems)
	}
	return m
}

func shippedScript(name string) []script.File {
	text, _ := features.Read(name)
	return []script.File{{Name: name + ".feature", Text: text}}
}

func judged(t testing.TB, m *airframes.Model, files []script.File, o faults.Options) *result.Faults {
	t.Helper()
	r, problems := faults.Judge(context.Background(), m, files, o)
	if r == nil || diag.HasErrors(problems) {
		t.Fatalf("%+v", problems)
	}
	return r
}

// Every shipped script catches every single mistake that can be seen.
func TestShippedScriptsMissNothing(t *testing.T) {
	for _, name := range features.Names() {
		t.Run(name, func(t *testing.T) {
			m := load(t, name)
			start := time.Now()
			r := judged(t, m, shippedScript(name), faults.Options{})
			t.Logf("%+v, %d %%, %d spare, %v", r.Score(), r.Score().Percent(), len(r.Spare), time.Since(start))
			for _, f := range r.Faults {
				if f.State == result.Missed || f.State == result.Open {
					t.Errorf("%s: %s\n   %d %s\n   %v %v; %s\n   %s %s", f.State, f.Text, f.Rank, f.Consequence, f.Witness, f.Wanted, f.Reason, f.Sentence, f.Place.Excerpt)
				}
			}
			t.Log(faults.Additions(r, func(string) bool { return false }))
		})
	}
}
