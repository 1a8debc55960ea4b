package prove_test

import (
	"context"
	"math"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
	"example.com/hingeline/verify/prove"
)

// The controls of the plain set-up that tests by hand begin with, by index.
const (
	roll = iota
	pitch
	lever
	mode // a switch of four positions
	rollTrim
)

// The demands of the plain set-up.
const (
	rollDemand = iota
	pitchDemand
	leverDemand
)

var free = mixcore.Stops{Plus: mixcore.Degrees(math.Inf(1)), Minus: mixcore.Degrees(math.Inf(1))}

// plain is a set-up whose channels put out what the lines say, and whose parts, one for
// each channel, stand at as many degrees as their channel puts out percent.
func plain(channels ...[]mixcore.MixLine) mixcore.Setup {
	s := mixcore.Setup{
		Controls: []mixcore.Control{
			roll:     {Name: "roll stick", Kind: mixcore.AxisControl, Axis: mixcore.Roll},
			pitch:    {Name: "pitch stick", Kind: mixcore.AxisControl, Axis: mixcore.Pitch},
			lever:    {Name: "lever", Kind: mixcore.LeverControl},
			mode:     {Name: "mode switch", Kind: mixcore.SwitchControl, Positions: []string{"a", "b", "c", "d"}},
			rollTrim: {Name: "roll trim", Kind: mixcore.TrimControl, Axis: mixcore.Roll},
		},
		Demands: []mixcore.Demand{
			rollDemand:  {Name: "roll", From: roll, Rates: full(), Trim: mixcore.NoTrim},
			pitchDemand: {Name: "pitch", From: pitch, Rates: full(), Trim: mixcore.NoTrim},
			leverDemand: {Name: "slide", From: lever, Rates: full(), Trim: mixcore.NoTrim},
		},
	}
	for i, lines := range channels {
		s.Channels = append(s.Channels, mixcore.Channel{Number: i + 1, Mix: lines, Limit: 100, EndPoints: mixcore.Both(100),
			PulseMin: 500, PulseMax: 2500, Failsafe: mixcore.Failsafe{Hold: true}})
		s.Parts = append(s.Parts, mixcore.Part{Kind: "aileron", Motion: mixcore.UpDown, Stops: free, Drives: []mixcore.Drive{straight(i)}})
	}
	return s
}

// full is one rate of full throw.
func full() []mixcore.Rate { return []mixcore.Rate{{Throw: mixcore.Both(100)}} }

// straight is a drive of a degree for each percent.
func straight(channel int) mixcore.Drive {
	return mixcore.Drive{Channel: channel, Table: []mixcore.Point{{X: -200, Y: -200}, {X: 200, Y: 200}}}
}

// linked is a drive by a linkage.
func linked(channel int, plusAft bool, sign float64) mixcore.Drive {
	return mixcore.Drive{Channel: channel, Sign: sign,
		Linkage: &linkage.Geometry{Arm: 11, Horn: 15, Pivots: 58, Offset: 3, ArmDeg: 90, HornDeg: 95},
		Servo:   mixcore.Servo{Swing: 45, Max: mixcore.Degrees(math.Inf(1)), PlusAft: plusAft}}
}

func add(demand int, share mixcore.Percent) mixcore.MixLine {
	return mixcore.MixLine{Op: mixcore.Add, Demand: demand, Share: mixcore.Both(share)}
}

func fixed(value mixcore.Percent) mixcore.MixLine {
	return mixcore.MixLine{Op: mixcore.Fixed, Value: value}
}

func scaled(demand int) mixcore.MixLine {
	return mixcore.MixLine{Op: mixcore.ScaleBy, Demand: demand}
}

func when(l mixcore.MixLine, c mixcore.Condition) mixcore.MixLine {
	l.When = &c
	return l
}

func lines(l ...mixcore.MixLine) []mixcore.MixLine { return l }

func all(c ...mixcore.Condition) mixcore.Condition {
	return mixcore.Condition{Op: mixcore.And, Args: c}
}

func not(c mixcore.Condition) mixcore.Condition {
	return mixcore.Condition{Op: mixcore.Not, Args: []mixcore.Condition{c}}
}

func within(control int, low, high mixcore.Percent) mixcore.Condition {
	return mixcore.Condition{Op: mixcore.Within, Control: control, Low: low, High: high}
}

func above(control int, low mixcore.Percent) mixcore.Condition {
	return mixcore.Condition{Op: mixcore.Above, Control: control, Low: low}
}

func stands(control, position int) mixcore.Condition {
	return mixcore.Condition{Op: mixcore.AtPosition, Control: control, Position: position}
}

func compile(t testing.TB, s mixcore.Setup) *mixcore.Plan {
	t.Helper()
	plan, faults := mixcore.Compile(s)
	if faults != nil {
		t.Fatalf("faults: %+v", faults)
	}
	return plan
}

// everywhere is a claim over every place of every control.
func everywhere(s *mixcore.Setup, w prove.Want) *prove.Claim {
	return &prove.Claim{Now: prove.Everywhere(s), Want: w}
}

// movement is a claim over every place of every control, against one control at rest.
func movement(s *mixcore.Setup, control int, w prove.Want) *prove.Claim {
	c := everywhere(s, w)
	c.Other = prove.Beside(s)
	c.Other[control] = prove.Stands(&s.Controls[control], s.Controls[control].Rest())
	return c
}

func decide(t testing.TB, s mixcore.Setup, c *prove.Claim) prove.Decision {
	t.Helper()
	return prove.New(compile(t, s)).Decide(context.Background(), c, prove.Options{Margins: true})
}

var answerNames = map[prove.Answer]string{prove.Undecided: "undecided", prove.Proved: "proved", prove.Disproved: "disproved", prove.Empty: "empty"}

func wantAnswer(t testing.TB, d prove.Decision, want prove.Answer) {
	t.Helper()
	if d.Answer != want {
		t.Fatalf("got %s, want %s: %+v", answerNames[d.Answer], answerNames[want], d)
	}
}

// nearly is how far a margin may be from one worked by hand: the search ends that near,
// and ranges are a little wide.
const nearly = 0.006

// wantProved wants a proof with a smallest margin.
func wantProved(t testing.TB, d prove.Decision, margin float64) {
	t.Helper()
	wantAnswer(t, d, prove.Proved)
	if !(d.AtLeast <= margin && d.AtLeast >= margin-nearly) {
		t.Errorf("at least %v, want %v or a little less", d.AtLeast, margin)
	}
	if !(math.Abs(d.Margin-margin) <= nearly) {
		t.Errorf("the smallest margin found is %v at %+v, want %v", d.Margin, d.Pose, margin)
	}
}

// wantMoved wants a counterexample with just these controls off rest, at these places.
func wantMoved(t testing.TB, s *mixcore.Setup, in mixcore.Input, places map[int]float64) {
	t.Helper()
	for i, x := range in.Position {
		want, ok := places[i]
		if !ok {
			want = s.Controls[i].Rest()
		}
		if x != want {
			t.Errorf("%s at %v, want %v: %v", s.Controls[i].Name, x, want, in.Position)
		}
	}
}
