package fit

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
)

const sorrel = `# Sorrel, written down in a hurry
hingeline: 1
name: Sorrel
controls: {roll stick: roll, pitch stick: pitch, yaw stick: yaw}
demands: {roll: roll stick, pitch: pitch stick, yaw: yaw stick}
channels: {1: roll, 2: pitch, 3: yaw, 4: roll}
surfaces:
  port aileron:   # the hole was guessed
    channel: 1
    servo: aft
    linkage: {arm_mm: 10 mm, horn_mm: 16, pivots_mm: 60, horn: below}   # measured in spring
  elevator:
    channel: 2
    servo: aft
    linkage:
      arm_mm: 10     # outermost hole
      horn_mm: 18
      pivots_mm: 80
      horn: below
  rudder: {channel: 3, measured: {-100%: 20° right, 0%: 0°, 100%: 22° left}}   # gauge
  starboard aileron:
    channel: 4
    servo: {plus_swings: fore, swing_deg: 45}
    linkage: {"arm_mm": "10", horn_mm: 16,
      pivots_mm: 60, arm_deg: 85°, horn: below}
`

func sorrelModel(t *testing.T, text string) *airframes.Model {
	t.Helper()
	m, problems := airframes.Load("sorrel.yaml", []byte(text))
	if m == nil {
		t.Fatalf("%+v", problems)
	}
	return m
}

func partNamed(m *airframes.Model, name string) int {
	return slices.IndexFunc(m.Setup.Parts, func(p mixcore.Part) bool { return p.Name == name })
}

// linkageWith is a part's linkage with another arm and lean, and a pushrod.
func linkageWith(m *airframes.Model, name string, arm, lean, rod float64) Correction {
	part := partNamed(m, name)
	g := *m.Setup.Parts[part].Drives[0].Linkage
	g.Arm, g.ArmDeg, g.Pushrod = arm, lean, rod
	return Correction{Part: part, Linkage: &g}
}

// Only the values change; comments, spaces and order stay.
func TestRewriteKeepsTheText(t *testing.T) {
	for _, ending := range []string{"\n", "\r\n"} {
		m := sorrelModel(t, strings.ReplaceAll(sorrel, "\n", ending))
		got, err := Rewrite(m, []Correction{
			linkageWith(m, "port aileron", 11.25, 86.5, 0),
			linkageWith(m, "elevator", 10, 93, 81.2),
			linkageWith(m, "starboard aileron", 9.5, 80, 0),
			{Part: partNamed(m, "rudder"), Table: []mixcore.Point{{X: -100, Y: -18.5}, {X: 0, Y: 0.4}, {X: 48.2, Y: 11}, {X: 100, Y: 23}}},
		})
		if err != nil {
			t.Fatal(err)
		}
		want := strings.NewReplacer(
			"{arm_mm: 10 mm, horn_mm: 16, pivots_mm: 60, horn: below}", "{arm_mm: 11.25 mm, arm_deg: 86.5, horn_mm: 16, pivots_mm: 60, horn: below}",
			"      arm_mm: 10     # outermost", "      arm_deg: 93\n      pushrod_mm: 81.2\n      arm_mm: 10     # outermost",
			"{-100%: 20° right, 0%: 0°, 100%: 22° left}", "{-100%: 18.5° right, 0%: 0.4° left, 48.2%: 11° left, 100%: 23° left}",
			`"arm_mm": "10"`, `"arm_mm": "9.5"`, "arm_deg: 85°", "arm_deg: 80°",
		).Replace(sorrel)
		if want = strings.ReplaceAll(want, "\n", ending); string(got) != want {
			t.Errorf("got\n%s\nwant\n%s", got, want)
		}
	}
}

// What cannot be changed by itself is not changed at all.
func TestRewriteRefusesWhatWouldChangeMore(t *testing.T) {
	m := sorrelModel(t, strings.Replace(sorrel, "0%: 0°, 100%", "0 %: 0°, 100 %", 1))
	if got, err := Rewrite(m, []Correction{{Part: partNamed(m, "rudder"), Table: []mixcore.Point{{X: -100, Y: -18}, {X: 100, Y: 23}}}}); err == nil {
		t.Errorf("a point inside a table was lost:\n%s", got)
	}
	m = sorrelModel(t, sorrel)
	if got, err := Rewrite(m, []Correction{linkageWith(m, "port aileron", 40, 90, 0)}); err == nil {
		t.Errorf("a linkage that locks was written:\n%s", got)
	}
}

