package airframes_test

import (
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
)

// conditionModel has, by index: 0 roll stick, 1 roll trim, 2 pitch stick, 3
// flap lever, 4 throttle, 5 rate switch; phases 0 landing, 1 thermal flight.
const conditionModel = `hingeline: 1
name: Fennel
controls:
  roll stick: {axis: roll, trim: 8%}
  pitch stick: pitch
  flap lever: {lever: {parked: 0, landing: 100}, aka: flaps}
  throttle: lever
  rate switch: {switch: [low, mid, high], aka: rates}
phases:
  landing: flap lever is landing
  thermal flight: rate switch is mid
demands: {roll: roll stick}
channels: {1: roll}
surfaces: {port aileron: {channel: 1, measured: {100%: 20° down}}}
`

func at(position int) mixcore.Condition {
	return mixcore.Condition{Op: mixcore.AtPosition, Control: 5, Position: position}
}

func above(control int, low mixcore.Percent) mixcore.Condition {
	return mixcore.Condition{Op: mixcore.Above, Control: control, Low: low}
}

func below(control int, high mixcore.Percent) mixcore.Condition {
	return mixcore.Condition{Op: mixcore.Below, Control: control, High: high}
}

func joined(op mixcore.ConditionOp, args ...mixcore.Condition) mixcore.Condition {
	return mixcore.Condition{Op: op, Args: args}
}

func TestParseConditionReadsEveryForm(t *testing.T) {
	m := read(t, conditionModel)
	landing, thermal := mixcore.Condition{Op: mixcore.InPhase}, mixcore.Condition{Op: mixcore.InPhase, Phase: 1}
	not := func(c mixcore.Condition) mixcore.Condition { return joined(mixcore.Not, c) }
	for text, want := range map[string]mixcore.Condition{
		"rate switch is high":                           at(2),
		"RATE-SWITCH is  High":                          at(2),
		"rates are low":                                 at(0),
		"rate switch is not high":                       not(at(2)),
		"rate switch is low or mid":                     joined(mixcore.Or, at(0), at(1)),
		"rate switch is low or mid or high":             joined(mixcore.Or, at(0), at(1), at(2)),
		"rate switch is not low or mid":                 not(joined(mixcore.Or, at(0), at(1))),
		"rate switch is low or landing":                 joined(mixcore.Or, at(0), landing),
		"rate switch is low or in landing":              joined(mixcore.Or, at(0), landing),
		"rate switch is low or rates are mid":           joined(mixcore.Or, at(0), at(1)),
		"rate switch is low or mid and landing":         joined(mixcore.And, joined(mixcore.Or, at(0), at(1)), landing),
		"landing":                                       landing,
		"in thermal flight":                             thermal,
		"not landing":                                   not(landing),
		"not not in landing":                            not(not(landing)),
		"not landing and thermal flight":                joined(mixcore.And, not(landing), thermal),
		"landing or thermal flight and rates are low":   joined(mixcore.Or, landing, joined(mixcore.And, thermal, at(0))),
		"(landing or thermal flight) and rates are low": joined(mixcore.And, joined(mixcore.Or, landing, thermal), at(0)),
		"((landing))":                                   landing,
		"flap lever is above 20%":                       above(3, 20),
		"flap lever is above 20 %":                      above(3, 20),
		"flap lever is above 20":                        above(3, 20),
		"flaps are below 12.5%":                         below(3, 12.5),
		"roll stick is below -5%":                       below(0, -5),
		"roll trim is above 5%":                         above(1, 5),
		"throttle is at least 10%":                      {Op: mixcore.AtLeast, Control: 4, Low: 10},
		"throttle is at most 10%":                       {Op: mixcore.AtMost, Control: 4, High: 10},
		"throttle is between 10% and 60%":               {Op: mixcore.Within, Control: 4, Low: 10, High: 60},
		"throttle is between 10% and 60% and landing":   joined(mixcore.And, mixcore.Condition{Op: mixcore.Within, Control: 4, Low: 10, High: 60}, landing),
		"flap lever is landing":                         {Op: mixcore.Within, Control: 3, Low: 99, High: 100},
		"flap lever is parked":                          {Op: mixcore.Within, Control: 3, Low: 0, High: 1},
		"flap lever is parked or landing": joined(mixcore.Or, mixcore.Condition{Op: mixcore.Within, Control: 3, Low: 0, High: 1},
			mixcore.Condition{Op: mixcore.Within, Control: 3, Low: 99, High: 100}),
		"roll stick is right of 5%":      above(0, 5),
		"roll stick is left of 5%":       below(0, -5),
		"roll stick is right of 0%":      above(0, 0),
		"roll stick is left of 0%":       below(0, 0),
		"pitch stick is back of 20%":     above(2, 20),
		"pitch stick is forward of 20%":  below(2, -20),
		"pitch stick is not back of 20%": not(above(2, 20)),
	} {
		got, problems := m.ParseCondition(text)
		if len(problems) > 0 || !reflect.DeepEqual(got, want) {
			t.Errorf("%s: got %+v, %+v, want %+v", text, got, problems, want)
		}
	}
}

