package sample

import "example.com/hingeline/verify/result"

// Faults is a script held against mistakes with every end there is: missed with and
// without a sentence, undecided, invisible, not built, caught; and a spare scenario.
func Faults() *result.Faults {
	return &result.Faults{
		Tool:    "0.1.0",
		Model:   result.Model{Name: "Tarn Sampler", File: airframe},
		Scripts: []string{script},
		Checks:  14,
		Faults: []result.Fault{
			{
				Kind: "motor-safe-inverted", Title: "Motor safe position inverted",
				Text: "the condition of the -100 % that replaces all when motor switch is safe on channel 3 (motor) is inverted", Place: in(31, 9, "      - {replace_with: -100%, when: motor switch is safe}"),
				State: result.Missed, Rank: 1, Consequence: "the motor RUNS at 100 % where it should stand",
				Witness: &result.Counter{Pose: []string{"throttle 100 %"}, Got: "motor power 100 %", Set: []string{"throttle=100%"}},
				Wanted:  "stopped", Sentence: "* with the throttle at 100%, the motor is stopped",
			},
			{
				Kind: "share-sign", Title: "Share with the wrong sign",
				Text: "the share of roll on channel 5 (starboard flap) has the wrong sign", Place: in(24, 9, "      - {add: roll, share: 40%}"),
				State: result.Missed, Rank: 2, Consequence: "the flaps roll the model LEFT against the ailerons",
				Witness: &result.Counter{
					Pose:   []string{"rate switch high", "roll stick full right"},
					Before: []string{"rate switch high"}, Moved: []string{"roll stick full right"},
					Got: "starboard flap trailing edge DOWN 12.4° (10 mm)", Set: []string{"rate switch=high", "roll stick=full right"},
				},
				Wanted: "trailing edge UP 12.4° (10 mm)", Sentence: "* with the rate switch high and the roll stick full right, the starboard flap is 12.4° ± 1° up",
			},
			{
				Kind: "share-missing", Title: "Share missing",
				Text: "the share of roll on channel 5 (starboard flap) is missing", Place: in(24, 9, "      - {add: roll, share: 40%}"),
				State: result.Missed, Rank: 2, Consequence: "the model rolls less to the right than it should",
				Witness: &result.Counter{Pose: []string{"rate switch high", "roll stick full right"}, Got: "starboard flap at neutral"},
				Wanted:  "trailing edge UP 12.4° (10 mm)", Sentence: "* with the rate switch high and the roll stick full right, the starboard flap is 12.4° ± 1° up",
			},
			{
				Kind: "fade-missing", Title: "Fade missing", Text: "landing comes at once instead of in 2 s", Place: in(40, 3, "  landing: {when: flap lever is landing, fade: 2s}"),
				State: result.Missed, Rank: 3, Consequence: "the nose pitches at once where it should do so slowly",
			},
			{
				Kind: "expo-wrong", Title: "Expo with the wrong sign or missing", Text: "the expo of roll is -30 % instead of 30 %", Place: in(12, 24, ""),
				State: result.Open, Reason: "the search for a difference reached its limit",
			},
			{
				Kind: "failsafe-wrong", Title: "Wrong on loss of signal", Text: "without a signal channel 6 goes to 0 % instead of holding",
				State: result.Invisible, Reason: "nothing hangs on the channel",
			},
			{
				Kind: "failsafe-wrong", Title: "Wrong on loss of signal", Text: "without a signal channel 7 goes to 0 % instead of holding",
				State: result.Invisible, Reason: "nothing hangs on the channel",
			},
			{
				Kind: "expo-wrong", Title: "Expo with the wrong sign or missing", Text: "the expo of yaw is 0 % instead of 2 %",
				State: result.Invisible, Reason: "no part is ever off by more than 0.2°",
			},
			{
				Kind: "holes-swapped", Title: "Arm and horn holes swapped", Text: "the arm and the horn of the elevator are exchanged", Place: in(46, 3, ""),
				State: result.NotBuilt, Reason: "the linkage locks at 62 % of its travel",
			},
			{
				Kind: "channel-reversed", Title: "Channel reversed", Text: "channel 1 (starboard aileron) is reversed", Place: in(18, 3, "  1: {name: starboard aileron, mix: roll}"),
				State: result.Caught,
				By: []result.CaughtBy{
					{Scenario: "High rates bring the flaps along", Sentence: "the starboard aileron rises 18° ± 2°", Subject: "starboard aileron", Place: at(9, 5)},
					{Scenario: "High rates bring the flaps along", Sentence: "the ailerons go apart", Subject: "port aileron", Place: at(10, 5)},
					{Scenario: "High rates bring the flaps along", Sentence: "the ailerons go apart", Subject: "starboard aileron", Place: at(10, 5)},
				},
			},
			{
				Kind: "channel-reversed", Title: "Channel reversed", Text: "channel 2 (elevator) is reversed", Place: in(19, 3, "  2: {name: elevator, mix: pitch}"),
				State: result.Caught,
				By:    []result.CaughtBy{{Scenario: "Elevator", Sentence: "the elevator rises", Subject: "elevator", Place: at(15, 5)}},
			},
		},
		Spare: []result.Spare{{Scenario: "Safe on the bench", Place: at(4, 3)}},
		Findings: []result.Finding{{
			Code: "uneven-throws", Message: "roll throws differ: 90 % right, 85 % left",
			Hint:  "say the same throw for both sides unless it is meant",
			Place: in(12, 24, "    throw: {right: 90%, left: 85%}"),
		}},
		Cautions: cautions(),
		Verdict:  result.SomeMissed,
	}
}

// NoneMissed is a script that catches all that can be seen.
func NoneMissed() *result.Faults {
	r := Faults()
	r.Faults, r.Spare, r.Findings, r.Verdict = r.Faults[8:], nil, nil, result.NoneMissed
	return r
}

// NoneMissedInPart is one that was held against some kinds only.
func NoneMissedInPart() *result.Faults {
	r := NoneMissed()
	r.Left = 34
	return r
}

// FaultsStopped is a run that somebody stopped.
func FaultsStopped() *result.Faults {
	r := NoneMissed()
	r.Faults = append([]result.Fault{{
		Kind: "servo-dead", Title: "Servo unplugged or dead", Text: "the servo of the rudder is unplugged or dead", Place: in(48, 3, ""),
		State: result.Open, Reason: "stopped by hand before it was tried",
	}}, r.Faults...)
	r.Stopped, r.Verdict, r.Min = "stopped by hand", result.SomeMissed, 50
	return r
}

// FaultsOfWrong is a script that fails on the set-up as it stands.
func FaultsOfWrong() *result.Faults {
	r := NoneMissed()
	r.Faults, r.Verdict = nil, result.AlreadyWrong
	return r
}

// NoMistakes is a run in which nothing was tried.
func NoMistakes() *result.Faults {
	r := NoneMissedInPart()
	r.Faults, r.Verdict = nil, result.NoMistakes
	return r
}
