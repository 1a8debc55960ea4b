package phrase

import (
	"math"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
)

// Indices of the example model.
const (
	rollStick = iota
	pitchStick
	yawStick
	throttle
	flapLever
	rateSwitch
	motorSwitch
	gearSwitch
	rollTrim
)

const (
	portAileron = iota
	starboardAileron
	portFlap
	starboardFlap
	elevator
	rudder
	noseWheel
	motor
	retracts
)

const (
	motorChannel = iota
	portAileronChannel
	starboardAileronChannel
	portFlapChannel
	starboardFlapChannel
	elevatorChannel
	yawChannel
	gearChannel
)

// exampleSetup is an invented model with one of everything, on measured
// tables so that its angles can be worked out in the head.
func exampleSetup() mixcore.Setup {
	full := []mixcore.Rate{{Throw: mixcore.Both(100)}}
	high := &mixcore.Condition{Op: mixcore.AtPosition, Control: rateSwitch, Position: 1}
	safe := &mixcore.Condition{Op: mixcore.AtPosition, Control: motorSwitch, Position: 0}
	channel := func(number int, name string, mix ...mixcore.MixLine) mixcore.Channel {
		return mixcore.Channel{Number: number, Name: name, Mix: mix, Limit: 100, EndPoints: mixcore.Both(100), PulseMin: 1000, PulseMax: 2000, Failsafe: mixcore.Failsafe{Hold: true}}
	}
	add := func(demand int, plus, minus mixcore.Percent) mixcore.MixLine {
		return mixcore.MixLine{Op: mixcore.Add, Demand: demand, Share: mixcore.Sides{Plus: plus, Minus: minus}}
	}
	addWhen := func(demand int, share mixcore.Percent, when *mixcore.Condition) mixcore.MixLine {
		return mixcore.MixLine{Op: mixcore.Add, Demand: demand, Share: mixcore.Both(share), When: when}
	}
	part := func(name string, kind mixcore.Kind, side mixcore.Side, channel int, degrees float64) mixcore.Part {
		info, _ := kind.Info()
		p := mixcore.Part{Name: name, Kind: kind, Side: side, Motion: info.Motion, Drives: []mixcore.Drive{{Channel: channel, Servo: mixcore.Servo{Swing: 45, Max: mixcore.Degrees(math.Inf(1)), PlusAft: true, TorqueNcm: 60}}},
			Stops: mixcore.Stops{Plus: mixcore.Degrees(math.Inf(1)), Minus: mixcore.Degrees(math.Inf(1))}}
		if degrees != 0 {
			p.Drives[0].Table = []mixcore.Point{{X: -100, Y: -degrees}, {X: 0, Y: 0}, {X: 100, Y: degrees}}
		}
		if info.Motion == mixcore.Power {
			p.Motor = &mixcore.Motor{Idle: 1000, Full: 2000, StoppedBelow: 2}
		}
		return p
	}
	s := mixcore.Setup{
		Name: "Example",
		Controls: []mixcore.Control{
			{Name: "roll stick", Kind: mixcore.AxisControl, Axis: mixcore.Roll},
			{Name: "pitch stick", Kind: mixcore.AxisControl, Axis: mixcore.Pitch},
			{Name: "yaw stick", Kind: mixcore.AxisControl, Axis: mixcore.Yaw},
			{Name: "throttle", Kind: mixcore.LeverControl},
			{Name: "flap lever", Kind: mixcore.LeverControl, Detents: []mixcore.Detent{{Name: "parked"}, {Name: "takeoff", At: 40}, {Name: "landing", At: 100}}},
			{Name: "rate switch", Kind: mixcore.SwitchControl, Positions: []string{"low", "high"}},
			{Name: "motor switch", Kind: mixcore.SwitchControl, Positions: []string{"safe", "live"}},
			{Name: "gear switch", Kind: mixcore.SwitchControl, Positions: []string{"wheels down", "wheels up"}},
			{Name: "roll trim", Kind: mixcore.TrimControl, Axis: mixcore.Roll},
		},
		Demands: []mixcore.Demand{
			{Name: "roll", From: rollStick, Rates: []mixcore.Rate{{When: high, Throw: mixcore.Both(100)}, {Throw: mixcore.Both(50)}}, Trim: rollTrim, TrimRange: 20},
			{Name: "pitch", From: pitchStick, Rates: full, Trim: mixcore.NoTrim},
			{Name: "yaw", From: yawStick, Rates: full, Trim: mixcore.NoTrim},
			{Name: "throttle", From: throttle, Rates: full, Trim: mixcore.NoTrim, Curve: &mixcore.Curve{Points: []mixcore.Point{{X: 0, Y: -100}, {X: 100, Y: 100}}}},
			{Name: "flap", From: flapLever, Rates: full, Trim: mixcore.NoTrim},
			{Name: "gear", From: gearSwitch, Rates: full, Trim: mixcore.NoTrim, Values: []mixcore.Percent{-100, 100}},
		},
		Channels: []mixcore.Channel{
			channel(1, "motor", add(3, 100, 100), mixcore.MixLine{Op: mixcore.ReplaceWith, Value: -100, When: safe}),
			channel(2, "port aileron", add(0, 60, 100)),
			channel(3, "starboard aileron", add(0, -100, -60)),
			channel(4, "port flap", add(4, 80, 80), addWhen(0, 20, high)),
			channel(5, "starboard flap", add(4, 80, 80), addWhen(0, -20, high)),
			channel(6, "elevator", add(1, 100, 100)),
			channel(7, "steering", add(2, 100, 100)),
			channel(8, "retracts", add(5, 100, 100)),
		},
		Parts: []mixcore.Part{
			part("port aileron", "aileron", mixcore.Port, portAileronChannel, 20),
			part("starboard aileron", "aileron", mixcore.Starboard, starboardAileronChannel, 20),
			part("port flap", "flap", mixcore.Port, portFlapChannel, 50),
			part("starboard flap", "flap", mixcore.Starboard, starboardFlapChannel, 50),
			part("elevator", "elevator", mixcore.Centre, elevatorChannel, -25),
			part("rudder", "rudder", mixcore.Centre, yawChannel, -25),
			part("nose wheel", "nose wheel", mixcore.Centre, yawChannel, -20),
			part("motor", "motor", mixcore.Centre, motorChannel, 0),
			part("retracts", "retract", mixcore.Centre, gearChannel, 0),
		},
	}
	s.Channels[motorChannel].Failsafe = mixcore.Failsafe{Output: -100}
	s.Channels[portFlapChannel].Slow, s.Channels[starboardFlapChannel].Slow = 2, 2
	for i := portAileron; i <= starboardFlap; i++ {
		s.Parts[i].Chord = 40
		s.Parts[i].Span = [2]mixcore.Millimetres{560, 940}
		if i >= portFlap {
			s.Parts[i].Span = [2]mixcore.Millimetres{120, 540}
		}
	}
	s.Wing = &mixcore.Wing{Span: 1900, RootChord: 260, TipChord: 200}
	s.Parts[elevator].Stops = mixcore.Stops{Plus: 30, Minus: 20}
	s.Parts[elevator].Drives = append(s.Parts[elevator].Drives, s.Parts[elevator].Drives[0])
	s.Parts[retracts].PlusIn = true
	return s
}

