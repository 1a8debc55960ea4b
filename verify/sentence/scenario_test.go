package sentence_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/sentence"
)

func shipped(t *testing.T, name string) *airframes.Model {
	t.Helper()
	text, ok := airframes.ReadShipped(name)
	if !ok {
		t.Fatalf("no built-in model %s", name)
	}
	m, problems := airframes.Load(name+".yaml", text)
	if m == nil {
		t.Fatal(problems)
	}
	return m
}

func pose(t *testing.T, m *airframes.Model, at map[string]float64) mixcore.Input {
	t.Helper()
	in := m.Plan.Rest()
	for name, position := range at {
		found := false
		for i := range m.Setup.Controls {
			if m.Setup.Controls[i].Name == name {
				in.Position[i], found = position, true
			}
		}
		if !found {
			t.Fatalf("no control %s", name)
		}
	}
	return in
}

func TestScenarioSaysThePose(t *testing.T) {
	m := shipped(t, "bracken-20")
	in := pose(t, m, map[string]float64{"rate switch": 1, "roll stick": 30, "flap lever": 99.5, "throttle": 40, "roll trim": -25})
	got := sentence.Scenario(m, &in, nil)
	for _, want := range []string{
		"  Scenario: ", "    Given everything rests\n", "    And the rate switch is high\n", "    And the roll stick is 30% right\n",
		"    And the flap lever is at 99.5%\n", "    And the throttle is at 40%\n", "    And the roll trim is 25% left\n",
		"    Then the port aileron is ", "    And the motor is stopped\n",
	} {
		if !strings.Contains(got.Text, want) {
			t.Errorf("no %q in\n%s", want, got.Text)
		}
	}
	if len(got.LeftOut) > 0 {
		t.Errorf("left out: %q", got.LeftOut)
	}
}

// TestScenarioHolds reads back what was written, for random poses of every built-in
// model, and sees that it would not pass where a surface stands elsewhere.
func TestScenarioHolds(t *testing.T) {
	var models []*airframes.Model
	for _, name := range airframes.Shipped() {
		models = append(models, shipped(t, name))
	}
	rapid.Check(t, func(r *rapid.T) {
		m := rapid.SampledFrom(models).Draw(r, "model")
		in := m.Plan.Rest()
		for i := range in.Position {
			c := &m.Setup.Controls[i]
			low, high := c.Range()
			places := []*rapid.Generator[float64]{rapid.Map(rapid.IntRange(int(low), int(high)), func(n int) float64 { return float64(n) })}
			for _, d := range c.Detents {
				places = append(places, rapid.Just(float64(d.At)))
			}
			in.Position[i] = rapid.OneOf(places...).Draw(r, c.Name)
		}
		in.SignalLost = rapid.Bool().Draw(r, "lost")
		w := sentence.Scenario(m, &in, nil)
		if len(w.LeftOut) > 0 {
			r.Fatalf("left out %q of\n%s", w.LeftOut, w.Text)
		}
		text := []byte("Feature: a pose\n\n" + w.Text)
		record, problems := script.Run(m, []script.File{{Name: "pose.feature", Text: text}}, script.Selection{})
		if len(record.Checks) != len(m.Setup.Parts) {
			r.Fatalf("%d checks for %d parts: %v\n%s", len(record.Checks), len(m.Setup.Parts), problems, text)
		}
		for i := range record.Checks {
			if c := &record.Checks[i]; !c.Passed {
				r.Fatalf("%s: wanted %s, got %s", c.Sentence, c.Wanted, c.Got)
			}
		}
	})
}

func TestStandsFailsElsewhere(t *testing.T) {
	m := shipped(t, "bracken-20")
	in := pose(t, m, map[string]float64{"roll stick": 100})
	w := sentence.Scenario(m, &in, nil)
	other := strings.Replace(w.Text, "full right", "full left", -1)
	record, _ := script.Run(m, []script.File{{Name: "pose.feature", Text: []byte("Feature: a pose\n\n" + other)}}, script.Selection{})
	failed := 0
	for i := range record.Checks {
		if !record.Checks[i].Passed {
			failed++
		}
	}
	if failed != 2 { // both ailerons
		t.Errorf("%d sentences fail with the stick the other way, wanted 2", failed)
	}
}
