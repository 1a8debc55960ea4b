package serve

import (
	"strings"
	"testing"

	"example.com/hingeline/verify/result"
)

func TestOutcomeBeginsWithTheVerdict(t *testing.T) {
	part := func(differs bool) result.BenchStep {
		s := result.BenchStep{Number: 1, State: result.StepAsExpected, Parts: []result.BenchPart{{Name: "rudder", Moves: true}}}
		if differs {
			s.State, s.Parts[0].Differs, s.Parts[0].How = result.StepDiffers, true, "the other way"
		}
		return s
	}
	for _, c := range []struct {
		name       string
		r          result.Bench
		tone, word string
		differs    int
	}{
		{"all as expected", result.Bench{Verdict: result.SeenAsExpected, Steps: []result.BenchStep{part(false)}}, "good", "SEEN AS EXPECTED, as far as can be seen by eye", 0},
		{"with a ruler", result.Bench{Verdict: result.SeenAsExpected, Ruler: true, Steps: []result.BenchStep{part(false)}}, "good", "SEEN AS EXPECTED", 0},
		{"the script fails", result.Bench{Verdict: result.SeenAsExpected, Fails: true, Steps: []result.BenchStep{part(false)}}, "bad", "DO NOT FLY", 0},
		{"one differs", result.Bench{Verdict: result.SeenDiffers, Steps: []result.BenchStep{part(true)}}, "bad", "DO NOT FLY", 1},
		{"not finished", result.Bench{Verdict: result.NotFinished, Steps: []result.BenchStep{part(false), {State: result.StepOpen}}}, "heed", "NOT FINISHED, which is not a yes", 0},
		{"nothing", result.Bench{Verdict: result.NothingSeen}, "heed", "NOTHING SEEN", 0},
	} {
		o := outcomeOf(&c.r)
		if o.Tone != c.tone || o.Word != c.word || len(o.Differs) != c.differs {
			t.Errorf("%s: %+v, wanted %s %q and %d that differ", c.name, o, c.tone, c.word, c.differs)
		}
		if strings.Contains(o.Text, scriptFails) != c.r.Fails {
			t.Errorf("%s: %q", c.name, o.Text)
		}
	}
}
