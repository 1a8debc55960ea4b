package phrase

import (
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
)

func settingsOf(t *testing.T, m *airframes.Model, text string) map[int]float64 {
	t.Helper()
	meaning, problem := NewVocabulary(m).Parse(Given, text)
	if problem != nil {
		t.Errorf("%q: %s", text, problem.Message)
		return nil
	}
	got := map[int]float64{}
	for _, s := range meaning.Settings.Settings {
		got[s.Control] = s.Position
	}
	return got
}

func TestParseTakesSettingsInEveryWording(t *testing.T) {
	m := exampleModel(t, nil)
	m.ControlAka[rateSwitch] = []string{"rates"}
	m.ControlAka[flapLever] = []string{"big flap handle"}
	for text, want := range map[string]map[int]float64{
		"rates are high":                           {rateSwitch: 1},
		"the rates are low":                        {rateSwitch: 0},
		"high rates":                               {rateSwitch: 1},
		"rate high":                                {rateSwitch: 1},
		"the flaps are parked":                     {flapLever: 0},
		"Big-Flap handle is moved to takeoff":      {flapLever: 40},
		"flap lever stands at 35%":                 {flapLever: 35},
		"flap 12.5 percent":                        {flapLever: 12.5},
		"half flap":                                {flapLever: 50},
		"quarter throttle":                         {throttle: 25},
		"throttle closed":                          {throttle: 0},
		"throttle goes to full":                    {throttle: 100},
		"50% throttle":                             {throttle: 50},
		"roll stick is right":                      {rollStick: 100},
		"right roll":                               {rollStick: 100},
		"full right roll":                          {rollStick: 100},
		"30% left roll":                            {rollStick: -30},
		"left 30% roll":                            {rollStick: -30},
		"half left yaw":                            {yawStick: -50},
		"the pitch stick moves to full back":       {pitchStick: 100},
		"pitch stick goes forward":                 {pitchStick: -100},
		"the roll trim is half left":               {rollTrim: -50},
		"roll stick centred":                       {rollStick: 0},
		"roll stick 0%":                            {rollStick: 0},
		"the gear is set to wheels up":             {gearSwitch: 1},
		"wheels up gear":                           {gearSwitch: 1},
		"rates high, flap landing and right roll":  {rateSwitch: 1, flapLever: 100, rollStick: 100},
		"rates high, and full throttle.":           {rateSwitch: 1, throttle: 100},
		"the motor is live":                        {motorSwitch: 1},
		"the signal is lost and the motor is live": {motorSwitch: 1},
	} {
		if got := settingsOf(t, m, text); !sameMap(got, want) {
			t.Errorf("%q: got %v, want %v", text, got, want)
		}
	}
}

func sameMap(a, b map[int]float64) bool {
	if len(a) != len(b) {
		return false
	}
	for k, v := range a {
		if w, ok := b[k]; !ok || v != w {
			return false
		}
	}
	return true
}

func TestParseFindsSubjectsByEveryName(t *testing.T) {
	m := exampleModel(t, nil)
	m.PartAka[elevator] = []string{"tail flipper"}
	for text, want := range map[string][]int{
		"the port flap":                  {portFlap},
		"left flap":                      {portFlap},
		"Right Flap":                     {starboardFlap},
		"the flaps":                      {portFlap, starboardFlap},
		"both flaps":                     {portFlap, starboardFlap},
		"both the ailerons":              {portAileron, starboardAileron},
		"all flaps":                      {portFlap, starboardFlap},
		"every flap":                     {portFlap, starboardFlap},
		"the tail flipper":               {elevator},
		"elevator":                       {elevator},
		"every surface":                  {portAileron, starboardAileron, portFlap, starboardFlap, elevator, rudder},
		"all surfaces":                   {portAileron, starboardAileron, portFlap, starboardFlap, elevator, rudder},
		"the port flap and the elevator": {portFlap, elevator},
		"the flaps and the port flap":    {portFlap, starboardFlap},
	} {
		meaning, problem := NewVocabulary(m).Parse(Then, text+" stays still")
		if problem != nil {
			t.Errorf("%q: %s", text, problem.Message)
			continue
		}
		if got := meaning.Outcomes[0].Subject.Parts; !slices.Equal(got, want) {
			t.Errorf("%q: got %v, want %v", text, got, want)
		}
	}
}

