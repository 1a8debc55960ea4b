package effect_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
)

// outputs are two poses of parts: at neutral, and moved.
func outputs(moved ...float64) (from, to *mixcore.Output) {
	from = &mixcore.Output{Parts: make([]mixcore.PartOutput, len(moved))}
	to = &mixcore.Output{Parts: make([]mixcore.PartOutput, len(moved))}
	for i, v := range moved {
		to.Parts[i] = mixcore.PartOutput{Angle: mixcore.Degrees(v), Amount: mixcore.Percent(v)}
	}
	return from, to
}

func adverse(parts []mixcore.Part, moved ...float64) (float64, bool) {
	from, to := outputs(moved...)
	return effect.New(&mixcore.Setup{Parts: parts}).AdverseYaw(from, to)
}

// More up than down against adverse yaw is common practice, no source; how much
// it does is the derivation's.
func TestAdverseYawFollowsTheThrows(t *testing.T) {
	ailerons := pair("aileron")
	for _, c := range []struct {
		name       string
		port, star float64
		low, high  float64 // of the ratio
	}{
		{"equal throws, right", 15, -15, 1 - 1e-12, 1 + 1e-12},
		{"equal throws, left", -15, 15, 1 - 1e-12, 1 + 1e-12},
		{"small equal throws", 2, -2, 1 - 1e-12, 1 + 1e-12},
		{"more up, right", 10, -20, 0, 0.7},
		{"more up, left", -20, 10, 0, 0.7},
		{"more down, right", 20, -10, 1.3, 2},
		{"more down, left", -10, 20, 1.3, 2},
		{"only up", 0, -20, -0.1, 0.4},
	} {
		got, ok := adverse(ailerons, c.port, c.star)
		if !ok || got < c.low || got > c.high {
			t.Errorf("%s: got %v, %v; want %v to %v", c.name, got, ok, c.low, c.high)
		}
	}
}

// The closed form for one pair: 1 − (U − D)/(2·c0), with U and D as changes of
// lift coefficient.
func TestAdverseYawOfOnePairIsTheClosedForm(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		up, down := rapid.Float64Range(2, 30).Draw(t, "up"), rapid.Float64Range(2, 30).Draw(t, "down")
		got, ok := adverse(pair("aileron"), down, -up)
		perDegree := effect.HelmboldSlope(7) * 0.6 * math.Pi / 180
		want := 1 - (up-down)*perDegree/(2*effect.CruiseLift)
		if !ok || math.Abs(got-want) > 1e-9 {
			t.Fatalf("got %v, %v; want %v", got, ok, want)
		}
	})
}

// The sum over strips, each with its drag k·(c0+Δ)², summed for itself: two
// pairs on a tapered wing, for any k.
func TestAdverseYawAgainstStripsOfDrag(t *testing.T) {
	wing := &mixcore.Wing{Span: 2000, RootChord: 300, TipChord: 180}
	parts := append(pair("aileron"), pair("flap")...)
	for i := range parts {
		parts[i].Chord, parts[i].Span = 45, [2]mixcore.Millimetres{600, 950}
		if parts[i].Kind == "flap" {
			parts[i].Span = [2]mixcore.Millimetres{150, 550}
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.Float64Range(0.02, 0.1).Draw(t, "k")
		ailerons, flaps := [2]float64{}, [2]float64{}
		ailerons[0], ailerons[1] = rapid.Float64Range(5, 25).Draw(t, "aileron down"), -rapid.Float64Range(5, 25).Draw(t, "aileron up")
		flaps[0], flaps[1] = rapid.Float64Range(0, 10).Draw(t, "flap down"), -rapid.Float64Range(0, 10).Draw(t, "flap up")
		from, to := outputs(ailerons[0], ailerons[1], flaps[0], flaps[1])
		got, ok := effect.New(&mixcore.Setup{Wing: wing, Parts: parts}).AdverseYaw(from, to)

		area := 2000.0 * (300 + 180) / 2
		slope := effect.HelmboldSlope(2000 * 2000 / area)
		roll, yaw := 0.0, 0.0 // rolls right and yaws left are plus
		for i, p := range parts {
			middle, length := float64(p.Span[0]+p.Span[1])/2, float64(p.Span[1]-p.Span[0])
			chord := 300 - 120*middle/1000
			change := slope * effect.ThinFlap(45/chord).Effectiveness * float64(to.Parts[i].Angle) * math.Pi / 180
			towardPort := middle
			if p.Side == mixcore.Starboard {
				towardPort = -middle
			}
			lift := effect.CruiseLift + change
			roll += towardPort * length * chord * change
			yaw += -towardPort * length * chord * k * (lift*lift - effect.CruiseLift*effect.CruiseLift)
		}
		// Drag to port yaws left: the yaw against a roll to the right, for as much
		// roll, against 2·k·c0.
		want := -yaw / roll / (2 * k * effect.CruiseLift)
		if !ok || math.Abs(got-want) > 1e-9 {
			t.Fatalf("got %v, %v; want %v", got, ok, want)
		}
	})
}

func TestAdverseYawNeedsARollOfTheWing(t *testing.T) {
	both := append(pair("aileron"), surface("rudder", mixcore.Centre))
	tail := append(pair("taileron"), pair("aileron")...)
	for name, c := range map[string]struct {
		parts []mixcore.Part
		moved []float64
	}{
		"nothing moves":              {both, []float64{0, 0, 0}},
		"both up":                    {both, []float64{-10, -10, 0}},
		"only the rudder":            {both, []float64{0, 0, right}},
		"only tailerons":             {tail, []float64{down, up, 0, 0}},
		"tailerons against ailerons": {tail, []float64{down * 3, up * 3, up / 10, down / 10}},
		"spoilers":                   {pair("spoiler"), []float64{0, up}},
		"a hundredth of a degree":    {both, []float64{0.01, -0.01, 0}},
	} {
		if ratio, ok := adverse(c.parts, c.moved...); ok {
			t.Errorf("%s: got %v, want none", name, ratio)
		}
	}
}

func TestChangeNamesWhatItCouldNotPlace(t *testing.T) {
	parts := append(pair("flap"), surface("elevator", mixcore.Centre))
	if got := changeOf(parts, down, down, up).Unplaced; len(got) != 2 || got[0] != 0 || got[1] != 1 {
		t.Errorf("got %v, want the flaps", got)
	}
	parts[0].Place = mixcore.Placement{Aft: 80, AftSaid: true}
	if got := changeOf(parts, down, down, up).Unplaced; len(got) != 2 {
		t.Errorf("got %v, want both flaps: their place says nothing of their downwash", got)
	}
	if got := changeOf(parts, 0, 0, up).Unplaced; got != nil {
		t.Errorf("got %v, want none", got)
	}
}

func TestAloneIsWhatAPartIsThereFor(t *testing.T) {
	a := effect.New(&mixcore.Setup{Parts: append(pair("v-tail"), pair("aileron")...)})
	for i, want := range []map[mixcore.Axis]effect.Answer{
		{mixcore.Pitch: effect.Plus, mixcore.Yaw: effect.Plus},
		{mixcore.Pitch: effect.Plus, mixcore.Yaw: effect.Minus},
		{mixcore.Roll: effect.Minus, mixcore.Yaw: effect.None},
		{mixcore.Roll: effect.Plus, mixcore.Yaw: effect.None},
	} {
		for axis, answer := range want {
			if got := a.Alone(i, up).PartAnswer(i, axis); got != answer {
				t.Errorf("part %d up about axis %d: got %d, want %d", i, axis, got, answer)
			}
		}
	}
}
