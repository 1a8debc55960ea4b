package airframes_test

import (
	"bytes"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
)

// read loads a file that is right.
func read(t testing.TB, text string) *airframes.Model {
	t.Helper()
	model, problems := airframes.Load("airframe.yaml", []byte(text))
	if model == nil || len(problems) > 0 {
		var shown bytes.Buffer
		diag.Write(&shown, problems, diag.NewSource("airframe.yaml", []byte(text)))
		t.Fatalf("the file is refused:\n%s", shown.String())
	}
	return model
}

// small is a right file with the parts given.
func small(parts string) string {
	return `hingeline: 1
name: Fennel
controls:
  roll stick: {axis: roll, trim: 8%}
  pitch stick: {axis: pitch, trim: {range: 12%, name: nose trim, reversed: true}, aka: elevator stick}
  yaw stick: yaw
  throttle: lever
  flap lever: {lever: {landing: 100, parked: 0, takeoff: 40}, aka: [flaps, brakes]}
  rate switch: {switch: [low, mid, high], aka: rates}
demands:
  roll: roll stick
  pitch: pitch stick
  yaw: yaw stick
  flap: flap lever
channels:
  1: roll
  2: pitch
  3: yaw
` + parts
}

const aileron = "surfaces:\n  port aileron: {channel: 1, measured: {100%: 20° down}}\n"

var (
	nowhere  = mixcore.Degrees(math.Inf(1))
	usual    = mixcore.Servo{Swing: 45, Max: nowhere, PlusAft: true}
	mirrored = []mixcore.Point{{X: -100, Y: -20}, {X: 0, Y: 0}, {X: 100, Y: 20}}
)

func TestLoadReadsTheHead(t *testing.T) {
	text := "script: [one.feature, ../two.feature]\nabout: |\n  Two\n  lines.\nstill_deg: 0.25°\nmass_kg: 3.2\nairspeed_ms: 16.5 m/s\n" + small(aileron)
	m := read(t, text)
	if m.Name != "Fennel" || m.Setup.Name != "Fennel" || m.About != "Two lines." || m.Still != 0.25 || m.MassKg != 3.2 || m.AirspeedMs != 16.5 {
		t.Errorf("got %q, %q, %q, %v, %v, %v", m.Name, m.Setup.Name, m.About, m.Still, m.MassKg, m.AirspeedMs)
	}
	if want := []string{"one.feature", "../two.feature"}; !slices.Equal(m.Scripts, want) {
		t.Errorf("got scripts %q, want %q", m.Scripts, want)
	}
	if m.Source == nil || string(m.Source.Text) != text || m.Plan == nil {
		t.Error("want the source and the plan")
	}
	m = read(t, small(aileron))
	if m.Still != airframes.DefaultStill || m.MassKg != 0 || m.AirspeedMs != 0 || m.Setup.Wing != nil || m.About != "" || m.Scripts != nil {
		t.Errorf("where nothing is said: got %v, %v, %q, %q", m.Still, m.MassKg, m.About, m.Scripts)
	}
}

func TestLoadReadsControls(t *testing.T) {
	m := read(t, small(aileron))
	want := []mixcore.Control{
		{Name: "roll stick", Kind: mixcore.AxisControl, Axis: mixcore.Roll},
		{Name: "roll trim", Kind: mixcore.TrimControl, Axis: mixcore.Roll},
		{Name: "pitch stick", Kind: mixcore.AxisControl, Axis: mixcore.Pitch},
		{Name: "nose trim", Kind: mixcore.TrimControl, Axis: mixcore.Pitch},
		{Name: "yaw stick", Kind: mixcore.AxisControl, Axis: mixcore.Yaw},
		{Name: "throttle", Kind: mixcore.LeverControl},
		{Name: "flap lever", Kind: mixcore.LeverControl, Detents: []mixcore.Detent{{Name: "parked", At: 0}, {Name: "takeoff", At: 40}, {Name: "landing", At: 100}}},
		{Name: "rate switch", Kind: mixcore.SwitchControl, Positions: []string{"low", "mid", "high"}},
	}
	if !reflect.DeepEqual(m.Setup.Controls, want) {
		t.Errorf("got\n%+v\nwant\n%+v", m.Setup.Controls, want)
	}
	if want := [][]string{nil, nil, {"elevator stick"}, nil, nil, nil, {"flaps", "brakes"}, {"rates"}}; !reflect.DeepEqual(m.ControlAka, want) {
		t.Errorf("got further names %q, want %q", m.ControlAka, want)
	}
}

