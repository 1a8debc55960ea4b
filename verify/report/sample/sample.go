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
			Wanted: "rises 14° ± 1°", Got: "drops 14.2° (9.9 mm)",
			Chain: []result.Step{
				{Stage: "control", Name: "pitch stick", Text: "full back", Value: "100 %", Place: in(7, 3, "")},
				{Stage: "demand", Name: "pitch", Text: "expo 30 % leaves 100 %", Value: "100 %", Place: in(15, 3, "")},
				{Stage: "demand", Name: "pitch", Text: "throw 70 %", Value: "70 %", Place: in(15, 3, "")},
				{Stage: "mix", Name: "channel 4, line 1", Text: "add pitch: 70 % × 100 %", Value: "70 %", Place: in(31, 7, "")},
				{Stage: "channel", Name: "channel 4 (elevator)", Text: "reversed", Value: "-70 %", Place: in(33, 5, "")},
				{Stage: "channel", Name: "channel 4 (elevator)", Text: "1500 µs − 70 × 5 µs", Value: "1150 µs", Place: in(30, 3, "")},
				{Stage: "servo", Name: "servo of the elevator", Text: "45° for 100 %, plus swings the arm aft", Value: "31.5° fore", Place: in(52, 5, "")},
				{Stage: "linkage", Name: "linkage of the elevator", Text: "arm 11 mm, horn 15 mm below, pivots 58 mm apart", Value: "21.2° DOWN", Place: in(53, 5, "")},
				{Stage: "part", Name: "elevator", Text: "stop at 14.2° down", Value: "14.2° DOWN", Limit: "at its stop: the servo stalls", Place: in(50, 3, "")},
			},
			LookAt: []result.Place{
				in(33, 5, "    reversed: true   # to suit the other servo"),
				in(53, 5, "    linkage: {arm_mm: 11, horn_mm: 15, pivots_mm: 58, horn: below, arm_deg: 95}"),
			},
		},
		result.Check{
			Stage: result.StarboardWing, Feature: "Tarn Sampler", Scenario: "High rates bring the flaps along",
			Sentence: "the starboard flap rises, at least 8°", Place: at(10, 5),
			Pose:   []string{"rate switch high", "flap lever landing", "roll stick full right"},
			Before: []string{"rate switch high", "flap lever landing"}, Moved: []string{"roll stick full right"},
			Rests: true, Subject: "starboard flap", Wanted: "rises, at least 8°", Got: "stays still",
			LookAt: []result.Place{in(27, 9, "")},
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

// Nothing is a check in which nothing was checked.
func Nothing() *result.Report {
	return &result.Report{
		Tool:    "0.1.0",
		Model:   result.Model{Name: "Tarn Sampler", File: airframe},
		Scripts: []string{script},
		Uncovered: result.Uncovered{
			Parts: []string{"motor", "port flap", "elevator", "starboard aileron", "starboard flap"},
		},
		Cautions: cautions(),
		Verdict:  result.NothingChecked,
	}
}

// OnePosition is what the parts do at one position, on the way there.
func OnePosition() *result.Shown {
	chain := Failing().Checks[2].Chain
	return &result.Shown{
		Tool:  "0.1.0",
		Model: result.Model{Name: "Tarn Sampler", File: airframe},
		From:  []string{"rate switch high"},
		Pose:  []string{"rate switch high", "pitch stick full back"},
		After: "0.4 s",
		Parts: []result.ShownPart{
			{Stage: result.PortWing, Name: "port flap", Position: "neutral"},
			{Stage: result.Tail, Name: "elevator", Position: "trailing edge DOWN 14.2° (9.9 mm)",
				Limits: []string{"at its stop"}, Chain: chain},
			{Stage: result.MotorAndSignal, Name: "motor", Position: "stopped"},
		},
	}
}

func cautions() []string {
	return []string{
		"Take the propeller off or restrain the model before you switch on.",
		"Walk around the model itself and see every surface move the way this report says.",
	}
}

func at(line, column int) result.Place {
	return result.Place{File: script, Line: line, Column: column}
}

func in(line, column int, excerpt string) result.Place {
	return result.Place{File: airframe, Line: line, Column: column, Excerpt: excerpt}
}