// exampleModel compiles the example after a change.
func exampleModel(t testing.TB, change func(*mixcore.Setup)) *airframes.Model {
	t.Helper()
	s := exampleSetup()
	if change != nil {
		change(&s)
	}
	plan, faults := mixcore.Compile(s)
	if len(faults) > 0 {
		t.Fatalf("the example does not compile: %v", faults)
	}
	return &airframes.Model{Name: s.Name, Still: airframes.DefaultStill, Setup: s, Plan: plan, ControlAka: make([][]string, len(s.Controls)), PartAka: make([][]string, len(s.Parts))}
}

// scene is what comes before a sentence.
type scene struct{ given, when string }

// verdicts parses and judges one outcome or one-line sentence.
func verdicts(t testing.TB, m *airframes.Model, sc scene, text string) []Verdict {
	t.Helper()
	v := NewVocabulary(m)
	setup := &m.Setup
	at := Situation{Now: RestPose(setup)}
	read := func(role Role, text string) Group {
		meaning, problem := v.Parse(role, text)
		if problem != nil {
			t.Fatalf("%q: %s (%s)", text, problem.Message, problem.Hint)
		}
		return meaning.Settings
	}
	set := make([]bool, len(setup.Controls))
	sets := func(groups ...Group) {
		for _, g := range groups {
			for _, s := range g.Settings {
				set[s.Control] = true
			}
		}
	}
	if sc.given != "" {
		g := read(Given, sc.given)
		at.Now = at.Now.Stand(setup, &g)
		sets(g)
	}
	if sc.when != "" {
		g := read(When, sc.when)
		at = Situation{Before: at.Now, Now: at.Now.Take(setup, &g), Moved: true}
		sets(g)
	}
	meaning, problem := v.Parse(Then, text)
	if problem != nil {
		t.Fatalf("%q: at %d: %s (%s)", text, problem.Column, problem.Message, problem.Hint)
	}
	if meaning.OneLine {
		before := at.Now.Take(setup, &meaning.With)
		at = Situation{Before: before, Now: before.Take(setup, &meaning.Move), Moved: !meaning.Move.Empty()}
		sets(meaning.With, meaning.Move)
	}
	at.Set = set
	var all []Verdict
	for i := range meaning.Outcomes {
		if problem := v.Unfit(&meaning.Outcomes[i], &at); problem != nil && meaning.Outcomes[i].Every != nil {
			t.Fatalf("%q: %s", text, problem.Message)
		}
		all = append(all, v.Judge(&meaning.Outcomes[i], at)...)
	}
	return all
}

func passes(list []Verdict) bool {
	for _, v := range list {
		if !v.Passed {
			return false
		}
	}
	return len(list) > 0
}