func TestLoadReadsDemands(t *testing.T) {
	full := []mixcore.Rate{{Throw: mixcore.Both(100)}}
	for text, want := range map[string]mixcore.Demand{
		"roll stick":                               {From: 0, Rates: full, Trim: 1, TrimRange: 8},
		"Roll-Stick":                               {From: 0, Rates: full, Trim: 1, TrimRange: 8},
		"{from: elevator stick}":                   {From: 2, Rates: full, Trim: 3, TrimRange: -12},
		"{from: roll stick, trim: no}":             {From: 0, Rates: full, Trim: mixcore.NoTrim},
		"{from: roll stick, trim: No}":             {From: 0, Rates: full, Trim: mixcore.NoTrim},
		"yaw stick":                                {From: 4, Rates: full, Trim: mixcore.NoTrim},
		"{from: throttle, throw: 90 %, expo: -30}": {From: 5, Rates: []mixcore.Rate{{Throw: mixcore.Both(90), Expo: -30}}, Trim: mixcore.NoTrim},
		"{from: yaw stick, throw: {left: 70%, right: 55%}}":               {From: 4, Rates: []mixcore.Rate{{Throw: mixcore.Sides{Plus: 55, Minus: 70}}}, Trim: mixcore.NoTrim},
		"{from: pitch stick, trim: no, throw: {forward: 55%, back: 70%}}": {From: 2, Rates: []mixcore.Rate{{Throw: mixcore.Sides{Plus: 70, Minus: 55}}}, Trim: mixcore.NoTrim},
		"{from: throttle, throw: {plus: 1%, minus: 2%}}":                  {From: 5, Rates: []mixcore.Rate{{Throw: mixcore.Sides{Plus: 1, Minus: 2}}}, Trim: mixcore.NoTrim},
		"{from: throttle, curve: {100%: 100%, 0%: -100%, 50: 20%}, smooth: true}": {From: 5, Rates: full, Trim: mixcore.NoTrim,
			Curve: &mixcore.Curve{Smooth: true, Points: []mixcore.Point{{X: 0, Y: -100}, {X: 50, Y: 20}, {X: 100, Y: 100}}}},
		"{from: rates, values: {high: 100%, low: 0%, mid: 12.5%}}": {From: 7, Values: []mixcore.Percent{0, 12.5, 100}, Rates: full, Trim: mixcore.NoTrim},
		"{from: yaw stick, rates: [{when: rates are high, throw: 90%, expo: 20%}, {expo: 5%}]}": {From: 4, Trim: mixcore.NoTrim, Rates: []mixcore.Rate{
			{When: &mixcore.Condition{Op: mixcore.AtPosition, Control: 7, Position: 2}, Throw: mixcore.Both(90), Expo: 20},
			{Throw: mixcore.Both(100), Expo: 5}}},
	} {
		m := read(t, strings.Replace(small(aileron), "demands:\n", "demands:\n  tested: "+text+"\n", 1))
		want.Name = "tested"
		if got := m.Setup.Demands[0]; !reflect.DeepEqual(got, want) {
			t.Errorf("%s: got\n%+v\nwant\n%+v", text, got, want)
		}
	}
}

