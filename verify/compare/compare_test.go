package compare_test

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/features"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/compare"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

func load(t testing.TB, name, text string) *airframes.Model {
	t.Helper()
	m, problems := airframes.Load(name, []byte(text))
	if m == nil {
		t.Fatalf("%s: %+v\n%s", name, problems, text)
	}
	return m
}

func shipped(t testing.TB, name string) string {
	t.Helper()
	text, ok := airframes.ReadShipped(name)
	if !ok {
		t.Fatalf("no %s", name)
	}
	return string(text)
}

func swap(t testing.TB, text, old, new string) string {
	t.Helper()
	if n := strings.Count(text, old); n != 1 {
		t.Fatalf("%q stands %d times", old, n)
	}
	return strings.Replace(text, old, new, 1)
}

func both(t testing.TB, old, new compare.Side) *result.Comparison {
	t.Helper()
	c, problems := compare.Compare(context.Background(), old, new, compare.Options{Boxes: 200})
	if c == nil {
		t.Fatalf("%+v", problems)
	}
	return c
}

func partOf(t testing.TB, c *result.Comparison, name string) *result.PartChange {
	t.Helper()
	for i := range c.Parts {
		if c.Parts[i].Name == name {
			return &c.Parts[i]
		}
	}
	t.Fatalf("%s does not change: %+v", name, c.Parts)
	return nil
}

// byHand is a model whose angles can be worked out by hand: at 100 % of output the elevator
// is 20° up, in a straight line.
const byHand = `hingeline: 1
name: By hand
controls:
  pitch stick: {axis: pitch, trim: 10%}
  rate switch: [low, high]
  flap lever: lever
demands:
  pitch:
    from: pitch stick
    rates:
      - {when: rate switch is high, throw: 80%}
      - {throw: 50%}
  flap: flap lever
channels:
  1:
    mix:
      - pitch
      - {add: flap, share: -10%}
    failsafe: 0%
surfaces:
  elevator:
    channel: 1
    measured: {100%: 20° up}
`

// The share of flap goes from −10 to −15 %: 5 % of output with the lever fully up, and
// 20° for 100 % make 1°, DOWN, wherever the stick stands.
// The high throw goes from 80 to 90 %: 10 % of output, 2°, at high rates and full stick;
// the trim is not thrown and adds nothing to the difference.
// One degree more at 100 % of output is 0.9° at 90 %, which is all that 80 % and 10 % of
// trim come to.
// The failsafe goes from 0 to 25 %: 5° UP, at any position.
func TestLargestChangeByHand(t *testing.T) {
	old := load(t, "old.yaml", byHand)
	for _, row := range []struct {
		old, new string
		want     float64
		way      string
		pose     []string
		lost     bool
	}{
		{"share: -10%", "share: -15%", 1, "DOWN", []string{"flap lever 100 %"}, false},
		{"throw: 80%", "throw: 90%", 2, "", []string{"pitch stick full", "rate switch high"}, false},
		{"throw: 50%", "throw: {back: 50%, forward: 40%}", 2, "UP", []string{"pitch stick full forward"}, false},
		{"failsafe: 0%", "failsafe: 25%", 5, "UP", []string{"signal lost"}, true},
		{"measured: {100%: 20° up}", "measured: {100%: 21° up, 0%: 0°, -100%: 20° down}", 0.9, "UP", []string{"pitch stick full back", "pitch trim full back", "rate switch high"}, false},
		{"mix:\n      - pitch", "sub_trim: 1%\n    mix:\n      - pitch", 0.2, "UP", nil, false},
	} {
		c := both(t, compare.Side{Model: old}, compare.Side{Model: load(t, "new.yaml", swap(t, byHand, row.old, row.new))})
		p := partOf(t, c, "elevator")
		a := p.With
		if row.lost {
			a = p.Lost
			if p.With != nil {
				t.Errorf("%s: with the signal %+v", row.new, p.With)
			}
		}
		if a == nil || math.Abs(a.By-row.want) > 1e-9 || !a.Exact || row.way != "" && a.Way != row.way {
			t.Errorf("%s: got %+v, want %v %s", row.new, a, row.want, row.way)
			continue
		}
		for i, want := range row.pose {
			if len(a.Pose) != len(row.pose) || !strings.HasPrefix(a.Pose[i], want) {
				t.Errorf("%s: at %q, want %q", row.new, a.Pose, row.pose)
			}
		}
	}
}

