package sample

import "example.com/hingeline/verify/result"

const over = "12 switch states, every place of 5 sticks, levers and trims"

// Proofs is a run of "prove" with every kind of answer: proved with and without
// a margin, disproved at a pose and by a movement, undecided at the limit, empty,
// and laws that the model gives nothing for.
func Proofs() *result.Proofs {
	return &result.Proofs{
		Tool:  "0.1.0",
		Model: result.Model{Name: "Tarn Sampler", File: airframe},
		Laws:  []result.Law{controlSense(), travel(), stops(), symmetry(), safeMotor(), lowRates(), noSpoilers()},
		Findings: []result.Finding{{
			Code: "uneven-throws", Message: "roll throws differ: 90 % right, 85 % left",
			Hint:  "say the same throw for both sides unless it is meant",
			Place: in(12, 24, "    throw: {right: 90%, left: 85%}"),
		}},
		Cautions: cautions(),
		Verdict:  result.SomeDisproved,
	}
}

// AllProved is a run in which everything was proved and nothing left open.
func AllProved() *result.Proofs {
	p := Proofs()
	p.Laws = []result.Law{controlSense(), safeMotor(), noSpoilers()}
	p.Findings, p.Verdict = nil, result.AllProved
	return p
}

// ProvedInPart is a run in which everything that was selected was proved.
func ProvedInPart() *result.Proofs {
	p := AllProved()
	p.Laws, p.Left = p.Laws[:1], 6
	return p
}

// ProofsUndecided is a run in which one claim was too much for the limit.
func ProofsUndecided() *result.Proofs {
	p := AllProved()
	p.Laws = append(p.Laws, symmetry())
	p.Verdict = result.SomeUndecided
	return p
}

// ProofsStopped is a run that somebody stopped.
func ProofsStopped() *result.Proofs {
	p := ProofsUndecided()
	p.Stopped = "stopped by hand"
	open := &p.Laws[len(p.Laws)-1].Claims[0]
	open.Boxes, open.Limit = 1200, 0
	return p
}

// NoProofs is a run in which there was nothing to prove.
func NoProofs() *result.Proofs {
	return &result.Proofs{
		Tool:     "0.1.0",
		Model:    result.Model{Name: "Tarn Sampler", File: airframe},
		Laws:     []result.Law{noSpoilers()},
		Cautions: cautions(),
		Left:     10,
		Verdict:  result.NothingProved,
	}
}

// Universal is a check with sentences about every position: one that was proved,
// one that does not hold, one that is undecided, and one that is never met.
func Universal() *result.Report {
	r := Passing()
	r.Verdict = result.Failed
	r.Checks = append(r.Checks,
		result.Check{
			Stage: result.StarboardWing, Feature: "Tarn Sampler", Scenario: "At every position",
			Sentence: "whatever else moves, the starboard flap never reaches its stop", Place: at(40, 5),
			Subject: "starboard flap", Wanted: "at every position: not at its stop",
			Got:    "proved over " + over + "; at the least 2.3° to spare, with rate switch high, roll stick full right",
			Passed: true,
			Proof: &result.Proof{
				Claim: "the starboard flap never reaches its stop", Answer: result.Proved,
				Over: over, States: 12, Forms: 8, Boxes: 8,
				Margin: &result.Margin{Text: "2.3° to spare", Value: 2.31, AtLeast: 2.31, Unit: "°",
					Pose: []string{"rate switch high", "roll stick full right"}},
				Assumes: []string{"once everything has come to rest"},
			},
		},
		result.Check{
			Stage: result.StarboardWing, Feature: "Tarn Sampler", Scenario: "At every position",
			Sentence: "at every switch position, whatever the roll stick does, the port flap stays still", Place: at(41, 5),
			Pose:   []string{"rate switch high", "roll stick 5 % right"},
			Before: []string{"rate switch high"}, Moved: []string{"roll stick 5 % right"}, Rests: true,
			Subject: "port flap", Wanted: "at every position: stays still", Got: "drops 0.7° (0.6 mm)",
			Miss: "MOVES: wanted it still",
			Proof: &result.Proof{
				Claim: "the port flap stays still", Answer: result.Disproved, Over: over, States: 12, Forms: 3, Boxes: 3,
				Counter: &result.Counter{
					Pose:   []string{"rate switch high", "roll stick 5 % right"},
					Before: []string{"rate switch high"}, Moved: []string{"roll stick 5 % right"},
					Got: "drops 0.7° (0.6 mm)", Set: []string{"rate switch=high", "roll stick=5%"},
				},
			},
			Why: []result.Reason{{
				Of:     "port flap",
				Chain:  []result.Step{{Stage: "part", Name: "port flap", Value: "0.7° DOWN", Exact: &result.Exact{Number: 0.7, Unit: "°", Way: "DOWN"}, Place: in(46, 3, "")}},
				LookAt: []result.Place{in(24, 9, "      - {add: roll, share: 40%}")},
			}},
		},
		result.Check{
			Stage: result.StarboardWing, Feature: "Tarn Sampler", Scenario: "At every position",
			Sentence: "the flaps move together whatever else moves", Place: at(42, 5),
			Subject: "starboard flap", Wanted: "at every position: moves together with the port flap",
			Got:   "undecided: neither a proof nor a counterexample within 200,000 boxes",
			Proof: undecided("the flaps move together"),
		},
		result.Check{
			Stage: result.StarboardWing, Feature: "Tarn Sampler", Scenario: "At every position",
			Sentence: "whenever the flap lever is above 120 %, the motor is stopped", Place: at(43, 5),
			Subject: "motor", Wanted: "at every position: stopped", Got: "the condition never holds",
			Proof: &result.Proof{Claim: "the motor is stopped", Answer: result.Empty, Over: "no position"},
		},
	)
	return r
}