func TestParseFindsChannels(t *testing.T) {
	m := exampleModel(t, nil)
	for text, want := range map[string][]int{
		"channel 4":                  {portFlapChannel},
		"the starboard flap channel": {starboardFlapChannel},
		"right flap channel":         {starboardFlapChannel},
		"channel 4 and channel 5":    {portFlapChannel, starboardFlapChannel},
		"every channel":              {0, 1, 2, 3, 4, 5, 6, 7},
	} {
		meaning, problem := NewVocabulary(m).Parse(Then, text+" is within its travel")
		if problem != nil {
			t.Errorf("%q: %s", text, problem.Message)
			continue
		}
		if got := meaning.Outcomes[0].Subject.Channels; !slices.Equal(got, want) {
			t.Errorf("%q: got %v, want %v", text, got, want)
		}
	}
}

func TestParseTakesOutcomesInEveryWording(t *testing.T) {
	v := NewVocabulary(exampleModel(t, nil))
	about := func(value, slack float64, unit string) Amount {
		return Amount{Kind: About, Value: value, Slack: slack, Unit: unit}
	}
	for text, want := range map[string]Outcome{
		"the port flap goes up":                              {Verb: Move, Way: Up},
		"the port flap moves down 12°":                       {Verb: Move, Way: Down, Amount: about(12, DefaultDegrees, "°")},
		"the port flap rises 18 deg +/- 2 deg":               {Verb: Move, Way: Up, Amount: about(18, 2, "°")},
		"the port flap rises by 18 ±2°":                      {Verb: Move, Way: Up, Amount: about(18, 2, "°")},
		"the port flap rises 18°±0.5":                        {Verb: Move, Way: Up, Amount: about(18, 0.5, "°")},
		"the port flap drops, at least 8 degrees":            {Verb: Move, Way: Down, Amount: Amount{Kind: AtLeast, Value: 8, Unit: "°"}},
		"the port flap drops by at most 5mm":                 {Verb: Move, Way: Down, Amount: Amount{Kind: AtMost, Value: 5, Unit: "mm"}},
		"the port flap drops more than 5 mm":                 {Verb: Move, Way: Down, Amount: Amount{Kind: Over, Value: 5, Unit: "mm"}},
		"the port flap drops less than 5 mm":                 {Verb: Move, Way: Down, Amount: Amount{Kind: Under, Value: 5, Unit: "mm"}},
		"the port flap drops between 8 and 12°":              {Verb: Move, Way: Down, Amount: Amount{Kind: Between, Low: 8, High: 12, Unit: "°"}},
		"the port flap doesn't move":                         {Verb: Still},
		"the port flap stays where it is":                    {Verb: Still},
		"the port flap is neutral":                           {Verb: Neutral},
		"the port flap is down":                              {Verb: Stand, Way: Down},
		"the port flap is above neutral":                     {Verb: Stand, Way: Up},
		"the port flap is 12° down":                          {Verb: Stand, Way: Down, Amount: about(12, DefaultDegrees, "°")},
		"the port flap is at 12° down":                       {Verb: Stand, Way: Down, Amount: about(12, DefaultDegrees, "°")},
		"the port flap is 12° ± 3° down":                     {Verb: Stand, Way: Down, Amount: about(12, 3, "°")},
		"the port flap is 12° down ± 3°":                     {Verb: Stand, Way: Down, Amount: about(12, 3, "°")},
		"the port flap is down 12° ± 3°":                     {Verb: Stand, Way: Down, Amount: about(12, 3, "°")},
		"the port flap is at least 5° up":                    {Verb: Stand, Way: Up, Amount: Amount{Kind: AtLeast, Value: 5, Unit: "°"}},
		"the port flap is up, at least 5°":                   {Verb: Stand, Way: Up, Amount: Amount{Kind: AtLeast, Value: 5, Unit: "°"}},
		"the port flap is up 8 mm within 2 s":                {Verb: Stand, Way: Up, Amount: about(8, DefaultMillimetres, "mm"), Clock: Within, Time: 2},
		"after 2 s, the port flap drops":                     {Verb: Move, Way: Down, Clock: After, Time: 2},
		"within 1.5 seconds the port flap drops":             {Verb: Move, Way: Down, Clock: Within, Time: 1.5},
		"the port flap drops 5° after 2s":                    {Verb: Move, Way: Down, Amount: about(5, DefaultDegrees, "°"), Clock: After, Time: 2},
		"the nose wheel points left":                         {Verb: Stand, Way: Left},
		"the nose wheel goes right":                          {Verb: Move, Way: Right},
		"the motor slows down":                               {Verb: Move, Way: Slower},
		"the motor is at 0%":                                 {Verb: PowerAt, Amount: about(0, DefaultPercent, "%")},
		"the motor is running":                               {Verb: Running},
		"the retracts go in":                                 {Verb: Move, Way: In},
		"the retracts are 50% out":                           {Verb: Stand, Way: Out, Amount: about(50, DefaultPercent, "%")},
		"the port flap moves as far as the starboard flap":   {Verb: AsFar, Other: starboardFlap, Amount: about(0, DefaultDegrees, "°")},
		"the port flap moves together with starboard flap":   {Verb: Together, Other: starboardFlap},
		"the port flap is not at its stop":                   {},
		"channel 4 is at -40%":                               {Verb: OutputAt, Amount: about(-40, DefaultPercent, "%")},
		"channel 4 is at −40 % ± 2 %":                        {Verb: OutputAt, Amount: about(-40, 2, "%")},
		"channel 4 is at 1500us":                             {Verb: PulseAt, Amount: about(1500, DefaultMicroseconds, "µs")},
		"channel 4 is at least 1500 µs":                      {Verb: PulseAt, Amount: Amount{Kind: AtLeast, Value: 1500, Unit: "µs"}},
		"the port flap moves opposite to the starboard flap": {Verb: Opposite, Other: starboardFlap},
	} {
		meaning, problem := v.Parse(Then, text)
		if want.Verb == 0 {
			if problem == nil || problem.Code != CodeMissingSize {
				t.Errorf("%q: got %+v, want a missing dimension", text, problem)
			}
			continue
		}
		if problem != nil {
			t.Errorf("%q: %s", text, problem.Message)
			continue
		}
		got := meaning.Outcomes[0]
		if len(meaning.Outcomes) != 1 || got.Verb != want.Verb || got.Way != want.Way || got.Amount != want.Amount || got.Other != want.Other || got.Clock != want.Clock || got.Time != want.Time {
			t.Errorf("%q: got %+v, want %+v", text, got, want)
		}
	}
}

