package sense

import (
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/verifytest"
)

// twoChannel is rudder and elevator only, the rudder on the roll stick.
const twoChannel = `hingeline: 1
name: Two
controls:
  turn stick: {axis: roll, trim: 10%}
  pitch stick: pitch
demands:
  turn: turn stick
  pitch: pitch stick
channels:
  1: {mix: turn}
  2: {mix: pitch}
surfaces:
  rudder: {channel: 1, measured: {100%: 20° right}}
  elevator: {channel: 2, measured: {100%: 20° up}}
`

// odd is tailerons, an inverted V-tail, a bow rudder, flaperons and levers with
// their detents the other way round.
const odd = `hingeline: 1
name: Odd
controls:
  roll stick: roll
  pitch stick: pitch
  yaw stick: yaw
  flap lever: {lever: {landing: 0, takeoff: 50, up: 100}}
  slider: {lever: {flaps up: 0, flaps half: 50, flaps full: 100}}
  throttle: lever
demands:
  roll: roll stick
  pitch: pitch stick
  yaw: yaw stick
  flap: flap lever
  more: slider
  power: throttle
channels:
  1: {mix: [roll, pitch]}
  2: {mix: [{add: roll, share: -100%}, pitch]}
  3: {mix: [yaw, pitch]}
  4: {mix: [{add: yaw, share: -100%}, pitch]}
  5: {mix: [flap, more]}
  6: {mix: yaw}
  7: {mix: power}
surfaces:
  port taileron: {channel: 1, measured: {100%: 20° up}}
  starboard taileron: {channel: 2, measured: {100%: 20° up}}
  port v-tail: {channel: 3, tilt_deg: -38, measured: {100%: 20° up}}
  starboard v-tail: {channel: 4, tilt_deg: -38, measured: {100%: 20° up}}
  port flaperon: {channel: 5, measured: {-100%: 10° up, 0%: 0°, 100%: 40° down}}
  rudder: {channel: 6, aft_mm: -500, measured: {100%: 20° right}}
motors:
  motor: {channel: 7}
`

// flapped is turned by its rudder: the stick moves no flap.
const flapped = `hingeline: 1
name: Flapped
controls: {turn stick: roll, pitch stick: pitch, flap lever: {lever: {crow: 0, normal: 100}}}
demands: {turn: turn stick, pitch: pitch stick, flap: {from: flap lever, curve: {0%: 100%, 100%: 0%}}}
channels: {1: turn, 2: pitch, 3: flap}
surfaces:
  port flap: {channel: 3, measured: {100%: 30° down}}
  starboard flap: {channel: 3, measured: {100%: 30° down}}
  elevator: {channel: 2, measured: {100%: 15° up}}
  rudder: {channel: 1, measured: {100%: 25° right}}
`

// spoiled is turned by its V-tail: the stick moves no spoiler.
const spoiled = `hingeline: 1
name: Spoiled
controls: {turn stick: roll, pitch stick: pitch, spoiler lever: lever}
demands: {turn: turn stick, pitch: pitch stick, brake: spoiler lever}
channels:
  1: {mix: [{add: pitch, share: 50%}, {add: turn, share: 50%}]}
  2: {mix: [{add: pitch, share: 50%}, {add: turn, share: -50%}]}
  3: brake
surfaces:
  port v-tail: {channel: 1, measured: {100%: 20° up}}
  starboard v-tail: {channel: 2, measured: {100%: 20° up}}
  port spoiler: {channel: 3, measured: {100%: 40° up}}
  starboard spoiler: {channel: 3, measured: {100%: 40° up}}
`

