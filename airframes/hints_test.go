package airframes_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
)

// A mistake that many make gets a hint that says what to write.
func TestCommonMistakesGetAHint(t *testing.T) {
	for _, c := range []struct{ old, new, hint string }{
		{"share: {right: 20%, left: 30%}", "share: 0.65", "did you mean 65%? write 0.65% if you mean it"},
		{"share: {right: 20%, left: 30%}", "share: -0.07", "did you mean -7%? write -0.07% if you mean it"},
		{"share: {right: 20%, left: 30%}", "share: 1", "did you mean 100%? write 1% if you mean it"},
		{"throw: 90%", "throw: 1.5", "write 1.5% if you mean it"},
		{"limit: 90%", "limit: 0.9", "did you mean 90%?"},
		{"arm_mm: 10, horn_mm: 15, pivots_mm: 60, horn: below", "arm_mm: 10,5, horn_mm: 15, pivots_mm: 60, horn: below", "a decimal comma? write 10.5"},
		{"0%: 0°,", "-12,5%: 0,25° up,", "a decimal comma? write -12.5%"},
		{"0%: 0°,", "-12,5%: 0,25° up,", "a decimal comma? write 0.25° up"},
		{"mass_kg: 3.2", "mass_kg: 3,2", "a decimal comma? write 3.2"},
		{"span_mm: [140, 470]", "span_mm: [140,5, 470,25]", "a decimal comma? write 470.25"},
		{"chord_mm: 48", "chord_mm: 3.8 cm", "write 38 mm"},
		{"chord_mm: 48", "chord_mm: 1.5 in", "write 38.1 mm"},
		{"chord_mm: 48", "chord_mm: 1.5 inches", "write 38.1 mm"},
		{"mass_kg: 3.2", "mass_kg: 3200 g", "write 3.2"},
		{"mass_kg: 3.2", "mass_kg: 3.2 kg", "write 3.2"},
		{"airspeed_ms: 16", "airspeed_ms: 54 km/h", "write 15 m/s"},
		{"slow: 2 s", "slow: 200 ms", "write 0.2 s"},
		{"idle_us: 1000", "idle_us: 1.1 ms", "write 1100 µs"},
		{"limit: 90%", "limit: 90 percent", "write 90%"},
		{"tilt_deg: 3", "tilt_deg: 3 degrees", "write 3°"},
		{"horn: below, arm", "horn: bottom, arm", "write below"},
		{"horn: below, arm", "horn: Top, arm", "write above"},
		{"plus_swings: aft", "plus_swings: forward", "write fore"},
		{"plus_swings: aft", "plus_swings: back", "write aft"},
		{"plus_swings: aft", "plus_swings: backward", "write aft"},
		{"servo: aft", "servo: rear", "write aft"},
		{"pitch stick: pitch", "pitch stick: elevator", "write pitch"},
		{"axis: roll", "axis: ailerons", "write roll"},
		{"pitch stick: pitch", "pitch stick: {axis: rudder}", "write yaw"},
		{"side: port, out_mm", "side: stbd, out_mm", "write starboard"},
		{"0%: 0°,", "0%: -20°,", "write 20° up or 20° down, whichever it is"},
		{"0%: 0°,", "0%: -20° up,", "write 20° up, or 20° down if that is meant"},
		{"0%: 0°,", "0%: up 20°,", "write 20° up"},
		{"0%: 0°,", "0%: 20° upwards,", "write up"},
		{"measured: {-100%: 24° up, 0%: 0°, 100%: 20° down}", "measured: 20° up", "say at which output: measured: {100%: 20° up}"},
		{"failsafe: -90%", "failsafe: off", "say the output that stops the motor, usually -100%"},
		{"failsafe: -90%", "failsafe: centre", "say the output, such as 0%"},
		{"failsafe: -90%", "failsafe: 1500", "write 1500 µs"},
		{"failsafe: -90%", "failsafe: -100", "write -100%"},
		{"failsafe: -90%", "failsafe: 0", "write 0% if you mean the middle of its travel; a motor is usually stopped at -100%"},
		{", 3%]", ", {roll: 40%}]", "write {add: roll, share: 40%}"},
		{", 3%]", ", {roll: {right: 4%, left: 3%}}]", "write {add: roll, share: 100%}"},
		{"plus_swings: aft", "swing: 40", `did you mean "swing_deg"?`},
		{"  calm: rate switch is low", "  calm: rates = low", "write rates are low"},
		{"  calm: rate switch is low", "  calm: rate switch=low", "write rate switch is low"},
		{"  calm: rate switch is low", "  calm: rate switch != hgih", "write rate switch is not high"},
		{"  calm: rate switch is low", "  calm: flap lever >= 20%", "write flap lever is at least 20%"},
		{"  calm: rate switch is low", "  calm: flaps above 20%", "write flaps are above 20%"},
		{"  calm: rate switch is low", "  calm: rates hihg", "write rates are high"},
		{"  calm: rate switch is low", "  calm: and landing", "write rate switch is high, flap lever is above 20%, or the name of a phase"},
	} {
		if !strings.Contains(whole, c.old) {
			t.Fatalf("the file does not hold %q", c.old)
		}
		model, problems := airframes.Load("f", []byte(strings.Replace(whole, c.old, c.new, 1)))
		var hints []string
		for _, p := range problems {
			hints = append(hints, p.Hint)
		}
		if model != nil || !slices.Contains(hints, c.hint) {
			t.Errorf("%s: got hints %q, want %q", c.new, hints, c.hint)
		}
	}
}

