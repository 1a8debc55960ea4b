package purpose_test

import (
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/purpose"
)

func lever(detents ...mixcore.Detent) *mixcore.Control {
	return &mixcore.Control{Name: "lever", Kind: mixcore.LeverControl, Detents: detents}
}

func at(name string, percent mixcore.Percent) mixcore.Detent {
	return mixcore.Detent{Name: name, At: percent}
}

func TestOfGoesByNames(t *testing.T) {
	for name, want := range map[string]purpose.Purpose{
		"throttle": purpose.Power, "flap lever": purpose.Flaps, "Brake-Lever": purpose.Brakes, "spoiler switch": purpose.Brakes,
		"camber slider": purpose.Camber, "left slider": purpose.Other, "motor switch": purpose.Other, "motor lever": purpose.Power,
	} {
		kind := mixcore.LeverControl
		if strings.HasSuffix(name, "switch") {
			kind = mixcore.SwitchControl
		}
		m := &airframes.Model{Setup: mixcore.Setup{Controls: []mixcore.Control{{Name: name, Kind: kind}}}}
		if got := purpose.Of(m, 0); got != want {
			t.Errorf("%s: got %d, want %d", name, got, want)
		}
	}
	m := &airframes.Model{ControlAka: [][]string{{"gas"}, nil}, Setup: mixcore.Setup{Controls: []mixcore.Control{
		{Name: "left lever", Kind: mixcore.LeverControl}, {Name: "slider", Kind: mixcore.LeverControl, Detents: []mixcore.Detent{at("flaps up", 0)}}}}}
	if got := purpose.Of(m, 0); got != purpose.Power {
		t.Errorf("by its aka: got %d", got)
	}
	if got := purpose.Of(m, 1); got != purpose.Flaps {
		t.Errorf("by its detents: got %d", got)
	}
}

func TestOpensByTheNamesOfPlaces(t *testing.T) {
	up := func(detents ...mixcore.Detent) *mixcore.Control { return lever(detents...) }
	toggle := func(positions ...string) *mixcore.Control {
		return &mixcore.Control{Name: "switch", Kind: mixcore.SwitchControl, Positions: positions}
	}
	for _, c := range []struct {
		name     string
		control  *mixcore.Control
		from, to float64
		scale    purpose.Scale
		want     int
	}{
		{"no detents", up(), 0, 50, purpose.Lowered, 1},
		{"no detents, back", up(), 50, 0, purpose.Lowered, -1},
		{"parked to landing", up(at("parked", 0), at("landing", 100)), 0, 100, purpose.Lowered, 1},
		{"the other way round", up(at("landing", 0), at("takeoff", 50), at("up", 100)), 0, 50, purpose.Lowered, -1},
		{"other way round, no place", up(at("landing", 0), at("up", 100)), 20, 60, purpose.Lowered, -1},
		{"flaps up", up(at("flaps up", 0), at("half flaps", 50), at("full flaps", 100)), 50, 100, purpose.Lowered, 1},
		{"take-off", up(at("clean", 0), at("take-off", 50)), 0, 50, purpose.Lowered, 1},
		{"crow below normal", up(at("crow", 0), at("normal", 100)), 0, 100, purpose.Lowered, -1},
		{"an unknown name", up(at("first", 0), at("second", 100)), 0, 100, purpose.Lowered, 0},
		{"one unknown name", up(at("up", 0), at("second", 100)), 0, 100, purpose.Lowered, 0},
		{"known names beside an unknown one", up(at("up", 0), at("half", 50), at("second", 100)), 0, 50, purpose.Lowered, 1},
		{"a place without a name beside an unknown one", up(at("up", 0), at("second", 50)), 0, 100, purpose.Lowered, 0},
		{"no order", up(at("up", 0), at("landing", 50), at("clean", 100)), 20, 70, purpose.Lowered, 0},
		{"names that disagree", up(at("flaps up full", 0), at("up", 100)), 0, 100, purpose.Lowered, 0},
		{"near a detent", up(at("landing", 0), at("up", 100)), 0.5, 99.5, purpose.Lowered, -1},
		{"one detent", up(at("idle", 5)), 5, 100, purpose.Opened, 1},
		{"one detent at the top", up(at("idle", 95)), 95, 0, purpose.Opened, 1},
		{"one detent that says nothing", up(at("cruise", 40)), 40, 100, purpose.Opened, 0},
		{"spoilers up", up(at("down", 0), at("up", 100)), 0, 100, purpose.ForBrakes([]string{"spoiler", "lever"}), 1},
		{"spoilers down", toggle("up", "down"), 0, 1, purpose.ForBrakes([]string{"spoilers"}), -1},
		{"brakes up", up(at("down", 0), at("up", 100)), 0, 100, purpose.ForBrakes([]string{"brake", "lever"}), 0},
		{"brakes open", up(at("closed", 0), at("open", 100)), 0, 100, purpose.ForBrakes([]string{"brake", "lever"}), 1},
		{"switch in and out", toggle("out", "in"), 0, 1, purpose.Outward, -1},
		{"switch without names known", toggle("one", "two"), 0, 1, purpose.Outward, 0},
		{"nowhere", up(), 50, 50, purpose.Lowered, 0},
	} {
		if got := purpose.Opens(c.control, c.from, c.to, c.scale); got != c.want {
			t.Errorf("%s: got %d, want %d", c.name, got, c.want)
		}
	}
}

func TestIsOutOfNames(t *testing.T) {
	for name, want := range map[string][2]bool{
		"up": {false, true}, "gear down": {true, true}, "half": {false, false}, "elsewhere": {false, false}, "": {false, false},
	} {
		if out, known := purpose.Outward.IsOut(name); out != want[0] || known != want[1] {
			t.Errorf("%q: got %v, %v; want %v", name, out, known, want)
		}
	}
}