func TestLoadReadsChannels(t *testing.T) {
	hold := mixcore.Failsafe{Hold: true}
	whole := []mixcore.MixLine{{Op: mixcore.Add, Demand: 0, Share: mixcore.Both(100)}}
	for text, edit := range map[string]func(c *mixcore.Channel){
		"roll":                                               func(c *mixcore.Channel) {},
		"{mix: ROLL}":                                        func(c *mixcore.Channel) {},
		"{mix: [roll]}":                                      func(c *mixcore.Channel) {},
		"{mix: [{add: roll}]}":                               func(c *mixcore.Channel) {},
		"{name: wing, mix: roll}":                            func(c *mixcore.Channel) { c.Name = "wing" },
		"{mix: roll, reversed: Yes}":                         func(c *mixcore.Channel) { c.Reversed = true },
		"{mix: roll, reversed: NO}":                          func(c *mixcore.Channel) {},
		"{mix: roll, reversed: 'yes'}":                       func(c *mixcore.Channel) { c.Reversed = true },
		"{mix: roll, reversed: True}":                        func(c *mixcore.Channel) { c.Reversed = true },
		"{mix: roll, reversed: true}":                        func(c *mixcore.Channel) { c.Reversed = true },
		"{mix: roll, limit: 150%}":                           func(c *mixcore.Channel) { c.Limit = 150 },
		"{mix: roll, end_points: 90%}":                       func(c *mixcore.Channel) { c.EndPoints = mixcore.Both(90) },
		"{mix: roll, end_points: {minus: 95%, plus: 80%}}":   func(c *mixcore.Channel) { c.EndPoints = mixcore.Sides{Plus: 80, Minus: 95} },
		"{mix: roll, sub_trim: -2.5%}":                       func(c *mixcore.Channel) { c.SubTrim = -2.5 },
		"{mix: roll, slow: 2 s}":                             func(c *mixcore.Channel) { c.Slow = 2 },
		"{mix: roll, pulse_us: {min: 900}}":                  func(c *mixcore.Channel) { c.PulseMin = 900 },
		"{mix: roll, pulse_us: {max: 2100 µs, min: 1100us}}": func(c *mixcore.Channel) { c.PulseMin, c.PulseMax = 1100, 2100 },
		"{mix: roll, failsafe: hold}":                        func(c *mixcore.Channel) {},
		"{mix: roll, failsafe: -100%}":                       func(c *mixcore.Channel) { c.Failsafe = mixcore.Failsafe{Output: -100} },
		"{mix: roll, failsafe: 0%}":                          func(c *mixcore.Channel) { c.Failsafe = mixcore.Failsafe{} },
		"{mix: roll, failsafe: 1000 µs}":                     func(c *mixcore.Channel) { c.Failsafe = mixcore.Failsafe{Output: -100} },
		"{mix: roll, failsafe: 1512us}":                      func(c *mixcore.Channel) { c.Failsafe = mixcore.Failsafe{Output: 2.4} },
		"{mix: [{add: roll, share: {left: -35%, right: -55%}, when: rates are low}, 4%, {fixed: -3}, {scale_by: flap}, {replace_with: -100%}]}": func(c *mixcore.Channel) {
			c.Mix = []mixcore.MixLine{
				{Op: mixcore.Add, Demand: 0, Share: mixcore.Sides{Plus: -55, Minus: -35}, When: &mixcore.Condition{Op: mixcore.AtPosition, Control: 7}},
				{Op: mixcore.Fixed, Value: 4}, {Op: mixcore.Fixed, Value: -3},
				{Op: mixcore.ScaleBy, Demand: 3}, {Op: mixcore.ReplaceWith, Value: -100},
			}
		},
	} {
		m := read(t, strings.Replace(small(aileron), "channels:\n", "channels:\n  9: "+text+"\n", 1))
		want := mixcore.Channel{Number: 9, Mix: whole, Limit: 100, EndPoints: mixcore.Both(100), PulseMin: 1000, PulseMax: 2000, Failsafe: hold}
		edit(&want)
		if got := m.Setup.Channels[3]; !reflect.DeepEqual(got, want) {
			t.Errorf("%s: got\n%+v\nwant\n%+v", text, got, want)
		}
	}
}

func TestLoadPutsChannelsInOrderOfTheirNumbers(t *testing.T) {
	m := read(t, strings.Replace(small("surfaces:\n  elevator: {channel: 12, measured: {100%: 20° up}}\n"), "channels:\n", "channels:\n  12: yaw\n  7: pitch\n", 1))
	var numbers []int
	for i, c := range m.Setup.Channels {
		numbers = append(numbers, c.Number)
		if line, _ := m.Source.Line(m.Places.Channels[i].Line); !strings.HasPrefix(strings.TrimSpace(line), fmt.Sprint(c.Number)+":") {
			t.Errorf("channel %d is said to stand on %q", c.Number, line)
		}
	}
	if !slices.Equal(numbers, []int{1, 2, 3, 7, 12}) || m.Setup.Parts[0].Drives[0].Channel != 4 {
		t.Errorf("got channels %v, and the elevator on index %d", numbers, m.Setup.Parts[0].Drives[0].Channel)
	}
}

