// Package sample holds control checks made by hand, for the tests of the
// renderers: between them they show everything that a renderer has to cope
// with. The model in them, Tarn Sampler, does not exist and no set-up stands
// behind its numbers.
//
// Start at [Passing] and [Failing]. Nothing outside tests uses it.
package sample

import "example.com/hingeline/verify/result"

const (
	airframe = "models/tarn-sampler.yaml"
	script   = "models/tarn-sampler.feature"
)

// Passing is a check that passed with nothing left open.
func Passing() *result.Report {
	return &result.Report{
		Tool:    "0.1.0",
		Model:   result.Model{Name: "Tarn Sampler", File: airframe},
		Scripts: []string{script},
		Rest:    rest(),
		Checks: []result.Check{
			{
				Stage: result.BeforePower, Feature: "Tarn Sampler", Scenario: "Safe on the bench",
				Sentence: "the motor is stopped", Place: at(5, 5),
				Rests: true, Subject: "motor", Wanted: "stopped", Got: "stopped", Passed: true,
			},
			{
				Stage: result.BeforePower, Feature: "Tarn Sampler", Scenario: "Safe on the bench",
				Sentence: "both flaps are at neutral", Place: at(6, 5),
				Rests: true, Subject: "port flap", Wanted: "at neutral", Got: "neutral", Passed: true,
			},
			{
				Stage: result.BeforePower, Feature: "Tarn Sampler", Scenario: "Safe on the bench",
				Sentence: "both flaps are at neutral", Place: at(6, 5),
				Rests: true, Subject: "starboard flap", Wanted: "at neutral", Got: "neutral", Passed: true,
			},
			{
				Stage: result.PortWing, Feature: "Tarn Sampler", Scenario: "High rates bring the flaps along",
				Sentence: "the port flap drops", Place: at(11, 5),
				Pose:   []string{"rate switch high", "flap lever landing", "roll stick full right"},
				Before: []string{"rate switch high", "flap lever landing"}, Moved: []string{"roll stick full right"},
				Rests: true, Subject: "port flap",
				Wanted: "drops, at least 0.5°", Got: "drops 12.4° (10 mm)", Passed: true,
			},
			{
				Stage: result.StarboardWing, Feature: "Tarn Sampler", Scenario: "High rates bring the flaps along",
				Sentence: "the starboard aileron rises 18° ± 2°", Place: at(9, 5),
				Pose:   []string{"rate switch high", "flap lever landing", "roll stick full right"},
				Before: []string{"rate switch high", "flap lever landing"}, Moved: []string{"roll stick full right"},
				Rests: true, Subject: "starboard aileron",
				Wanted: "rises 18° ± 2°", Got: "rises 17.2° (11 mm)", Passed: true,
			},
		},
		Cautions: cautions(),
		Verdict:  result.Passed,
	}
}