func TestParseSplitsTheOneLineForm(t *testing.T) {
	v := NewVocabulary(exampleModel(t, nil))
	for text, want := range map[string]struct{ with, move int }{
		"with rates high, landing flap and right roll, the port flap drops":           {2, 1},
		"with rates high and landing flap, the port flap drops":                       {1, 1},
		"with live motor, the motor runs":                                             {0, 1},
		"with full throttle, when the signal is lost, the motor stops":                {1, 0},
		"when the roll stick is full right, the starboard aileron rises":              {0, 1},
		"with landing flap, right roll and full right yaw, after 2 s, the flaps drop": {1, 2},
		"with roll trim full left and rates high, the port aileron rises":             {1, 1},
	} {
		for _, role := range []Role{Given, When, Then, AnyRole} {
			meaning, problem := v.Parse(role, text)
			if problem != nil {
				t.Errorf("%q: %s", text, problem.Message)
				break
			}
			if !meaning.OneLine || len(meaning.With.Settings) != want.with || len(meaning.Move.Settings) != want.move {
				t.Errorf("%q: got %d before and %d moving, want %+v", text, len(meaning.With.Settings), len(meaning.Move.Settings), want)
			}
		}
	}
}

func TestParsePlacesEveryMistake(t *testing.T) {
	m := exampleModel(t, func(s *mixcore.Setup) {
		s.Controls = append(s.Controls, mixcore.Control{Name: "mode switch", Kind: mixcore.SwitchControl, Positions: []string{"a", "b"}},
			mixcore.Control{Name: "mode lever", Kind: mixcore.LeverControl})
	})
	v := NewVocabulary(m)
	for _, c := range []struct {
		role  Role
		text  string
		code  string
		under string // what the caret underlines
		says  string // in the message or hint
	}{
		{Then, "the port flpa drops", CodeUnknownName, "port flpa", `"port flap"`},
		{Then, "the port flap drosp", CodeUnknownSentence, "drosp", `"drops"`},
		{Then, "the flap drops", CodeUnclearName, "flap", `"port flap" or "starboard flap"`},
		{Then, "the model rolls", CodeUnknownSentence, "rolls", "which way"},
		{Then, "the model pitches right", CodeUnknownSentence, "pitches", "pitches up or pitches down"},
		{Then, "the model rises", CodeUnknownSentence, "rises", "asked of the model"},
		{Then, "the model stays still", CodeUnknownSentence, "stays still", "asked of the model"},
		{Then, "the model is up", CodeUnknownSentence, "is up", "asked of the model"},
		{Then, "the model moves together with the port flap", CodeUnknownSentence, "moves together with the port flap", "asked of the model"},
		{Then, "the port flap moves together with the model", CodeUnclearName, "the model", "one"},
		{Then, "the tailplane drops", CodeUnknownName, "tailplane", "the parts are"},
		{Given, "up trim", CodeUnknownSentence, "up trim", "back or forward"},
		{Given, "I pull down elevator", CodeUnknownSentence, "I pull down elevator", "back or forward"},
		{Given, "landing menu is on", CodeUnknownName, "menu", "the controls are"},
		{Then, "the modle rolls right", CodeUnknownName, "modle", `"model"`},
		{Then, "the model and the port flap drop", CodeWrongMotion, "the port flap", "each"},
		{Then, "the port flap rolls right", CodeWrongMotion, "rolls right", "the model rolls right"},
		{Then, "channel 3 does not pitch", CodeWrongMotion, "does not pitch", "only the model"},
		{When, "the model rolls right", CodeWrongPlace, "the model rolls right", "Then"},
		{Then, "adverse yaw grows", CodeUnknownSentence, "adverse yaw", "does not grow"},
		{Then, "the flaps add at least 25 to the roll", CodeBadUnit, "25", "no unit"},
		{Then, "the flaps add 5° to the roll", CodeBadUnit, "5°", "percent"},
		{Then, "the flaps add -5 % to the roll", CodeBadNumber, "-5 %", "sign"},
		{Then, "the flaps add to the roll", CodeBadNumber, "to", "how much"},
		{Then, "the flaps add 25 % to the pitch", CodeUnknownSentence, "add 25 %", "to the roll"},
		{Then, "the rudder adds 25 % to the roll", CodeWrongMotion, "the rudder", "ailerons"},
		{Then, "channel 3 adds 25 % to the roll", CodeWrongMotion, "channel 3", "part"},
		{Then, "the flaps and the ailerons add 25 % to the roll", CodeUnclearName, "the flaps and the ailerons", "no other"},
		{Then, "the port flap has twice the torque it needs at 30 m/s", CodeWrongMotion, "has twice the torque it needs at 30 m/s", "the port flap servo"},
		{Then, "the flap servo has twice the torque it needs at 30 m/s", CodeUnclearName, "the flap servo", "the flap servos"},
		{Then, "the servo has twice the torque it needs at 30 m/s", CodeUnclearName, "the servo", "every servo"},
		{Then, "the port flap servo has twice the torque it needs", CodeUnknownSentence, "", "airspeed"},
		{Then, "the port flap servo has twice the torque it needs at 30", CodeBadUnit, "30", "m/s"},
		{Then, "the port flap servo has twice the torque it needs at 90 km/h", CodeBadUnit, "90 km/h", "25.0 m/s"},
		{Then, "the port flap servo has twice the torque it needs at 0 m/s", CodeBadNumber, "0 m/s", "200"},
		{Then, "the port flap servo has 0 times the torque it needs at 30 m/s", CodeBadNumber, "0 times", "more than 0"},
		{Then, "the port flap servo has plenty", CodeUnknownSentence, "has", "how much"},
		{Then, "the port flap servo drops", CodeUnknownSentence, "drops", "asked of the port flap servo"},
		{Then, "the nose wheel servo has twice the torque it needs at 30 m/s", CodeWrongMotion, "has twice the torque it needs at 30 m/s", "hinged"},
		{Then, "the motor servo has twice the torque it needs at 30 m/s", CodeWrongMotion, "has twice the torque it needs at 30 m/s", "hinged"},
		{Then, "the elevator servo has twice the torque it needs at 30 m/s", CodeMissingSize, "has twice the torque it needs at 30 m/s", "chord_mm and span_mm to elevator"},
		{Then, "on purpose the port flap drops", CodeUnknownSentence, "on purpose the port flap drops", "phrases"},
		{Then, "the port flap drops on purpose twice", CodeUnknownSentence, "twice", "left over"},
		{Given, "rates high on purpose", CodeUnknownSentence, "on purpose", "left over"},
		{Then, "the port flap moves", CodeUnknownSentence, "moves", "which way"},
		{Then, "the port flap moves 5°", CodeUnknownSentence, "moves", "which way"},
		{Then, "the port flap moves less than 5°", CodeUnknownSentence, "moves less than 5", "which way"},
		{Then, "the port flap moves left", CodeWrongMotion, "moves left", "rises, drops"},
		{Then, "the rudder rises", CodeWrongMotion, "rises", "left or right"},
		{Then, "the motor stays still", CodeWrongMotion, "stays still", "stays stopped"},
		{Then, "the motor rises", CodeWrongMotion, "rises", "speeds up"},
		{Then, "the port flap stops", CodeWrongMotion, "stops", "rises"},
		{Then, "channel 3 rises", CodeWrongMotion, "rises", "pulse"},
		{Then, "channel 33 is at 1500 µs", CodeUnknownName, "channel 33", "it has channel 1"},
		{Then, "the port flap rises 18", CodeBadUnit, "18", "no unit"},
		{Then, "the port flap rises 18%", CodeBadUnit, "18%", "°"},
		{Then, "the port flap rises 18 s", CodeBadUnit, "18", "no unit"},
		{Then, "the port flap rises -18°", CodeBadNumber, "-18°", "word"},
		{Then, "the port flap rises 0°", CodeBadNumber, "0°", "stays still"},
		{Then, "the port flap rises 1800°", CodeBadNumber, "1800°", "more than"},
		{Then, "the port flap rises 12345678901°", CodeBadNumber, "12345678901", "digits"},
		{Then, "the port flap rises 1.2345°", CodeBadNumber, "1.2345", "digits"},
		{Then, "the port flap rises 18° ± 0°", CodeBadNumber, "0", "tolerance"},
		{Then, "the port flap rises 18° ±", CodeBadNumber, "", "tolerance"},
		{Then, "the port flap rises 18° ± 2 mm", CodeBadUnit, "2 mm", "one unit"},
		{Then, "the port flap rises between 12° and 8°", CodeBadNumber, "12° and 8°", "smaller"},
		{Then, "the port flap rises between 12°", CodeBadNumber, "", "between"},
		{Then, "the port flap rises by", CodeBadNumber, "", "how much"},
		{Then, "the rudder moves left 5 mm", CodeMissingSize, "5 mm", "chord"},
		{Then, "the elevator rises 5 mm", CodeMissingSize, "5 mm", "chord"},
		{Then, "the motor speeds up 5°", CodeBadUnit, "5°", "%"},
		{Then, "channel 3 is at 12°", CodeBadUnit, "12°", "µs"},
		{Then, "the port flap is at 12°", CodeUnknownSentence, "12°", "which way"},
		{Then, "the port flap drops after 2 mm", CodeBadUnit, "2", "seconds"},
		{Then, "the port flap drops within 0 s", CodeBadNumber, "0 s", "more than 0"},
		{Then, "the port flap stays still after 0 s", CodeBadNumber, "0 s", "more than 0"},
		{Then, "the port flap drops within 601 s", CodeBadNumber, "601 s", "600"},
		{Then, "both surfaces drop", CodeUnclearName, "surfaces", "there are 6"},
		{Then, "the port flap moves together with the flaps", CodeUnclearName, "the flaps", "one"},
		{Then, "the port flap moves together with the port flap", CodeUnclearName, "the port flap", "itself"},
		{Then, "the port flap moves together with the rudder", CodeWrongMotion, "the rudder", "same words"},
		{Then, "the port flap moves together with the rudde", CodeUnknownName, "rudde", `"rudder"`},
		{Then, "the port flap moves as far as the starboard flap ± 2 mm", CodeBadUnit, "± 2 mm", "°"},
		{Then, "the port flap drops and the starbord flap drops", CodeUnknownName, "starbord flap", `"starboard flap"`},
		{Then, "the port flap drops and", CodeUnknownSentence, "", "too early"},
		{Then, "the port flap and channel 3 drop", CodeWrongMotion, "channel 3", "each"},
		{Then, "the port flap is", CodeUnknownSentence, "is", "phrases"},
		{Then, "the port flap is 12°", CodeUnknownSentence, "12°", "which way"},
		{Then, "the port flap drops quickly", CodeUnknownSentence, "quickly", "left over"},
		{Then, "the roll stick is full right", CodeWrongPlace, "the roll stick is full right", "Given or When"},
		{Then, "the roll stick rises", CodeUnknownName, "roll stick", "control"},
		{Given, "the port flap drops", CodeWrongPlace, "the port flap drops", "Then"},
		{When, "the motor stops", CodeWrongPlace, "the motor stops", "Then"},
		{Given, "the rol stick is full right", CodeUnknownName, "rol stick", `"roll stick"`},
		{Given, "the tail hook is out", CodeUnknownName, "tail hook", "the controls are"},
		{Given, "rates hihg", CodeUnknownPosition, "hihg", `"high"`},
		{Given, "rates are middle", CodeUnknownPosition, "middle", "low or high"},
		{Given, "the flap lever is landign", CodeUnknownPosition, "landign", `"landing"`},
		{Given, "landign flap", CodeUnknownPosition, "landign", `"landing"`},
		{Given, "landing flpa", CodeUnknownName, "flpa", `"flap"`},
		{Given, "the pitch stick is full right", CodeUnknownPosition, "full right", "full back"},
		{Given, "the roll stick is 50%", CodeUnknownPosition, "50%", "which way"},
		{Given, "the roll stick is 150% right", CodeOutOfRange, "150% right", "100 %"},
		{Given, "throttle 101%", CodeOutOfRange, "101%", "0 % to 100 %"},
		{Given, "throttle -5%", CodeOutOfRange, "-5%", "0 % to 100 %"},
		{Given, "the throttle is", CodeUnknownPosition, "", "missing"},
		{Given, "rates high and low rates", CodeConflict, "low rates", "twice"},
		{Given, "the signal is lost and the signal is back", CodeConflict, "the signal is back", "both"},
		{Given, "the mode is a", CodeUnclearName, "mode", `"mode switch" or "mode lever"`},
		{Given, "high rates and nonsense", CodeUnknownSentence, "nonsense", "phrases"},
		{Given, "nonsense", CodeUnknownSentence, "nonsense", "phrases"},
		{Given, "rates are high; go", CodeUnknownSentence, ";", "plain words"},
		{Then, "", CodeUnknownSentence, "", "empty"},
		{Then, "with rates hihg, right roll, the port flap drops", CodeUnknownPosition, "hihg", `"high"`},
		{Then, "with right roll, rates hihg, the port flap drops", CodeUnknownPosition, "hihg", `"high"`},
		{Then, "with right roll, the port flpa drops", CodeUnknownName, "port flpa", `"port flap"`},
		{Then, "with right roll", CodeUnknownSentence, "", "then"},
		{Then, "with the port flap drops", CodeUnknownSentence, "port flap drops", "phrases"},
		{Then, "when nonsense, the port flap drops", CodeUnknownSentence, "nonsense", "phrases"},
	} {
		_, problem := v.Parse(c.role, c.text)
		if problem == nil {
			t.Errorf("%q: no problem, want %s", c.text, c.code)
			continue
		}
		runes := []rune(c.text)
		from := min(problem.Column-1, len(runes))
		under := string(runes[from:min(from+problem.Width, len(runes))])
		if problem.Code != c.code || under != c.under || !strings.Contains(problem.Message+" "+problem.Hint, c.says) {
			t.Errorf("%q: got %s under %q: %s (%s); want %s under %q with %q", c.text, problem.Code, under, problem.Message, problem.Hint, c.code, c.under, c.says)
		}
	}
}