func TestLoadReadsParts(t *testing.T) {
	measured := []mixcore.Drive{{Channel: 0, Servo: usual, Sign: 1, Table: mirrored}}
	free := mixcore.Stops{Plus: nowhere, Minus: nowhere}
	plain := []mixcore.Drive{{Channel: 0, Servo: usual}}
	for text, want := range map[string]mixcore.Part{
		"surfaces: {Port Aileron: {channel: 1, measured: {100%: 20° down}}}": {Name: "Port Aileron", Kind: "aileron", Side: mixcore.Port, Motion: mixcore.UpDown, Drives: measured, Stops: free},
		"surfaces: {right v-tail: {channel: 1, measured: {100%: 20° down}}}": {Name: "right v-tail", Kind: "v-tail", Side: mixcore.Starboard, Motion: mixcore.UpDown, Drives: measured, Stops: free},
		"surfaces: {thing: {kind: Airbrake, side: left, channel: 1, chord_mm: 48, span_mm: [140, 470 mm], stops: {up: 18°}, measured: {100%: 20° down}}}": {
			Name: "thing", Kind: "airbrake", Side: mixcore.Port, Motion: mixcore.UpDown, Drives: measured, Chord: 48, Span: [2]mixcore.Millimetres{140, 470}, Stops: mixcore.Stops{Plus: nowhere, Minus: 18}},
		"surfaces: {rudder: {channel: 1, measured: {-100: 20deg right}, stops: {left: 30, right: 25}}}": {Name: "rudder", Kind: "rudder", Motion: mixcore.LeftRight, Drives: measured, Stops: mixcore.Stops{Plus: 30, Minus: 25}},
		"surfaces: {elevator: {servos: [{channel: 1, measured: {-100%: 20° up}}, {channel: 2, measured: {100%: 20 ° down}}]}}": {
			Name: "elevator", Kind: "elevator", Motion: mixcore.UpDown, Stops: free,
			Drives: []mixcore.Drive{measured[0], {Channel: 1, Servo: usual, Sign: 1, Table: mirrored}}},
		"wheels: {tail wheel: {channel: 1, measured: {100%: 20° left}}}":               {Name: "tail wheel", Kind: "tail wheel", Motion: mixcore.LeftRight, Drives: measured, Stops: free},
		"wheels: {wheel: {channel: 1, measured: {100%: 20° left}}}":                    {Name: "wheel", Kind: "nose wheel", Motion: mixcore.LeftRight, Drives: measured, Stops: free},
		"wheels: {third wheel: {place: tail, channel: 1, measured: {100%: 20° left}}}": {Name: "third wheel", Kind: "tail wheel", Motion: mixcore.LeftRight, Drives: measured, Stops: free},
		"motors: {port motor: {channel: 1}}": {Name: "port motor", Kind: "motor", Side: mixcore.Port, Motion: mixcore.Power, Drives: plain, Stops: free,
			Motor: &mixcore.Motor{Idle: 1000, Full: 2000, StoppedBelow: 2}},
		"motors: {engine: {channel: 1, side: centre, idle_us: 1100, full_us: 1900 µs, stopped_below: 5%, stopped_when: rates are low}}": {Name: "engine", Kind: "motor", Motion: mixcore.Power, Drives: plain, Stops: free,
			Motor: &mixcore.Motor{Idle: 1100, Full: 1900, StoppedBelow: 5, StoppedWhen: &mixcore.Condition{Op: mixcore.AtPosition, Control: 7}}},
		"extras: {left door: {channel: 1}}":                                     {Name: "left door", Kind: "door", Side: mixcore.Port, Motion: mixcore.OutIn, Drives: plain, Stops: free},
		"extras: {legs: {kind: retract, channel: 1, plus_moves: in}}":           {Name: "legs", Kind: "retract", Motion: mixcore.OutIn, Drives: plain, Stops: free, PlusIn: true},
		"extras: {legs: {kind: other, channel: 1, plus_moves: out, aka: gear}}": {Name: "legs", Kind: "other", Motion: mixcore.OutIn, Drives: plain, Stops: free},
	} {
		m := read(t, small(text+"\n"))
		if got := m.Setup.Parts[0]; !reflect.DeepEqual(got, want) {
			t.Errorf("%s: got\n%+v\nwant\n%+v", text, got, want)
		}
	}
}

