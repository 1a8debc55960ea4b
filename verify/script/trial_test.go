package script_test

import (
	"math"
	"slices"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/features"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/script"
)

// A trial and a run agree on every shipped model, as it is and with each of its
// channels reversed.
func TestTrialFindsWhatRunFinds(t *testing.T) {
	for _, name := range airframes.Shipped() {
		text, _ := airframes.ReadShipped(name)
		model, _ := airframes.Load(name, text)
		sentences, _ := features.Read(name)
		files := []script.File{{Name: name + ".feature", Text: sentences}}
		trial, problems := script.NewTrial(model, files)
		if trial == nil {
			t.Fatalf("%s: %+v", name, problems)
		}
		if failing := trial.Failing(model, math.MaxInt); failing != nil {
			t.Errorf("%s as it is: %v", name, failing)
		}
		variant, _ := model.With(func(s *mixcore.Setup) { s.Channels[0].Reversed = !s.Channels[0].Reversed })
		if variant == nil {
			continue
		}
		var want []string
		record, _ := script.Run(variant, files, script.Selection{})
		for _, c := range record.Checks {
			if !c.Passed && !slices.Contains(want, c.Subject) {
				want = append(want, c.Subject)
			}
		}
		got := trial.Failing(variant, math.MaxInt)
		slices.Sort(want)
		slices.Sort(got)
		if !slices.Equal(got, want) || len(want) == 0 {
			t.Errorf("%s with its first channel reversed: a trial finds %v, a run %v", name, got, want)
		}
	}
}
