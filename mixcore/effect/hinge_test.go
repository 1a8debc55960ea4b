package effect_test

import (
	"math"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
	"example.com/hingeline/mixcore/linkage"
)

// Flat plate at 20 m/s, chord 40 mm, span 0.5 m, 20°: 0.0335 N·m; thin aerofoil
// with a quarter chord 0.0646 N·m, computed with a general-purpose numerical
// library.
func TestHingeMomentBand(t *testing.T) {
	got := effect.HingeMoment(0.04, 0.5, 0.25, 20, -20)
	near(t, "flat plate", got.Low, 0.0335, 0.00005)
	near(t, "thin aerofoil", got.High, 0.0646, 0.00005)
}

// The rule quoted from AMA 520-A: 1.5 oz/in² × 3 in chord × 60 in length × 1 in
// arm / 1.5 in horn = 180 oz·in, which is 127.1 N·cm.
func TestQuotedRule(t *testing.T) {
	near(t, "torque", effect.QuotedRule(3*0.0254, 60*0.0254, 1/1.5), 180*0.70615518, 1e-9)
}

// A linkage square to both gears by arm over horn at neutral.
func TestGearingIsArmOverHorn(t *testing.T) {
	g := linkage.Geometry{Arm: 10, Horn: 15, Pivots: 400, ArmDeg: 90, HornDeg: 90, Offset: -5}
	inf := mixcore.Degrees(math.Inf(1))
	s := mixcore.Setup{
		Controls: []mixcore.Control{{Name: "stick", Kind: mixcore.AxisControl, Axis: mixcore.Pitch}},
		Demands:  []mixcore.Demand{{Name: "pitch", Rates: []mixcore.Rate{{Throw: mixcore.Both(100)}}, Trim: mixcore.NoTrim}},
		Channels: []mixcore.Channel{{Number: 1, Limit: 100, EndPoints: mixcore.Both(100), PulseMin: 1000, PulseMax: 2000,
			Failsafe: mixcore.Failsafe{Hold: true},
			Mix:      []mixcore.MixLine{{Op: mixcore.Add, Share: mixcore.Both(100)}}}},
		Parts: []mixcore.Part{{Name: "elevator", Kind: "elevator", Motion: mixcore.UpDown,
			Stops: mixcore.Stops{Plus: inf, Minus: inf}, Chord: 40, Span: [2]mixcore.Millimetres{0, 250},
			Drives: []mixcore.Drive{{Linkage: &g, Sign: 1, Servo: mixcore.Servo{Swing: 45, Max: inf, PlusAft: true, TorqueNcm: 30}}}}},
	}
	p, faults := mixcore.Compile(s)
	if faults != nil {
		t.Fatal(faults)
	}
	in := p.Rest()
	in.Position[0] = 1 // a hair off neutral, so that there is a load
	trace := p.Trace(&in)
	loads, missing := effect.New(p.Setup()).Loads(p, trace, 20)
	if len(loads) != 1 || missing != nil {
		t.Fatalf("%d loads, missing %v", len(loads), missing)
	}
	moment := effect.HingeMoment(0.04, 0.5, 0.25, 20, trace.Parts[0].Angle)
	near(t, "gearing at neutral", loads[0].Needed.High/100/moment.High, 10.0/15, 0.005)
	near(t, "margin", loads[0].Margin().Low, 30/loads[0].Needed.High, 1e-9)
}

// stickTo is one surface on one channel, driven by one servo.
func stickTo(t *testing.T, p mixcore.Part) *mixcore.Plan {
	t.Helper()
	plan, faults := mixcore.Compile(mixcore.Setup{
		Controls: []mixcore.Control{{Name: "stick", Kind: mixcore.AxisControl, Axis: mixcore.Pitch}},
		Demands:  []mixcore.Demand{{Name: "pitch", Rates: []mixcore.Rate{{Throw: mixcore.Both(100)}}, Trim: mixcore.NoTrim}},
		Channels: []mixcore.Channel{{Number: 1, Limit: 100, EndPoints: mixcore.Both(100), PulseMin: 1000, PulseMax: 2000,
			Failsafe: mixcore.Failsafe{Hold: true},
			Mix:      []mixcore.MixLine{{Op: mixcore.Add, Share: mixcore.Both(100)}}}},
		Parts: []mixcore.Part{p},
	})
	if faults != nil {
		t.Fatal(faults)
	}
	return plan
}

