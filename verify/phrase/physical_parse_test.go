package phrase

import (
	"slices"
	"testing"

	"example.com/hingeline/mixcore"
)

// outcomesOf parses a sentence that must be right.
func outcomesOf(t *testing.T, v *Vocabulary, text string) []Outcome {
	t.Helper()
	meaning, problem := v.Parse(Then, text)
	if problem != nil {
		t.Fatalf("%q: at %d: %s (%s)", text, problem.Column, problem.Message, problem.Hint)
	}
	return meaning.Outcomes
}

func TestParseTakesTurnsOfTheModel(t *testing.T) {
	v := NewVocabulary(exampleModel(t, nil))
	for text, want := range map[string]Outcome{
		"the model rolls right":          {Verb: Turn, Axis: mixcore.Roll, Way: Right},
		"model rolls to the left":        {Verb: Turn, Axis: mixcore.Roll, Way: Left},
		"the aeroplane pitches up":       {Verb: Turn, Axis: mixcore.Pitch, Way: Up},
		"the model pitches down":         {Verb: Turn, Axis: mixcore.Pitch, Way: Down},
		"the model yaws left":            {Verb: Turn, Axis: mixcore.Yaw, Way: Left},
		"the model does not yaw":         {Verb: NoTurn, Axis: mixcore.Yaw},
		"the model doesn't roll":         {Verb: NoTurn, Axis: mixcore.Roll},
		"after 1 s the model rolls left": {Verb: Turn, Axis: mixcore.Roll, Way: Left, Clock: After, Time: 1},
		"the model pitches up within 2s": {Verb: Turn, Axis: mixcore.Pitch, Way: Up, Clock: Within, Time: 2},
		"adverse yaw does not grow":      {Verb: NoMoreAdverse},
		"the adverse yaw doesn't grow.":  {Verb: NoMoreAdverse},
	} {
		got := outcomesOf(t, v, text)
		if len(got) != 1 || !got[0].Subject.Model || len(got[0].Subject.Parts) > 0 {
			t.Errorf("%q: got %+v", text, got)
			continue
		}
		want.Subject, want.At = got[0].Subject, got[0].At
		if want.Verb == NoMoreAdverse {
			want.Axis = got[0].Axis
		}
		if !same(got[0], want) {
			t.Errorf("%q: got %+v, want %+v", text, got[0], want)
		}
		if !got[0].NeedsMovement() {
			t.Errorf("%q needs no movement", text)
		}
	}
}

func same(a, b Outcome) bool {
	return a.Verb == b.Verb && a.Axis == b.Axis && a.Way == b.Way && a.Clock == b.Clock && a.Time == b.Time && a.OnPurpose == b.OnPurpose
}

func TestParseCarriesTheModelOn(t *testing.T) {
	v := NewVocabulary(exampleModel(t, nil))
	got := outcomesOf(t, v, "the model rolls right, does not pitch and yaws right and the port flap drops")
	if len(got) != 4 || !got[1].Subject.Model || got[1].Verb != NoTurn || got[2].Way != Right || got[3].Subject.Model || got[3].Verb != Move {
		t.Errorf("got %+v", got)
	}
}

// A part that the file calls model keeps its name.
func TestParsePartsNamedModelComeFirst(t *testing.T) {
	m := exampleModel(t, func(s *mixcore.Setup) { s.Parts[elevator].Name = "model" })
	got := outcomesOf(t, NewVocabulary(m), "the model rises")
	if got[0].Subject.Model || !slices.Equal(got[0].Subject.Parts, []int{elevator}) {
		t.Errorf("got %+v", got[0].Subject)
	}
}

func TestParseTakesServosAndTheirTorque(t *testing.T) {
	sized := exampleModel(t, func(s *mixcore.Setup) {
		for _, i := range []int{elevator, rudder} {
			s.Parts[i].Chord, s.Parts[i].Span = 50, [2]mixcore.Millimetres{0, 300}
		}
	})
	v := NewVocabulary(sized)
	for text, want := range map[string]struct {
		parts []int
		times float64
		speed float64
	}{
		"the port flap servo has twice the torque it needs at 30 m/s":            {[]int{portFlap}, 2, 30},
		"left flap servo has double the torque needed at 30m/s":                  {[]int{portFlap}, 2, 30},
		"the flap servos have three times the torque they need at 25.5 m/s":      {[]int{portFlap, starboardFlap}, 3, 25.5},
		"both flap servos have 1.5 times the torque they need at 30 m/s":         {[]int{portFlap, starboardFlap}, 1.5, 30},
		"both aileron servos have at least twice the torque they need at 30 m/s": {[]int{portAileron, starboardAileron}, 2, 30},
		"the elevator servo has the torque it needs at 30 metres per second":     {[]int{elevator}, 1, 30},
		"every servo has enough torque at 30 m/s":                                {[]int{portAileron, starboardAileron, portFlap, starboardFlap, elevator, rudder}, 1, 30},
		"all servos have twice the torque they need at 30 m/s":                   {[]int{portAileron, starboardAileron, portFlap, starboardFlap, elevator, rudder}, 2, 30},
	} {
		got := outcomesOf(t, v, text)
		o := got[0]
		if len(got) != 1 || o.Verb != HoldsAir || !o.Subject.Servos || !slices.Equal(o.Subject.Parts, want.parts) || o.Amount.Value != want.times || o.Speed != want.speed || o.NeedsMovement() {
			t.Errorf("%q: got %+v", text, o)
		}
	}
}