// What looks like one of those mistakes and is none loads.
func TestWhatIsNoMistakeLoads(t *testing.T) {
	for _, c := range []struct{ old, new string }{
		{"share: {right: 20%, left: 30%}", "share: {right: 0.65%, left: 1 %}"},
		{"share: {right: 20%, left: 30%}", "share: {right: 0, left: 2}"},
		{"throw: 90%", "throw: 2.5"},
		{"limit: 90%", "limit: 1%"},
		{"expo: 15%", "expo: 1"},
		{"sub_trim: 2%", "sub_trim: 0.5"},
		{", 3%]", ", 0.5]"},
		{"span_mm: [140, 470]", "span_mm: [140,470]"},
		{"0%: 0°,", "0%: -0°,"},
		{"airspeed_ms: 16", "airspeed_ms: 16\nstill_deg: 2"},
		{"idle_us: 1000", "stopped_below: 10%, idle_us: 1000"},
		{"port aileron: {channel", "port aileron: {aka: [left outer, port tip, outer], channel"},
		{"pitch stick: pitch", "pitch stick: {axis: pitch, aka: [pitch, elevator stick]}"},
		{"flap lever: {lever: {parked: 0, landing: 100}", "flap lever: {lever: {parked: 0, quarter: 25, half: 50, Full: 100}"},
		{"range: 8%", "name: second roll trim, range: 8%"},
		{"pitch stick: pitch", "nick knüppel: pitch"},
		{"pitch stick: pitch", "тангаж: pitch"},
	} {
		text := strings.Replace(whole, c.old, c.new, 1)
		if text == whole {
			t.Fatalf("the file does not hold %q", c.old)
		}
		name, _, ok := strings.Cut(c.new, ": pitch")
		if ok && !strings.Contains(name, ":") {
			text = strings.Replace(text, "from: pitch stick", "from: "+name, 1)
		}
		read(t, text)
	}
}

func TestConditionsMayLeaveOutIs(t *testing.T) {
	m := read(t, conditionModel)
	for text, same := range map[string]string{
		"rates high":                          "rate switch is high",
		"high rates":                          "rate switch is high",
		"HIGH  Rate-Switch":                   "rate switch is high",
		"rate switch low or mid":              "rate switch is low or mid",
		"not high rates":                      "not rate switch is high",
		"landing flaps or rates low":          "flap lever is landing or rate switch is low",
		"rates high and landing":              "rate switch is high and landing",
		"landing flap lever and mid rates":    "flap lever is landing and rate switch is mid",
		"thermal flight or flap lever parked": "thermal flight or flap lever is parked",
	} {
		got, problems := m.ParseCondition(text)
		want, _ := m.ParseCondition(same)
		if len(problems) > 0 || !reflect.DeepEqual(got, want) || want.Op == 0 {
			t.Errorf("%s: got %+v, %+v, want %+v", text, got, problems, want)
		}
	}
}

func TestConditionsThatCanBeReadInTwoWaysAreRefused(t *testing.T) {
	text := strings.Replace(conditionModel, "phases:\n", "  one two: [three, four]\n  three: [one two, six]\nphases:\n", 1)
	m := read(t, text)
	_, problems := m.ParseCondition("one two three")
	if len(problems) != 1 || problems[0].Hint != "write one two is three or three is one two" {
		t.Errorf("got %+v, want two readings", problems)
	}
	want := mixcore.Condition{Op: mixcore.AtPosition, Control: 7, Position: 1}
	if got, problems := m.ParseCondition("three six"); len(problems) > 0 || !reflect.DeepEqual(got, want) {
		t.Errorf("got %+v, %+v, want %+v", got, problems, want)
	}
}

// A phase that is called like a position and a control is the phase.
func TestConditionsTakeAPhaseBeforeAPosition(t *testing.T) {
	m := read(t, strings.Replace(conditionModel, "phases:\n", "phases:\n  high rates: rates are low\n", 1))
	got, problems := m.ParseCondition("high rates")
	if want := (mixcore.Condition{Op: mixcore.InPhase}); len(problems) > 0 || !reflect.DeepEqual(got, want) {
		t.Errorf("got %+v, %+v, want the phase", got, problems)
	}
}

// What the file does not say rightly is reported once, and not again by every
// condition that looks at it.
func TestConditionsSayNothingOfControlsThatAreNotKnown(t *testing.T) {
	_, problems := airframes.Load("f", []byte(strings.Replace(whole, "aka: [rates]}", "aka: [rates], colour: red}", 1)))
	if len(problems) != 1 {
		t.Errorf("got %+v", problems)
	}
	text := strings.Replace(whole, "  rate switch: {switch: [low, high], aka: [rates]}", "  rate switch: swtich", 1)
	_, problems = airframes.Load("f", []byte(strings.Replace(text, "  calm: rate switch is low", "  calm: low rate switch", 1)))
	for _, p := range problems {
		if strings.Contains(p.Message, "low rate switch") {
			t.Errorf("it says %+v", p)
		}
	}
}
