package sample

import "example.com/hingeline/verify/result"

// BenchStep is one step with everything there is: a motor that runs, a part that moves too
// little to be sure, one that is watched for its time, an extra, and surfaces in every row.
func BenchStep() *result.BenchStep {
	return &result.BenchStep{
		Number: 3, Of: 5, Stand: []string{"motor switch live", "flap lever landing"}, Move: []string{"roll stick full right", "throttle 100 %"},
		SignalBack: true, Beware: []string{"a motor runs here: propeller off, or the model restrained"}, State: result.StepDiffers,
		Parts: []result.BenchPart{
			{Number: 1, Name: "port aileron", Stage: result.PortWing, Motion: result.UpDown, Way: "DOWN", Amount: "15.4° (10 mm)", To: "8° DOWN (5.2 mm)", Exact: "7.4° UP to 8° DOWN (5.2 mm)", Moves: true, Sure: true,
				Spot: result.Spot{Row: "wing", From: -0.96, To: -0.52}, Said: "the other way", Differs: true, How: "the other way"},
			{Number: 2, Name: "port flap", Stage: result.PortWing, Motion: result.UpDown, Way: "A LITTLE", Exact: "25° DOWN to 26.2° DOWN (20 mm)",
				Spot: result.Spot{Row: "wing", From: -0.5, To: -0.14}},
			{Number: 3, Name: "elevator", Stage: result.Tail, Motion: result.UpDown, Way: "STAYS", Exact: "neutral", Sure: true,
				Spot: result.Spot{Row: "tail", From: -0.33, To: 0.33}},
			{Number: 4, Name: "rudder", Stage: result.Tail, Motion: result.LeftRight, Way: "RIGHT", Amount: "4.2°", Exact: "neutral to 4.2° RIGHT", Moves: true, Sure: true, Takes: "about 1.5 s",
				Spot: result.Spot{Row: "fin"}, Reading: []result.BenchReading{{Before: true, Says: "neutral"}, {Says: "7.5° RIGHT", Off: "3.3° too far"}}, Differs: true, How: "too far"},
			{Number: 5, Name: "starboard aileron", Stage: result.StarboardWing, Motion: result.UpDown, Way: "UP", Amount: "22.3° (15 mm)", Exact: "neutral to 22.3° UP (15 mm)", Moves: true, Sure: true,
				Spot: result.Spot{Row: "wing", From: 0.52, To: 0.96}},
			{Number: 6, Name: "motor", Stage: result.MotorAndSignal, Motion: result.Power, Way: "RUNS", Amount: "power 100 %", Exact: "stopped to 100 %", Moves: true, Sure: true},
			{Number: 7, Name: "retracts", Stage: result.MotorAndSignal, Motion: result.OutIn, Way: "STAYS", Exact: "0 % out", Sure: true},
		},
	}
}

// BenchStands is the model as it stands, with nothing off neutral.
func BenchStands() *result.BenchStep {
	return &result.BenchStep{Number: 1, Of: 5, State: result.StepAsExpected, Parts: []result.BenchPart{
		{Number: 1, Name: "port aileron", Stage: result.PortWing, Motion: result.UpDown, Way: "AT NEUTRAL", Exact: "neutral", Sure: true, Spot: result.Spot{Row: "wing", From: -0.96, To: -0.52}},
		{Number: 2, Name: "retracts", Stage: result.MotorAndSignal, Motion: result.OutIn, Way: "IN", Exact: "0 % out", Sure: true},
		{Number: 3, Name: "motor", Stage: result.MotorAndSignal, Motion: result.Power, Way: "STOPPED", Exact: "stopped", Sure: true},
	}}
}

// Bench is a walk in which something differs, with a cause, throws and corrections.
func Bench() *result.Bench {
	causes := OneCause()
	causes.Script.Failing = 2
	return &result.Bench{
		Tool: "0.1.0", Model: result.Model{Name: "Tarn Sampler", File: airframe}, Record: "tarn.bench/0003.jsonl", Date: "2026-11-25T20:15:00Z",
		Look: "which way each part goes; less than 2° is not seen", SetUp: "sha256:0123", Asked: "sha256:4567",
		Script: "2 of 14 checks fail on the set-up as written", Fails: true, Walk: "the shortest walk-around",
		Steps: []result.BenchStep{
			*BenchStands(), {Number: 2, Of: 5, Move: []string{"signal lost"}, SignalLost: true, State: result.StepUnsure}, *BenchStep(),
			{Number: 4, Of: 5, Stand: []string{"rate switch high"}, Move: []string{"yaw stick full left"}, State: result.StepSkipped, Reason: "the rudder is off for repair"},
			{Number: 5, Of: 5, Stand: []string{"flap lever landing"}, State: result.StepOpen},
			{Number: 6, Of: 5, Further: true, Stand: []string{"flap lever landing"}, Move: []string{"yaw stick full left"}, State: result.StepAsExpected},
		},
		Causes: causes, Sizes: 1,
		Throws: []result.BenchThrow{
			{Part: "port flap", Way: "DOWN", At: []string{"flap lever landing"}, Measured: result.ThrowSize{Degrees: 36.1, Millimetres: 29.7}, Computed: result.ThrowSize{Degrees: 37.8, Millimetres: 31.1}, Off: "1.7° less than computed", Partner: "1.6° less than the starboard flap, computed alike"},
			{Part: "rudder", Way: "RIGHT", At: []string{"yaw stick full left"}, Measured: result.ThrowSize{Degrees: 7.5}, Computed: result.ThrowSize{Degrees: 20}, Other: "LEFT", Off: "27.5° off"},
			{Part: "elevator", Way: "UP", Measured: result.ThrowSize{Degrees: 20}, Computed: result.ThrowSize{Degrees: 20.2}},
		},
		Fits: []result.BenchFit{
			{Part: "port flap", Place: in(46, 5, "    linkage: {arm_mm: 12, horn_mm: 13, pivots_mm: 58, horn: below}"), Kind: "linkage", Offered: true,
				Changes: []result.FitChange{{Key: "arm_mm", Was: "12 mm", Is: "11.4 mm", Within: "told to ± 0.2 mm"}, {Key: "arm_deg", Was: "90°", Is: "86.5°"}},
				Points:  []result.FitPoint{{Output: -100, Measured: "18° UP", Before: 1.2, After: 0.2}, {Output: 65, Measured: "36.1° DOWN", Before: 1.7, After: 0.1}},
				Before:  1.47, After: 0.16, Note: "The ratio of arm to horn is 0.88.", Table: "-100 %: 18° UP, 0 %: 1° DOWN, 65 %: 36.1° DOWN, 100 %: 48.5° DOWN", TableAfter: 0.03},
			{Part: "elevator", Kind: "measured", Points: []result.FitPoint{{Output: 0, Measured: "neutral"}}, Before: 0.2, After: 0.2, Note: "what is written fits as well as can be told."},
		},
		Cautions: cautions(), Verdict: result.SeenDiffers,
	}
}