// What the controls ask is 14 CFR 23.779 (aileron: right clockwise; elevator: rearward
// nose up; rudder: right pedal nose right; throttle: forward more power; flaps:
// rearward or down, flaps down); which way the kinds of part go for it is common
// practice, no source.
func TestSuspiciousByLayout(t *testing.T) {
	for _, c := range []struct {
		model    string // of a shipped model, or the text of one
		sentence string
		right    string // empty: nothing is suspicious
	}{
		{"bracken-20", "with roll stick full right, the port flap rises", "the port flap drops"},
		{"bracken-20", "with roll stick full left, the port flap rises", ""},
		{"bracken-20", "with roll stick half left, the starboard aileron rises, at least 2°", "the starboard aileron drops"},
		{"bracken-20", "with roll trim full right, the port aileron rises", "the port aileron drops"},
		{"bracken-20", "with roll trim full right, the model rolls left", "the model rolls right"},
		{"bracken-20", "with roll trim full right, the model rolls right", ""},
		{"bracken-20", "with pitch stick full forward, the model pitches up", "the model pitches down"},
		{"bracken-20", "with yaw stick full left, the model yaws right", "the model yaws left"},
		{"bracken-20", "with roll stick full right, the port aileron moves together with the starboard aileron", "the port aileron moves opposite to the starboard aileron"},
		{"bracken-20", "with roll stick full right, the port flap moves opposite to the port aileron", "the port flap moves together with the port aileron"},
		{"bracken-20", "with roll stick full right, the port flap moves together with the port aileron", ""},
		{"bracken-20", "with yaw stick full right, the rudder moves opposite to the nose wheel", "the rudder moves together with the nose wheel"},
		{"bracken-20", "with yaw stick full right, the nose wheel moves left", "the nose wheel moves right"},
		{"bracken-20", "with pitch trim full back, the elevator drops", "the elevator rises"},
		{"bracken-20", "with rates high, landing flap and right roll, the port flap rises", "the port flap drops"},
		{"bracken-20", "with right roll, the port aileron is 12° up", "the port aileron is down"},
		{"bracken-20", "with rates high, landing flap and right roll, the starboard flap is 26° down", ""}, // down already
		{"bracken-20", "with right roll and right yaw, the port aileron rises", ""},                        // two axes: not judged
		{"bracken-20", "with right roll, the rudder moves left", ""},                                       // the pilot's choice
		{"bracken-20", "with right roll, the elevator drops", ""},                                          // and so is this
		{"bracken-20", "with rates high, when right roll and landing flap, the port flap rises", ""},       // the lever and the stick move it
		{"bracken-20", "when right roll and landing flap, the port flap rises", "the port flap drops"},     // at low rates the lever alone does
		{"bracken-20", "when right roll and landing flap, the port aileron rises", "the port aileron drops"},
		{"bracken-20", "when rates high and right roll, the port aileron rises", "the port aileron drops"}, // a switch with a stick is no hiding place
		{"bracken-20", "when rates high and right roll, the port aileron drops", ""},
		{"bracken-20", "when rates high and right roll, the model rolls left", "the model rolls right"},
		{"bracken-20", "when rates high and right roll, the port aileron moves together with the starboard aileron", "the port aileron moves opposite to the starboard aileron"},
		{"bracken-20", "when rates high and landing flap, the port flap rises", "the port flap drops"},
		{"bracken-20", "with right roll, when rates high, the port aileron rises", ""},                                               // no stick moves
		{"bracken-20", "with rates high and right roll, when rates low and the roll stick is 90% right, the port aileron rises", ""}, // less of it: the rate is lower
		{"bracken-20", "with right roll, when the signal is lost, the port aileron rises", ""},
		{"bracken-20", "when the flap lever is at landing, the port flap rises", "the port flap drops"},
		{"bracken-20", "when the flap lever is at landing, the port flap is 20° up", "the port flap is down"},
		{"bracken-20", "with landing flap, when the flap lever is at takeoff, the port flap drops", "the port flap rises"},
		{"bracken-20", "when the flap lever is at landing, the elevator rises", ""},
		{"bracken-20", "with live motor, when the throttle is full, the motor slows down", "the motor speeds up"},
		{"bracken-20", "with live motor, when the throttle is full, the motor stops", "the motor speeds up"},
		{"bracken-20", "with live motor and full throttle, when the throttle is closed, the motor speeds up", "the motor slows down"},
		{"bracken-20", "with full throttle, when the motor switch is live, the motor slows down", ""},

		{"skerry", "with yaw stick full right, the port v-tail drops", "the port v-tail rises"},
		{"skerry", "with yaw stick full right, the port v-tail moves together with the starboard v-tail", "the port v-tail moves opposite to the starboard v-tail"},
		{"skerry", "with pitch stick full back, the port v-tail moves opposite to the starboard v-tail", "the port v-tail moves together with the starboard v-tail"},
		{"skerry", "with pitch stick full back, the port v-tail drops", "the port v-tail rises"},
		{"skerry", "with the phase switch speed and the pitch stick full back, both ailerons drop", ""}, // snap flap
		{"skerry", "with the phase switch speed and the pitch stick full back, both ailerons rise", ""}, // the other way round
		{"skerry", "when the brake lever is open, all flaps drop", ""},                                  // crow
		{"skerry", "when the brake lever is open, all flaps rise", ""},
		{"skerry", "with open brakes and right roll, the port aileron rises", "the port aileron drops"},

		{"quoin-delta", "with pitch stick full back, the port elevon drops", "the port elevon rises"},
		{"quoin-delta", "with roll stick full right, the port elevon rises", "the port elevon drops"},
		{"skein-wing", "with pitch stick full back, the port elevon drops", "the port elevon rises"},
		{"skein-wing", "with yaw stick full right, the port drag rudder extends", "the port drag rudder retracts"},
		{"skein-wing", "with yaw stick full left, the port drag rudder is 40% out", ""},
		{"skein-wing", "with yaw stick full right, the port drag rudder is 40% out", "the port drag rudder is in"},
		{"skein-wing", "with roll stick full right, the port drag rudder extends", ""}, // for the turn: the pilot's choice
		{"turnstone-canard", "with pitch stick full back, the canard rises", "the canard drops"},
		{"turnstone-canard", "when the brake lever is open, the port rudder moves left", ""},
		{"turnstone-canard", "with yaw stick full right, the port rudder moves left", "the port rudder moves right"},
		{"hollin-spoilers", "with roll stick full right, the port spoiler rises", "the port spoiler drops"},
		{"hollin-spoilers", "with roll stick full right, the starboard spoiler rises", ""},
		{"hollin-spoilers", "with the rudder switch coupled and right roll, the rudder moves left", ""},
		{"garrow-twin", "with live motor, steering thrust, half throttle and right yaw, the port motor slows down", "the port motor speeds up"},
		{"garrow-twin", "with live motor, steering thrust, half throttle and right yaw, the port motor moves together with the starboard motor", "the port motor moves opposite to the starboard motor"},
		{"garrow-twin", "with live motor, steering thrust, half throttle and right yaw, the port motor speeds up", ""},

		{twoChannel, "with turn stick full right, the rudder moves left", "the rudder moves right"},
		{twoChannel, "with roll trim full left, the rudder moves right", "the rudder moves left"},
		{twoChannel, "with turn stick full right, the model yaws left", "the model yaws right"},
		{twoChannel, "with turn stick full right, the rudder moves right", ""},

		{flapped, "with turn stick full right, the rudder moves left", "the rudder moves right"},
		{flapped, "with turn stick full right, the model yaws left", "the model yaws right"},
		{flapped, "when the flap lever is at normal, both flaps rise", ""},
		{flapped, "when the flap lever is at normal, the port flap drops", "the port flap rises"},
		{strings.Replace(flapped, "{crow: 0, normal: 100}", "{first: 0, second: 100}", 1), "when the flap lever is at second, both flaps rise", ""},
		{strings.Replace(flapped, "{crow: 0, normal: 100}", "{first: 0, second: 100}", 1), "when the flap lever is at second, both flaps drop", ""},
		{spoiled, "with turn stick full right, the port v-tail drops", "the port v-tail rises"},
		{spoiled, "with turn stick full right, the starboard v-tail drops", ""},

		{odd, "with roll stick full right, the port taileron rises", "the port taileron drops"},
		{odd, "with pitch stick full back, the port taileron drops", "the port taileron rises"},
		{odd, "with yaw stick full right, the port v-tail rises", "the port v-tail drops"},
		{odd, "with yaw stick full right, the rudder moves right", "the rudder moves left"},
		{odd, "when the flap lever is at up, the port flaperon drops", "the port flaperon rises"},
		{odd, "when the flap lever is at up, the port flaperon rises", ""},
		{odd, "when the slider is at flaps full, the port flaperon rises", "the port flaperon drops"},
		{odd, "with pitch stick full back, the port flaperon drops", ""},
	} {
		t.Run(model(t, c.model).Name+" "+c.sentence, func(t *testing.T) {
			m := model(t, c.model)
			got := found(lookAt(t, m, "* "+c.sentence), codeSuspicious)
			switch {
			case c.right == "" && len(got) > 0:
				t.Errorf("found %+v, want nothing", got)
			case c.right != "" && (len(got) != 1 || got[0].Right != c.right || !got[0].Fails || got[0].Reason == "" || got[0].Hint == ""):
				t.Errorf("found %+v, want one with %q as the right sentence", got, c.right)
			}
		})
	}
}

