package serve

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/mixcore"
)

// notched is a wing whose roll has a dead middle, and an end where the channel's limit
// bites: 200 % of the share is at the limit of 100 % from half stick on.
const notched = `hingeline: 1
name: Notched
controls:
  roll stick: roll
  rate switch: {switch: [low, high]}
  mode switch: {switch: [calm, wild]}
  gear switch: {switch: [up, down]}
demands:
  roll:
    from: roll stick
    rates:
      - {when: rate switch is high, throw: 100%}
      - {throw: 50%}
    curve: {-100%: -100%, -10%: 0%, 10%: 0%, 100%: 100%}
channels:
  1:
    name: aileron
    mix:
      - {add: roll, share: 160%}
  2:
    name: gear
    mix:
      - {fixed: 100%, when: gear switch is down}
surfaces:
  aileron: {channel: 1, measured: {-120%: 24° up, 0%: 0°, 120%: 24° down}}
extras:
  wheels: {kind: retract, channel: 2}
`

func notchedSubject(t *testing.T) *subject {
	t.Helper()
	m, problems := airframes.Load("notched.yaml", []byte(notched))
	if m == nil {
		t.Fatal(problems)
	}
	return newSubject(Now{Model: m}, 1)
}

func TestTravelMarksTheDeadPartsOfTheStick(t *testing.T) {
	s := notchedSubject(t)
	in := s.model.Plan.Rest()
	ways := s.ways(partCalled(s.model, "aileron"), 0, &in)
	if len(ways) != 2 || ways[0].When != "rate switch low" || !ways[0].Now || ways[1].When != "rate switch high" || ways[1].Now {
		t.Fatalf("ways %+v, wanted low (now) and high: the other switches do not bear on it", ways)
	}
	near := func(a, b float64) bool { return math.Abs(a-b) < 0.02 }
	// Low: 50 % × 160 % = 80 % at most: only the middle is dead. High: 160 % × (x−10)/90 is
	// 100 % at x = 10 + 90/1.6 = 66.25.
	low, high := ways[0].Dead, ways[1].Dead
	if len(low) != 1 || !near(low[0].From, -10) || !near(low[0].To, 10) || low[0].Because != "" {
		t.Errorf("dead on low rates: %+v, wanted −10 to 10", low)
	}
	if len(high) != 3 || !near(high[0].From, -100) || !near(high[0].To, -66.25) || !near(high[2].From, 66.25) || high[2].To != 100 ||
		high[2].Because != "beyond the channel's travel limit" {
		t.Errorf("dead on high rates: %+v, wanted beyond 66.25 either way, by the travel limit, and the middle", high)
	}
	words := strings.Join(s.deadWords(0, ways), " ")
	for _, want := range []string{"A: from 10 % left to 10 % right", "B: from 66.25 % right to full right (beyond the channel's travel limit)"} {
		if !strings.Contains(words, want) {
			t.Errorf("%q lacks %q", words, want)
		}
	}
}

func TestTravelOfWhatASwitchDoesNotReachIsOneWay(t *testing.T) {
	s := newSubject(Now{Model: shipped(t, "bracken-20")}, 1)
	in := s.model.Plan.Rest()
	c := s.curve(partCalled(s.model, "rudder"), slices.IndexFunc(s.model.Setup.Controls, func(c mixcore.Control) bool { return c.Name == "yaw stick" }), &in)
	if len(c.Heads) != 2 || c.Heads[1] != "in every switch position" || !strings.HasPrefix(c.Dead[0], "No part") {
		t.Errorf("heads %q, dead %q", c.Heads, c.Dead)
	}
	if c.Rows[0][0] != "full left" || !strings.HasPrefix(c.Rows[0][1], "LEFT ") || !strings.HasPrefix(c.Rows[len(c.Rows)-1][1], "RIGHT ") {
		t.Errorf("rows %q", c.Rows)
	}
}

// TestTravelIsWhatThePlanComputes holds ways of random models against the plan, at the
// places looked at and in every dead part.
func TestTravelIsWhatThePlanComputes(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		m, problems := airframes.Load("drawn.yaml", airframestest.Generate(r))
		if m == nil {
			r.Fatal(problems)
		}
		s := newSubject(Now{Model: m}, 1)
		part := rapid.IntRange(0, len(m.Setup.Parts)-1).Draw(r, "part")
		against := s.layout.Parts[part].Against
		if len(against) == 0 {
			return
		}
		control := rapid.SampledFrom(against).Draw(r, "control")
		in := m.Plan.Rest()
		out := m.Plan.NewOutput()
		ways := s.ways(part, control, &in)
		if !slices.ContainsFunc(ways, func(w way) bool { return w.Now }) {
			r.Fatal("no way is that of the switches as they stand")
		}
		w := ways[0]
		for i, x := range w.X {
			in.Position[control] = x
			m.Plan.Eval(&in, out)
			if s.place(part, out.Parts[part]) != w.Y[i] {
				r.Fatalf("at %g it is %g, wanted %g", x, w.Y[i], s.place(part, out.Parts[part]))
			}
		}
		for _, d := range w.Dead {
			var seen []float64
			for k := range 9 {
				in.Position[control] = d.From + roundedTo + (d.To-d.From-2*roundedTo)*float64(k)/8
				m.Plan.Eval(&in, out)
				seen = append(seen, s.place(part, out.Parts[part]))
			}
			if by := slices.Max(seen) - slices.Min(seen); by > unmoved {
				r.Fatalf("from %g to %g it moves by %g", d.From, d.To, by)
			}
		}
	})
}

// roundedTo is how fine the ends of a dead part are said, in percent of travel: something
// may change right at them.
const roundedTo = 0.01

func TestManySwitchesAreMovedOneByOne(t *testing.T) {
	var b strings.Builder
	b.WriteString("hingeline: 1\nname: Many\ncontrols:\n  roll stick: roll\n")
	for _, n := range []string{"a", "b", "c", "d", "e"} {
		b.WriteString("  switch " + n + ": {switch: [off, on]}\n")
	}
	b.WriteString("demands:\n  roll: {from: roll stick}\nchannels:\n  1:\n    mix:\n      - {add: roll, share: 20%}\n")
	for _, n := range []string{"a", "b", "c", "d", "e"} {
		b.WriteString("      - {add: roll, share: 10%, when: switch " + n + " is on}\n")
	}
	b.WriteString("surfaces:\n  aileron: {channel: 1, measured: {-120%: 24° up, 0%: 0°, 120%: 24° down}}\n")
	m, problems := airframes.Load("many.yaml", []byte(b.String()))
	if m == nil {
		t.Fatal(problems)
	}
	s := newSubject(Now{Model: m}, 1)
	in := m.Plan.Rest()
	if _, states := s.states(0, &in); len(states) != 6 {
		t.Errorf("%d states of 32, wanted as they stand and five", len(states))
	}
}

func TestLimitsAreShownAsTheyBite(t *testing.T) {
	s := notchedSubject(t)
	for _, c := range []struct {
		at, rates float64
		want      string
	}{{66, 1, ""}, {67, 1, "beyond the channel's travel limit"}, {100, 0, ""}, {-67, 1, "beyond the channel's travel limit"}} {
		h := hand{At: []float64{c.at, c.rates, 0, 0}, Against: -1}
		pose, err := s.pose(&h)
		if err != nil {
			t.Fatal(err)
		}
		a := (&page{}).answerTo(s, &h, pose)
		if got := strings.Join(a.Parts[0].Limits, ", "); got != c.want {
			t.Errorf("stick at %g, rates %g: limits %q, wanted %q", c.at, c.rates, got, c.want)
		}
	}
}
