package airframes_test

import (
	"bytes"
	"slices"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/features"
	"example.com/hingeline/mixcore"
)

// mustLoad loads a shipped model.
func mustLoad(t *testing.T, name string) *airframes.Model {
	t.Helper()
	text, ok := airframes.ReadShipped(name)
	if !ok {
		t.Fatalf("no shipped model is called %q", name)
	}
	m, problems := airframes.Load(name+".yaml", text)
	if m == nil || len(problems) > 0 {
		var all bytes.Buffer
		diag.Write(&all, problems, diag.NewSource(name+".yaml", text))
		t.Fatalf("%s does not load cleanly:\n%s", name, all.String())
	}
	return m
}

func TestShippedModelsLoadWithoutAProblem(t *testing.T) {
	for _, name := range []string{"bracken-20", "ousel-trainer", "tarn-measured"} {
		if !slices.Contains(airframes.Shipped(), name) {
			t.Errorf("%s is not shipped; shipped are %v", name, airframes.Shipped())
		}
	}
	for _, name := range airframes.Shipped() {
		mustLoad(t, name)
	}
}

func TestReadShippedTakesTheNameWithOrWithoutItsEnding(t *testing.T) {
	plain, ok := airframes.ReadShipped("ousel-trainer")
	long, okLong := airframes.ReadShipped("ousel-trainer.yaml")
	if !ok || !okLong || !bytes.Equal(plain, long) {
		t.Errorf("ousel-trainer: found %v, ousel-trainer.yaml: found %v, want the same text", ok, okLong)
	}
	for _, name := range []string{"", "no-such-model", "../airframes/ousel-trainer", "schema.json"} {
		if _, ok := airframes.ReadShipped(name); ok {
			t.Errorf("ReadShipped(%q) finds a model, want none", name)
		}
	}
}

func TestShippedModelsNameTheirScript(t *testing.T) {
	for _, name := range airframes.Shipped() {
		want := "../features/" + name + ".feature"
		if m := mustLoad(t, name); !slices.Equal(m.Scripts, []string{want}) {
			t.Errorf("%s: script is %q, want %q", name, m.Scripts, want)
		}
		if _, ok := features.Read(name); !ok {
			t.Errorf("%s has no script of its name among %v", name, features.Names())
		}
	}
	for _, name := range features.Names() {
		if !slices.Contains(airframes.Shipped(), name) {
			t.Errorf("script %s belongs to no shipped model", name)
		}
	}
}

func TestExampleIsShortEnoughToCopy(t *testing.T) {
	const mostLines = 45 // "a trainer in about 40 lines"
	if lines := bytes.Count(airframes.Example(), []byte("\n")); lines > mostLines {
		t.Errorf("the example has %d lines, want at most %d", lines, mostLines)
	}
}

// TestShippedModelsNeverRunOutOfTravel goes through every combination of switch
// positions, detents and ends and centres of sticks and trims.
func TestShippedModelsNeverRunOutOfTravel(t *testing.T) {
	for _, name := range airframes.Shipped() {
		m := mustLoad(t, name)
		out := m.Plan.NewOutput()
		poses := 0
		everyCorner(m.Plan, func(in *mixcore.Input) {
			poses++
			m.Plan.Eval(in, out)
			for i, c := range out.Channels {
				if c.Limits != 0 {
					t.Fatalf("%s: channel %d reaches limit %b at %v", name, m.Setup.Channels[i].Number, c.Limits, in.Position)
				}
			}
			for i, p := range out.Parts {
				if p.Limits != 0 {
					t.Fatalf("%s: %s reaches limit %b at %v", name, m.Setup.Parts[i].Name, p.Limits, in.Position)
				}
			}
		})
		if poses < 100 {
			t.Errorf("%s: only %d poses were tried", name, poses)
		}
	}
}

// everyCorner calls visit with every combination of a few places of every
// control.
func everyCorner(plan *mixcore.Plan, visit func(*mixcore.Input)) {
	controls := plan.Setup().Controls
	in := plan.Rest()
	var walk func(i int)
	walk = func(i int) {
		if i == len(controls) {
			visit(&in)
			return
		}
		for _, at := range cornersOf(&controls[i]) {
			in.Position[i] = at
			walk(i + 1)
		}
	}
	walk(0)
}