func TestLoadReadsWhereThingsAre(t *testing.T) {
	for text, want := range map[string]mixcore.Placement{
		"surfaces: {port v-tail: {channel: 1, measured: {100%: 20° down}, aft_mm: 900, up_mm: -60 mm, tilt_deg: -38°}}": {
			Aft: 900, Up: -60, Tilt: -38, AftSaid: true, UpSaid: true, TiltSaid: true},
		"surfaces: {rudder: {channel: 1, measured: {100%: 20° left}, tilt_deg: 0, aft_mm: 0}}": {TiltSaid: true, AftSaid: true},
		"surfaces: {rudder: {channel: 1, measured: {100%: 20° left}}}":                         {},
		"motors: {port motor: {channel: 1, out_mm: 300, aft_mm: -120.5, up_mm: 20}}":           {Out: 300, Aft: -120.5, Up: 20, OutSaid: true, AftSaid: true, UpSaid: true},
		"motors: {motor: {channel: 1, out_mm: 0}}":                                             {OutSaid: true},
		"extras: {drag rudder: {channel: 1, side: left, out_mm: 900 mm, up_mm: 0}}":            {Out: 900, OutSaid: true, UpSaid: true},
	} {
		m := read(t, small(text+"\n"))
		if got := m.Setup.Parts[0].Place; got != want {
			t.Errorf("%s: got %+v, want %+v", text, got, want)
		}
	}
	m := read(t, small("extras: {Port Drag-Rudder: {channel: 1}}\nwing: {span_mm: 1800.5, root_chord_mm: 260 mm, tip_chord_mm: 200}\n"))
	if p := m.Setup.Parts[0]; p.Kind != "drag rudder" || p.Motion != mixcore.OutIn || p.Side != mixcore.Port {
		t.Errorf("got a drag rudder %+v", p)
	}
	if want := (mixcore.Wing{Span: 1800.5, RootChord: 260, TipChord: 200}); m.Setup.Wing == nil || *m.Setup.Wing != want {
		t.Errorf("got wing %+v, want %+v", m.Setup.Wing, want)
	}
}

// A surface of the wing may be as large as the wing, and one of the tail any
// size.
func TestLoadTakesSurfacesUpToTheSizeOfTheWing(t *testing.T) {
	const wing = "wing: {span_mm: 1000, root_chord_mm: 100, tip_chord_mm: 50}\n"
	for _, size := range []string{"chord_mm: 75, span_mm: [0, 500]", "chord_mm: 100", "span_mm: [499, 500]", "chord_mm: 55, span_mm: [400, 500]"} {
		read(t, wing+small("surfaces: {flap: {channel: 1, "+size+", measured: {100%: 20° down}}}\n"))
	}
	read(t, wing+small("surfaces: {elevator: {channel: 1, chord_mm: 300, span_mm: [0, 501], measured: {100%: 20° down}}}\n"))
}

func TestLoadPutsPartsInOrderOfTheirSections(t *testing.T) {
	m := read(t, small("extras: {hook: {channel: 1, aka: tow hook}}\nmotors: {motor: {channel: 1}}\nwheels: {nose wheel: {channel: 1, measured: {100%: 20° left}}}\n"+aileron))
	var names []string
	for _, p := range m.Setup.Parts {
		names = append(names, p.Name)
	}
	if want := []string{"port aileron", "nose wheel", "motor", "hook"}; !slices.Equal(names, want) {
		t.Errorf("got %q, want %q", names, want)
	}
	if want := [][]string{nil, nil, nil, {"tow hook"}}; !reflect.DeepEqual(m.PartAka, want) {
		t.Errorf("got further names %q, want %q", m.PartAka, want)
	}
}

