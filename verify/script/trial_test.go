package script_test

import (
	"math"
	"slices"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/verifytest"
)

// A trial and a run agree on every shipped model, as it is and with each of its
// channels reversed.
func TestTrialFindsWhatRunFinds(t *testing.T) {
	for _, name := range airframes.Shipped() {
		model, files := verifytest.Shipped(t, name), verifytest.Scripts(t, name)
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

// channelOnly is a model of which a channel drives nothing: it tells something else, the
// gain of a gyro say.
const channelOnly = `hingeline: 1
name: Channel only
controls:
  pitch stick: pitch
  gain switch: [low, high]
demands:
  pitch: pitch stick
  gain: {from: gain switch, values: {low: 20%, high: 60%}}
channels:
  1: pitch
  2: {name: gain, mix: gain}
surfaces:
  elevator: {channel: 1, measured: {100%: 20° up}}
`

// A channel on which no part hangs is looked at too: by Try, which is told what parts a
// mistake touches, and by TryAll.
func TestTrialLooksAtChannelsThatDriveNothing(t *testing.T) {
	m, problems := airframes.Load("channel.yaml", []byte(channelOnly))
	if m == nil {
		t.Fatal(problems)
	}
	trial, problems := script.NewTrial(m, []script.File{{Name: "c.feature", Text: []byte("Feature: C\n\n  Scenario: C\n    * with the gain switch high, channel 2 is at 60% ± 1%\n")}})
	if trial == nil {
		t.Fatal(problems)
	}
	variant, _ := m.With(func(s *mixcore.Setup) { s.Channels[1].Reversed = true })
	for name, try := range map[string]func(func(int, phrase.Holding) bool){
		"Try":    func(visit func(int, phrase.Holding) bool) { trial.Try(variant, nil, visit) },
		"TryAll": func(visit func(int, phrase.Holding) bool) { trial.TryAll(variant, visit) },
	} {
		var got []phrase.Holding
		try(func(_ int, h phrase.Holding) bool {
			got = append(got, h)
			return true
		})
		if !slices.Equal(got, []phrase.Holding{phrase.Fails}) {
			t.Errorf("%s says %v, wanted that the one check fails", name, got)
		}
	}
}
