package phrase

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/wording"
)

// drawPose draws where every control of a set-up stands.
func drawPose(t *rapid.T, s *mixcore.Setup, label string) Pose {
	p := RestPose(s)
	for i := range s.Controls {
		low, high := s.Controls[i].Range()
		p.Position[i] = float64(rapid.IntRange(int(low), int(high)).Draw(t, label+" "+s.Controls[i].Name))
	}
	return p
}

// judgeOne parses and judges one sentence.
func judgeOne(t *rapid.T, v *Vocabulary, at Situation, text string) bool {
	meaning, problem := v.Parse(Then, text)
	if problem != nil {
		t.Fatalf("%q: %s", text, problem.Message)
	}
	return v.Judge(&meaning.Outcomes[0], at)[0].Passed
}

// Of rising, dropping and staying still a surface does exactly one, and where
// it stands it is exactly one of up, down and neutral.
func TestJudgeFindsExactlyOneOfThree(t *testing.T) {
	m := exampleModel(t, nil)
	v := NewVocabulary(m)
	thirds := [][3]string{{"rises", "drops", "stays still"}, {"is up", "is down", "is at neutral"}}
	rapid.Check(t, func(t *rapid.T) {
		at := Situation{Before: drawPose(t, &m.Setup, "before"), Now: drawPose(t, &m.Setup, "now"), Moved: true}
		for _, part := range []string{"port aileron", "starboard flap", "elevator"} {
			for _, third := range thirds {
				holding := 0
				for _, verb := range third {
					if judgeOne(t, v, at, "the "+part+" "+verb) {
						holding++
					}
				}
				if holding != 1 {
					t.Fatalf("%d of %v hold for the %s", holding, third, part)
				}
			}
		}
	})
}

// roundingDecides says whether the port aileron moves just as far as counts as still: the
// last place of that number is another one where its channel is turned round.
func roundingDecides(m *airframes.Model, at Situation) bool {
	before, now := m.Plan.NewOutput(), m.Plan.NewOutput()
	from, to := at.Before.Input(), at.Now.Input()
	m.Plan.Eval(&from, before)
	m.Plan.Eval(&to, now)
	const portAileron = 0
	by := math.Abs(float64(now.Parts[portAileron].Angle - before.Parts[portAileron].Angle))
	return math.Abs(by-float64(m.Still)) < 1e-9
}

// A movement backwards is the opposite movement, and reversing a channel
// exchanges rising and dropping.
func TestJudgeTurnsWithTheMovementAndWithTheChannel(t *testing.T) {
	straight, turned := exampleModel(t, nil), exampleModel(t, reverse(portAileronChannel))
	v, w := NewVocabulary(straight), NewVocabulary(turned)
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawPose(t, &straight.Setup, "before"), drawPose(t, &straight.Setup, "now")
		there, back := Situation{Before: a, Now: b, Moved: true}, Situation{Before: b, Now: a, Moved: true}
		rises := judgeOne(t, v, there, "the port aileron rises")
		if rises != judgeOne(t, v, back, "the port aileron drops") {
			t.Fatal("back is not the opposite of there")
		}
		if rises != judgeOne(t, w, there, "the port aileron drops") && !roundingDecides(straight, there) {
			t.Fatal("reversed is not the opposite of straight")
		}
	})
}

// What wording says of a setting is a setting, and the same one.
func TestParseReadsBackWhatWordingSays(t *testing.T) {
	m := exampleModel(t, nil)
	v := NewVocabulary(m)
	rapid.Check(t, func(t *rapid.T) {
		p := drawPose(t, &m.Setup, "pose")
		for i := range p.Position {
			text, _, _ := strings.Cut(wording.Setting(&m.Setup, i, p.Position[i]), " (") // a detent near by is said in brackets
			meaning, problem := v.Parse(Given, text)
			if problem != nil {
				t.Fatalf("%q: %s (%s)", text, problem.Message, problem.Hint)
			}
			if got := meaning.Settings.Settings; len(got) != 1 || got[0].Control != i || got[0].Position != p.Position[i] {
				t.Fatalf("%q: got %+v, want control %d at %v", text, got, i, p.Position[i])
			}
		}
	})
}

// An amount with a tolerance holds exactly where at least and at most both do.
func TestAmountAboutIsBetweenItsEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		value, slack, x := rapid.Float64Range(0, 90).Draw(t, "value"), rapid.Float64Range(0.1, 10).Draw(t, "slack"), rapid.Float64Range(0, 100).Draw(t, "x")
		about := Amount{Kind: About, Value: value, Slack: slack}
		ends := Amount{Kind: AtLeast, Value: value - slack}.holds(x) && Amount{Kind: AtMost, Value: value + slack}.holds(x)
		if about.holds(x) != ends {
			t.Fatalf("%v ± %v and its ends differ at %v", value, slack, x)
		}
	})
}