// The senses follow from the geometry: the horn is pushed aft where the arm
// swings aft, and the part turns about its hinge.
func TestLoadReadsLinkages(t *testing.T) {
	type linked struct {
		sign   float64
		offset float64
		cross  bool
	}
	for part, sides := range map[string]map[string]linked{
		"surfaces: {elevator: %s}": {
			"horn: above":             {+1, 4, false},
			"horn: below":             {-1, -4, false},
			"horn: above, arm: above": {+1, 4, false},
			"horn: above, arm: below": {+1, 4, true},
			"horn: below, arm: above": {-1, -4, true},
		},
		"surfaces: {rudder: %s}": {
			"horn: starboard":            {+1, 4, false},
			"horn: right":                {+1, 4, false},
			"horn: port":                 {-1, -4, false},
			"horn: left, arm: port":      {-1, -4, false},
			"horn: port, arm: right":     {-1, -4, true},
			"horn: starboard, arm: left": {+1, 4, true},
		},
		"wheels: {nose wheel: %s}": {
			"horn: starboard": {-1, 4, false},
			"horn: port":      {+1, -4, false},
		},
		"wheels: {tail wheel: %s}": {
			"horn: starboard": {+1, 4, false},
			"horn: port":      {-1, -4, false},
		},
	} {
		for side, want := range sides {
			text := fmt.Sprintf(part, "{channel: 1, servo: {plus_swings: fore, swing_deg: 30, max_deg: 40, seconds_per_60deg: 0.12, torque_ncm: 25}, "+
				"linkage: {arm_mm: 10, horn_mm: 15, pivots_mm: 160, offset_mm: 4, arm_deg: 85, horn_deg: 95, "+side+"}}")
			m := read(t, small(text+"\n"))
			got := m.Setup.Parts[0].Drives[0]
			wanted := mixcore.Drive{Channel: 0, Sign: want.sign,
				Servo:   mixcore.Servo{Swing: 30, Max: 40, SecondsPer60Deg: 0.12, TorqueNcm: 25},
				Linkage: &linkage.Geometry{Arm: 10, Horn: 15, Pivots: 160, Offset: want.offset, ArmDeg: 85, HornDeg: 95, Crossed: want.cross}}
			if !reflect.DeepEqual(got, wanted) {
				t.Errorf("%s: got\n%+v %+v\nwant\n%+v %+v", text, got, got.Linkage, wanted, wanted.Linkage)
			}
		}
	}
	m := read(t, small("surfaces: {elevator: {channel: 1, servo: aft, linkage: {arm_mm: 10, horn_mm: 15, pivots_mm: 60, horn: above, pushrod_mm: 60.2}}}\n"))
	want := linkage.Geometry{Arm: 10, Horn: 15, Pivots: 60, Pushrod: 60.2, ArmDeg: 90, HornDeg: 90}
	if drive := m.Setup.Parts[0].Drives[0]; *drive.Linkage != want || drive.Servo != usual {
		t.Errorf("got %+v %+v, want %+v %+v", *drive.Linkage, drive.Servo, want, usual)
	}
}

// Both readings of one aeroplane must move alike: what the file says of plus
// and aft is only right if right stick raises the starboard aileron.
func TestLoadedSensesMoveTheSurfacesAsTheFileSays(t *testing.T) {
	for part, want := range map[string]mixcore.Degrees{
		"surfaces: {starboard aileron: {channel: 1, servo: aft, linkage: {arm_mm: 10, horn_mm: 15, pivots_mm: 60, horn: below}}}":  -1, // horn below pushed aft: trailing edge up
		"surfaces: {starboard aileron: {channel: 1, servo: fore, linkage: {arm_mm: 10, horn_mm: 15, pivots_mm: 60, horn: below}}}": +1,
		"surfaces: {starboard aileron: {channel: 1, servo: aft, linkage: {arm_mm: 10, horn_mm: 15, pivots_mm: 60, horn: above}}}":  +1, // pushed aft above: down
		"surfaces: {rudder: {channel: 1, servo: aft, linkage: {arm_mm: 10, horn_mm: 15, pivots_mm: 60, horn: starboard}}}":         +1, // left
		"surfaces: {rudder: {channel: 1, servo: fore, linkage: {arm_mm: 10, horn_mm: 15, pivots_mm: 60, horn: starboard}}}":        -1, // right
		"wheels: {nose wheel: {channel: 1, servo: aft, linkage: {arm_mm: 10, horn_mm: 15, pivots_mm: 60, horn: starboard}}}":       -1, // turns it right
		"wheels: {tail wheel: {channel: 1, servo: aft, linkage: {arm_mm: 10, horn_mm: 15, pivots_mm: 60, horn: starboard}}}":       +1, // tail goes right, model turns left
		"surfaces: {starboard aileron: {channel: 1, measured: {100%: 20° up}}}":                                                    -1,
		"surfaces: {rudder: {channel: 1, measured: {-100%: 20° left}}}":                                                            -1,
	} {
		m := read(t, small(part+"\n"))
		in, out := m.Plan.Rest(), m.Plan.NewOutput()
		in.Position[0] = 100
		m.Plan.Eval(&in, out)
		if got := out.Parts[0].Angle; got*want <= 0 {
			t.Errorf("%s: full right stick gives %v°, want the sign of %v", part, got, want)
		}
	}
}

