package phrase

import (
	"strings"
	"testing"

	"example.com/hingeline/mixcore"
)

func TestJudgeSaysWantedAndGotInWords(t *testing.T) {
	m := exampleModel(t, nil)
	for _, c := range []struct {
		scene
		text        string
		passed      bool
		wanted, got string
	}{
		{scene{"rates high", fullRight}, "the starboard aileron rises 20° ± 2°", true, "rises 20° ± 2°", "rises 20° (14 mm)"},
		{scene{"rates high", fullRight}, "the starboard aileron drops", false, "drops", "rises 20° (14 mm)"},
		{scene{"rates high", fullRight}, "the starboard aileron rises more than 20°", false, "rises more than 20°", "rises 20° (14 mm)"},
		{scene{"rates high", fullRight}, "the port aileron is 12.4° down ± 0.3°", false, "trailing edge DOWN 12.4° ± 0.3°", "trailing edge DOWN 12° (8.4 mm)"},
		{scene{"", "the pitch stick is 80% back"}, "the elevator rises at least 20°", true, "rises at least 20°", "rises 20°"},
		{scene{"", "the pitch stick is 79.9% back"}, "the elevator rises at least 20°", false, "rises at least 20°", "rises 20°, exactly 19.98°"},
		{scene{"", "the yaw stick is full left"}, "the rudder moves right", false, "moves RIGHT", "moves LEFT 25°"},
		{scene{"", "live motor"}, "the motor stops", false, "stops, having run", "stays stopped; it was not running before, so this shows nothing"},
		{scene{"", "live motor"}, "the motor stays stopped", true, "stays stopped", "stays stopped"},
		{scene{"", "landing flap"}, "the port flap is down within 0.008 s", false, "trailing edge DOWN within 0.008 s", "after 0.008 s: trailing edge DOWN 0.2° (0.1 mm)"},
		{scene{"", "landing flap"}, "the port flap drops 40° after 1 s", false, "drops 40° ± 1° after 1 s", "after 1 s: drops 25° (17 mm)"},
		{scene{"", "takeoff flap"}, "the port flap moves less than the starboard flap", false, "moves less than the starboard flap", "drops 16° (11 mm); the starboard flap drops 16° (11 mm)"},
		{scene{"", ""}, "the port flap drops", false, "drops", "nothing was moved"},
		{scene{"", ""}, "channel 6 is at 1506 µs", false, "1506 µs ± 5 µs", "1500 µs"},
		{scene{"gear wheels up", ""}, "the retracts are out", false, "OUT", "IN"},
	} {
		list := verdicts(t, m, c.scene, c.text)
		if got := list[0]; got.Passed != c.passed || got.Wanted != c.wanted || got.Got != c.got {
			t.Errorf("%q: got %v, wanted %q, got %q; want %v, %q, %q", c.text, got.Passed, got.Wanted, got.Got, c.passed, c.wanted, c.got)
		}
	}
}

func TestJudgeMovementIsAgainstTheMomentBefore(t *testing.T) {
	// With landing flap down a flap may rise and still be below its neutral.
	list := verdicts(t, exampleModel(t, nil), scene{"landing flap and high rates", fullRight}, "the starboard flap rises 10° and is 30° down")
	if !passes(list) {
		t.Errorf("got %+v", list)
	}
}

func TestJudgeNeverPassesWhenNothingIsStill(t *testing.T) {
	// A movement under the airframe's still_deg is no movement in its direction.
	m := exampleModel(t, nil)
	sc := scene{"", "the roll stick is 3% right"} // 0.3° at the starboard aileron
	if passes(verdicts(t, m, sc, "the starboard aileron rises")) {
		t.Error("a movement of 0.3° counts as rising")
	}
	if !passes(verdicts(t, m, sc, "the starboard aileron stays still")) {
		t.Error("a movement of 0.3° does not count as still")
	}
	m.Still = 0.2
	if !passes(verdicts(t, m, sc, "the starboard aileron rises")) {
		t.Error("a movement of 0.3° does not count as rising although still_deg is 0.2")
	}
}

func TestJudgeComparesOnlyWhatMoves(t *testing.T) {
	m := exampleModel(t, nil)
	for _, verb := range []string{"together with", "opposite to", "as far as", "less than", "more than"} {
		for _, pair := range [][2]string{{"port flap", "starboard flap"}, {"port flap", "port aileron"}, {"port aileron", "port flap"}} {
			text := "the " + pair[0] + " moves " + verb + " the " + pair[1]
			if passes(verdicts(t, m, scene{"rates low", fullRight}, text)) {
				t.Errorf("%q passes although a flap stays still", text)
			}
		}
	}
}

func TestJudgeNamesTheFailingPartOfAGroup(t *testing.T) {
	list := verdicts(t, exampleModel(t, dead(starboardFlapChannel)), scene{"", "landing flap"}, "both flaps drop")
	if len(list) != 2 || !list[0].Passed || list[1].Passed || list[1].Subject != "starboard flap" {
		t.Errorf("got %+v", list)
	}
}

