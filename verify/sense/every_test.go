package sense

import (
	"strings"
	"testing"

	"example.com/hingeline/verify/verifytest"
)

func TestSuspiciousAtEveryPosition(t *testing.T) {
	bracken := verifytest.Shipped(t, "bracken-20")
	for _, c := range []struct {
		steps []string
		right string // what the hint says to write; empty: nothing is suspicious
	}{
		{[]string{"Given rates are high", "Then whenever the roll stick is right of 30 %, the port flap rises"}, "the port flap drops"},
		{[]string{"Given rates are high", "Then whenever the roll stick is right of 30 %, the port flap rises on purpose"}, "the port flap drops"},
		{[]string{"Given rates are high", "Then whenever the roll stick is right of 30 %, the starboard flap rises"}, ""},
		{[]string{"Then the starboard aileron drops whenever the roll stick is left of 30 % and the rate switch is low"}, ""},
		{[]string{"Then the starboard aileron rises whenever the rate switch is low and the roll stick is left of 30 %"}, "the starboard aileron drops"},
		{[]string{"Then whenever the roll stick is right of 30 %, the model rolls left"}, "the model rolls right"},
		{[]string{"Then the more right the roll stick, the higher the port aileron"}, "the more right the roll stick, the lower the port aileron"},
		{[]string{"Then the more right the roll stick, the lower the port aileron"}, ""},
		{[]string{"Then the more left the yaw stick, the further right the rudder"}, "the more left the yaw stick, the further left the rudder"},
		{[]string{"Then the further the flap lever, the higher both flaps"}, "the further the flap lever, the lower the port flap"},
		{[]string{"Given the motor switch is live", "Then the more throttle, the slower the motor"}, "the further the throttle, the faster the motor"},
		{[]string{"Then the starboard aileron rises whenever the roll stick is between 20 % and 50 %"}, ""},
		{[]string{"Then whatever the roll stick does, the port aileron moves together with the starboard aileron"}, "the port aileron moves opposite to the starboard aileron"},
		{[]string{"Then whatever the roll stick does, the port aileron moves opposite to the starboard aileron"}, ""},
		{[]string{"When the roll stick is full right", "Then at every switch position, the port aileron rises"}, "the port aileron drops"},
		{[]string{"When the roll stick is full right", "Then whatever else moves, the port aileron drops"}, ""},
		// Never is no claim about which way it should go.
		{[]string{"Then the port flap never rises"}, ""},
		{[]string{"Then whatever the throttle does, the motor is at most 50%"}, ""},
		{[]string{"Then the elevator depends on nothing but the pitch stick"}, ""},
		// Which of two sticks moves the model is not said.
		{[]string{"Given rates are high", "Then whenever the roll stick is right of 30 % and the pitch stick is back of 30 %, the port aileron rises"}, ""},
	} {
		got := found(lookAt(t, bracken, c.steps...), codeSuspicious)
		text := strings.Join(c.steps, " / ")
		switch {
		case c.right == "" && len(got) > 0:
			t.Errorf("%s: found %+v", text, got)
		case c.right != "" && (len(got) == 0 || got[0].Right != c.right):
			t.Errorf("%s: found %+v, want %q", text, got, c.right)
		case c.right != "" && got[0].Fails == strings.Contains(text, "on purpose"):
			t.Errorf("%s: fails is %v", text, got[0].Fails)
		}
	}
}

// A sentence about every position is held against no other: it says nothing of the one
// position at which its scenario stands.
func TestSentencesAboutEveryPositionContradictNothing(t *testing.T) {
	bracken := verifytest.Shipped(t, "bracken-20")
	got := found(lookAt(t, bracken,
		"When the roll stick is full right", "Then the port flap stays still", "And at every switch position, the port flap never rises",
		"Given the motor switch is live", "Then the motor is stopped", "And whatever the throttle does, the motor is at most 90%"), codeContradiction)
	if len(got) > 0 {
		t.Errorf("found %+v", got)
	}
}

func TestFreeControlsAreTried(t *testing.T) {
	m := verifytest.Model(t, "fennel.yaml", fennel)
	for _, c := range []struct {
		steps []string
		code  string
		says  string // of a finding that is there; with ! in front: that is not
	}{
		{[]string{"Then the more right the roll trim, the higher the starboard aileron"}, codeTrim, "!roll trim"},
		{[]string{"Then the more right the roll stick, the higher the starboard aileron"}, codeTrim, "roll trim"},
		{[]string{"Then whenever the roll trim is right of 50 %, the starboard aileron rises"}, codeTrim, "!roll trim"},
		{[]string{"Then the starboard aileron never drops more than 30°"}, codeTrim, "roll trim"},
		{[]string{"Then the more back the pitch knob, the higher the elevator"}, codeSecond, "!pitch knob"},
		{[]string{"Then whatever else moves, no channel runs out of travel"}, codeControl, "door switch"},
		{[]string{"Then whatever else moves, the motor is at most 99%"}, codeControl, ""},
		{[]string{"Then at every switch position, the more right the roll stick, the higher the starboard aileron"}, codeRate, ""},
		{[]string{"Then the more right the roll stick, the higher the starboard aileron"}, codeRate, "rate switch is high"},
		{[]string{"Then with the rate switch anywhere, whenever the roll stick is right of 20 %, the starboard aileron rises"}, codeRate, ""},
		{[]string{"Then whenever the roll stick is right of 20 % and rates are high, the starboard aileron rises"}, codeRate, "the last rate"},
	} {
		text := strings.Join(c.steps, " / ")
		said := ""
		for _, f := range found(lookAt(t, m, c.steps...), c.code) {
			said += f.Message + "\n"
		}
		switch absent, not := strings.CutPrefix(c.says, "!"); {
		case not && strings.Contains(said, absent), !not && c.says == "" && said != "", !not && !strings.Contains(said, c.says):
			t.Errorf("%s: says %q, want %q", text, said, c.says)
		}
	}
}
