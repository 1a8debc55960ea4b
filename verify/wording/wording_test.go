package wording

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/mixcore"
	"pgregory.net/rapid"
)

func TestNumbersReadAsRounded(t *testing.T) {
	for _, row := range []struct{ got, want string }{
		{Percent(49.5), "49.5 %"},
		{Percent(38.7499999999999), "38.8 %"},
		{Percent(38.7499), "38.7 %"},
		{Percent(100), "100 %"},
		{Percent(-27.46), "-27.5 %"},
		{Percent(-0.04), "0 %"},
		{Percent(mixcore.Percent(math.Copysign(0, -1))), "0 %"},
		{Setpoint(5.001), "5.001 %"},
		{Setpoint(-0.0001), "0 %"},
		{SetAngle(44.55), "44.55°"},
		{SetLength(10.5), "10.5 mm"},
		{Angle(14.24), "14.2°"},
		{Angle(-14.25), "14.3°"},
		{Angle(0), "0°"},
		{Length(11.4), "11 mm"},
		{Length(9.94), "9.9 mm"},
		{Length(9.96), "10 mm"},
		{Length(8), "8 mm"},
		{Length(0.04), "0 mm"},
		{Pulse(1747.5), "1748 µs"},
		{Pulse(1500), "1500 µs"},
		{Time(2), "2 s"},
		{Time(1.25), "1.25 s"},
		{AngleBeside(7.96, 8), "7.96°"},
		{AngleBeside(-7.9996, -8), "8°"},
		{AngleBeside(7.9994, 8), "7.999°"},
		{AngleBeside(8, 8), "8°"},
		{AngleBeside(7.44, 8), "7.4°"},
		{AngleBeside(12.344, 12.34), "12.344°"}, // and not 12.3°, which is under the bound
		{AngleBeside(12.34, 12.34), "12.3°"},
		{PercentBeside(2.04, 2), "2.04 %"},
		{LengthBeside(11.8, 12), "11.8 mm"},
		{LengthBeside(8.04, 8), "8.04 mm"},
		{LengthBeside(13, 12), "13 mm"},
		{PulseBeside(999.6, 1000), "999.6 µs"},
	} {
		if row.got != row.want {
			t.Errorf("got %q, want %q", row.got, row.want)
		}
	}
}

func TestNumbersNeverReadMinusZero(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(-0.2, 0.2).Draw(t, "x")
		all := Percent(mixcore.Percent(x)) + Setpoint(mixcore.Percent(x)) + Angle(mixcore.Degrees(x)) +
			Length(mixcore.Millimetres(x)) + Time(mixcore.Seconds(x))
		for _, word := range strings.Fields(all) {
			if word == "-0" {
				t.Fatalf("%v reads %q", x, all)
			}
		}
	})
}

var (
	flap    = mixcore.Part{Name: "port flap", Kind: "flap", Motion: mixcore.UpDown, Chord: 48}
	rudder  = mixcore.Part{Name: "rudder", Kind: "rudder", Motion: mixcore.LeftRight}
	motor   = mixcore.Part{Name: "motor", Motion: mixcore.Power, Motor: &mixcore.Motor{Idle: 1000, Full: 2000, StoppedBelow: 2}}
	retract = mixcore.Part{Name: "retracts", Motion: mixcore.OutIn}
)

func TestPositionNamesTheDirection(t *testing.T) {
	for _, row := range []struct {
		part *mixcore.Part
		out  mixcore.PartOutput
		want string
	}{
		{&flap, mixcore.PartOutput{Angle: -14.2, Travel: 11.87}, "trailing edge UP 14.2° (12 mm)"},
		{&flap, mixcore.PartOutput{Angle: 30, Travel: 24.8}, "trailing edge DOWN 30° (25 mm)"},
		{&flap, mixcore.PartOutput{Angle: -0.049, Travel: 0.04}, "neutral"},
		{&flap, mixcore.PartOutput{Angle: 0.05, Travel: 0.042}, "trailing edge DOWN 0.1° (0 mm)"},
		{&rudder, mixcore.PartOutput{Angle: 18}, "LEFT 18°"},
		{&rudder, mixcore.PartOutput{Angle: -18}, "RIGHT 18°"},
		{&rudder, mixcore.PartOutput{}, "neutral"},
		{&motor, mixcore.PartOutput{}, "stopped"},
		{&motor, mixcore.PartOutput{Amount: 2}, "stopped"},
		{&motor, mixcore.PartOutput{Amount: 2.04}, "power 2.04 %"},
		{&motor, mixcore.PartOutput{Amount: 45}, "power 45 %"},
		{&retract, mixcore.PartOutput{Amount: 100}, "OUT 100 %"},
		{&retract, mixcore.PartOutput{Amount: 0.04}, "IN"},
	} {
		if got := Position(row.part, row.out); got != row.want {
			t.Errorf("%s at %+v: got %q, want %q", row.part.Name, row.out, got, row.want)
		}
	}
}

