package sample

import "example.com/hingeline/verify/result"

// Walk is a walk-around by eye, with a step in which a motor runs and one mistake that
// cannot be seen.
func Walk() *result.Walk {
	return &result.Walk{
		Tool:  "0.1.0",
		Model: result.Model{Name: "Tarn Sampler", File: airframe},
		Look:  "which way each part goes; less than 2° is not seen",
		Steps: []result.WalkStep{
			{
				Parts: []result.WalkPart{
					{Name: "port flap", Stage: result.PortWing, Way: "AT NEUTRAL", Exact: "neutral"},
					{Name: "motor", Stage: result.MotorAndSignal, Way: "STOPPED", Exact: "stopped"},
				},
				Shows: 1, First: 1, Kinds: []string{"the sub-trim of channel 4 (port flap) is 25 % instead of 0 %"},
				Stages: []result.Stage{result.PortWing},
			},
			{
				Ready: []string{"rate switch high", "flap lever landing"}, Stand: []string{"rate switch high", "flap lever landing"},
				Move: []string{"roll stick full right"},
				Parts: []result.WalkPart{
					{Name: "port flap", Stage: result.PortWing, Way: "DOWN", Exact: "18.4° DOWN to 24° DOWN (20.2 mm)"},
					{Name: "rudder", Stage: result.Tail, Way: result.ALittle, Exact: "neutral to 1.3° LEFT (0.8 mm)"},
					{Name: "motor", Stage: result.MotorAndSignal, Way: "STOPPED", Exact: "stopped"},
				},
				Shows: 9, First: 8, Kinds: []string{
					"channel 4 (port flap) is reversed", "the servo of the port flap is unplugged or dead",
					"the share of roll on channel 4 (port flap) has the wrong sign",
				},
				Stages: []result.Stage{result.PortWing},
			},
			{
				Beware: []string{"a motor runs here: propeller off, or the model restrained"},
				Ready:  []string{"motor switch live", "throttle 100 %", "rate switch low", "flap lever parked"}, Stand: []string{"motor switch live", "throttle 100 %"},
				Move: []string{"signal lost"},
				Parts: []result.WalkPart{
					{Name: "port flap", Stage: result.PortWing, Way: "STAYS", Exact: "neutral"},
					{Name: "motor", Stage: result.MotorAndSignal, Way: "STOPS", Exact: "100 % to stopped"},
				},
				Shows: 5, First: 4, Kinds: []string{"without a signal channel 3 (motor) holds what it had instead of going to -100 %"},
				Stages: []result.Stage{result.MotorAndSignal},
			},
		},
		Mistakes: 13, Tried: 42, AtLeast: 3, Moves: 9, MovesMin: 9, Further: 4, Groups: 11,
		Unseen: []result.Unseen{{
			Kind: "throw-half", Text: "the throw of roll to the right is 45 % instead of 90 %",
			Place: in(12, 24, "    throw: {right: 90%, left: 85%}"), Why: "moves everything the same way, though not as far: use a ruler",
		}},
		Cautions: cautions(),
	}
}

// WalkMeasured is one with a ruler, which somebody stopped before it was proved shortest.
func WalkMeasured() *result.Walk {
	r := Walk()
	r.Look, r.Ruler = "which way each part goes and how far, to 1°; less than 2° is not seen as a movement", true
	r.AtLeast, r.MovesMin, r.Unseen, r.Stopped = 2, 7, nil, "stopped before the search was done"
	return r
}

// NoWalk is a model on which nothing can be seen.
func NoWalk() *result.Walk {
	r := Walk()
	r.Steps, r.Mistakes, r.AtLeast, r.Moves, r.MovesMin, r.Further, r.Groups = nil, 0, 0, 0, 0, 0, 1
	return r
}
