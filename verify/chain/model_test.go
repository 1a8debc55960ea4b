package chain

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
	"example.com/hingeline/verify/result"
)

// The controls of the model under test.
const (
	rollStick = iota
	rollTrim
	flapLever
	rateSwitch
	motorSwitch
	throttleLever
)

// model is a wing with a motor: a starboard flap on a linkage that takes roll
// on high rates only, two rudders on one channel, an elevator with two servos.
func model(t *testing.T, change func(*mixcore.Setup)) *airframes.Model {
	t.Helper()
	always := func(throw, expo mixcore.Percent) []mixcore.Rate {
		return []mixcore.Rate{{Throw: mixcore.Both(throw), Expo: expo}}
	}
	high := &mixcore.Condition{Op: mixcore.AtPosition, Control: rateSwitch, Position: 1}
	safe := &mixcore.Condition{Op: mixcore.AtPosition, Control: motorSwitch}
	free := mixcore.Stops{Plus: mixcore.Degrees(math.Inf(1)), Minus: mixcore.Degrees(math.Inf(1))}
	channel := func(number int, name string, mix ...mixcore.MixLine) mixcore.Channel {
		return mixcore.Channel{Number: number, Name: name, Mix: mix, Limit: 100, EndPoints: mixcore.Both(100),
			PulseMin: 1000, PulseMax: 2000, Failsafe: mixcore.Failsafe{Hold: true}}
	}
	s := mixcore.Setup{
		Controls: []mixcore.Control{
			{Name: "roll stick", Kind: mixcore.AxisControl, Axis: mixcore.Roll},
			{Name: "roll trim", Kind: mixcore.TrimControl, Axis: mixcore.Roll},
			{Name: "flap lever", Kind: mixcore.LeverControl, Detents: []mixcore.Detent{{Name: "parked"}, {Name: "landing", At: 100}}},
			{Name: "rate switch", Kind: mixcore.SwitchControl, Positions: []string{"low", "high"}},
			{Name: "motor switch", Kind: mixcore.SwitchControl, Positions: []string{"safe", "live"}},
			{Name: "throttle", Kind: mixcore.LeverControl},
		},
		Demands: []mixcore.Demand{
			{Name: "roll", From: rollStick, Trim: rollTrim, TrimRange: 10,
				Rates: []mixcore.Rate{{When: high, Throw: mixcore.Both(90), Expo: 30}, {Throw: mixcore.Both(50), Expo: 15}}},
			{Name: "flap", From: flapLever, Rates: always(45, 0), Trim: mixcore.NoTrim},
			{Name: "power", From: throttleLever, Rates: always(100, 0), Trim: mixcore.NoTrim,
				Curve: &mixcore.Curve{Points: []mixcore.Point{{X: 0, Y: -100}, {X: 100, Y: 100}}}},
		},
		Channels: []mixcore.Channel{
			channel(3, "starboard flap",
				mixcore.MixLine{Op: mixcore.Add, Demand: 1, Share: mixcore.Both(100)},
				mixcore.MixLine{Op: mixcore.Add, Demand: 0, Share: mixcore.Both(-55), When: high}),
			channel(4, "rudders", mixcore.MixLine{Op: mixcore.Add, Demand: 0, Share: mixcore.Both(100)}),
			channel(8, "", mixcore.MixLine{Op: mixcore.Add, Demand: 2, Share: mixcore.Both(100)},
				mixcore.MixLine{Op: mixcore.ReplaceWith, Value: -100, When: safe}),
		},
		Parts: []mixcore.Part{
			{Name: "starboard flap", Kind: "flap", Side: mixcore.Starboard, Motion: mixcore.UpDown, Stops: free, Chord: 48,
				Drives: []mixcore.Drive{{Channel: 0, Sign: -1, Servo: mixcore.Servo{Swing: 45, Max: mixcore.Degrees(math.Inf(1)), PlusAft: true},
					Linkage: &linkage.Geometry{Arm: 10, Horn: 15, Pivots: 60, ArmDeg: 90, HornDeg: 90}}}},
			{Name: "port rudder", Kind: "rudder", Side: mixcore.Port, Motion: mixcore.LeftRight, Stops: free,
				Drives: []mixcore.Drive{{Channel: 1, Table: []mixcore.Point{{X: -100, Y: 20}, {X: 100, Y: -20}}}}},
			{Name: "starboard rudder", Kind: "rudder", Side: mixcore.Starboard, Motion: mixcore.LeftRight, Stops: free,
				Drives: []mixcore.Drive{
					{Channel: 1, Table: []mixcore.Point{{X: -100, Y: 20}, {X: 100, Y: -20}}},
					{Channel: 1, Table: []mixcore.Point{{X: -100, Y: 20}, {X: 100, Y: -24}}},
				}},
			{Name: "motor", Kind: "motor", Motion: mixcore.Power, Stops: free, Drives: []mixcore.Drive{{Channel: 2}},
				Motor: &mixcore.Motor{Idle: 1000, Full: 2000, StoppedBelow: 2, StoppedWhen: safe}},
		},
	}
	s.Channels[0].Reversed, s.Channels[0].SubTrim = true, 2
	if change != nil {
		change(&s)
	}
	plan, faults := mixcore.Compile(s)
	if faults != nil {
		t.Fatalf("set-up of the test: %+v", faults)
	}
	line := func(n int) diag.Place { return diag.Place{File: "m.yaml", Line: n, Column: 3} }
	return &airframes.Model{Name: "Test", Still: airframes.DefaultStill, Setup: s, Plan: plan, Places: airframes.Places{
		Controls: []diag.Place{line(1), line(2), line(3), line(4), line(5), line(6)},
		Demands:  []diag.Place{line(10), line(13), line(14)},
		Rates:    [][]diag.Place{{line(11), line(12)}, {line(13)}, {line(14)}},
		Channels: []diag.Place{line(20), line(30), line(40)},
		Mix:      [][]diag.Place{{line(21), line(22)}, {line(31)}, {line(41), line(42)}},
		Parts:    []diag.Place{line(50), line(60), line(70), line(80)},
		Fields: map[string]diag.Place{
			"channels.3.reversed":                  line(23),
			"channels.3.sub_trim":                  line(24),
			"channels.3.limit":                     line(25),
			"surfaces.starboard flap.linkage.horn": line(51),
			"surfaces.starboard flap.servo":        line(52),
			"surfaces.starboard flap.stops.up":     line(53),
			"surfaces.starboard flap.stops":        line(53),
			"surfaces.starboard rudder.servos.1":   line(72),
			"channels.3.end_points":                line(26),
			"channels.3.slow":                      line(27),
			"channels.8.failsafe":                  line(43),
		},
	}}
}

// pose moves some controls off rest.
func pose(m *airframes.Model, moved map[int]float64) mixcore.Input {
	in := m.Plan.Rest()
	for control, at := range moved {
		in.Position[control] = at
	}
	return in
}

func said(steps []result.Step) string {
	var out strings.Builder
	for _, s := range steps {
		fmt.Fprintf(&out, "%d %s, %s: %s -> %s", s.Place.Line, s.Stage, s.Name, s.Text, s.Value)
		if s.Limit != "" {
			fmt.Fprintf(&out, " LIMIT %s", s.Limit)
		}
		out.WriteString("\n")
	}
	return out.String()
}