// At the end of a table, and with the arm held at its end, the air still pulls:
// the gearing there is that just inside, never half of it or nothing.
func TestGearingAtTheEndOfTravel(t *testing.T) {
	inf := mixcore.Degrees(math.Inf(1))
	free := mixcore.Stops{Plus: inf, Minus: inf}
	span := [2]mixcore.Millimetres{0, 250}
	g := linkage.Geometry{Arm: 10, Horn: 15, Pivots: 400, ArmDeg: 90, HornDeg: 90}
	for name, c := range map[string]struct {
		drive mixcore.Drive
		gear  float64
	}{
		"table": {mixcore.Drive{Table: []mixcore.Point{{X: -100, Y: -30}, {X: 0, Y: 0}, {X: 100, Y: 30}}, Servo: mixcore.Servo{Swing: 45, Max: inf}}, 30.0 / 45},
		"table of a servo with a maximum": {mixcore.Drive{Table: []mixcore.Point{{X: -100, Y: -30}, {X: -50, Y: -5}, {X: 0, Y: 0}, {X: 50, Y: 5}, {X: 100, Y: 30}},
			Servo: mixcore.Servo{Swing: 45, Max: 20}}, 50.0 / 45},
		"held":    {mixcore.Drive{Linkage: &g, Sign: 1, Servo: mixcore.Servo{Swing: 45, Max: 20, PlusAft: true}}, 0.66},
		"at last": {mixcore.Drive{Linkage: &g, Sign: 1, Servo: mixcore.Servo{Swing: 20, Max: 20, PlusAft: true}}, 0.66},
	} {
		p := stickTo(t, mixcore.Part{Name: "elevator", Kind: "elevator", Motion: mixcore.UpDown, Stops: free, Chord: 40, Span: span, Drives: []mixcore.Drive{c.drive}})
		for _, position := range []float64{100, -100} {
			in := p.Rest()
			in.Position[0] = position
			trace := p.Trace(&in)
			loads, _ := effect.New(p.Setup()).Loads(p, trace, 20)
			moment := effect.HingeMoment(0.04, 0.5, 0.25, 20, trace.Parts[0].Angle)
			near(t, name, loads[0].Needed.High/100/moment.High, c.gear, 0.02)
		}
	}
}

// An elevon is a part of the wing, whose chord is known where the wing is.
func TestLoadsOfAnElevonTakeTheWingsChord(t *testing.T) {
	inf := mixcore.Degrees(math.Inf(1))
	elevon := mixcore.Part{Name: "elevon", Kind: "elevon", Side: mixcore.Port, Motion: mixcore.UpDown, Stops: mixcore.Stops{Plus: inf, Minus: inf},
		Chord: 150, Span: [2]mixcore.Millimetres{200, 900},
		Drives: []mixcore.Drive{{Table: []mixcore.Point{{X: -100, Y: -30}, {X: 0, Y: 0}, {X: 100, Y: 30}}, Servo: mixcore.Servo{Swing: 45, Max: inf}}}}
	p := stickTo(t, elevon)
	s := *p.Setup()
	s.Wing = &mixcore.Wing{Span: 2000, RootChord: 300, TipChord: 300}
	in := p.Rest()
	in.Position[0] = 50
	trace := p.Trace(&in)
	loads, _ := effect.New(&s).Loads(p, trace, 20)
	moment := effect.HingeMoment(0.15, 0.7, 0.5, 20, trace.Parts[0].Angle)
	near(t, "thin aerofoil with half the chord", loads[0].Needed.High/100/(30.0/45), moment.High, 1e-6*moment.High)
}