func controlSense() result.Law {
	return result.Law{
		Code: "control-sense", Title: "Control sense",
		Means: "each stick turns the model the right way, at every position of the switches and levers",
		Claims: []result.Proof{
			{
				Claim: "the roll stick to the right rolls the model right", Answer: result.Proved,
				Over: over, States: 12, Forms: 8, Boxes: 8,
				Margin: &result.Margin{Text: "11.2° between the ailerons", Value: 11.24, AtLeast: 11.24, Unit: "°",
					Pose: []string{"roll stick full right"}},
			},
			{
				Claim: "the starboard aileron never drops as the roll stick moves right", Answer: result.Proved,
				Over: over, States: 12, Forms: 8, Boxes: 8,
			},
			{
				Claim: "the pitch stick back pitches the model up", Answer: result.Proved,
				Over: "4 switch states, every place of 2 sticks and trims", States: 4, Forms: 2, Boxes: 1536,
				Margin: &result.Margin{Text: "13.9°", Value: 13.94, AtLeast: 13.5, Unit: "°",
					Pose: []string{"rate switch low", "flap lever 41.3 %", "pitch stick full back", "pitch trim full back"}},
				Assumes: []string{"once everything has come to rest"},
			},
		},
	}
}

func travel() result.Law {
	return result.Law{
		Code: "travel", Title: "Travel",
		Means: "no channel runs out of travel before the stick is at its end",
		Claims: []result.Proof{
			{
				Claim: "channel 1 (starboard aileron) never runs out of travel", Answer: result.Proved,
				Over: over, States: 12, Forms: 8, Boxes: 8,
				Margin: &result.Margin{Text: "35 % of travel left", Value: 35, AtLeast: 35, Unit: "%"},
			},
			{
				Claim: "channel 5 (starboard flap) never runs out of travel", Answer: result.Disproved,
				Over: over, States: 12, Forms: 8, Boxes: 11,
				Counter: &result.Counter{
					Pose:   []string{"rate switch high", "flap lever landing", "roll stick full right"},
					Before: []string{"rate switch high", "flap lever landing"}, Moved: []string{"roll stick full right"},
					Got: "channel 5 stands at its limit of 100 % from 72 % of the stick on; 28 % of the stick does nothing",
					Set: []string{"rate switch=high", "flap lever=landing", "roll stick=full right"},
				},
				LookAt: []result.Place{noted(in(24, 9, "      - {add: roll, share: 40%}"), "share of roll")},
			},
		},
	}
}

func stops() result.Law {
	return result.Law{
		Code: "stops", Title: "Stops",
		Means: "no surface is driven against its stop",
		Claims: []result.Proof{
			{
				Claim: "the elevator never reaches its stop", Answer: result.Disproved,
				Over: "2 switch states, every place of 2 sticks and trims", States: 2, Forms: 2, Boxes: 2,
				Counter: &result.Counter{
					Pose: []string{"pitch stick full back"},
					Got:  "at its stop, trailing edge DOWN 14.2° (9.9 mm), from 68 % of the stick on",
					Set:  []string{"pitch stick=full back"},
					Why:  Failing().Checks[2].Why,
				},
				LookAt: Failing().Checks[2].Why[0].LookAt,
			},
			{
				Claim: "the starboard flap never reaches its stop", Answer: result.Proved,
				Over: over, States: 12, Forms: 8, Boxes: 8,
				Margin: &result.Margin{Text: "2.1° short of its stop", Value: 2.13, AtLeast: 2.13, Unit: "°",
					Pose: []string{"rate switch high", "flap lever landing", "roll stick full left"}},
			},
		},
	}
}

func symmetry() result.Law {
	return result.Law{
		Code: "symmetry", Title: "Left and right",
		Means:  "what the right stick does to one side, the left stick does to the other",
		Claims: []result.Proof{*undecided("the flaps mirror each other as the roll stick moves to the other side")},
	}
}

func undecided(claim string) *result.Proof {
	return &result.Proof{Claim: claim, Answer: result.Undecided, Over: over, States: 12, Forms: 8, Boxes: 200_000, Limit: 200_000}
}

func safeMotor() result.Law {
	return result.Law{
		Code: "motor-safe", Title: "Motor safe",
		Means: "the motor is stopped when its switch says so and when the signal is lost, whatever else moves",
		Claims: []result.Proof{
			{
				Claim: "with the motor switch safe the motor is stopped", Answer: result.Proved,
				Over: "4 switch states, every place of 5 sticks, levers and trims", States: 4, Forms: 1, Boxes: 1,
				Margin:  &result.Margin{Text: "20 % short of running", Value: 20, AtLeast: 20, Unit: "%"},
				Assumes: []string{"once everything has come to rest"},
			},
		},
	}
}

func lowRates() result.Law {
	return result.Law{
		Code: "rates", Title: "Low rates",
		Means: "low rates give less throw than high rates",
		Claims: []result.Proof{
			{Claim: "with the rate switch low the rudder moves less", Answer: result.Empty, Over: "no position"},
		},
	}
}

func noSpoilers() result.Law {
	return result.Law{
		Code: "linkage", Title: "Linkages", Means: "no linkage comes near its lock",
		None: "every surface has a measured table",
	}
}