func TestJudgeHoldsWhatAChannelHadWhenTheSignalWent(t *testing.T) {
	m := exampleModel(t, nil)
	v := NewVocabulary(m)
	step := func(at Situation, text string) Situation {
		meaning, problem := v.Parse(When, text)
		if problem != nil {
			t.Fatal(problem.Message)
		}
		return Situation{Before: at.Now, Now: at.Now.Take(&m.Setup, &meaning.Settings), Moved: true}
	}
	at := Situation{Now: RestPose(&m.Setup)}
	at = step(at, "the pitch stick is half back")
	at = step(at, "the signal is lost")
	for _, text := range []string{"the pitch stick is full forward", "live motor", "full throttle"} {
		at = step(at, text)
		for _, sentence := range []string{"the elevator stays still and is 12.5° up", "the motor stays stopped"} {
			meaning, problem := v.Parse(Then, sentence)
			if problem != nil {
				t.Fatal(problem.Message)
			}
			for i := range meaning.Outcomes {
				if list := v.Judge(&meaning.Outcomes[i], at); !passes(list) {
					t.Errorf("after %q: %q: %+v", text, sentence, list)
				}
			}
		}
	}
	at = step(at, "the signal is back")
	meaning, _ := v.Parse(Then, "the elevator drops and the motor speeds up")
	for i := range meaning.Outcomes {
		if list := v.Judge(&meaning.Outcomes[i], at); !passes(list) {
			t.Errorf("with the signal back: %+v", list)
		}
	}
}

func TestGroupsRefuseTwoValuesAndAnUnclearOrder(t *testing.T) {
	m := exampleModel(t, nil)
	v := NewVocabulary(m)
	group := func(text string) Group {
		meaning, problem := v.Parse(When, text)
		if problem != nil {
			t.Fatal(problem.Message)
		}
		return meaning.Settings
	}
	a, b, same := group("rates high"), group("throttle full and low rates"), group("high rates and full throttle")
	if problem := a.Merge(&m.Setup, &b); problem == nil || problem.Code != CodeConflict || problem.Column != 19 {
		t.Errorf("two values: got %+v", problem)
	}
	if problem := a.Merge(&m.Setup, &same); problem != nil {
		t.Errorf("the same value twice: %s", problem.Message)
	}
	lost := group("the signal is lost and throttle full")
	if problem := lost.CheckOrder(); problem == nil || problem.Code != CodeUnclearOrder {
		t.Errorf("signal and throttle at once: got %+v", problem)
	}
	for _, fine := range []string{"the signal is lost", "throttle full", "the signal is back and throttle full"} {
		if g := group(fine); g.CheckOrder() != nil {
			t.Errorf("%q is refused", fine)
		}
	}
}

func TestAmountHoldsEndsIncluded(t *testing.T) {
	for _, c := range []struct {
		a    Amount
		x    float64
		want bool
	}{
		{Amount{Kind: About, Value: 18, Slack: 2}, 16, true},
		{Amount{Kind: About, Value: 18, Slack: 2}, 20, true},
		{Amount{Kind: About, Value: 18, Slack: 2}, 20.001, false},
		{Amount{Kind: AtLeast, Value: 8}, 8, true},
		{Amount{Kind: AtLeast, Value: 8}, 7.999, false},
		{Amount{Kind: AtMost, Value: 8}, 8, true},
		{Amount{Kind: AtMost, Value: 8}, 8.001, false},
		{Amount{Kind: Between, Low: 8, High: 12}, 8, true},
		{Amount{Kind: Between, Low: 8, High: 12}, 12.001, false},
		{Amount{Kind: Over, Value: 8}, 8, false},
		{Amount{Kind: Over, Value: 8}, 8.001, true},
		{Amount{Kind: Under, Value: 8}, 8, false},
		{Amount{Kind: Under, Value: 8}, 7.999, true},
	} {
		if got := c.a.holds(c.x); got != c.want {
			t.Errorf("%s holds %v: got %v", strings.TrimSpace(c.a.words()), c.x, got)
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, form := range Sentences() {
		f.Add(form.Example)
	}
	for _, text := range []string{"with", "when ,", "the", "both", "channel", "channel 4 is at", "±", "rises 1", "- 5%", "0x10", "1e5", "after", "is not", "the port flap moves together with", "roll stick at", "full", "50%", "the model", "the model rolls", "the flaps add 5%", "adverse yaw", "every servo has", "the elevator servo has 2 times the torque", "the port flap drops on", "3m/s", "at 3 m/s", "km/h",
		"whatever", "whenever the,", "whenever roll is right of", "at every", "at every position of", "with the flap lever anywhere between", "with throttle anywhere and", "the more", "the more right roll, the", "no", "nothing but", "always never", "the elevator depends on nothing but", "the motor is never"} {
		f.Add(text)
	}
	m := exampleModel(f, func(s *mixcore.Setup) { s.Channels = s.Channels[:len(s.Channels):len(s.Channels)] })
	v := NewVocabulary(m)
	f.Fuzz(func(t *testing.T, text string) {
		for _, role := range []Role{AnyRole, Given, When, Then} {
			meaning, problem := v.Parse(role, text)
			if problem != nil {
				length := len([]rune(text))
				if problem.Column < 1 || problem.Column > length+1 || problem.Width < 1 || problem.Column+problem.Width > length+2 || problem.Message == "" || problem.Code == "" {
					t.Fatalf("%q: %+v is outside the text", text, problem)
				}
				continue
			}
			if (len(meaning.Outcomes) == 0) == meaning.Settings.Empty() {
				t.Fatalf("%q means nothing, or both: %+v", text, meaning)
			}
			for i := range meaning.Outcomes {
				o := &meaning.Outcomes[i]
				if o.Every == nil {
					continue
				}
				at := Situation{Now: RestPose(&m.Setup)}
				for _, single := range o.Apart() {
					if needs := v.needs(&single, &at); v.Unfit(&single, &at) == nil && len(needs) == 0 {
						t.Fatalf("%q needs nothing", text)
					}
				}
			}
			now := RestPose(&m.Setup).Take(&m.Setup, &meaning.Settings)
			input := now.Input()
			if err := m.Plan.CheckInput(&input); err != nil {
				t.Fatalf("%q: %v", text, err)
			}
		}
	})
}
