package faults_test

import (
	"context"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/walk"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/verifytest"
)

// twelve is the model that proving is measured on, and its walk-around with a ruler as
// its script.
func twelve(b *testing.B) (*airframes.Model, []script.File) {
	b.Helper()
	m := verifytest.Twelve(b)
	found := walk.Shortest(context.Background(), m, walk.Options{Look: sight.Measured})
	return m, []script.File{{Name: "twelve.feature", Text: found.Script()}}
}

// BenchmarkTable holds every check of the script against every mistake (trial); the
// baseline evaluates the whole model before and after for each of them (plain).
func BenchmarkTable(b *testing.B) {
	m, files := twelve(b)
	trial, problems := script.NewTrial(m, files)
	if trial == nil {
		b.Fatal(problems)
	}
	var variants []*airframes.Model
	var touched [][]int
	for _, wrong := range mistake.All(m, mistake.Options{}) {
		if v, faults := wrong.Variant(m); faults == nil {
			variants, touched = append(variants, v), append(touched, mistake.Touched(m.Plan, v.Plan))
		}
	}
	b.Run("trial", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			fails := 0
			for i, v := range variants {
				trial.Try(v, touched[i], func(_ int, h phrase.Holding) bool {
					if h == phrase.Fails {
						fails++
					}
					return true
				})
			}
			b.ReportMetric(float64(fails), "failing")
		}
		b.ReportMetric(float64(len(variants)), "mistakes")
		b.ReportMetric(float64(trial.Len()), "checks")
	})
	b.Run("plain", func(b *testing.B) {
		b.ReportAllocs()
		in := m.Plan.Rest()
		for b.Loop() {
			for _, v := range variants {
				out := v.Plan.NewOutput()
				for range 2 * trial.Len() {
					v.Plan.Eval(&in, out)
				}
			}
		}
	})
}

// BenchmarkClassify makes every mistake and says what becomes of it: caught, missed,
// invisible or undecided. The baseline compiles each mistaken set-up anew and does nothing
// with it.
func BenchmarkClassify(b *testing.B) {
	m, files := twelve(b)
	b.Run("judge", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			r, problems := faults.Judge(context.Background(), m, files, faults.Options{})
			if r == nil {
				b.Fatal(problems)
			}
			s := r.Score()
			b.ReportMetric(float64(s.Caught), "caught")
			b.ReportMetric(float64(s.Missed), "missed")
			b.ReportMetric(float64(s.Invisible), "invisible")
			b.ReportMetric(float64(s.Open), "undecided")
		}
	})
	b.Run("compile", func(b *testing.B) {
		b.ReportAllocs()
		all := mistake.All(m, mistake.Options{})
		for b.Loop() {
			for i := range all {
				s := m.Setup.Clone()
				all[i].Edit(&s)
				mixcore.Compile(s)
			}
		}
	})
}
