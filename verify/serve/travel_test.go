package serve

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/verifytest"
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
	m := verifytest.Model(t, "notched.yaml", notched)
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
	s := newSubject(Now{Model: verifytest.Shipped(t, "bracken-20")}, 1)
	in := s.model.Plan.Rest()
	c := s.curve(partCalled(s.model, "rudder"), slices.IndexFunc(s.model.Setup.Controls, func(c mixcore.Control) bool { return c.Name == "yaw stick" }), &in)
	if len(c.Heads) != 2 || c.Heads[1] != "in every switch position" || !strings.HasPrefix(c.Dead[0], "No part") {
		t.Errorf("heads %q, dead %q", c.Heads, c.Dead)
	}
	if c.Rows[0][0] != "full left" || !strings.HasPrefix(c.Rows[0][1], "LEFT ") || !strings.HasPrefix(c.Rows[len(c.Rows)-1][1], "RIGHT ") {
		t.Errorf("rows %q", c.Rows)
	}
}

// gentle is a stick whose curve is flat at its middle, beside a flap that a lever moves by a
// fifth of a degree in all, evenly, and that the stick does not move.
const gentle = `hingeline: 1
name: Gentle
controls:
  roll stick: roll
  lever: lever
demands:
  roll: {from: roll stick, expo: 100%}
  flap: {from: lever}
channels:
  1: {name: aileron, mix: [{add: roll, share: 100%}]}
  2: {name: flap, mix: [{add: flap, share: 1%}]}
surfaces:
  aileron: {channel: 1, measured: {-120%: 24° up, 0%: 0°, 120%: 24° down}}
  flap: {channel: 2, measured: {-120%: 24° up, 0%: 0°, 120%: 24° down}}
`

func TestDeadIsToldApartFromGentle(t *testing.T) {
	m := verifytest.Model(t, "gentle.yaml", gentle)
	s := newSubject(Now{Model: m}, 1)
	in := s.model.Plan.Rest()
	deadOn := func(part string, control int) []stretch { return s.ways(partCalled(m, part), control, &in)[0].Dead }
	// 20° × x³ stays within half of unmoved, 0.0005°, from −x to x with x³ = 0.0005/40: 2.32 %.
	if d := deadOn("aileron", 0); len(d) != 1 || math.Abs(d[0].To-2.32) > 0.02 || d[0].From != -d[0].To {
		t.Errorf("dead of the flat middle: %+v, wanted −2.32 to 2.32", d)
	}
	if d := deadOn("flap", 1); len(d) != 0 {
		t.Errorf("dead of an even slope: %+v, wanted none", d)
	}
	if d := deadOn("flap", 0); len(d) != 1 || d[0].From != -100 || d[0].To != 100 {
		t.Errorf("dead of a stick that does nothing: %+v, wanted all of it", d)
	}
}

// TestShortDeadPartsAreFound moves a notch of just the least length along the stick: it is
// found wherever it is.
func TestShortDeadPartsAreFound(t *testing.T) {
	for from := -97.0; from < 94; from += 7.3 {
		to := from + 2*leastDead
		text := strings.Replace(gentle, "expo: 100%", fmt.Sprintf("curve: {-100%%: -90%%, %.1f%%: 0%%, %.1f%%: 0%%, 100%%: 90%%}", from, to), 1)
		m := verifytest.Model(t, "notch.yaml", text)
		s := newSubject(Now{Model: m}, 1)
		in := s.model.Plan.Rest()
		d := s.ways(partCalled(m, "aileron"), 0, &in)[0].Dead
		if len(d) != 1 || math.Abs(d[0].From-from) > 2*endsTo || math.Abs(d[0].To-to) > 2*endsTo {
			t.Errorf("dead: %+v, wanted %g to %g", d, from, to)
		}
	}
}

// TestTravelIsWhatThePlanComputes holds ways of random models against the plan, at the
// places looked at and in every dead part.
func TestTravelIsWhatThePlanComputes(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		m := verifytest.Model(r, "drawn.yaml", airframestest.Generate(r))
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
			if out.Parts[part].Place() != w.Y[i] {
				r.Fatalf("at %g it is %g, wanted %g", x, w.Y[i], out.Parts[part].Place())
			}
		}
		for _, d := range w.Dead {
			var seen []float64
			const looks = 41
			for k := range looks {
				in.Position[control] = d.From + endsTo + (d.To-d.From-2*endsTo)*float64(k)/(looks-1)
				m.Plan.Eval(&in, out)
				seen = append(seen, out.Parts[part].Place())
			}
			if by := slices.Max(seen) - slices.Min(seen); by > steadiness(slices.Max(w.Y)-slices.Min(w.Y)) {
				r.Fatalf("from %g to %g it moves by %g", d.From, d.To, by)
			}
			if low, high := m.Setup.Controls[control].Range(); d.To-d.From < (high-low)*leastDead/100-2*endsTo {
				r.Fatalf("from %g to %g is shorter than any dead part", d.From, d.To)
			}
		}
		for i := range len(w.Dead) - 1 {
			if w.Dead[i].To > w.Dead[i+1].From+endsTo {
				r.Fatalf("dead parts lie over each other: %+v", w.Dead)
			}
		}
	})
}

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
	m := verifytest.Model(t, "many.yaml", b.String())
	s := newSubject(Now{Model: m}, 1)
	in := m.Plan.Rest()
	if _, states, _ := s.states(0, &in); len(states) != 6 {
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
