package sample

import (
	"fmt"
	"math"

	"example.com/hingeline/verify/result"
)

// Paper is what goes into the hand with [Failing].
func Paper() *result.Paper {
	p := paper()
	p.Pictures = []result.Picture{
		of(picture(stopped), 7),
		moving(of(picture(rollRight), 1), &result.Want{Low: 0.5, HighOpen: true, Says: "trailing edge goes DOWN, at least 0.5°"}),
		wanting(of(picture(elevatorDown), 4), &result.Want{Low: -15, High: -13, Says: "trailing edge UP 14° ± 1°"}),
		moving(of(picture(rollRight), 3, 1), nil),
		of(picture(stopped), 7),
		of(picture(still)),
	}
	return p
}

// PassingPaper is what goes into the hand with [Passing].
func PassingPaper() *result.Paper {
	p := paper()
	p.Pictures = []result.Picture{
		of(picture(stopped), 7),
		wanting(of(picture(still), 1), &result.Want{Low: -0.5, High: 0.5, Says: "at neutral"}),
		wanting(of(picture(still), 3), &result.Want{Low: -0.5, High: 0.5, Says: "at neutral"}),
		moving(of(picture(rollRight), 1), &result.Want{Low: 0.5, HighOpen: true, Says: "drops, at least 0.5°"}),
		moving(of(picture(rollRight), 2), &result.Want{Low: -20, High: -16, Says: "rises 18° ± 2°"}),
	}
	return p
}

func paper() *result.Paper {
	return &result.Paper{
		MassKg: 2.4,
		Shape:  shape(),
		Linkages: []result.Linkage{{
			Part: "elevator", Channel: "channel 4 (elevator)", Seen: "from the side, nose left",
			Goes: "as far as the channel goes: 1150 to 1850 µs",
			Stands: []result.LinkageAt{
				{Says: "channel at 1500 µs (0 %): arm at neutral, neutral",
					Arm: [2]float64{0, -11}, Horn: [2]float64{58, -15}, Hinge: [2]float64{58, 0}, TrailingEdge: [2]float64{98, 0}},
				{Says: "channel at 1850 µs (70 %): arm 31.5° aft, trailing edge UP 22.4° (16 mm)",
					Arm: [2]float64{5.75, -9.38}, Horn: [2]float64{63.72, -13.87}, Hinge: [2]float64{58, 0}, TrailingEdge: [2]float64{94.98, 15.25}},
				{Says: "channel at 1150 µs (−70 %): arm 31.5° fore, trailing edge DOWN 22.7° (16 mm)",
					Arm: [2]float64{-5.75, -9.38}, Horn: [2]float64{52.22, -13.84}, Hinge: [2]float64{58, 0}, TrailingEdge: [2]float64{94.91, -15.41}},
			},
			Horn: "horn below", Lengths: []string{"arm 11 mm", "horn 15 mm", "pushrod 58.1 mm"},
		}},
		Throws: []result.Throw{
			throw("port aileron", "roll stick", "left", "UP", "right", "DOWN", 17.2, 11, 8.6, 5.5, "", "rate switch high"),
			throw("port aileron", "roll stick", "left", "UP", "right", "DOWN", 12, 7.7, 6, 3.8, "1.2° less UP than the starboard aileron", "rate switch low"),
			throw("starboard aileron", "roll stick", "right", "UP", "left", "DOWN", 17.2, 11, 8.6, 5.5, "", "rate switch high"),
			throw("starboard aileron", "roll stick", "right", "UP", "left", "DOWN", 13.2, 8.5, 6, 3.8, "1.2° more UP than the port aileron", "rate switch low"),
			throw("elevator", "pitch stick", "full back", "DOWN", "full forward", "UP", 14.2, 9.9, 13.1, 9.1, "", ""),
			throw("rudder", "yaw stick", "full left", "LEFT", "full right", "RIGHT", 24, 0, 24, 0, "", ""),
		},
		Travel: []result.Travel{
			{Channel: "channel 1 (port aileron)", Low: 1180, High: 1790, Min: 1000, Max: 2000, Spare: 42, Worst: []string{"roll stick full left", "rate switch high"}, Sure: true},
			{Channel: "channel 3 (port flap)", Low: 1000, High: 2000, Min: 1000, Max: 2000, Worst: []string{"flap lever landing", "roll stick full right", "rate switch high"}, Bites: "pulse limit of 2000 µs", Sure: true},
			{Channel: "channel 4 (elevator)", Low: 1150, High: 1850, Min: 1000, Max: 2000, Spare: 30, Worst: []string{"pitch stick full back"}},
		},
		Signal: []result.Signal{
			{Channel: "channel 1 (port aileron)", Does: "holds what it put out", Parts: []string{"port aileron: stays where it was, wherever that is"}},
			{Channel: "channel 3 (port flap)", Does: "goes to 1500 µs (0 %)", Parts: []string{"port flap: neutral, at once, from wherever it was"}},
			{Channel: "channel 8 (motor)", Does: "goes to 1000 µs (−100 %)", Parts: []string{"motor: stopped, at once, from wherever it was"}, Motor: true},
		},
		Motors: []result.Motor{{
			Name: "motor", Channel: "channel 8 (motor)", StoppedWhen: "motor switch is safe", Rest: "stopped",
			Full: []string{"motor switch live", "throttle 100 %"},
		}},
	}
}