// Each text has «» around what the caret must point at.
func TestParseConditionPointsAtTheWrongWord(t *testing.T) {
	m := read(t, conditionModel)
	for _, c := range []struct{ text, code, message string }{
		{"«rat switch» is high", "unknown-name", "looks at \"rat switch\""},
		{"rate switch is «hihg»", "unknown-name", "has no position \"hihg\""},
		{"not (rate switch is low and flap lever is «hlaf»)", "unknown-name", "has no position \"hlaf\""},
		{"landing or «lauch»", "unknown-name", "no phase is called"},
		{"rate switch is low or «midd»", "unknown-name", "no phase is called"},
		{"rate switch is above «20%»", "bad-condition", "positions and no percent"},
		{"flap lever is above «120 %»", "out-of-range", "want 0 to 100 %"},
		{"flap lever is above «-1»", "out-of-range", "want 0 to 100 %"},
		{"roll stick is above «-101%»", "out-of-range", "want -100 to 100 %"},
		{"roll stick is left of «-5%»", "out-of-range", "want 0 to 100 %"},
		{"flap lever is above «20°»", "bad-unit", "want a percent"},
		{"flap lever is above «1e1»", "bad-number", "exponent"},
		{"flap lever is above «high»", "bad-number", "no number"},
		{"flap lever is «left of» 5%", "bad-condition", "not moved left"},
		{"roll stick is «back of» 5%", "bad-condition", "not moved back"},
		{"flap lever is between «60% and 20%»", "bad-condition", "smaller one first"},
		{"roll stick is «20%»", "bad-condition", "hardly ever met"},
		{"throttle is «full»", "unknown-name", "has no position"},
		{"«rate switch»", "bad-condition", "is a control"},
		{"«landing» is high", "bad-condition", "is a phase"},
		{"rate switch «is»", "bad-condition", "ends after"},
		{"landing «and»", "bad-condition", "ends after"},
		{"«and» landing", "bad-condition", "where a control or phase should"},
		{"«(»landing", "bad-condition", "never closed"},
		{"landing«)»", "bad-condition", "closes no bracket"},
		{"flap lever is above 20% «landing»", "bad-condition", "should end"},
		{"«grün» is high or landing", "unknown-name", "looks at"},
	} {
		from := strings.Index(c.text, "«")
		text := strings.NewReplacer("«", "", "»", "").Replace(c.text)
		width := len([]rune(c.text[from+len("«") : strings.Index(c.text, "»")]))
		_, problems := m.ParseCondition(text)
		if len(problems) != 1 {
			t.Errorf("%s: got %d problems %+v, want 1", c.text, len(problems), problems)
			continue
		}
		p := problems[0]
		if p.Code != c.code || !strings.Contains(p.Message, c.message) {
			t.Errorf("%s: got %s %q, want %s with %q", c.text, p.Code, p.Message, c.code, c.message)
		}
		if want := len([]rune(c.text[:from])) + 1; p.Column != want || p.Width != width {
			t.Errorf("%s: got column %d width %d, want %d and %d", c.text, p.Column, p.Width, want, width)
		}
	}
}

