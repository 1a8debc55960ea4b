package phrase

import (
	"strings"
	"testing"
)

// TestHintsFixInOneTry: what people write instead of a sentence is refused with
// a hint that holds the sentence to write, and that one is understood.
func TestHintsFixInOneTry(t *testing.T) {
	v := NewVocabulary(exampleModel(t, nil))
	for _, c := range []struct {
		role       Role
		text, hint string
	}{
		{Then, `the elevator should rise`, `write "the elevator rises"`},
		{Then, `the elevator must rise by 10°`, `write "the elevator rises by 10°"`},
		{Then, `both flaps should drop`, `write "both flaps drop"`},
		{Then, `both flaps should be at neutral`, `write "both flaps are at neutral"`},
		{Then, `the port flap should be 40° down`, `write "the port flap is 40° down"`},
		{Then, `the port flap should not move`, `write "the port flap does not move"`},
		{Then, `the motor should stay stopped`, `write "the motor stays stopped"`},
		{Then, `I expect the elevator to rise`, `write "the elevator rises"`},
		{Then, `verify that the elevator rises`, `write "the elevator rises"`},
		{Then, `elevator up`, `write "elevator rises"`},
		{Then, `the elevator up 12°`, `write "the elevator rises 12°"`},
		{Then, `elevator up and rudder right`, `write "elevator rises and rudder moves right"`},
		{Then, `the rudder left`, `write "the rudder moves left"`},
		{Then, `the elevator lifts`, `write "the elevator rises"`},
		{Then, `the elevator deflects up`, `write "the elevator rises"`},
		{Then, `the elevator moves upwards 8°`, `write "the elevator rises 8°"`},
		{Then, `the flaps lower`, `write "the flaps drop"`},
		{Then, `the rudder turns right`, `write "the rudder moves right"`},
		{Then, `the nose wheel steers left`, `write "the nose wheel moves left"`},
		{Then, `the rudder swings to the right`, `write "the rudder moves right"`},
		{Then, `the motor is off`, `write "the motor is stopped"`},
		{Then, `the motor does not run`, `write "the motor is stopped"`},
		{Then, `the motor is not running`, `write "the motor is stopped"`},
		{Then, `the motor isn't running`, `write "the motor is stopped"`},
		{Then, `the motor stays off`, `write "the motor stays stopped"`},
		{Then, `the motor remains stopped`, `write "the motor stays stopped"`},
		{Then, `the motor never starts`, `write "the motor never runs"`},
		{Then, `the motor cuts out`, `write "the motor stops"`},
		{Then, `the motor starts`, `write "the motor runs"`},
		{Then, `the motor turns`, `write "the motor runs"`},
		{Then, `the motor is on`, `write "the motor runs"`},
		{Then, `the motor revs up`, `write "the motor speeds up"`},
		{Then, `the motor runs at full power`, `write "the motor is at 100%"`},
		{Then, `the port flap remains still`, `write "the port flap stays still"`},
		{Then, `the port flap is not moving`, `write "the port flap does not move"`},
		{Then, `the port flap stays in place`, `write "the port flap stays still"`},
		{Then, `the elevator returns to neutral`, `write "the elevator is at neutral"`},
		{Then, `the elevator stays neutral`, `write "the elevator is at neutral"`},
		{Then, `the port flap moves the same way as the starboard flap`, `write "the port flap moves together with the starboard flap"`},
		{Then, `the port aileron moves the opposite way to the starboard aileron`, `write "the port aileron moves opposite to the starboard aileron"`},
		{Then, `the port flap moves as much as the starboard flap`, `write "the port flap moves as far as the starboard flap"`},
		{Then, `the starboard aileron moves further than the port aileron`, `write "the starboard aileron moves more than the port aileron"`},
		{Then, `the port flap rises about 15°`, `write "the port flap rises 15° ± 2°"`},
		{Then, `the port flap rises approximately 15 mm`, `write "the port flap rises 15 mm ± 2 mm"`},
		{Then, `the port flap drops 35° to 40°`, `write "the port flap drops between 35° and 40°"`},
		{Then, `the port flap drops 35°-40°`, `write "the port flap drops between 35° and 40°"`},
		{Then, `the port flap drops 35-40°`, `write "the port flap drops between 35° and 40°"`},
		{Then, `the port flap drops 35–40°`, `write "the port flap drops between 35° and 40°"`},
		{Then, `the port flap drops from 35° to 40°`, `write "the port flap drops between 35° and 40°"`},
		{Then, `the port flap drops up to 15°`, `write "the port flap drops at most 15°"`},
		{Then, `the port flap drops >= 15°`, `write "the port flap drops at least 15°"`},
		{Then, `the port flap drops ≥15°`, `write "the port flap drops at least 15°"`},
		{Then, `the port flap drops over 15°`, `write "the port flap drops more than 15°"`},
		{Then, `the port flap drops 15° or more`, `write "the port flap drops at least 15 °"`},
		{Then, `the port flap drops 15,5°`, `write "the port flap drops 15.5°"`},
		{Then, `the port flap drops 15° plus or minus 2°`, `write "the port flap drops 15° ± 2°"`},
		{Then, `the port flap drops 1.1 cm`, `write "the port flap drops 11 mm"`},
		{Then, `the port flap drops 1 inch`, `write "the port flap drops 25 mm"`},
		{Then, `the port flap drops after 500 ms`, `write "the port flap drops after 0.5 s"`},
		{Then, `the port flap drops within a second`, `write "the port flap drops within 1 s"`},
		{Then, `the left wing aileron drops`, `write "the left aileron drops"`},
		{Then, `the aileron on the left drops`, `write "the left aileron drops"`},
		{Then, `the stbd aileron rises`, `write "the starboard aileron rises"`},
		{Then, `the plane rolls right`, `write "the model rolls right"`},
		{Then, `the model banks to the left`, `write "the model rolls left"`},
		{Then, `the port flap rises deliberately`, `write "the port flap rises on purpose"`},
		{Then, `the port flap drops, then the starboard flap drops`, `write "the port flap drops and the starboard flap drops"`},
		{Then, `with full up elevator, the elevator rises`, `write "with full back pitch, the elevator rises"`},
		{Then, `with left rudder, the rudder moves left`, `write "with full left yaw, the rudder moves left"`},
		{Then, `when the transmitter is switched off, the motor is stopped`, `write "when the signal is lost, the motor is stopped"`},
		{Then, `the retracts are extended`, `write "the retracts are out"`},
		{When, `full right aileron`, `write "full right roll"`},
		{When, `up elevator`, `write "full back pitch"`},
		{When, `half down elevator`, `write "half forward pitch"`},
		{When, `full left rudder`, `write "full left yaw"`},
		{When, `aileron right`, `write "full right roll"`},
		{When, `elevator stick up`, `write "full back pitch"`},
		{When, `stick back`, `write "full back pitch"`},
		{When, `stick right`, `write "full right roll"`},
		{When, `the pitch stick is pulled back`, `write "the pitch stick is back"`},
		{When, `the pitch stick is pushed fully forward`, `forward`},
		{When, `the roll stick is released`, `write "the roll stick is centred"`},
		{When, `the roll stick is hard right`, `write "the roll stick is full right"`},
		{When, `the roll stick is all the way right`, `write "the roll stick is full right"`},
		{When, `hard right roll`, `write "full right roll"`},
		{When, `the roll stick moves to the right`, `write "the roll stick moves right"`},
		{When, `centred sticks`, `write "the roll stick is centred, the pitch stick is centred and the yaw stick is centred"`},
		{When, `the sticks are released`, `write "the roll stick is centred, the pitch stick is centred and the yaw stick is centred"`},
		{When, `the throttle is wide open`, `write "the throttle full"`},
		{When, `the throttle is at idle`, `write "the throttle closed"`},
		{When, `full power`, `write "full throttle"`},
		{When, `pull the pitch stick back`, `write "the pitch stick is back"`},
		{When, `set rates to high`, `write "the rates are at high"`},
		{Given, `rates = high`, `write "rates are high"`},
		{Given, `rates: high`, `write "rates are high"`},
		{When, `the transmitter is switched off`, `write "the signal is lost"`},
		{When, `the radio link is lost`, `write "the signal is lost"`},
		{When, `the link is lost`, `write "the signal is lost"`},
		{When, `signal loss`, `write "the signal is lost"`},
		{When, `failsafe`, `write "the signal is lost"`},
		{When, `loss of signal`, `write "the signal is lost"`},
		{When, `the signal drops out`, `write "the signal is lost"`},
		{When, `the signal comes back`, `write "the signal is back"`},
		{When, `I move the roll stick right`, `write "the roll stick is right"`},
		{When, `the elevator is up`, `for the control, write "full back pitch"`},
		{Then, `the elevator does not rise`, `write "drops", "stays still" or`},
		{Then, `the elevator should not drop`, `write "rises", "stays still" or`},
		{Then, `the elevator is not up`, `say where it is`},
		{Then, `the model turns right`, `write "the model rolls", "pitches" or`},
		{Then, `the elevator rises # as it should`, `a remark stands on a line of its own`},
		{Given, `landing flap and up elevator`, `write "landing flap and full back pitch"`},
	} {
		_, problem := v.Parse(c.role, c.text)
		if problem == nil {
			t.Errorf("%q is understood", c.text)
			continue
		}
		if !strings.Contains(problem.Hint, c.hint) {
			t.Errorf("%q: %s: hint %q, want %q", c.text, problem.Message, problem.Hint, c.hint)
		}
		if written, ok := strings.CutPrefix(c.hint, `write "`); ok && strings.HasSuffix(written, `"`) {
			if _, problem := v.Parse(c.role, strings.TrimSuffix(written, `"`)); problem != nil {
				t.Errorf("%q: the hint %q is refused: %s", c.text, c.hint, problem.Message)
			}
		}
	}
}

