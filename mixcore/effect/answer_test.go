package effect_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
)

const roll, pitch, yaw = mixcore.Roll, mixcore.Pitch, mixcore.Yaw

// Ailerons that take a little of the pitch roll the model fast beside an elevator
// that pitches it faster still.
func TestSmallBesideAnotherAxisIsNotNothing(t *testing.T) {
	parts := append(pair("aileron"), surface("elevator", mixcore.Centre))
	slight := changeOf(parts, 2.7, -2.7, -25)
	if got := slight.Answer(roll); got != effect.Slight || slight.Strongest() != pitch {
		t.Errorf("2.7° of aileron beside 25° of elevator: answer %d, strongest %d, want slight beside pitch (%+v)", got, slight.Strongest(), slight)
	}
	if slight.Quiet(roll) > 0 || slight.Clear(roll, true) >= 0 || slight.Clear(roll, false) >= 0 {
		t.Errorf("slight is neither quiet nor clear: %+v", slight)
	}
	for name, c := range map[string]struct {
		moved []float64
		want  effect.Answer
	}{
		"by themselves":         {[]float64{2.7, -2.7, 0}, effect.Plus},
		"twentieth of a degree": {[]float64{0.04, -0.04, -25}, effect.None},
		"a fifth of a degree":   {[]float64{0.2, -0.2, -25}, effect.Slight},
		"far":                   {[]float64{-15, 15, -25}, effect.Minus},
		"only the elevator":     {[]float64{0, 0, -25}, effect.None},
		"together":              {[]float64{15, 15, -25}, effect.None},
	} {
		if got := changeOf(parts, c.moved...).Answer(roll); got != c.want {
			t.Errorf("%s: answer %d, want %d", name, got, c.want)
		}
	}
}

// Answer, Clear and Quiet are one meaning.
func TestClearAndQuietAreTheAnswer(t *testing.T) {
	layouts := [][]mixcore.Part{
		append(pair("aileron"), append(pair("flap"), surface("elevator", mixcore.Centre), surface("rudder", mixcore.Centre))...),
		append(pair("v-tail"), pair("elevator")...),
		append(pair("spoiler"), pair("motor")...),
	}
	rapid.Check(t, func(t *rapid.T) {
		parts := rapid.SampledFrom(layouts).Draw(t, "parts")
		moved := make([]float64, len(parts))
		for i := range moved {
			moved[i] = rapid.Float64Range(-30, 30).Draw(t, "moved") * rapid.SampledFrom([]float64{0, 0.001, 0.05, 1}).Draw(t, "share")
		}
		c := changeOf(parts, moved...)
		for _, axis := range []mixcore.Axis{roll, pitch, yaw} {
			plus, minus, quiet := c.Clear(axis, true) >= 0, c.Clear(axis, false) >= 0, c.Quiet(axis) > 0
			want := map[[3]bool]effect.Answer{
				{true, false, false}: effect.Plus, {false, true, false}: effect.Minus, {false, false, true}: effect.None,
			}[[3]bool{plus, minus, quiet}]
			got := c.Answer(axis)
			if plus && minus || quiet && (plus || minus) {
				t.Fatalf("axis %d: clear to plus %v, to minus %v, quiet %v: %+v", axis, plus, minus, quiet, c)
			}
			if !plus && !minus && !quiet {
				if got != effect.Unsure && got != effect.Slight {
					t.Fatalf("axis %d: answer %d where nobody can say: %+v", axis, got, c)
				}
			} else if got != want {
				t.Fatalf("axis %d: answer %d, want %d: %+v", axis, got, want, c)
			}
			if got == effect.None && math.Abs(c.About(axis)) >= effect.LeastMoment {
				t.Fatalf("axis %d: %v counts as nothing", axis, c.About(axis))
			}
		}
	})
}

// A yaw rolls the model by its dihedral, which is not in the file. What is there
// for roll outdoes it.
func TestAYawMayRollEitherWay(t *testing.T) {
	rudder := surface("rudder", mixcore.Centre)
	high, level, below := rudder, rudder, rudder
	high.Place = mixcore.Placement{Aft: 400, AftSaid: true, Up: 300, UpSaid: true}
	level.Place = mixcore.Placement{Up: 0, UpSaid: true, Aft: 800, AftSaid: true}
	below.Place = mixcore.Placement{Tilt: -90, TiltSaid: true}
	for name, c := range map[string]struct {
		parts []mixcore.Part
		moved []float64
		want  effect.Answer
	}{
		"rudder":                 {[]mixcore.Part{rudder}, []float64{right}, effect.Unsure},
		"a rudder far up":        {[]mixcore.Part{high}, []float64{right}, effect.Unsure},
		"a rudder level":         {[]mixcore.Part{level}, []float64{right}, effect.Unsure},
		"a hanging rudder":       {[]mixcore.Part{below}, []float64{right}, effect.Unsure},
		"v-tail":                 {pair("v-tail"), []float64{up, down}, effect.Unsure},
		"v-tail together":        {pair("v-tail"), []float64{up, up}, effect.None},
		"with ailerons at rest":  {append(pair("aileron"), level), []float64{0, 0, right}, effect.Unsure},
		"with ailerons that act": {append(pair("aileron"), rudder), []float64{down, up, right * 2}, effect.Plus},
		"ailerons against it":    {append(pair("aileron"), rudder), []float64{up, down, right * 2}, effect.Minus},
	} {
		if got := changeOf(c.parts, c.moved...).Answer(roll); got != c.want {
			t.Errorf("%s: answer %d, want %d (%+v)", name, got, c.want, changeOf(c.parts, c.moved...))
		}
	}
}

// A fin that hangs is below the balance point: the same push rolls the other way.
func TestAHangingRudderPushesBelow(t *testing.T) {
	for tilt, below := range map[mixcore.Degrees]bool{90: false, 45: false, -45: true, -90: true} {
		rudder := surface("rudder", mixcore.Starboard)
		rudder.Place = mixcore.Placement{Tilt: tilt, TiltSaid: true}
		c := changeOf([]mixcore.Part{rudder}, right)
		if !(c.Yaw > 0) || c.Roll > 0 != below {
			t.Errorf("tilt %g: a rudder to the right gives %+v, want yaw right, roll right only from below", float64(tilt), c.Moment)
		}
	}
	hanging := surface("rudder", mixcore.Centre)
	hanging.Place = mixcore.Placement{Tilt: -90, TiltSaid: true, Up: 60, UpSaid: true, Aft: 400, AftSaid: true}
	if c := changeOf([]mixcore.Part{hanging}, right); !(c.Roll < 0) {
		t.Errorf("a hanging rudder that is said to be above: %+v, want roll left", c.Moment)
	}
}
