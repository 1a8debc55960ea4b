package chain

import (
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/result"
)

const placed = `hingeline: 1
name: Fennel
controls:
  roll stick: {axis: roll, trim: 10%}
  brake switch: [shut, open]
  rate switch: [low, high]
demands:
  roll:
    from: roll stick
    rates:
      - when: rate switch is high
        expo: 30%
        throw: 90%
      - throw: 50%
  brake:
    from: brake switch
    values:
      shut: 0%
      open: 60%
channels:
  1:
    mix:
      - roll
      - add: brake
        share: 100%
      - 3%
    limit: 95%
    reversed: true
    end_points:
      plus: 90%
      minus: 90%
    sub_trim: 30%
    pulse_us: {min: 1000, max: 2000}
  2: roll
surfaces:
  starboard spoiler:
    stops:
      up: 8°
    channel: 1
    servo:
      max_deg: 40
      plus_swings: aft
    linkage:
      arm_mm: 10
      horn_mm: 15
      pivots_mm: 60
      horn: below
  starboard aileron:
    servos:
      - channel: 2
        measured: {100%: 20° up}
      - channel: 2
        servo: aft
        linkage: {arm_mm: 10, horn_mm: 15, pivots_mm: 60, horn: below}
`

// TestStepsPointAtTheirLines reads a file in which almost every setting has a
// line of its own.
func TestStepsPointAtTheirLines(t *testing.T) {
	m, problems := airframes.Load("fennel.yaml", []byte(placed))
	if m == nil {
		t.Fatalf("the test's own airframe is refused: %+v", problems)
	}
	in := m.Plan.Rest()
	for i, c := range m.Setup.Controls {
		switch c.Name {
		case "roll stick":
			in.Position[i] = -50
		case "roll trim":
			in.Position[i] = -50
		case "brake switch", "rate switch":
			in.Position[i] = 1
		}
	}
	trace := m.Plan.Trace(&in)
	check := func(part int, want []string) {
		t.Helper()
		steps := Part(m, trace, part)
		for i, s := range steps {
			if i >= len(want) {
				t.Errorf("more steps than wanted: %+v", s)
				continue
			}
			if got := text(t, m, s.Place); !strings.HasPrefix(got, want[i]) || s.Place.File != "fennel.yaml" {
				t.Errorf("%s %s, %q, points at %q, want %q", s.Stage, s.Name, s.Text, got, want[i])
			}
		}
		if len(steps) < len(want) {
			t.Errorf("%d steps, want %d", len(steps), len(want))
		}
	}
	check(0, []string{
		"roll stick: {axis: roll", // control
		"expo: 30%",               // roll
		"throw: 90%",
		"roll stick: {axis: roll", // its trim
		"brake switch: [shut",     // control
		"open: 60%",               // brake
		"- roll",                  // mix
		"- add: brake",
		"- 3%",
		"reversed: true",
		"minus: 90%",
		"sub_trim: 30%",
		"1:", // pulse
		"plus_swings: aft",
		"horn: below",
		"starboard spoiler:",
	})
	check(1, []string{
		"roll stick: {axis: roll", "expo: 30%", "throw: 90%", "roll stick: {axis: roll",
		"2: roll", "2: roll",
		"measured: {100%: 20° up}",
		"servo: aft",
		"linkage: {arm_mm: 10",
		"starboard aileron:",
	})
	for doubt, want := range map[Doubt][]string{
		Direction: {"reversed: true", "- add: brake", "plus_swings: aft", "horn: below", "- roll", "- 3%"},
		Amount:    {"- add: brake", "- roll", "- 3%", "brake:", "throw: 90%", "expo: 30%"},
	} {
		var got []string
		for _, p := range LookAtPart(m, Case{Now: trace, Doubt: doubt}, 0) {
			got = append(got, text(t, m, p))
		}
		if !slices.EqualFunc(got, want, strings.HasPrefix) {
			t.Errorf("doubt %d: look at %q, want %q", doubt, got, want)
		}
	}
}

// text is the file's line at a place, from its first word on.
func text(t *testing.T, m *airframes.Model, p result.Place) string {
	t.Helper()
	line, ok := m.Source.Line(p.Line)
	if !ok {
		t.Fatalf("no line %d", p.Line)
	}
	return strings.TrimLeft(line, " ")
}