// A hint never turns a way round and never takes a "not" away: whatever people
// put around a way, what they are told to write goes that way or is no answer.
func TestHintsNeverTurnAWayRound(t *testing.T) {
	v := NewVocabulary(exampleModel(t, nil))
	ways := map[Way][]string{
		Up:    {"rise", "go up", "lift", "raise", "rises", "lifts", "up", "upwards", "climbs", "swings up", "goes upwards", "deflects up", "is raised"},
		Down:  {"drop", "go down", "lower", "fall", "drops", "falls", "lowers", "sinks", "down", "downwards", "swings down", "goes downwards", "is lowered"},
		Left:  {"move left", "turns left", "left", "swings left", "steers to the left", "goes to the left"},
		Right: {"move right", "turns right", "right", "swings right", "steers to the right", "goes to the right"},
	}
	for way, verbs := range ways {
		part := "elevator"
		if way == Left || way == Right {
			part = "rudder"
		}
		for _, verb := range verbs {
			for _, around := range [][2]string{{"", ""}, {"should ", ""}, {"is to ", " 5°"}, {"always ", ""}, {"slowly ", ""}, {"then the ", ""}, {"", " about 5°"}, {"", ", then the port flap drops"}} {
				text := "the " + part + " " + around[0] + verb + around[1]
				written, ok := v.reworded(Then, text)
				if !ok {
					continue
				}
				meaning, problem := v.Parse(Then, written)
				if problem != nil {
					t.Fatalf("%q: told to write %q, which is refused", text, written)
				}
				if got := meaning.Outcomes[0].Way; got != way {
					t.Errorf("%q: told to write %q", text, written)
				}
			}
			for _, not := range []string{"does not ", "should not ", "must not ", "is not ", "won't "} {
				text := "the " + part + " " + not + verb
				if written, ok := v.reworded(Then, text); ok {
					t.Errorf("%q: told to write %q", text, written)
				}
			}
			for _, never := range []string{"never ", "must never ", "should never "} {
				text := "the " + part + " " + never + verb
				written, ok := v.reworded(Then, text)
				if !ok {
					continue
				}
				if meaning, problem := v.Parse(Then, written); problem != nil || !meaning.Outcomes[0].Not || meaning.Outcomes[0].Way != way {
					t.Errorf("%q: told to write %q", text, written)
				}
			}
		}
	}
	for _, motor := range []string{"does not stop", "never stops", "must not stop", "is not off", "should not be stopped", "does not stay off", "is not switched off"} {
		if written, ok := v.reworded(Then, "the motor "+motor); ok {
			t.Errorf("the motor %q: told to write %q", motor, written)
		}
	}
}

func TestAdviceIsGivenUpAfterAWhile(t *testing.T) {
	v := NewVocabulary(exampleModel(t, nil))
	for range mostAdvised {
		if _, problem := v.Parse(Then, "elevator up"); !strings.HasPrefix(problem.Hint, "write ") {
			t.Fatalf("got %q", problem.Hint)
		}
	}
	if _, problem := v.Parse(Then, "elevator up"); strings.HasPrefix(problem.Hint, "write ") {
		t.Error("advice never ends")
	}
}