// BenchRight is a walk in which all was seen as expected, with a script that passes.
func BenchRight() *result.Bench {
	return &result.Bench{
		Tool: "0.1.0", Model: result.Model{Name: "Tarn Sampler", File: airframe}, Record: "tarn.bench/0001.jsonl", Date: "2026-11-25T20:15:00Z",
		Look: "which way each part goes; less than 2° is not seen", SetUp: "sha256:0123", Script: "14 checks pass on the set-up as written",
		Walk: "the shortest walk-around", Steps: []result.BenchStep{*BenchStands()}, Cautions: cautions(), Verdict: result.SeenAsExpected,
	}
}

// BenchWrongAsWritten is a model that was seen as its set-up does it, and that is wrong.
func BenchWrongAsWritten() *result.Bench {
	r := BenchRight()
	r.Script, r.Fails = "2 of 14 checks fail on the set-up as written", true
	return r
}

// BenchByEye is one that was to be measured and was only looked at.
func BenchByEye() *result.Bench {
	r := BenchRight()
	r.Unmoved = []string{"rate switch", "roll trim"}
	lost := result.BenchStep{Number: 2, Of: 2, Move: []string{"signal lost"}, SignalLost: true, State: result.StepAsExpected, Measured: 2}
	r.Ruler, r.Look = true, "which way each part goes and how far, to 1°; less than 2° is not seen as a movement"
	r.Steps[0].State, r.Verdict = result.StepByEye, result.NotFinished
	r.Steps = append(r.Steps, lost)
	return r
}

// BenchGrouped is a part that goes the other way wherever it should move, and one that is
// short by other amounts.
func BenchGrouped() *result.Bench {
	r := Bench()
	first := r.Steps[2]
	for n := range 4 {
		s := first
		s.Number = 7 + n
		s.Parts = append([]result.BenchPart{}, first.Parts...)
		s.Parts[3].How, s.Parts[3].Reading = "short", []result.BenchReading{{Says: "3.1° RIGHT", Off: "1.1° short"}}
		r.Steps = append(r.Steps, s)
	}
	return r
}

// BenchSizes is one in which only sizes differ, which tells no cause.
func BenchSizes() *result.Bench {
	r := BenchRight()
	r.Steps = append(r.Steps, *BenchStep())
	r.Causes, r.Sizes, r.Verdict = &result.Causes{Verdict: result.AsItShould, Tried: 12}, 1, result.SeenDiffers
	return r
}

// BenchRatio is one in which surfaces go short, or too far, by the same part everywhere.
func BenchRatio() *result.Bench {
	r := BenchSizes()
	r.Ratios, r.Sizes = []result.BenchRatio{
		{Part: "port flap", Ratio: 0.8, Places: 3, Ways: []string{"UP", "DOWN"}},
		{Part: "elevator", Ratio: 1.25, Places: 2, Ways: []string{"UP"}},
		{Part: "rudder", Ratio: 0.7, Places: 2, Ways: []string{"LEFT"}, OneWay: true},
	}, 0
	return r
}

// BenchNoCause is one that no single mistake explains.
func BenchNoCause() *result.Bench {
	r := BenchSizes()
	r.Causes, r.Sizes = &result.Causes{Verdict: result.NoCause, Tried: 1200}, 0
	return r
}

// BenchNear is one that no single mistake explains, and some do but for a few answers.
func BenchNear() *result.Bench {
	r := BenchNoCause()
	r.Causes = NearCauses()
	r.Causes.Near[1].Against[0] = result.Against{Step: 3, What: []string{"port aileron"}}
	return r
}

// BenchOpen is one that was broken off, BenchNothing one in which nothing was seen.
func BenchOpen() *result.Bench {
	r := BenchRight()
	r.Steps = append(r.Steps, result.BenchStep{Number: 2, Of: 2, Move: []string{"roll stick full left"}, State: result.StepOpen})
	r.Verdict = result.NotFinished
	return r
}

// BenchNothing is one in which nothing was seen.
func BenchNothing() *result.Bench {
	r := BenchOpen()
	r.Steps = r.Steps[1:]
	r.Verdict = result.NothingSeen
	return r
}