func TestLoadReadsMeasuredTables(t *testing.T) {
	for text, want := range map[string][]mixcore.Point{
		"{100%: 20° down}":  mirrored,
		"{-100: 20 deg up}": mirrored,
		"{50%: 10° up, -110%: 24° down, 0: 0.5° down, 100%: 22.25° up}": {{X: -110, Y: 24}, {X: 0, Y: 0.5}, {X: 50, Y: -10}, {X: 100, Y: -22.25}},
		"{-100%: 0°, 100%: 30° down}":                                   {{X: -100, Y: 0}, {X: 100, Y: 30}},
		"{-100%: 0, 100%: 30 down}":                                     {{X: -100, Y: 0}, {X: 100, Y: 30}},
	} {
		m := read(t, small("surfaces: {flap: {channel: 1, measured: "+text+"}}\n"))
		if got := m.Setup.Parts[0].Drives[0].Table; !reflect.DeepEqual(got, want) {
			t.Errorf("%s: got %v, want %v", text, got, want)
		}
	}
}

func TestLoadReadsPhases(t *testing.T) {
	m := read(t, small(aileron+"phases:\n  braking: flaps are above 50%\n  landing: {when: braking and not rates are low, fade: 1.5 s}\n"))
	want := []mixcore.Phase{
		{Name: "braking", When: mixcore.Condition{Op: mixcore.Above, Control: 6, Low: 50}},
		{Name: "landing", Fade: 1.5, When: mixcore.Condition{Op: mixcore.And, Args: []mixcore.Condition{
			{Op: mixcore.InPhase, Phase: 0},
			{Op: mixcore.Not, Args: []mixcore.Condition{{Op: mixcore.AtPosition, Control: 7}}},
		}}},
	}
	if !reflect.DeepEqual(m.Setup.Phases, want) {
		t.Errorf("got\n%+v\nwant\n%+v", m.Setup.Phases, want)
	}
}

func TestLoadRefusesAnotherVersionWithoutReadingOn(t *testing.T) {
	for _, text := range []string{"hingeline: 2\n", "hingeline: 01\nname: 3\n", "hingeline: \"x\"\ncontrols: [a]\n", "hingeline: 1.0\n"} {
		model, problems := airframes.Load("f", []byte(text))
		if model != nil || len(problems) != 1 || problems[0].Code != "unknown-version" {
			t.Errorf("%q: got %+v, want unknown-version alone", text, problems)
		}
	}
}

func TestLoadSeesALinkageThatLocksBesideOtherMistakes(t *testing.T) {
	_, problems := airframes.Load("f", []byte(small("surfaces:\n  flap: {channel: 1, chord: 3, measured: {100%: 3° up}}\n"+
		"  aileron: {channel: 1, servo: aft, linkage: {arm_mm: 12, horn_mm: 8, pivots_mm: 60, horn: below}}\n")))
	var codes []string
	for _, p := range problems {
		codes = append(codes, fmt.Sprint(p.Line, " ", p.Code))
	}
	if want := []string{"20 unknown-key", "21 linkage-locks"}; !slices.Equal(codes, want) {
		t.Errorf("got %q, want %q", codes, want)
	}
}
