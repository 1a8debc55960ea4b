package mixcore_test

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
)

// sport is a sport model whose flaps join the ailerons on high rates, built in
// Go: the set-up that the tests and benchmarks of this package work on.
// Its controls, by index:
const (
	rollStick = iota
	pitchStick
	yawStick
	throttle
	flapLever
	rateSwitch
	motorSwitch
	rollTrim
	pitchTrim
	yawTrim
)

var free = mixcore.Stops{Plus: mixcore.Degrees(math.Inf(1)), Minus: mixcore.Degrees(math.Inf(1))}

func switchIs(control, position int) *mixcore.Condition {
	return &mixcore.Condition{Op: mixcore.AtPosition, Control: control, Position: position}
}

func plainChannel(number int, name string, mix ...mixcore.MixLine) mixcore.Channel {
	return mixcore.Channel{Number: number, Name: name, Mix: mix, Limit: 100, EndPoints: mixcore.Both(100),
		PulseMin: 1000, PulseMax: 2000, Failsafe: mixcore.Failsafe{Hold: true}}
}

func add(demand int, share mixcore.Percent) mixcore.MixLine {
	return mixcore.MixLine{Op: mixcore.Add, Demand: demand, Share: mixcore.Both(share)}
}

func geared(channel int, g linkage.Geometry, plusAft bool, sign float64) []mixcore.Drive {
	return []mixcore.Drive{{Channel: channel, Linkage: &g, Sign: sign,
		Servo: mixcore.Servo{Swing: 45, Max: mixcore.Degrees(math.Inf(1)), PlusAft: plusAft}}}
}

func sport() mixcore.Setup {
	high := switchIs(rateSwitch, 1)
	dual := func(throw, expo mixcore.Percent) []mixcore.Rate {
		return []mixcore.Rate{
			{When: high, Throw: mixcore.Both(throw), Expo: expo},
			{Throw: mixcore.Both(throw / 2), Expo: expo / 2},
		}
	}
	plain := []mixcore.Rate{{Throw: mixcore.Both(100)}}
	wing := linkage.Geometry{Arm: 11, Horn: 15, Pivots: 58, Offset: 3, ArmDeg: 90, HornDeg: 95}
	tail := linkage.Geometry{Arm: 10, Horn: 15, Pivots: 60, ArmDeg: 90, HornDeg: 90}
	s := mixcore.Setup{
		Name: "sport",
		Controls: []mixcore.Control{
			rollStick:   {Name: "roll stick", Kind: mixcore.AxisControl, Axis: mixcore.Roll},
			pitchStick:  {Name: "pitch stick", Kind: mixcore.AxisControl, Axis: mixcore.Pitch},
			yawStick:    {Name: "yaw stick", Kind: mixcore.AxisControl, Axis: mixcore.Yaw},
			throttle:    {Name: "throttle", Kind: mixcore.LeverControl},
			flapLever:   {Name: "flap lever", Kind: mixcore.LeverControl, Detents: []mixcore.Detent{{"parked", 0}, {"takeoff", 40}, {"landing", 100}}},
			rateSwitch:  {Name: "rate switch", Kind: mixcore.SwitchControl, Positions: []string{"low", "high"}},
			motorSwitch: {Name: "motor switch", Kind: mixcore.SwitchControl, Positions: []string{"safe", "live"}},
			rollTrim:    {Name: "roll trim", Kind: mixcore.TrimControl, Axis: mixcore.Roll},
			pitchTrim:   {Name: "pitch trim", Kind: mixcore.TrimControl, Axis: mixcore.Pitch},
			yawTrim:     {Name: "yaw trim", Kind: mixcore.TrimControl, Axis: mixcore.Yaw},
		},
		Demands: []mixcore.Demand{
			{Name: "roll", From: rollStick, Rates: dual(90, 30), Trim: rollTrim, TrimRange: 10},
			{Name: "pitch", From: pitchStick, Rates: dual(80, 25), Trim: pitchTrim, TrimRange: 10},
			{Name: "yaw", From: yawStick, Rates: dual(95, 20), Trim: yawTrim, TrimRange: 5},
			{Name: "throttle", From: throttle, Rates: plain, Trim: mixcore.NoTrim,
				Curve: &mixcore.Curve{Points: []mixcore.Point{{X: 0, Y: -100}, {X: 100, Y: 100}}}},
			{Name: "flap", From: flapLever, Rates: []mixcore.Rate{{Throw: mixcore.Both(45)}}, Trim: mixcore.NoTrim},
		},
		Channels: []mixcore.Channel{
			plainChannel(1, "starboard aileron", mixcore.MixLine{Op: mixcore.Add, Demand: 0, Share: mixcore.Sides{Plus: 100, Minus: 70}}),
			plainChannel(2, "port aileron", mixcore.MixLine{Op: mixcore.Add, Demand: 0, Share: mixcore.Sides{Plus: 70, Minus: 100}}),
			plainChannel(3, "starboard flap", add(4, 100), mixcore.MixLine{Op: mixcore.Add, Demand: 0, Share: mixcore.Both(-55), When: high}),
			plainChannel(4, "port flap", add(4, -100), mixcore.MixLine{Op: mixcore.Add, Demand: 0, Share: mixcore.Both(-55), When: high}),
			plainChannel(5, "elevator", add(1, 100)),
			plainChannel(6, "rudder", add(2, 100)),
			plainChannel(7, "throttle", add(3, 100), mixcore.MixLine{Op: mixcore.ReplaceWith, Value: -100, When: switchIs(motorSwitch, 0)}),
		},
		Parts: []mixcore.Part{
			{Name: "starboard aileron", Kind: "aileron", Side: mixcore.Starboard, Motion: mixcore.UpDown, Drives: geared(0, wing, true, -1), Stops: free, Chord: 40},
			{Name: "port aileron", Kind: "aileron", Side: mixcore.Port, Motion: mixcore.UpDown, Drives: geared(1, wing, false, -1), Stops: free, Chord: 40},
			{Name: "starboard flap", Kind: "flap", Side: mixcore.Starboard, Motion: mixcore.UpDown, Drives: geared(2, wing, false, -1), Stops: mixcore.Stops{Plus: 45, Minus: 18}, Chord: 48},
			{Name: "port flap", Kind: "flap", Side: mixcore.Port, Motion: mixcore.UpDown, Drives: geared(3, wing, true, -1), Stops: mixcore.Stops{Plus: 45, Minus: 18}, Chord: 48},
			{Name: "elevator", Kind: "elevator", Motion: mixcore.UpDown, Drives: geared(4, tail, false, 1), Stops: free, Chord: 52},
			{Name: "rudder", Kind: "rudder", Motion: mixcore.LeftRight, Drives: geared(5, tail, false, 1), Stops: free, Chord: 60},
			{Name: "motor", Kind: "motor", Motion: mixcore.Power, Drives: []mixcore.Drive{{Channel: 6}},
				Motor: &mixcore.Motor{Idle: 1000, Full: 2000, StoppedBelow: 2, StoppedWhen: switchIs(motorSwitch, 0)}},
		},
	}
	s.Channels[3].Reversed = true
	s.Channels[2].SubTrim = 2
	s.Channels[2].EndPoints = mixcore.Sides{Plus: 100, Minus: 95}
	s.Channels[6].Failsafe = mixcore.Failsafe{Output: -100}
	return s
}