// Failing is a check in which two of six checks failed, with warnings, with
// something left uncovered, and with limits in a cause chain.
func Failing() *result.Report {
	r := Passing()
	r.Verdict = result.Failed
	r.NotSelected = 3
	r.Checks = append(r.Checks[:1:1],
		result.Check{
			Stage: result.PortWing, Feature: "Tarn Sampler", Scenario: "Whatever else moves",
			Sentence: "with rates high, landing flap and full right roll, the port flap drops and the starboard flap rises",
			Place:    at(16, 7), Pose: []string{"rate switch high", "flap lever landing", "roll stick full right"},
			Rests: true, Subject: "port flap", Wanted: "trailing edge goes DOWN, at least 0.5°",
			Got: "drops 12.4° (10 mm)", Passed: true,
		},
		result.Check{
			Stage: result.Tail, Feature: "Tarn Sampler", Scenario: "The tail follows the stick",
			Sentence: "the elevator rises 14° ± 1°", Place: at(21, 5),
			Pose: []string{"pitch stick full back"}, Rests: true, Subject: "elevator",
			Wanted: "rises 14° ± 1°", Got: "drops 14.2° (9.9 mm)", Miss: "WRONG WAY: wanted UP, it goes DOWN",
			Why: []result.Reason{{
				Of: "elevator",
				Chain: []result.Step{
					{Stage: "control", Name: "pitch stick", Text: "full back", Value: "100 %", Exact: percent(100), Place: in(7, 3, "")},
					{Stage: "demand", Name: "pitch", Text: "expo 30 % leaves 100 %", Value: "100 %", Exact: percent(100), Place: in(15, 3, "")},
					{Stage: "demand", Name: "pitch", Text: "throw 70 %", Value: "70 %", Exact: percent(70), Place: in(15, 3, "")},
					{Stage: "mix", Name: "channel 4, line 1", Text: "add pitch: 70 % × 100 %", Value: "70 %", Exact: percent(70), Place: in(31, 7, "")},
					{Stage: "channel", Name: "channel 4 (elevator)", Text: "reversed", Value: "-70 %", Exact: percent(-70), Place: in(33, 5, "")},
					{Stage: "channel", Name: "channel 4 (elevator)", Text: "1500 µs − 70 × 5 µs", Value: "1150 µs", Exact: &result.Exact{Number: 1150, Unit: "µs"}, Place: in(30, 3, "")},
					{Stage: "servo", Name: "servo of the elevator", Text: "45° for 100 %, plus swings the arm aft", Value: "31.5° fore", Exact: &result.Exact{Number: 31.5, Unit: "°", Way: "fore"}, Place: in(52, 5, "")},
					{Stage: "linkage", Name: "linkage of the elevator", Text: "arm 11 mm, horn 15 mm below, pivots 58 mm apart", Value: "21.2° DOWN", Exact: &result.Exact{Number: 21.2125, Unit: "°", Way: "DOWN"}, Place: in(53, 5, "")},
					{Stage: "part", Name: "elevator", Text: "stop at 14.2° down", Value: "14.2° DOWN", Exact: &result.Exact{Number: 14.2, Unit: "°", Way: "DOWN"}, Limit: "at its stop: the servo stalls", Place: in(50, 3, "")},
				},
				LookAt: []result.Place{
					noted(in(33, 5, "    reversed: true   # to suit the other servo"), "reversed: of channel 4"),
					noted(in(53, 5, "    linkage: {arm_mm: 11, horn_mm: 15, pivots_mm: 58, horn: below, arm_deg: 95}"), "horn: its side"),
				},
			}},
		},
		result.Check{
			Stage: result.StarboardWing, Feature: "Tarn Sampler", Scenario: "High rates bring the flaps along",
			Sentence: "the starboard flap moves opposite to the port flap", Place: at(10, 5),
			Pose:   []string{"rate switch high", "flap lever landing", "roll stick full right"},
			Before: []string{"rate switch high", "flap lever landing"}, Moved: []string{"roll stick full right"},
			Rests: true, Subject: "starboard flap", Wanted: "moves opposite to the port flap",
			Got: "stays still; the port flap drops 12.4° (10 mm)",
			Why: []result.Reason{
				{
					Of:     "starboard flap",
					Chain:  []result.Step{{Stage: "control", Name: "rate switch", Text: "high", Place: in(9, 3, "")}},
					LookAt: []result.Place{in(27, 9, "")},
				},
				{
					Of:     "port flap",
					Chain:  []result.Step{{Stage: "part", Name: "port flap", Value: "12.4° DOWN", Exact: &result.Exact{Number: 12.4, Unit: "°", Way: "DOWN"}, Place: in(46, 3, "")}},
					LookAt: []result.Place{in(24, 9, "      - {add: roll, share: 40%}"), in(46, 3, "  port flap:")},
				},
			},
		},
		result.Check{
			Stage: result.MotorAndSignal, Feature: "Tarn Sampler", Scenario: "Loss of signal",
			Sentence: "the motor stops", Place: at(30, 5),
			Pose: []string{"motor switch live", "throttle 100 %", "signal lost"}, Rests: true, Subject: "motor",
			Wanted: "stopped", Got: "stopped", Passed: true,
		},
		result.Check{
			Stage: result.MotorAndSignal, Feature: "Tarn Sampler", Scenario: "Nothing runs out of travel",
			Sentence: "at every switch position and every stick position, no channel runs out of travel",
			Place:    at(34, 5), Subject: "all channels", Wanted: "no channel beyond its travel limit",
			Got: "none is, at any of 24 switch positions", Passed: true,
		},
	)
	r.Findings = []result.Finding{
		{
			Code: "uneven-throws", Message: "roll throws differ: 90 % right, 85 % left",
			Hint:  "say the same throw for both sides unless it is meant",
			Place: in(12, 24, "    throw: {right: 90%, left: 85%}"),
		},
		{
			Code: "sentence-fights-the-model", Message: "right roll with a rising port flap: a rising port flap rolls the model left",
			Hint:  `write "on purpose" at the end of the sentence to keep it`,
			Place: result.Place{File: script, Line: 16, Column: 7},
		},
	}
	r.Uncovered = result.Uncovered{
		Parts:     []string{"nose wheel"},
		Controls:  []string{"yaw stick", "yaw trim"},
		Positions: []string{"flap lever takeoff", "rate switch low"},
	}
	return r
}

