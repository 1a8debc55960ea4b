package airframes_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/airframes/diag"
)

const placed = `hingeline: 1
name: Fennel
controls:
  roll stick: {axis: roll, trim: 8%}
  rate switch: [low, high]
phases:
  quick: rate switch is high
demands:
  roll:
    from: roll stick
    rates:
      - {when: quick, throw: 90%}
      - {throw: 50%, expo: 15%}
  rate: {from: rate switch, throw: 10%, values: {low: 0%, high: 100%}}
channels:
  7: {mix: [roll, {add: roll, share: 20%, when: quick}, 3%], reversed: true}
  3: roll
surfaces:
  Port flap:
    channel: 7
    measured: {100%: 20° down}
  elevator:
    servos:
      - {channel: 3, measured: {100%: 20° down}}
    aft_mm: 700
extras:
  Port drag rudder: {channel: 3, out_mm: 500}
wing: {span_mm: 1200, root_chord_mm: 200, tip_chord_mm: 150}
`

func textAt(t *testing.T, m *airframes.Model, p diag.Place) string {
	t.Helper()
	line, ok := m.Source.Line(p.Line)
	if !ok || p.Column < 1 {
		t.Fatalf("%+v is no place in the file", p)
	}
	runes := []rune(line)
	return string(runes[p.Column-1 : p.Column-1+max(p.Width, 1)])
}

func TestLoadKeepsThePlacesOfFields(t *testing.T) {
	m := read(t, placed)
	for path, want := range map[string]struct {
		line int
		text string
	}{
		"hingeline": {1, "hingeline"}, "controls": {3, "controls"}, "controls.roll stick": {4, "roll stick"},
		"controls.roll stick.trim": {4, "trim"}, "phases.quick": {7, "quick"},
		"demands.roll.rates.0": {12, "{"}, "demands.roll.rates.0.throw": {12, "throw"}, "demands.roll.rates.1.expo": {13, "expo"},
		"demands.rate.values.high": {14, "high"}, "channels.7": {16, "7"}, "channels.7.reversed": {16, "reversed"},
		"channels.7.mix.0": {16, "roll"}, "channels.7.mix.1": {16, "{"}, "channels.7.mix.1.share": {16, "share"}, "channels.7.mix.2": {16, "3%"},
		"channels.3.mix": {17, "roll"}, "channels.3.mix.0": {17, "roll"}, "surfaces.Port flap.channel": {20, "channel"},
		"surfaces.Port flap.measured.100%": {21, "100%"}, "surfaces.elevator.servos.0.channel": {24, "channel"},
		"surfaces.elevator.aft_mm": {25, "aft_mm"}, "extras.Port drag rudder.out_mm": {27, "out_mm"}, "wing": {28, "wing"}, "wing.tip_chord_mm": {28, "tip_chord_mm"},
	} {
		at, ok := m.Places.Fields[path]
		if !ok {
			t.Errorf("%s has no place", path)
			continue
		}
		if got := textAt(t, m, at); at.Line != want.line || got != want.text || at.File != "airframe.yaml" {
			t.Errorf("%s is at %+v, %q, want line %d, %q", path, at, got, want.line, want.text)
		}
	}
}

func TestLoadKeepsThePlacesOfThings(t *testing.T) {
	m := read(t, placed)
	var got []string
	add := func(sort string, places []diag.Place) {
		for _, p := range places {
			got = append(got, fmt.Sprintf("%s %d %s", sort, p.Line, textAt(t, m, p)))
		}
	}
	add("control", m.Places.Controls)
	add("phase", m.Places.Phases)
	add("demand", m.Places.Demands)
	add("channel", m.Places.Channels)
	add("part", m.Places.Parts)
	for _, places := range m.Places.Rates {
		add("rate", places)
	}
	for _, places := range m.Places.Mix {
		add("line", places)
	}
	want := "control 4 roll stick, control 4 trim, control 5 rate switch, phase 7 quick, demand 9 roll, demand 14 rate, " +
		"channel 17 3, channel 16 7, part 19 Port flap, part 22 elevator, part 27 Port drag rudder, " +
		"rate 12 {, rate 13 {, rate 14 throw, line 17 roll, line 16 roll, line 16 {, line 16 3%"
	if joined := strings.Join(got, ", "); joined != want {
		t.Errorf("got\n%s\nwant\n%s", joined, want)
	}
}

// Places run parallel to what they are the places of, and lie in the file.
func TestLoadPlacesEverything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, problems := airframes.Load("f", airframestest.Generate(t))
		if m == nil {
			t.Fatalf("refused: %+v", problems)
		}
		s, p := m.Setup, m.Places
		if len(p.Controls) != len(s.Controls) || len(p.Phases) != len(s.Phases) || len(p.Demands) != len(s.Demands) || len(p.Channels) != len(s.Channels) ||
			len(p.Parts) != len(s.Parts) || len(p.Rates) != len(s.Demands) || len(p.Mix) != len(s.Channels) || len(m.ControlAka) != len(s.Controls) || len(m.PartAka) != len(s.Parts) {
			t.Fatal("the places do not run parallel to the set-up")
		}
		for i, d := range s.Demands {
			if len(p.Rates[i]) != len(d.Rates) {
				t.Fatalf("demand %s: %d rates at %d places", d.Name, len(d.Rates), len(p.Rates[i]))
			}
		}
		for i, c := range s.Channels {
			if len(p.Mix[i]) != len(c.Mix) {
				t.Fatalf("channel %d: %d lines at %d places", c.Number, len(c.Mix), len(p.Mix[i]))
			}
		}
		for path, at := range p.Fields {
			line, ok := m.Source.Line(at.Line)
			if !ok || at.Column < 1 || at.Column > len([]rune(line)) {
				t.Fatalf("%s is at %+v, outside the file", path, at)
			}
		}
	})
}
