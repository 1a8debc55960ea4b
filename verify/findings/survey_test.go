package findings

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/verifytest"
	"pgregory.net/rapid"
)

// TestSurveySeesWhateverARandomPoseShows holds the survey, where it tries every
// combination, to poses that it did not choose: a limit that bites at one of
// them must have been seen.
func TestSurveySeesWhateverARandomPoseShows(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		m := verifytest.Shipped(t, "bracken-20")
		setup := m.Setup
		setup.Channels = slices.Clone(setup.Channels)
		for i := range setup.Channels {
			c := &setup.Channels[i]
			c.Mix = slices.Clone(c.Mix)
			for j := range c.Mix {
				if c.Mix[j].Op == mixcore.Add {
					c.Mix[j].Share.Plus = mixcore.Percent(rapid.IntRange(-200, 200).Draw(rt, "plus"))
					c.Mix[j].Share.Minus = mixcore.Percent(rapid.IntRange(-200, 200).Draw(rt, "minus"))
				}
			}
			c.SubTrim = mixcore.Percent(rapid.IntRange(-20, 20).Draw(rt, "sub-trim"))
		}
		plan, faults := mixcore.Compile(setup)
		if faults != nil {
			return // a sub-trim that makes a linkage lock
		}
		m.Setup, m.Plan = setup, plan
		f := newFinder(m, budget)
		f.survey()
		in, out := plan.Rest(), plan.NewOutput()
		for range 20 {
			for i := range setup.Controls {
				low, high := setup.Controls[i].Range()
				in.Position[i] = float64(rapid.IntRange(int(low), int(high)).Draw(rt, setup.Controls[i].Name))
			}
			plan.Eval(&in, out)
			for i, o := range out.Channels {
				if o.Limits&mixcore.TravelLimit != 0 && !f.channels[i].travel.seen {
					rt.Fatalf("channel %d runs out of travel at %v, which was not seen", setup.Channels[i].Number, in.Position)
				}
				if o.Limits == mixcore.PulseLimit && !f.channels[i].pulse.seen && !f.channels[i].travel.seen {
					rt.Fatalf("channel %d reaches its pulse limit at %v, which was not seen", setup.Channels[i].Number, in.Position)
				}
			}
			for i, o := range out.Parts {
				if o.Limits&mixcore.AtStop != 0 && !f.parts[i].stop.seen {
					rt.Fatalf("%s reaches its stop at %v, which was not seen", setup.Parts[i].Name, in.Position)
				}
			}
		}
		// What was seen is there.
		for i, r := range f.channels {
			if !r.travel.seen {
				continue
			}
			if plan.Eval(&mixcore.Input{Position: r.travel.position}, out); out.Channels[i].Limits&mixcore.TravelLimit == 0 {
				rt.Fatalf("channel %d does not run out of travel at %v", setup.Channels[i].Number, r.travel.position)
			}
		}
	})
}

// large is a model with more combinations than can be tried: twelve sticks and
// levers, six switches, and channels that each of them reaches. The last channel
// runs out of travel only with every stick and lever at its end and every
// switch at its last position.
func large(t testing.TB) *airframes.Model {
	t.Helper()
	s := mixcore.Setup{Name: "large"}
	var all []mixcore.MixLine
	for i := range 12 {
		control := mixcore.Control{Name: fmt.Sprintf("lever %c", 'a'+i), Kind: mixcore.LeverControl}
		if i < 3 {
			control = mixcore.Control{Name: fmt.Sprintf("stick %c", 'a'+i), Kind: mixcore.AxisControl, Axis: mixcore.Axis(i + 1)}
		}
		s.Controls = append(s.Controls, control)
		s.Demands = append(s.Demands, mixcore.Demand{Name: fmt.Sprintf("demand %c", 'a'+i), From: i, Trim: mixcore.NoTrim,
			Rates: []mixcore.Rate{{Throw: mixcore.Both(100), Expo: 20}}})
		all = append(all, mixcore.MixLine{Op: mixcore.Add, Demand: i, Share: mixcore.Both(8)})
	}
	for i := range 6 {
		s.Controls = append(s.Controls, mixcore.Control{Name: fmt.Sprintf("switch %c", 'a'+i), Kind: mixcore.SwitchControl,
			Positions: []string{"down", "middle", "up"}})
		all = append(all, mixcore.MixLine{Op: mixcore.Fixed, Value: 1,
			When: &mixcore.Condition{Op: mixcore.AtPosition, Control: 12 + i, Position: 2}})
	}
	for number := 1; number <= mixcore.MaxChannels; number++ {
		mix := slices.Clone(all)
		if number < mixcore.MaxChannels {
			mix = mix[:number%5+12]
		}
		s.Channels = append(s.Channels, mixcore.Channel{Number: number, Mix: mix, Limit: 100, EndPoints: mixcore.Both(100),
			PulseMin: 1000, PulseMax: 2000, Failsafe: mixcore.Failsafe{Hold: true}})
		s.Parts = append(s.Parts, mixcore.Part{Name: fmt.Sprintf("extra %d", number), Kind: "other", Motion: mixcore.OutIn,
			Drives: []mixcore.Drive{{Channel: number - 1}}})
	}
	plan, faults := mixcore.Compile(s)
	if faults != nil {
		t.Fatal(faults)
	}
	return &airframes.Model{Name: "large", Setup: s, Plan: plan}
}

func TestFindStaysWithinItsBudgetAndStillFindsTheCorner(t *testing.T) {
	m := large(t)
	f := newFinder(m, budget)
	f.survey()
	f.idleControls()
	f.pairFindings()
	if f.left < 0 {
		t.Errorf("%d evaluations beyond the budget of %d", -f.left, budget)
	}
	if len(f.problems) != 0 {
		t.Errorf("says that something does nothing although not everything was tried: %+v", f.problems)
	}
	// 12·8 % + 6·1 % = 102 %; without the lever that adds least, 101 %, too.
	list := Find(m)
	if len(list) != 1 || list[0].Code != codeTravel || !strings.Contains(list[0].Message, "channel 32 runs out of travel") {
		t.Fatalf("found %+v, want that channel 32 runs out of travel", list)
	}
	if want := "its mix comes to 101 %"; !strings.Contains(list[0].Message, want) {
		t.Errorf("%q does not say %q: the simplest pose has one switch less", list[0].Message, want)
	}
	if want := "at worst 2 % is lost"; strings.Contains(list[0].Message, want) {
		t.Errorf("%q says %q, which is hardly more", list[0].Message, want)
	}
}

func BenchmarkFindShipped(b *testing.B) {
	m := verifytest.Shipped(b, "tarn-measured")
	for b.Loop() {
		Find(m)
	}
}

func BenchmarkFindLarge(b *testing.B) {
	m := large(b)
	for b.Loop() {
		Find(m)
	}
}