func TestParseConditionReportsEveryMistakeItCanReach(t *testing.T) {
	_, problems := read(t, conditionModel).ParseCondition("rate switch is hgih and flap levr is above 20% or roll stick is above 300%")
	var codes []string
	for _, p := range problems {
		codes = append(codes, p.Code)
	}
	if want := []string{"unknown-name", "unknown-name", "out-of-range"}; !reflect.DeepEqual(codes, want) {
		t.Errorf("got %v, want %v", codes, want)
	}
}

func TestParseConditionRefusesWhatIsTooLong(t *testing.T) {
	m := read(t, conditionModel)
	for name, text := range map[string]string{
		"brackets": strings.Repeat("(", 40) + "landing" + strings.Repeat(")", 40),
		"nots":     strings.Repeat("not ", 40) + "landing",
		"tests":    strings.Repeat("landing or ", 70) + "landing",
		"text":     strings.Repeat("landing  ", 500),
		"nothing":  "  ",
	} {
		if _, problems := m.ParseCondition(text); len(problems) != 1 || problems[0].Code != "bad-condition" {
			t.Errorf("%s: got %+v, want one bad-condition", name, problems)
		}
	}
	if _, problems := m.ParseCondition(strings.Repeat("(", 30) + "landing" + strings.Repeat(")", 30)); len(problems) > 0 {
		t.Errorf("30 brackets: got %+v", problems)
	}
}

func TestConditionProblemsPointIntoTheFile(t *testing.T) {
	for name, c := range map[string]struct {
		value        string
		line, column int // of the wrong word, from the line of `when`
	}{
		"plain":           {"rates are hihg", 0, 21},
		"single quotes":   {"'rates are hihg'", 0, 22},
		"double quotes":   {`"rates are hihg"`, 0, 22},
		"over two lines":  {"rates are\n            hihg", 1, 13},
		"with an escape":  {`"rates\x20are hihg"`, 0, 11},
		"a block of text": {"|\n          rates are hihg", 0, 11},
	} {
		text := conditionFile(c.value)
		first := strings.Count(text[:strings.Index(text, "when:")], "\n") + 1
		_, problems := airframes.Load("f", []byte(text))
		if len(problems) != 1 || problems[0].Line != first+c.line || problems[0].Column != c.column {
			t.Errorf("%s: got %+v, want line %d column %d", name, problems, first+c.line, c.column)
		}
	}
}

// conditionFile is conditionModel with one more phase, its condition in column
// 11 of its line.
func conditionFile(value string) string {
	return strings.Replace(conditionModel, "demands:", "  tested:\n    when: "+value+"\ndemands:", 1)
}

// However the words fall, a condition is read or refused with places in it.
func TestParseConditionStandsAnyWords(t *testing.T) {
	m := read(t, conditionModel)
	words := []string{"and", "or", "not", "is", "are", "in", "(", ")", "above", "below", "between", "at", "least", "most", "right", "left", "of",
		"rate", "switch", "high", "low", "flap", "lever", "landing", "20%", "-5", "%", "grün", "roll stick"}
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom(words), 0, 14).Draw(t, "words"), " ")
		condition, problems := m.ParseCondition(text)
		if (condition.Op == 0) != (len(problems) > 0) {
			t.Fatalf("%q: got %+v and %+v", text, condition, problems)
		}
		for _, p := range problems {
			if p.Line != 1 || p.Column < 1 || p.Column > len([]rune(text))+1 || p.Message == "" {
				t.Fatalf("%q: %+v stands nowhere in it", text, p)
			}
		}
	})
}
