package bench_test

import (
	"context"
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/bench/benchtest"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/result"
)

// names says whether one of some suspects is a mistake, itself or as one that looks the same.
func names(text string) func(result.Suspect) bool {
	return func(s result.Suspect) bool { return s.Text == text || slices.Contains(s.Alike, text) }
}

var oddsOf = map[string]int{"seldom": 1, "now and then": 2, "often": 3}

// A mistake on the model, and one or two steps answered by somebody in a hurry or who mixes
// up the ways: where no mistake explains all, or only ones that are made less often, the one
// on the model is among those that explain nearly all, and what is to be looked at again are
// the steps that were answered wrongly.
func TestNearExplanationsNameTheMistake(t *testing.T) {
	type subject struct {
		m    *airframes.Model
		w    *bench.Walk
		list []mistake.Mistake
	}
	var subjects []subject
	for _, name := range []string{"pellin-park", "ousel-trainer", "bracken-20"} {
		m := load(t, name)
		s := subject{m, bench.NewWalk(m, bench.Shortest(context.Background(), m, sight.Eye, nil), sight.Eye), nil}
		for _, one := range mistake.All(m, mistake.Options{}) {
			if _, faults := one.Variant(m); faults == nil && !one.Kind.Timed {
				s.list = append(s.list, one)
			}
		}
		subjects = append(subjects, s)
	}
	named, first := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom(subjects).Draw(t, "model")
		planted := rapid.SampledFrom(s.list).Draw(t, "planted")
		variant, _ := planted.Variant(s.m)
		hand := benchtest.Modeller{Walk: s.w, Plan: variant.Plan}
		var answers [][]string
		var odd []int
		for i := range s.w.Steps {
			answers = append(answers, hand.Lines(i))
			if len(answers[i]) > 1 {
				odd = append(odd, i)
			}
		}
		wrong := rapid.SliceOfNDistinct(rapid.IntRange(0, len(answers)-1), 1, 2, rapid.ID[int]).Draw(t, "wrong answers")
		if !slices.ContainsFunc(odd, func(i int) bool { return !slices.Contains(wrong, i) }) {
			return // nothing of it is left to be seen
		}
		for _, i := range wrong {
			answers[i] = []string{"y"}
			if moving := s.w.Steps[i].Moving(); rapid.Bool().Draw(t, "mixes up") && len(moving) > 0 {
				k := rapid.SampledFrom(moving).Draw(t, "part")
				if s.m.Setup.Parts[s.w.Steps[i].Expect[k].Part].Motion != mixcore.Power {
					answers[i] = []string{fmt.Sprintf("#%d other way", k+1), "y"}
				}
			}
		}
		g := bench.NewGuide(s.w, &memory{}, at)
		for _, line := range append(append(benchtest.Begin(), slices.Concat(answers...)...), "y") {
			if r, err := g.Take(line); err != nil || !r.Understood {
				t.Fatalf("%q: %+v, %v", line, r, err)
			}
		}
		c := g.Report(context.Background(), nil).Causes
		if c == nil || slices.ContainsFunc(c.Suspects, names(planted.Text)) {
			return // the wrong answers do not speak against it
		}
		if slices.ContainsFunc(c.Suspects, func(s result.Suspect) bool { return oddsOf[s.Odds] >= planted.Kind.Odds }) {
			return // as common a mistake explains all
		}
		if len(c.Suspects) > 0 && len(odd) < 6 {
			return // too little for one that explains not all beside one that does
		}
		most := 0
		for _, n := range c.Near {
			most = max(most, n.Explains)
		}
		common := 3
		for _, n := range c.Near {
			if 10*n.Explains >= 9*most {
				if oddsOf[n.Odds] > common {
					t.Errorf("%s, made %s, stands behind what is made less often", n.Text, n.Odds)
				}
				common = oddsOf[n.Odds]
			}
		}
		at := slices.IndexFunc(c.Near, func(n result.Near) bool { return names(planted.Text)(n.Suspect) })
		if at < 0 {
			t.Fatalf("%s, wrong answers to %v: %s, and it is not among %d suspects and %d near", planted.Text, wrong, c.Verdict, len(c.Suspects), len(c.Near))
		}
		named++
		if at < 5 {
			first++
		}
		for _, a := range c.Near[at].Against {
			if !slices.Contains(wrong, a.Step-1) {
				t.Errorf("%s: step %d is to be looked at again, and was answered honestly", planted.Text, a.Step)
			}
		}
		if n := c.Near[at]; n.Of != len(answers) || n.Explains != n.Of-len(n.Against) || len(n.Against) == 0 {
			t.Errorf("%+v", n)
		}
	})
	t.Logf("%d named nearly, %d of them among the first five", named, first)
	if named == 0 {
		t.Error("nothing was named nearly")
	}
}

func reversedWithItsFailsafe(t *testing.T, m *airframes.Model) *mixcore.Plan {
	t.Helper()
	hand, faults := m.Plan.Vary(func(s *mixcore.Setup) {
		c := &s.Channels[0]
		c.Reversed = !c.Reversed
		c.Failsafe.Output = -c.Failsafe.Output
	})
	if faults != nil {
		t.Fatal(faults)
	}
	return hand
}

// The commonest of all: a channel reversed in the radio, with its failsafe stored so. One
// mistake that is made less often explains all; the reversed channel stands beside it, and
// what speaks against it is that the signal was lost.
func TestReversedWithItsFailsafe(t *testing.T) {
	m := load(t, "skerry")
	w := bench.NewWalk(m, bench.Shortest(context.Background(), m, sight.Eye, nil), sight.Eye)
	hand := reversedWithItsFailsafe(t, m)
	c := walked(t, w, (&benchtest.Modeller{Walk: w, Plan: hand}).All()).Report(context.Background(), nil).Causes
	const reversed = "channel 1 (port aileron) is reversed"
	at := slices.IndexFunc(c.Near, func(n result.Near) bool { return names(reversed)(n.Suspect) })
	if len(c.Suspects) == 0 || slices.ContainsFunc(c.Suspects, names(reversed)) || at < 0 || at > 2 || !c.Near[at].Lost {
		t.Errorf("%s, %+v; near %+v", c.Verdict, c.Suspects, c.Near)
	}
}

// A channel reversed in the radio, with its failsafe stored so, and the steps where the signal
// is lost waved through: nothing explains all, a pushrod on the other side about as much as
// the channel, and the channel, which people reverse more often, is to be looked at first.
func TestCommonestOfThoseThatExplainAboutAsMuch(t *testing.T) {
	m, chosen := usual(t, "skerry", sight.Eye)
	w := bench.NewWalk(m, chosen, sight.Eye)
	hand := reversedWithItsFailsafe(t, m)
	honest := benchtest.Modeller{Walk: w, Plan: hand}
	lines := benchtest.Begin()
	for i := range w.Steps {
		if w.Steps[i].To.SignalLost {
			lines = append(lines, "y")
			continue
		}
		lines = append(lines, honest.Lines(i)...)
	}
	c := walked(t, w, append(lines, "f")).Report(context.Background(), nil).Causes
	if len(c.Near) < 2 || !names("channel 1 (port aileron) is reversed")(c.Near[0].Suspect) {
		t.Fatalf("%s, %+v; near %+v", c.Verdict, c.Suspects, c.Near)
	}
	most := 0
	for _, n := range c.Near {
		most = max(most, n.Explains)
	}
	if c.Near[0].Explains == most {
		t.Errorf("the channel explains as many as any, so this shows nothing: %d", most)
	}
}