func cornersOf(c *mixcore.Control) []float64 {
	switch c.Kind {
	case mixcore.SwitchControl:
		places := make([]float64, len(c.Positions))
		for i := range places {
			places[i] = float64(i)
		}
		return places
	case mixcore.LeverControl:
		places := []float64{0, 100}
		for _, d := range c.Detents {
			if d.At > 0 && d.At < 100 {
				places = append(places, float64(d.At))
			}
		}
		return places
	}
	return []float64{-100, 0, 100}
}

func TestBrackenFlapsHaveRoomToRiseAndToRoll(t *testing.T) {
	m := mustLoad(t, "bracken-20")
	control, part := indexOf(t, m)
	out := m.Plan.NewOutput()
	angle := func(name string, set map[string]float64) mixcore.Degrees {
		in := m.Plan.Rest()
		for c, at := range set {
			in.Position[control[c]] = at
		}
		m.Plan.Eval(&in, out)
		return out.Parts[part[name]].Angle
	}
	const high, landing = 1, 100
	for _, row := range []struct {
		part      string
		set       map[string]float64
		low, high mixcore.Degrees // plus is down
	}{
		{"port flap", nil, -0.1, 0.1},
		{"starboard flap", nil, -0.1, 0.1},
		{"starboard flap", map[string]float64{"rate switch": high, "roll stick": 100}, -15, -8},
		{"port flap", map[string]float64{"rate switch": high, "roll stick": -100}, -15, -8},
		{"port flap", map[string]float64{"flap lever": landing}, 35, 40},
		{"starboard flap", map[string]float64{"flap lever": landing}, 35, 40},
		{"port flap", map[string]float64{"flap lever": landing, "rate switch": high, "roll stick": 100}, 43, 50},
		{"starboard flap", map[string]float64{"flap lever": landing, "rate switch": high, "roll stick": 100}, 22, 30},
	} {
		if got := angle(row.part, row.set); got < row.low || got > row.high {
			t.Errorf("%s with %v stands at %.2f°, want %v° to %v° (plus is down)", row.part, row.set, got, row.low, row.high)
		}
	}
}

// indexOf finds controls and parts by name.
func indexOf(t *testing.T, m *airframes.Model) (control, part map[string]int) {
	t.Helper()
	control, part = map[string]int{}, map[string]int{}
	for i, c := range m.Setup.Controls {
		control[c.Name] = i
	}
	for i, p := range m.Setup.Parts {
		part[p.Name] = i
	}
	return control, part
}

// TestShippedModelsObeyTheSenseOfTheControls holds every shipped model to 14
// CFR 23.779 (control right: right wing down; control rearward: nose up; right
// pedal: nose right) and to the pre-flight lists of model-flying clubs (stick
// right: right aileron up; LMMAC items 11–14, WMAC pre-field checklist).
func TestShippedModelsObeyTheSenseOfTheControls(t *testing.T) {
	right := map[mixcore.Kind]map[mixcore.Axis]map[mixcore.Side]float64{ // sign of the angle, plus is down or left
		"aileron":    {mixcore.Roll: {mixcore.Starboard: -1, mixcore.Port: +1}},
		"elevator":   {mixcore.Pitch: {mixcore.Centre: -1}},
		"rudder":     {mixcore.Yaw: {mixcore.Centre: -1}},
		"nose wheel": {mixcore.Yaw: {mixcore.Centre: -1}},
		"tail wheel": {mixcore.Yaw: {mixcore.Centre: -1}},
		// A V-tail panel's force leans inboard as it leans up: back raises both,
		// and right, a force to the left at the tail, lowers the starboard one.
		"v-tail": {mixcore.Pitch: {mixcore.Starboard: -1, mixcore.Port: -1}, mixcore.Yaw: {mixcore.Starboard: +1, mixcore.Port: -1}},
	}
	judged := 0
	for _, name := range airframes.Shipped() {
		m := mustLoad(t, name)
		out := m.Plan.NewOutput()
		for i, c := range m.Setup.Controls {
			if c.Axis == mixcore.NoAxis {
				continue
			}
			for k, p := range m.Setup.Parts {
				sign, ok := right[p.Kind][c.Axis][p.Side]
				if !ok {
					continue
				}
				for _, way := range []float64{-100, 100} {
					judged++
					in := m.Plan.Rest()
					in.Position[i] = way
					m.Plan.Eval(&in, out)
					if got := float64(out.Parts[k].Angle) * sign * way; got <= 0 {
						t.Errorf("%s: %s at %v %% puts the %s at %v° (plus is down or left), which is the wrong way", name, c.Name, way, p.Name, out.Parts[k].Angle)
					}
				}
			}
		}
	}
	if judged < 30 {
		t.Errorf("only %d directions were judged", judged)
	}
}