func TestParseTakesOnPurposeBehindAnyOutcome(t *testing.T) {
	v := NewVocabulary(exampleModel(t, nil))
	for text, want := range map[string][]bool{
		"the port flap rises on purpose":                                     {true},
		"the port flap rises, on purpose.":                                   {true},
		"the port flap rises 8° ± 2° on purpose":                             {true},
		"the port flap rises, at least 8°, on purpose":                       {true},
		"the port flap drops after 1 s on purpose":                           {true},
		"the port flap drops on purpose after 1 s":                           {true},
		"the port flap stays still on purpose":                               {true},
		"the model rolls left on purpose":                                    {true},
		"channel 3 is at 1500 µs on purpose":                                 {true},
		"the flaps add 5 % to the roll on purpose":                           {true},
		"the port flap rises and the starboard flap drops on purpose":        {false, true},
		"the port flap rises on purpose and the starboard flap drops":        {true, false},
		"with right roll, the port flap rises on purpose and is up":          {true, false},
		"the port flap moves together with the starboard flap on purpose":    {true},
		"when the signal is lost, the motor stops on purpose":                {true},
		"adverse yaw does not grow, on purpose":                              {true},
		"the port flap servo has enough torque at 30 m/s on purpose":         {true},
		"the port flap rises":                                                {false},
		"after 1 s, the port flap is up on purpose and the elevator is down": {true, false},
	} {
		got := outcomesOf(t, v, text)
		said := make([]bool, len(got))
		for i := range got {
			said[i] = got[i].OnPurpose
		}
		if !slices.Equal(said, want) {
			t.Errorf("%q: got %v, want %v", text, said, want)
		}
	}
}

// What is said to be on purpose passes and fails as without.
func TestOnPurposeChangesNoVerdict(t *testing.T) {
	m := exampleModel(t, nil)
	for _, text := range []string{"the starboard aileron rises", "the starboard aileron drops", "the model rolls left", "the model rolls right"} {
		plain := verdicts(t, m, scene{"rates high", fullRight}, text)
		meant := verdicts(t, m, scene{"rates high", fullRight}, text+" on purpose")
		if plain[0].Passed != meant[0].Passed || plain[0].Got != meant[0].Got || plain[0].Wanted != meant[0].Wanted {
			t.Errorf("%q: got %+v, on purpose %+v", text, plain, meant)
		}
	}
}

func TestParseNamesTheMeasuresThatAreMissing(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*mixcore.Setup)
		text   string
		hint   string
	}{
		"no wing": {func(s *mixcore.Setup) { s.Wing = nil }, "the flaps add at least 25 % to the roll",
			"add wing: {span_mm, root_chord_mm, tip_chord_mm}"},
		"no sizes of another part": {func(s *mixcore.Setup) {
			s.Parts[portAileron].Span = [2]mixcore.Millimetres{}
			s.Parts[starboardAileron].Chord, s.Parts[starboardAileron].Span = 0, [2]mixcore.Millimetres{}
		}, "the flaps add at least 25 % to the roll", "add span_mm to port aileron; chord_mm and span_mm to starboard aileron"},
		"nothing at all": {func(s *mixcore.Setup) { s.Wing, s.Parts[portFlap].Chord = nil, 0 }, "the flaps add at least 25 % to the roll",
			"add wing: {span_mm, root_chord_mm, tip_chord_mm}; chord_mm to port flap"},
		"no torque": {func(s *mixcore.Setup) { s.Parts[portFlap].Drives[0].Servo.TorqueNcm = 0 }, "both flap servos have enough torque at 30 m/s",
			"add servo torque_ncm to port flap"},
		"no size": {func(s *mixcore.Setup) {
			s.Parts[portFlap].Chord, s.Parts[portFlap].Drives[0].Servo.TorqueNcm = 0, 0
			s.Parts[starboardFlap].Span = [2]mixcore.Millimetres{}
		}, "both flap servos have enough torque at 30 m/s", "add chord_mm and servo torque_ncm to port flap; span_mm to starboard flap"},
	} {
		_, problem := NewVocabulary(exampleModel(t, c.change)).Parse(Then, c.text)
		if problem == nil || problem.Code != CodeMissingSize || problem.Hint != c.hint {
			t.Errorf("%s: got %+v, want the hint %q", name, problem, c.hint)
		}
	}
}
