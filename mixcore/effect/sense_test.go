package effect_test

import (
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
)

// model is parts that a channel each moves one degree (or percent) for each
// percent, so that a pose is simply the angles.
func changeOf(parts []mixcore.Part, moved ...float64) effect.Change {
	s := &mixcore.Setup{Parts: parts}
	from := &mixcore.Output{Parts: make([]mixcore.PartOutput, len(parts))}
	to := &mixcore.Output{Parts: make([]mixcore.PartOutput, len(parts))}
	for i, v := range moved {
		to.Parts[i] = mixcore.PartOutput{Angle: mixcore.Degrees(v), Amount: mixcore.Percent(v)}
	}
	return effect.New(s).Change(from, to)
}

func surface(kind mixcore.Kind, side mixcore.Side) mixcore.Part {
	info, _ := kind.Info()
	return mixcore.Part{Name: string(kind), Kind: kind, Side: side, Motion: info.Motion}
}

func pair(kind mixcore.Kind) []mixcore.Part {
	return []mixcore.Part{surface(kind, mixcore.Port), surface(kind, mixcore.Starboard)}
}

const (
	up, down    = -10.0, 10.0
	left, right = 10.0, -10.0
)

// Senses: roll right, right wing down; rearward, nose up; right pedal, nose
// right (14 CFR 23.779, FAA Airplane Flying Handbook ch. 3 p. 3-2). The
// surfaces that do it: right aileron up and left down (AOPA Air Safety
// Institute, July 2024); stick forward, elevator down; stick left, rudder left
// (LMMAC and WMAC model club pre-flight lists). V-tails, elevons, canards,
// drag rudders and twins: common practice, no source; each is checked against a
// vortex-lattice computation in testdata.
func TestSenseOfEverySurface(t *testing.T) {
	inverted := pair("v-tail")
	for i := range inverted {
		inverted[i].Place = mixcore.Placement{Tilt: -38, TiltSaid: true}
	}
	const r, p, y = mixcore.Roll, mixcore.Pitch, mixcore.Yaw
	for _, c := range []struct {
		name  string
		parts []mixcore.Part
		moved []float64
		axis  mixcore.Axis
		want  effect.Answer
	}{
		{"ailerons", pair("aileron"), []float64{down, up}, r, effect.Plus},
		{"ailerons left", pair("aileron"), []float64{up, down}, r, effect.Minus},
		{"one aileron", pair("aileron"), []float64{0, up}, r, effect.Plus},
		{"flaps as ailerons", pair("flap"), []float64{down, up}, r, effect.Plus},
		{"flaps as flaps", pair("flap"), []float64{down, down}, r, effect.None},
		{"flaps as flaps pitch who knows", pair("flap"), []float64{down, down}, p, effect.Unsure},
		{"ailerons do not pitch", pair("aileron"), []float64{down, up}, p, effect.None},
		{"flaperons", pair("flaperon"), []float64{down, up}, r, effect.Plus},
		{"elevator", []mixcore.Part{surface("elevator", mixcore.Centre)}, []float64{up}, p, effect.Plus},
		{"elevator forward", []mixcore.Part{surface("elevator", mixcore.Centre)}, []float64{down}, p, effect.Minus},
		{"elevator halves", pair("elevator"), []float64{up, up}, p, effect.Plus},
		{"rudder", []mixcore.Part{surface("rudder", mixcore.Centre)}, []float64{right}, y, effect.Plus},
		{"rudder left", []mixcore.Part{surface("rudder", mixcore.Centre)}, []float64{left}, y, effect.Minus},
		{"rudder rolls who knows", []mixcore.Part{surface("rudder", mixcore.Centre)}, []float64{left}, r, effect.Unsure},
		{"twin rudders", pair("rudder"), []float64{right, right}, y, effect.Plus},
		{"elevons roll", pair("elevon"), []float64{down, up}, r, effect.Plus},
		{"elevons pitch", pair("elevon"), []float64{up, up}, p, effect.Plus},
		{"tailerons roll", pair("taileron"), []float64{down, up}, r, effect.Plus},
		{"tailerons pitch", pair("taileron"), []float64{up, up}, p, effect.Plus},
		{"canard", []mixcore.Part{surface("canard", mixcore.Centre)}, []float64{down}, p, effect.Plus},
		{"v-tail pitch", pair("v-tail"), []float64{up, up}, p, effect.Plus},
		{"v-tail yaw right", pair("v-tail"), []float64{up, down}, y, effect.Plus},
		{"v-tail yaw left", pair("v-tail"), []float64{down, up}, y, effect.Minus},
		{"inverted v-tail pitch", inverted, []float64{up, up}, p, effect.Plus},
		{"inverted v-tail yaw right", inverted, []float64{down, up}, y, effect.Plus},
		{"starboard spoiler", pair("spoiler"), []float64{0, up}, r, effect.Plus},
		{"port spoiler", pair("spoiler"), []float64{up, 0}, r, effect.Minus},
		{"both spoilers", pair("spoiler"), []float64{up, up}, r, effect.None},
		{"starboard drag rudder", pair("drag rudder"), []float64{0, 60}, y, effect.Plus},
		{"port motor harder", pair("motor"), []float64{60, 0}, y, effect.Plus},
		{"both motors", pair("motor"), []float64{60, 60}, y, effect.None},
		{"nothing moves", pair("aileron"), []float64{0, 0}, r, effect.None},
		{"a hundredth of a degree", pair("aileron"), []float64{0.01, -0.01}, r, effect.None},
	} {
		if got := changeOf(c.parts, c.moved...).Answer(c.axis); got != c.want {
			t.Errorf("%s: answer %d, want %d (%+v)", c.name, got, c.want, changeOf(c.parts, c.moved...))
		}
	}
}