// anywhere is a position of the controls, often at an end.
func anywhere(r *rand.Rand, s *mixcore.Setup) mixcore.Input {
	in := mixcore.Input{}
	for i := range s.Controls {
		c := &s.Controls[i]
		low, high := c.Range()
		at := low + r.Float64()*(high-low)
		switch {
		case c.Kind == mixcore.SwitchControl:
			at = float64(r.IntN(len(c.Positions)))
		case r.IntN(3) > 0:
			at = []float64{low, high, 0, c.Rest()}[r.IntN(4)]
		}
		in.Position = append(in.Position, at)
	}
	in.SignalLost = r.IntN(4) == 0
	return in
}

// No sample is further apart than what is said, or than what is said to be the most.
func TestLargestChangeIsNotContradictedBySamples(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for _, name := range []string{"bracken-20", "garrow-twin", "skein-wing"} {
		m := load(t, name, shipped(t, name))
		seen := map[string]bool{}
		for _, wrong := range mistake.All(m, mistake.Options{}) {
			variant, faults := wrong.Variant(m)
			if faults != nil || seen[wrong.Kind.Code] {
				continue
			}
			seen[wrong.Kind.Code] = true
			c := both(t, compare.Side{Model: m}, compare.Side{Model: variant})
			x, y := m.Plan.NewOutput(), variant.Plan.NewOutput()
			worst := make([][2]float64, len(m.Setup.Parts))
			for range 1000 {
				in := anywhere(r, &m.Setup)
				m.Plan.Eval(&in, x)
				variant.Plan.Eval(&in, y)
				for i := range m.Setup.Parts {
					lost := 0
					if in.SignalLost {
						lost = 1
					}
					worst[i][lost] = math.Max(worst[i][lost], math.Abs(x.Parts[i].Place()-y.Parts[i].Place()))
				}
			}
			for i := range m.Setup.Parts {
				part := m.Setup.Parts[i].Name
				if slices.Contains(c.Same, part) {
					if w := max(worst[i][0], worst[i][1]); w > 2e-6 {
						t.Errorf("%s: %s: %s is the same, but %v apart", name, wrong.Text, part, w)
					}
					continue
				}
				p := partOf(t, c, part)
				for k, a := range []*result.Apart{p.With, p.Lost} {
					if a == nil {
						if k == 0 && worst[i][k] > 2e-6 {
							t.Errorf("%s: %s: %s does not change, but %v apart", name, wrong.Text, part, worst[i][k])
						}
						continue
					}
					if worst[i][k] > a.AtMost+1e-6 || a.Exact && worst[i][k] > a.By+0.051 {
						t.Errorf("%s: %s: %s: %v apart, said %+v", name, wrong.Text, part, worst[i][k], a)
					}
				}
			}
		}
	}
}

func scriptOf(t testing.TB, name string) script.File {
	t.Helper()
	text, ok := features.Read(name)
	if !ok {
		t.Fatal(name)
	}
	return script.File{Name: name + ".feature", Text: text}
}

// Where the controls differ, the parts are compared over what both have: positions of a
// switch that only one has are left out, and a control that only one has is left at rest.
func TestControlsThatDiffer(t *testing.T) {
	old := load(t, "old.yaml", byHand)
	for _, row := range []struct {
		name, old, new string
		apart          []string
		by             float64 // 0: nothing changes
		pose           []string
	}{
		{"a new position, with a rate of its own", "rate switch: [low, high]", "rate switch: [low, mid, high]",
			[]string{"only one set-up has rate switch mid: not compared there"}, 0, nil},
		{"positions in another order", "rate switch: [low, high]", "rate switch: [high, low]",
			[]string{"rate switch rests at high now, not at low; both were compared at the same places"}, 0, nil},
		{"a new control that does something", "flap lever: lever", "flap lever: lever\n  tow switch: [shut, open]",
			[]string{"only the newer set-up has the tow switch; it was left at shut"}, 0, nil},
		{"a control that is called otherwise", "flap lever", "brake lever", nil, 0, nil},
		{"another kind of control", "flap lever: lever", "flap lever: yaw",
			[]string{"only the older set-up has the flap lever; it was left at 0 %", "only the newer set-up has the flap lever; it was left at centred"}, 0, nil},
		{"a position that is called otherwise", "low, high]", "low, steep]", nil, 0, nil},
	} {
		text := strings.ReplaceAll(byHand, row.old, row.new)
		if strings.Contains(row.new, "steep") {
			text = strings.ReplaceAll(text, "is high", "is steep")
		}
		if strings.Contains(row.new, "tow") {
			text = strings.Replace(text, "      - pitch\n", "      - pitch\n      - {fixed: 20%, when: tow switch is open}\n", 1)
		}
		c := both(t, compare.Side{Model: old}, compare.Side{Model: load(t, "new.yaml", text)})
		if len(c.SetUp) == 0 || !slices.Equal(c.Apart, row.apart) {
			t.Errorf("%s: %v; got %q, want %q", row.name, c.SetUp, c.Apart, row.apart)
		}
		if len(c.Parts) > 0 || !slices.Equal(c.Same, []string{"elevator"}) {
			t.Errorf("%s: %+v", row.name, c.Parts)
		}
	}
}

