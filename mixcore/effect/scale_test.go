package effect_test

import (
	"math"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
)

func placed(p mixcore.Part, aft, from, to mixcore.Millimetres) mixcore.Part {
	p.Place.Aft, p.Place.AftSaid = aft, aft != 0
	p.Span = [2]mixcore.Millimetres{from, to}
	return p
}

// A length that is said is held against a semispan of the same model: of 450 mm
// the tail of a small one is no nearer than that of a large one.
func TestSemispanIsGuessedFromWhatIsSaid(t *testing.T) {
	ailerons := pair("aileron")
	elevator, rudder := surface("elevator", mixcore.Centre), surface("rudder", mixcore.Centre)
	for name, c := range map[string]struct {
		parts     []mixcore.Part
		low, high float64
	}{
		"nothing said":              {append(pair("aileron"), elevator), 1000, 1000},
		"tail of a small model":     {append(pair("aileron"), placed(elevator, 400, 0, 0), placed(rudder, 400, 0, 0)), 450, 600},
		"tail of a large model":     {append(pair("aileron"), placed(elevator, 1100, 0, 280), placed(rudder, 1150, 0, 260)), 1050, 1500},
		"only the rudder's":         {[]mixcore.Part{elevator, placed(rudder, 400, 0, 0)}, 400, 600},
		"ailerons before the tail":  {[]mixcore.Part{placed(ailerons[0], 0, 500, 950), placed(ailerons[1], 0, 500, 950), placed(elevator, 400, 0, 90)}, 950, 1050},
		"flaps alone reach half":    {[]mixcore.Part{placed(surface("flap", mixcore.Port), 0, 140, 470), elevator}, 800, 1000},
		"one odd length of several": {[]mixcore.Part{placed(elevator, 20, 0, 330), placed(rudder, 900, 0, 0)}, 1000, 1400},
		"a canard":                  {[]mixcore.Part{placed(surface("canard", mixcore.Centre), -350, 0, 0)}, 450, 550},
		"an elevon":                 {[]mixcore.Part{placed(surface("elevon", mixcore.Port), 150, 0, 0)}, 450, 550},
	} {
		got := float64(effect.New(&mixcore.Setup{Parts: c.parts}).Semispan())
		if !(got >= c.low && got <= c.high) {
			t.Errorf("%s: got %.0f mm, want %g to %g", name, got, c.low, c.high)
		}
	}
}

// What a tail does beside the ailerons does not depend on whether its lengths are
// in millimetres or left out, as long as they are usual.
func TestSaidLengthsOfAUsualTailChangeNothing(t *testing.T) {
	for _, semi := range []mixcore.Millimetres{450, 1000, 2500} {
		said := append(pair("aileron"), placed(surface("rudder", mixcore.Centre), semi*8/10, 0, 0), placed(surface("elevator", mixcore.Centre), semi*3/4, 0, semi/4))
		unsaid := append(pair("aileron"), surface("rudder", mixcore.Centre), surface("elevator", mixcore.Centre))
		moved := []float64{down, up, right, up}
		is, want := changeOf(said, moved...).Moment, changeOf(unsaid, moved...).Moment
		near(t, "roll", is.Roll, want.Roll, 0.02)
		near(t, "pitch", is.Pitch, want.Pitch, 1e-9)
		near(t, "yaw", is.Yaw, want.Yaw, 1e-9)
	}
}

// Ailerons of a small model whose tail is measured and whose wing is not still
// roll it, with as much rudder as is usual mixed in.
func TestAMeasuredTailDoesNotDrownTheWing(t *testing.T) {
	for name, tail := range map[string][]mixcore.Part{
		"short": {placed(surface("rudder", mixcore.Centre), 400, 0, 0)},
		"long":  {placed(surface("rudder", mixcore.Centre), 1150, 0, 260), placed(surface("elevator", mixcore.Centre), 1100, 0, 280)},
	} {
		c := changeOf(append(pair("aileron"), tail...), 8, -8, -15)
		if got := c.Answer(roll); got != effect.Plus {
			t.Errorf("%s tail: answer %d, want rolls right (%+v)", name, got, c.Moment)
		}
		if ratio := math.Abs(c.Yaw / c.Roll); ratio > 1 {
			t.Errorf("%s tail: yaw is %.2f times the roll", name, ratio)
		}
	}
}

// Without a scale a said length is not counted: nothing says how far 80 mm is.
func TestALengthWithoutAScaleIsNotCounted(t *testing.T) {
	ailerons := pair("aileron")
	for i := range ailerons {
		ailerons[i].Place = mixcore.Placement{Up: 3000, UpSaid: true, Aft: 3000, AftSaid: true}
	}
	a := effect.New(&mixcore.Setup{Parts: ailerons})
	if at, _ := a.Placed(0); at.Up != 0 || at.Aft != 0 || at.AftKnown {
		t.Errorf("got %+v, want the usual place", at)
	}
}