func throw(part, control, oneEnd, oneWay, otherEnd, otherWay string, one, oneMm, other, otherMm float64, partner, when string) result.Throw {
	within := result.Tolerance{Degrees: 1}
	if oneMm != 0 {
		within.Millimetres = 0.7
	}
	t := result.Throw{Part: part, Control: control, Partner: partner, Ends: []result.ThrowEnd{
		{Way: oneWay, At: control + " " + oneEnd, Degrees: one, Millimetres: oneMm, Tolerance: within},
		{Way: otherWay, At: control + " " + otherEnd, Degrees: other, Millimetres: otherMm, Tolerance: within},
	}}
	if partner != "" {
		t.Differs = 1.2
	}
	if when != "" {
		t.When = []string{when}
	}
	return t
}

func shape() result.Shape {
	return result.Shape{
		Semispan: 800, Chords: [2]float64{240, 180}, Measured: true,
		Parts: []result.Outline{
			surface("port aileron", "aileron", "port", result.PortWing, point(-430, 120, 20), point(-770, 112, 20), 37, 25),
			surface("port flap", "flap", "port", result.PortWing, point(-90, 126, 20), point(-420, 120, 20), 46, 40),
			surface("starboard aileron", "aileron", "starboard", result.StarboardWing, point(430, 120, 20), point(770, 112, 20), 37, 25),
			surface("starboard flap", "flap", "starboard", result.StarboardWing, point(90, 126, 20), point(420, 120, 20), 46, 40),
			surface("elevator", "elevator", "centre", result.Tail, point(-230, 700, 60), point(230, 700, 60), 40, 25),
			upright("rudder", "rudder", result.Tail, point(0, 720, 70), point(0, 740, 250)),
			wheel("nose wheel", "nose wheel", point(0, -260, -120)),
			motor("motor", "centre", point(0, -380, 0)),
		},
	}
}

func point(out, aft, up float64) result.Point { return result.Point{Out: out, Aft: aft, Up: up} }

func surface(name, kind, side string, stage result.Stage, inner, outer result.Point, chord, most float64) result.Outline {
	return result.Outline{
		Name: name, Kind: kind, Side: side, Stage: stage, Motion: result.UpDown,
		Inner: inner, Outer: outer, Chord: chord, ChordSaid: true, PlaceSaid: true, Most: most,
	}
}

func upright(name, kind string, stage result.Stage, inner, outer result.Point) result.Outline {
	o := surface(name, kind, "centre", stage, inner, outer, 70, 30)
	o.Motion, o.Tilt, o.ChordSaid = result.LeftRight, 90, false
	return o
}

func wheel(name, kind string, where result.Point) result.Outline {
	return result.Outline{
		Name: name, Kind: kind, Side: "centre", Stage: result.Tail, Motion: result.LeftRight,
		Inner: where, Outer: where, Most: 20,
	}
}

func motor(name, side string, where result.Point) result.Outline {
	return result.Outline{
		Name: name, Kind: "motor", Side: side, Stage: result.MotorAndSignal, Motion: result.Power,
		Inner: where, Outer: where,
	}
}

func extra(name, kind, side string, stage result.Stage, where result.Point) result.Outline {
	return result.Outline{
		Name: name, Kind: kind, Side: side, Stage: stage, Motion: result.OutIn,
		Inner: where, Outer: where, PlaceSaid: true,
	}
}

// pose is where the parts that are not at rest stand: by index, from and to.
type pose map[int][2]float64

var (
	stopped      = pose{}
	still        = pose{}
	rollRight    = pose{0: {0, 8.6}, 1: {30, 12.4 + 30}, 2: {0, -17.2}, 3: {30, 30}}
	elevatorDown = pose{4: {14.2, 14.2}}
)

// picture is the sample model in a pose.
func picture(p pose) result.Picture { return pictureOf(shape().Parts, p) }

func pictureOf(parts []result.Outline, p pose) result.Picture {
	var drawn result.Picture
	for i := range parts {
		drawn.Stands = append(drawn.Stands, standOf(&parts[i], p[i][0], p[i][1]))
	}
	return drawn
}

func standOf(o *result.Outline, from, at float64) result.Stand {
	moved := at - from
	if moved == 0 {
		moved = at
	}
	s := result.Stand{From: from, At: at, Moved: from != at}
	ways, what := [2]string{"DOWN", "UP"}, "trailing edge"
	switch o.Motion {
	case result.LeftRight:
		ways = [2]string{"LEFT", "RIGHT"}
	case result.Power:
		ways, what = [2]string{"MORE", "LESS"}, "power"
	case result.OutIn:
		ways, what = [2]string{"OUT", "IN"}, ""
	}
	switch {
	case moved > 0:
		s.Way = ways[0]
	case moved < 0:
		s.Way = ways[1]
	}
	s.Says = says(o, what, ways, at)
	return s
}

func says(o *result.Outline, what string, ways [2]string, at float64) string {
	switch {
	case o.Motion == result.Power && at == 0:
		return "stopped"
	case o.Motion == result.Power:
		return fmt.Sprintf("power %.0f %%", at)
	case o.Motion == result.OutIn:
		return fmt.Sprintf("%.0f %% OUT", at)
	case at == 0:
		return "neutral"
	}
	way := ways[0]
	if at < 0 {
		way = ways[1]
	}
	text := fmt.Sprintf("%s %s %.1f°", what, way, math.Abs(at))
	if o.ChordSaid {
		text += fmt.Sprintf(" (%.0f mm)", 2*o.Chord*math.Sin(math.Abs(at)/2*math.Pi/180))
	}
	return text
}

func of(p result.Picture, parts ...int) result.Picture {
	p.Of = parts
	return p
}

func wanting(p result.Picture, w *result.Want) result.Picture {
	p.Want = w
	return p
}

// moving is a sentence about a movement; what is wanted of it begins where the part was.
func moving(p result.Picture, w *result.Want) result.Picture {
	p.Moves = true
	if w != nil {
		from := p.Stands[p.Of[0]].From
		w.Low, w.High = w.Low+from, w.High+from
		p.Want = w
	}
	return p
}