// With the switch's positions the other way round and its rates as they were, the
// difference is at the same position, by its name.
func TestPositionsAreMatchedByName(t *testing.T) {
	text := strings.Replace(byHand, "[low, high]", "[high, low]", 1)
	text = strings.Replace(text, "throw: 80%", "throw: 70%", 1)
	c := both(t, compare.Side{Model: load(t, "old.yaml", byHand)}, compare.Side{Model: load(t, "new.yaml", text)})
	a := partOf(t, c, "elevator").With
	if a == nil || math.Abs(a.By-2) > 1e-9 || !a.Exact || len(a.Pose) != 1 || !strings.HasPrefix(a.Pose[0], "pitch stick full") {
		t.Errorf("got %+v", a) // high is where the newer one rests, so that the pose does not name it
	}
}

func TestPartsThatComeAndGo(t *testing.T) {
	text := byHand + "extras:\n  hook: {channel: 1}\n"
	old, new := load(t, "old.yaml", byHand), load(t, "new.yaml", text)
	c := both(t, compare.Side{Model: old}, compare.Side{Model: new})
	if p := partOf(t, c, "hook"); p.Note != "only the newer set-up has it" || p.With != nil {
		t.Errorf("got %+v", p)
	}
	c = both(t, compare.Side{Model: new}, compare.Side{Model: old})
	if p := partOf(t, c, "hook"); p.Note != "only the older set-up has it" {
		t.Errorf("got %+v", p)
	}
	moved := strings.Replace(text, "  hook: {channel: 1}", "  elevator: {kind: hook, channel: 1}", 1)
	moved = strings.Replace(moved, "surfaces:\n  elevator:", "surfaces:\n  tail elevator:", 1)
	c = both(t, compare.Side{Model: old}, compare.Side{Model: load(t, "moved.yaml", moved)})
	if p := partOf(t, c, "elevator"); p.Note != "it moves in another way now" {
		t.Errorf("got %+v", p)
	}
}

// A new name for a control, used all over, changes nothing at the surfaces, and the newer
// script is held against the older set-up all the same.
func TestScriptsAreHeldAgainstBoth(t *testing.T) {
	m := load(t, "bracken-20", shipped(t, "bracken-20"))
	s := scriptOf(t, "bracken-20")
	renamed := load(t, "renamed", strings.ReplaceAll(shipped(t, "bracken-20"), "motor switch", "spark switch"))
	words := script.File{Name: "renamed.feature", Text: []byte(strings.ReplaceAll(string(s.Text), "motor switch", "spark switch"))}
	c := both(t, compare.Side{Model: m, Scripts: []script.File{s}}, compare.Side{Model: renamed, Scripts: []script.File{words}})
	if len(c.SetUp) != 1 || len(c.Parts) > 0 || len(c.Notes) > 0 || c.Verdict != result.NoneWorse || c.Both < 200 {
		t.Errorf("%v, %v, %q, %s, %d", c.SetUp, c.Parts, c.Notes, c.Verdict, c.Both)
	}
	worse := load(t, "worse", swap(t, shipped(t, "bracken-20"), "arm_mm: 13, horn_mm: 20", "arm_mm: 20, horn_mm: 20"))
	c = both(t, compare.Side{Model: m, Scripts: []script.File{s}}, compare.Side{Model: worse, Scripts: []script.File{s}})
	if n, _ := c.Counts(); n == 0 || c.Verdict != result.SomeWorse || len(c.Parts) != 1 || !c.Checks[0].Worse() {
		t.Errorf("%d worse, %s, %+v", n, c.Verdict, c.Parts)
	}
	back := both(t, compare.Side{Model: worse, Scripts: []script.File{s}}, compare.Side{Model: m, Scripts: []script.File{s}})
	if n, better := back.Counts(); n != 0 || better == 0 || back.Verdict != result.NoneWorse {
		t.Errorf("%d worse, %d better, %s", n, better, back.Verdict)
	}
}

