package features_test

import (
	"fmt"
	"slices"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/features"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/verifytest"
)

// TestScriptsNoticeSmallMistakes makes the scripts of the shipped models find numbers
// that are a little off, where package faults makes mistakes that are far off: a
// sub-trim of a few percent, a throw or an end point that is a fifth short. Only what
// changes nothing at any position of the controls may pass, and the test tells which
// those are by looking, not by a list.
func TestScriptsNoticeSmallMistakes(t *testing.T) {
	const fewest = 3 // for each channel of a model
	for _, name := range features.Names() {
		t.Run(name, func(t *testing.T) {
			model := verifytest.Shipped(t, name)
			trial := trialOf(t, model, name)
			caught, unseen := 0, 0
			mistakes(&model.Setup, func(what string, edit func(*mixcore.Setup)) {
				wrong := withEdit(t, model, what, edit)
				fails := false
				trial.Try(wrong, mistake.Touched(model.Plan, wrong.Plan), func(_ int, h phrase.Holding) bool {
					fails = h == phrase.Fails
					return !fails
				})
				switch {
				case fails:
					caught++
				case differs(model.Plan, wrong.Plan):
					t.Errorf("no sentence fails on %s", what)
				default:
					unseen++
				}
			})
			t.Logf("%d caught, %d that change nothing", caught, unseen)
			if least := fewest * len(model.Setup.Channels); caught < least {
				t.Errorf("%d mistakes were caught, want at least %d", caught, least)
			}
		})
	}
}

// trialOf is a model's script, read.
func trialOf(t *testing.T, model *airframes.Model, name string) *script.Trial {
	t.Helper()
	trial, problems := script.NewTrial(model, verifytest.Scripts(t, name))
	if len(problems) > 0 {
		t.Fatalf("%+v", problems)
	}
	return trial
}

// withEdit is a model with its set-up changed.
func withEdit(t *testing.T, model *airframes.Model, what string, edit func(*mixcore.Setup)) *airframes.Model {
	t.Helper()
	wrong, faults := model.With(edit)
	if wrong == nil {
		t.Fatalf("%s: %+v", what, faults)
	}
	return wrong
}

// underWay is a time, in seconds, at which slowed channels and fading phases of
// the shipped models are still moving.
const underWay = 0.3

// differs says whether two plans do anything differently at rest or with one or
// two controls moved, on the way there or once all is at rest, with the signal or
// without it.
func differs(a, b *mixcore.Plan) bool {
	left, right := a.NewOutput(), b.NewOutput()
	same := func(in mixcore.Input) bool {
		a.Eval(&in, left)
		b.Eval(&in, right)
		return slices.Equal(left.Parts, right.Parts) && slices.Equal(left.Channels, right.Channels)
	}
	early := func(in mixcore.Input) bool {
		rest := a.Rest()
		a.EvalAfter(&rest, &in, underWay, left)
		b.EvalAfter(&rest, &in, underWay, right)
		return slices.Equal(left.Parts, right.Parts) && slices.Equal(left.Channels, right.Channels)
	}
	controls := a.Setup().Controls
	for i := range controls {
		for _, one := range endsOf(&controls[i]) {
			for k := range controls {
				for _, other := range endsOf(&controls[k]) {
					in := a.Rest()
					in.Position[i] = one
					in.Position[k] = other
					lost := in
					lost.SignalLost = true
					if !same(in) || !same(lost) || i == k && !early(in) {
						return true
					}
				}
			}
		}
	}
	return false
}

func endsOf(c *mixcore.Control) []float64 {
	switch c.Kind {
	case mixcore.LeverControl:
		return []float64{0, 50, 100}
	case mixcore.SwitchControl:
		all := make([]float64, len(c.Positions))
		for i := range all {
			all[i] = float64(i)
		}
		return all
	}
	return []float64{-100, 0, 100}
}

// The sizes of mistakes in numbers.
const (
	trimMistake  = 3   // percent that a sub-trim is off
	throwMistake = 0.8 // of what a throw or end point should be
)

// mistakes calls plant with every number that is a little off.
func mistakes(s *mixcore.Setup, plant func(what string, edit func(*mixcore.Setup))) {
	for i := range s.Channels {
		channelMistakes(s, i, plant)
	}
	for i := range s.Demands {
		demandMistakes(s, i, plant)
	}
}

func channelMistakes(s *mixcore.Setup, i int, plant func(string, func(*mixcore.Setup))) {
	c := s.Channels[i]
	put := func(what string, edit func(c *mixcore.Channel)) {
		plant(fmt.Sprintf("channel %d %s", c.Number, what), func(s *mixcore.Setup) { edit(&s.Channels[i]) })
	}
	put("with its sub-trim off", func(c *mixcore.Channel) { c.SubTrim += trimMistake })
	put("with a short plus end", func(c *mixcore.Channel) { c.EndPoints.Plus *= throwMistake })
	put("with a short minus end", func(c *mixcore.Channel) { c.EndPoints.Minus *= throwMistake })
	if c.Slow > 0 {
		put("twice as slow", func(c *mixcore.Channel) { c.Slow *= 2 })
	}
}

func demandMistakes(s *mixcore.Setup, i int, plant func(string, func(*mixcore.Setup))) {
	d := s.Demands[i]
	put := func(what string, edit func(d *mixcore.Demand)) {
		plant("demand "+d.Name+" "+what, func(s *mixcore.Setup) { edit(&s.Demands[i]) })
	}
	for k := range d.Rates {
		put(fmt.Sprintf("rate %d short one way", k+1), func(d *mixcore.Demand) { d.Rates[k].Throw.Plus *= throwMistake })
		put(fmt.Sprintf("rate %d short the other way", k+1), func(d *mixcore.Demand) { d.Rates[k].Throw.Minus *= throwMistake })
	}
}

// TestScriptsLeaveNothingOut wants every part named, every control moved, every
// position visited, and every stage of the walk-around that has a part.
func TestScriptsLeaveNothingOut(t *testing.T) {
	for _, name := range features.Names() {
		text, _ := features.Read(name)
		model := verifytest.Shipped(t, name)
		record, _ := script.Run(model, []script.File{{Name: name, Text: text}}, script.Selection{})
		left := record.Uncovered
		if len(left.Parts)+len(left.Controls)+len(left.Positions) > 0 {
			t.Errorf("%s leaves out %+v", name, left)
		}
		stages := map[result.Stage]bool{}
		for _, c := range record.Checks {
			stages[c.Stage] = true
		}
		wanted := []result.Stage{result.BeforePower, result.MotorAndSignal}
		for i := range model.Setup.Parts {
			wanted = append(wanted, script.PartStage(&model.Setup.Parts[i]))
		}
		for _, stage := range wanted {
			if !stages[stage] {
				t.Errorf("%s has no check of the stage %q", name, stage)
			}
		}
	}
}