// model is a shipped model by its name, or one by its text.
func model(t *testing.T, nameOrText string) *airframes.Model {
	t.Helper()
	if strings.HasPrefix(nameOrText, "hingeline:") {
		return verifytest.Model(t, "model.yaml", nameOrText)
	}
	return verifytest.Shipped(t, nameOrText)
}

func TestOnPurposeIsThePilotsDecision(t *testing.T) {
	m := verifytest.Shipped(t, "bracken-20")
	got := found(lookAt(t, m, "* with right roll, the port flap rises on purpose and the port aileron rises"), codeSuspicious)
	if len(got) != 2 || !got[0].OnPurpose || got[0].Fails || got[1].OnPurpose || !got[1].Fails {
		t.Errorf("found %+v, want the flap on purpose and the aileron not", got)
	}
}

// A step back from where the stick was asks the opposite of a step there.
func TestSuspiciousTakesTheMovementNotThePosition(t *testing.T) {
	m := verifytest.Shipped(t, "bracken-20")
	steps := []string{"When the pitch stick is full back", "Then the elevator rises", "When the pitch stick is centred", "Then the elevator "}
	for way, want := range map[string]int{"drops": 0, "rises": 1} {
		steps[3] = "Then the elevator " + way
		if got := found(lookAt(t, m, steps...), codeSuspicious); len(got) != want {
			t.Errorf("%s: found %+v, want %d", way, got, want)
		}
	}
}