const oneCheck = "Feature: F\n  Scenario: S\n    Given the flap lever is at 100%\n    Then the elevator is 2° down ± 0.5°\n"

// A check that the newer script no longer asks still counts: it passed, and would fail.
func TestChecksThatWereTakenOut(t *testing.T) {
	old := load(t, "old.yaml", byHand)
	new := load(t, "new.yaml", swap(t, byHand, "share: -10%", "share: -15%"))
	other := "Feature: F\n  Scenario: S\n    Then the elevator is at neutral\n"
	c := both(t, compare.Side{Model: old, Scripts: []script.File{{Name: "a", Text: []byte(oneCheck)}}},
		compare.Side{Model: new, Scripts: []script.File{{Name: "b", Text: []byte(other)}}})
	if n, _ := c.Counts(); n != 1 || c.Verdict != result.SomeWorse || c.Checks[0].Script != "older" || c.Both != 2 || len(c.Asked) != 2 {
		t.Errorf("%+v %s %d %v", c.Checks, c.Verdict, c.Both, c.Asked)
	}
	c = both(t, compare.Side{Model: old}, compare.Side{Model: new, Scripts: []script.File{{Name: "a", Text: []byte(oneCheck)}}})
	if n, _ := c.Counts(); n != 1 || len(c.Checks) != 1 || !slices.Equal(c.Notes, []string{"the older set-up has no script"}) {
		t.Errorf("%+v %q", c.Checks, c.Notes)
	}
	c = both(t, compare.Side{Model: old}, compare.Side{Model: new})
	if c.Verdict != result.NoneCompared {
		t.Error(c.Verdict)
	}
	names := "Feature: F\n  Scenario: S\n    Given the tow switch is open\n    Then the elevator is at neutral\n"
	tow := load(t, "tow.yaml", strings.Replace(swap(t, byHand, "flap lever: lever", "flap lever: lever\n  tow switch: [shut, open]"),
		"      - pitch\n", "      - pitch\n      - {fixed: 0.001%, when: tow switch is open}\n", 1))
	c = both(t, compare.Side{Model: old, Scripts: []script.File{{Name: "a", Text: []byte(oneCheck)}}},
		compare.Side{Model: tow, Scripts: []script.File{{Name: "b", Text: []byte(names)}}})
	if len(c.Notes) != 1 || !strings.HasPrefix(c.Notes[0], "the newer script cannot be held against the older set-up: line 3: ") || c.Both != 1 {
		t.Errorf("%q %d", c.Notes, c.Both)
	}
}

func TestScriptsWithMistakesAreRefused(t *testing.T) {
	m := load(t, "old.yaml", byHand)
	bad := []script.File{{Name: "a", Text: []byte("Feature: F\n  Scenario: S\n    Then the wing claps\n")}}
	for _, sides := range [][2]compare.Side{{{Model: m, Scripts: bad}, {Model: m}}, {{Model: m}, {Model: m, Scripts: bad}}, {{Model: m, Scripts: bad}, {Model: m, Scripts: bad}}} {
		if c, problems := compare.Compare(context.Background(), sides[0], sides[1], compare.Options{}); c != nil || len(problems) == 0 {
			t.Errorf("%+v %v", c, problems)
		}
	}
}

// What was not looked at to the end is not said to be the same, nor less than it is.
func TestStoppedComparisonProvesNothing(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	m := load(t, "old.yaml", shipped(t, "bracken-20"))
	new := load(t, "new.yaml", swap(t, shipped(t, "bracken-20"), "throw: 90%, expo: 30%", "throw: 90%, expo: -30%"))
	whole := both(t, compare.Side{Model: m}, compare.Side{Model: new})
	c, _ := compare.Compare(ctx, compare.Side{Model: m}, compare.Side{Model: new}, compare.Options{})
	for i := range whole.Parts {
		name := whole.Parts[i].Name
		if a := partOf(t, c, name).With; a == nil || a.AtMost < whole.Parts[i].With.By {
			t.Errorf("%s: got %+v, want %+v", name, a, whole.Parts[i].With)
		}
	}
}