func TestMovementNamesTheDirection(t *testing.T) {
	angle := func(d mixcore.Degrees) mixcore.PartOutput { return mixcore.PartOutput{Angle: d} }
	amount := func(p mixcore.Percent) mixcore.PartOutput { return mixcore.PartOutput{Amount: p} }
	for _, row := range []struct {
		part     *mixcore.Part
		from, to mixcore.PartOutput
		want     string
	}{
		// A flap 30° down that goes to 16° down rises: 2·48·sin 7° = 11.7 mm.
		{&flap, angle(30), angle(16), "rises 14° (12 mm): from DOWN 30° to DOWN 16°"},
		{&flap, angle(0), angle(8), "drops 8° (6.7 mm)"},
		{&flap, angle(3), angle(3.3), "stays still (drops only 0.3°)"},
		{&flap, angle(3), angle(2.504), "stays still (rises only 0.496°)"},
		{&flap, angle(3), angle(3), "stays still"},
		{&flap, angle(0), angle(-0.5), "rises 0.5° (0.4 mm)"},
		{&rudder, angle(0), angle(-18), "moves RIGHT 18°"},
		{&rudder, angle(-18), angle(2), "moves LEFT 20°: from RIGHT 18° to LEFT 2°"},
		{&motor, amount(45), amount(0), "power from 45 % to stopped"},
		{&motor, amount(0), amount(30), "power from stopped to 30 %"},
		{&motor, amount(0), amount(1), "stays stopped"},
		{&motor, amount(40), amount(40), "power stays at 40 %"},
		{&retract, amount(0), amount(100), "moves OUT, from 0 % to 100 %"},
		{&retract, amount(100), amount(50), "moves IN, from 100 % to 50 %"},
		{&retract, amount(50), amount(50), "stays still"},
	} {
		if got := Movement(row.part, row.from, row.to, 0.5); got != row.want {
			t.Errorf("%s: got %q, want %q", row.part.Name, got, row.want)
		}
	}
}

var setup = mixcore.Setup{Controls: []mixcore.Control{
	{Name: "roll stick", Kind: mixcore.AxisControl, Axis: mixcore.Roll},
	{Name: "pitch stick", Kind: mixcore.AxisControl, Axis: mixcore.Pitch},
	{Name: "roll trim", Kind: mixcore.TrimControl, Axis: mixcore.Roll},
	{Name: "flap lever", Kind: mixcore.LeverControl, Detents: []mixcore.Detent{{Name: "parked", At: 10}, {Name: "landing", At: 100}}},
	{Name: "throttle", Kind: mixcore.LeverControl},
	{Name: "rate switch", Kind: mixcore.SwitchControl, Positions: []string{"low", "high"}},
}}

func TestSettingIsSaidAsAPilotWould(t *testing.T) {
	for _, row := range []struct {
		control  int
		position float64
		want     string
	}{
		{0, 100, "roll stick full right"},
		{0, -100, "roll stick full left"},
		{0, 30, "roll stick 30 % right"},
		{0, -5.001, "roll stick 5.001 % left"},
		{0, 99.999, "roll stick 99.999 % right"},
		{0, 0, "roll stick centred"},
		{1, 100, "pitch stick full back"},
		{1, -40, "pitch stick 40 % forward"},
		{2, -50, "roll trim 50 % left"},
		{3, 100, "flap lever landing"},
		{3, 99.5, "flap lever 99.5 % (landing)"},
		{3, 35, "flap lever 35 %"},
		{4, 100, "throttle 100 %"},
		{4, 0, "throttle 0 %"},
		{5, 1, "rate switch high"},
		{5, 7, "rate switch position 8"},
	} {
		if got := Setting(&setup, row.control, row.position); got != row.want {
			t.Errorf("got %q, want %q", got, row.want)
		}
	}
}

func TestPoseLeavesOutWhatRests(t *testing.T) {
	in := mixcore.Input{Position: []float64{0, 0, 0, 10, 0, 0}}
	if got := Pose(&setup, &in); len(got) != 0 {
		t.Errorf("at rest: got %q, want nothing", got)
	}
	in = mixcore.Input{Position: []float64{100, 0, 0, 0, 0, 1}, SignalLost: true}
	want := []string{"roll stick full right", "flap lever 0 %", "rate switch high", "signal lost"}
	if got := Pose(&setup, &in); !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestLimitsAreNamedInTheChainsOrder(t *testing.T) {
	want := []string{"beyond the channel's travel limit", "at its stop"}
	if got := Limits(mixcore.AtStop | mixcore.TravelLimit); !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	if got := Limits(0); got != nil {
		t.Errorf("no limit: got %q", got)
	}
	for bit := mixcore.TravelLimit; bit <= mixcore.PartEnd; bit <<= 1 {
		if len(Limits(bit)) != 1 {
			t.Errorf("limit %b has no words", bit)
		}
	}
}