func TestTableMovesToWhatWasMeasured(t *testing.T) {
	old := []mixcore.Point{{X: -100, Y: -20}, {X: 0, Y: 0}, {X: 100, Y: 20}}
	got, err := Table(old, []Point{{-90, -20}, {0, 1}, {50, 12}, {90, 20}, {90, 21}})
	if err != nil {
		t.Fatal(err)
	}
	want := []mixcore.Point{{X: -100, Y: -22}, {X: -90, Y: -20}, {X: 0, Y: 1}, {X: 50, Y: 12}, {X: 90, Y: 20.5}, {X: 100, Y: 22.5}}
	if !slices.EqualFunc(got.Table, want, nearPoint) || RMS(got.After) > 0.05 || math.Abs(RMS(got.Before)-RMS([]float64{2, -1, -2, -2.5})) > 1e-9 {
		t.Errorf("got %+v, wanted %v", got, want)
	}
	if _, err := Table(old, []Point{{-90, 20}, {0, 0}, {90, -20}}); err != ErrOtherWay {
		t.Errorf("the other way: %v", err)
	}
	if _, err := Table(old, []Point{{-90, -18}, {0, 8}, {40, 2}, {90, 20}}); err != ErrTurnsBack {
		t.Errorf("turning back: %v", err)
	}
}

// Of several servos on one surface each is corrected where it is written, with its horn's
// lean, and the others stay.
func TestRewriteOfOneOfSeveralServos(t *testing.T) {
	const head = "hingeline: 1\nname: Sorrel\ncontrols: {pitch stick: pitch}\ndemands: {pitch: pitch stick}\nchannels: {1: pitch, 2: pitch}\nsurfaces:\n  elevator:\n    servos:\n"
	const one = "      - {channel: 1, servo: aft, linkage: {arm_mm: 10, horn_mm: 16, pivots_mm: 60, horn: below}}\n"
	const two = "      - channel: 2   # the far one\n        servo: aft\n        linkage:\n          arm_mm: 10\n          horn_mm: 16\n          horn_deg: 95   # about\n          pivots_mm: 60\n          horn: below\n"
	const table = "      - {channel: 2, measured: {-100%: 20° up, 100%: 22° down}}\n"
	lean := func(m *airframes.Model, servo int, arm, horn float64) Correction {
		g := *m.Setup.Parts[0].Drives[servo].Linkage
		g.Arm, g.HornDeg = arm, horn
		return Correction{Servo: servo, Linkage: &g}
	}
	for _, c := range []struct {
		name, was, is string
		list          func(m *airframes.Model) []Correction
	}{
		{"the first", one + two, strings.Replace(one, "arm_mm: 10", "arm_mm: 11.5, horn_deg: 84", 1) + two,
			func(m *airframes.Model) []Correction { return []Correction{lean(m, 0, 11.5, 84)} }},
		{"the second", one + two, one + strings.NewReplacer("arm_mm: 10", "arm_mm: 9", "horn_deg: 95 ", "horn_deg: 101.5 ").Replace(two),
			func(m *airframes.Model) []Correction { return []Correction{lean(m, 1, 9, 101.5)} }},
		{"both", one + one, strings.Replace(one, "10,", "11,", 1) + strings.Replace(one, "10,", "12,", 1),
			func(m *airframes.Model) []Correction { return []Correction{lean(m, 0, 11, 90), lean(m, 1, 12, 90)} }},
		{"the second is a table", one + table, one + strings.NewReplacer("20° up", "18° up", "22° down", "23° down").Replace(table),
			func(m *airframes.Model) []Correction {
				return []Correction{{Servo: 1, Table: []mixcore.Point{{X: -100, Y: -18}, {X: 100, Y: 23}}}}
			}},
		{"the second becomes one", one + one, one + strings.Replace(one, "linkage: {arm_mm: 10, horn_mm: 16, pivots_mm: 60, horn: below}", "measured: {-100%: 18° up, 100%: 23° down}", 1),
			func(m *airframes.Model) []Correction {
				return []Correction{{Servo: 1, Table: []mixcore.Point{{X: -100, Y: -18}, {X: 100, Y: 23}}}}
			}},
	} {
		m := sorrelModel(t, head+c.was)
		if got, err := Rewrite(m, c.list(m)); err != nil || string(got) != head+c.is {
			t.Errorf("%s: %v\ngot\n%s\nwant\n%s", c.name, err, got, head+c.is)
		}
	}
}