func TestSuspiciousSaysWhyInWords(t *testing.T) {
	for _, c := range []struct{ model, sentence, message, reason, picture string }{
		{"bracken-20", "with roll stick full right, the port flap rises",
			"the port flap rises as the roll stick moves to the right: that fights the aeroplane",
			"a rising port flap pushes the port wing DOWN and rolls the model LEFT; the roll stick to the right should roll it RIGHT",
			"seen from behind: trailing edge of the port flap UP, port wing DOWN, starboard wing UP"},
		{"bracken-20", "with pitch trim full back, the elevator drops",
			"the elevator drops as the pitch trim moves back: that fights the aeroplane",
			"a dropping elevator pushes the tail UP and pitches the model DOWN; the pitch trim back should pitch it UP",
			"seen from the side: trailing edge of the elevator DOWN, nose DOWN, tail UP"},
		{"turnstone-canard", "with pitch stick full back, the canard rises",
			"the canard rises as the pitch stick moves back: that fights the aeroplane",
			"a rising canard pushes the nose DOWN and pitches the model DOWN; the pitch stick back should pitch it UP",
			"seen from the side: trailing edge of the canard UP, nose DOWN, tail UP"},
		{"quoin-delta", "with pitch stick full forward, the port elevon rises",
			"the port elevon rises as the pitch stick moves forward: that fights the aeroplane",
			"a rising port elevon pushes the back of the wing DOWN and pitches the model UP; the pitch stick forward should pitch it DOWN",
			"seen from the side: trailing edge of the port elevon UP, nose UP, tail DOWN"},
		{"bracken-20", "with yaw stick full left, the rudder moves right",
			"the rudder moves right as the yaw stick moves to the left: that fights the aeroplane",
			"the rudder moving right pushes the tail LEFT and yaws the model RIGHT; the yaw stick to the left should yaw it LEFT",
			"seen from above: the rudder to the RIGHT, nose to the RIGHT, tail to the LEFT"},
		{"skein-wing", "with yaw stick full right, the port drag rudder extends",
			"the port drag rudder extends as the yaw stick moves to the right: that fights the aeroplane",
			"an opening port drag rudder holds the port wing BACK and yaws the model LEFT; the yaw stick to the right should yaw it RIGHT",
			"seen from above: the port drag rudder extends, nose to the LEFT, tail to the RIGHT"},
		{"garrow-twin", "with live motor, steering thrust, half throttle and right yaw, the starboard motor speeds up",
			"the starboard motor speeds up as the yaw stick moves to the right: that fights the aeroplane",
			"more power on the starboard motor pulls the starboard wing FORWARD and yaws the model LEFT; the yaw stick to the right should yaw it RIGHT",
			"seen from above: the starboard motor speeds up, nose to the LEFT, tail to the RIGHT"},
		{"bracken-20", "with yaw stick full right, the nose wheel moves left",
			"the nose wheel moves left as the yaw stick moves to the right: that fights the aeroplane",
			"the nose wheel moving left steers the nose round and yaws the model LEFT; the yaw stick to the right should yaw it RIGHT",
			"seen from above: the nose wheel to the LEFT, nose to the LEFT, tail to the RIGHT"},
		{"bracken-20", "when the flap lever is at landing, the port flap rises",
			"the port flap rises as the flap lever moves to landing: that is the wrong way round",
			"more flap lowers the flaps, less of it raises them; the flap lever moves to landing, which is more", ""},
		{"bracken-20", "with live motor, when the throttle is half, the motor slows down",
			"the motor slows down as the throttle moves to 50 %: that is the wrong way round",
			"more throttle gives more power, less of it less; the throttle moves to 50 %, which is more", ""},
		{"bracken-20", "with roll stick full right, the model rolls left",
			"the model rolls left as the roll stick moves to the right: that fights the aeroplane",
			"the roll stick to the right should roll it RIGHT",
			"seen from behind: port wing DOWN, starboard wing UP"},
		{"bracken-20", "with roll stick full right, the port aileron moves together with the starboard aileron",
			"the port aileron moves together with the starboard aileron as the roll stick moves to the right: one of the two fights the aeroplane",
			"for that the port aileron drops and the starboard aileron rises; the roll stick to the right should roll it RIGHT", ""},
	} {
		got := found(lookAt(t, model(t, c.model), "* "+c.sentence), codeSuspicious)
		if len(got) != 1 {
			t.Errorf("%s: found %+v, want one", c.sentence, got)
			continue
		}
		if f := got[0]; f.Message != c.message || f.Reason != c.reason || f.Picture != c.picture {
			t.Errorf("%s:\n%s\n%s\n%s\nwant\n%s\n%s\n%s", c.sentence, f.Message, f.Reason, f.Picture, c.message, c.reason, c.picture)
		}
	}
}