// Warned is a check that passed, with a warning that the pilot must see.
func Warned() *result.Report {
	r := Passing()
	r.Findings = Failing().Findings[:1:1]
	return r
}

// InPart is a check of which only a part ran, and passed.
func InPart() *result.Report {
	r := Passing()
	r.Verdict, r.NotSelected = result.PassedInPart, 9
	return r
}

// Nothing is a check in which nothing was checked.
func Nothing() *result.Report {
	return &result.Report{
		Tool:    "0.1.0",
		Model:   result.Model{Name: "Tarn Sampler", File: airframe},
		Scripts: []string{script},
		Rest:    rest(),
		Uncovered: result.Uncovered{
			Parts: []string{"motor", "port flap", "elevator", "starboard aileron", "starboard flap"},
		},
		Cautions: cautions(),
		Verdict:  result.NothingChecked,
	}
}

// OnePosition is what the parts do at one position, on the way there.
func OnePosition() *result.Shown {
	chain := Failing().Checks[2].Why[0].Chain
	return &result.Shown{
		Tool:  "0.1.0",
		Model: result.Model{Name: "Tarn Sampler", File: airframe},
		From:  []string{"rate switch high"},
		Pose:  []string{"rate switch high", "pitch stick full back"},
		After: "0.4 s",
		Parts: []result.ShownPart{
			{Stage: result.PortWing, Name: "port flap", Position: "neutral"},
			{Stage: result.Tail, Name: "elevator", Position: "trailing edge DOWN 14.2° (9.9 mm)",
				Limits: []string{"beyond the pulse limits: 2040 µs asked of channel 5, 2000 µs came out",
					"at its stop: DOWN 15.4° asked, DOWN 14.2° came out"}, Chain: chain},
			{Stage: result.MotorAndSignal, Name: "motor", Position: "stopped"},
		},
		Effect: &result.Effect{
			Turns: []result.Turn{
				{Axis: "roll", Way: "RIGHT", Sure: true, Text: "rolls RIGHT"},
				{Axis: "pitch", Text: "may pitch UP or DOWN, or not"},
				{Axis: "yaw", Sure: true, Text: "does not yaw"},
			},
			Speed: 16,
			Roll: &result.Rolling{
				Way: "RIGHT", Helix: 0.0832, Rate: 76.3, Text: "pb/2V 0.083, 76° a second at 16 m/s, to the right",
				Shares: []result.Share{{Kind: "flap", Of: "aileron", Percent: 41.2, Text: "the flaps add 41 % to the roll of the ailerons"}},
				Lost:   12.1, Stops: "12 % of the roll is lost to the stop of port flap: without it pb/2V would be 0.095",
			},
			Loads: []result.Load{
				{Servo: "port flap servo", Low: 12.34, High: 20.1, Has: 40, Text: "needs 12.3 to 20.1 N·cm, has 40 N·cm: 2.0 to 3.2 times"},
				{Servo: "elevator servo", Low: 2, High: 3.1, Has: 30, Stalls: true, Text: "driven against its stop, where it needs all the torque it has; the air adds 2 to 3.1 N·cm"},
			},
			Missing: []string{"aft_mm of port flap in the airframe file, for pitch"},
			Worth:   []string{"Servo loads are estimates, from a flat plate to thin-aerofoil theory; raw moments may be up to 40 % too high."},
		},
	}
}

// Problems are two mistakes and a warning, one of them of no place.
func Problems() *result.Problems {
	return &result.Problems{Tool: "0.1.0", List: []result.Problem{
		{Finding: result.Finding{Code: "unknown-name", Message: `mix adds "rol", which no demand is called`, Hint: `did you mean "roll"?`,
			Place: in(31, 12, "  4: {mix: rol}")}},
		{Finding: result.Finding{Code: "file-missing", Message: "there is no such file; wanted a script", Place: result.Place{File: script}}},
		{Finding: result.Finding{Code: "no-script", Message: "no script says what this model should do"}, Warning: true},
	}}
}

func cautions() []string {
	return []string{
		"Take the propeller off or restrain the model before you switch on.",
		"Walk around the model itself and see every surface move the way this report says.",
	}
}

func rest() []string {
	return []string{"sticks and trims centred", "throttle 0 %", "flap lever parked", "rate switch low", "motor switch safe"}
}

func noted(p result.Place, note string) result.Place {
	p.Note = note
	return p
}

func percent(n float64) *result.Exact { return &result.Exact{Number: n, Unit: "%"} }

func at(line, column int) result.Place {
	return result.Place{File: script, Line: line, Column: column}
}

func in(line, column int, excerpt string) result.Place {
	return result.Place{File: airframe, Line: line, Column: column, Excerpt: excerpt}
}
