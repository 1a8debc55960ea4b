package sample

import (
	"math"

	"example.com/hingeline/verify/result"
)

// Comparison is a comparison with every end there is: parts that changed, exactly or not,
// with the signal and without it, new and unchanged ones; checks that got worse and better,
// and those that could be held against one side only.
func Comparison() *result.Comparison {
	return &result.Comparison{
		Tool:       "0.1.0",
		Old:        result.Model{Name: "Tarn Sampler", File: "HEAD~1:" + airframe},
		New:        result.Model{Name: "Tarn Sampler", File: airframe},
		OldScripts: []string{"HEAD~1:" + script}, NewScripts: []string{script},
		SetUp: []result.Change{
			{Text: "channel 5 (starboard flap): share of roll -40 → 40 %", Place: in(24, 9, "      - {add: roll, share: 40%}"), Parts: []string{"starboard flap"}},
			{Text: "elevator: horn 15 → 12 mm", Place: in(46, 3, ""), Parts: []string{"elevator"}},
			{Text: "rate switch has a new position mid", Place: in(8, 3, "  rate switch: [low, mid, high]"), Parts: []string{"starboard flap", "elevator"}},
		},
		Asked: []result.Change{{Text: `check gone: "the rudder stays still" (given rates are high)`, Place: result.Place{File: "HEAD~1:" + script, Line: 12, Column: 7}}},
		Apart: []string{"only one set-up has rate switch mid: not compared there"},
		Parts: []result.PartChange{
			{
				Name: "elevator", Stage: result.Tail,
				With: &result.Apart{By: 3.2, AtMost: 3.2, Exact: true, Unit: "°", Way: "UP", Text: "3.2° further UP", Was: "trailing edge UP 12° (10 mm)",
					Is: "trailing edge UP 15.2° (13 mm)", Pose: []string{"pitch stick full back"}, Set: []string{"pitch stick=full back"}},
				Lost: &result.Apart{By: 1, AtMost: 1.4, Unit: "°", Way: "DOWN", Text: "1° further DOWN", Was: "neutral", Is: "trailing edge DOWN 1° (1 mm)",
					Pose: []string{"signal lost"}, Set: []string{"the signal is lost"}},
			},
			{
				Name: "starboard flap", Stage: result.StarboardWing,
				With: &result.Apart{By: 24.8, AtMost: math.Inf(1), Unit: "°", Way: "DOWN", Text: "24.8° further DOWN", Was: "trailing edge UP 12.4° (10 mm)",
					Is: "trailing edge DOWN 12.4° (10 mm)", Pose: []string{"rate switch high", "roll stick full right"}, Set: []string{"rate switch=high", "roll stick=full right"}},
			},
			{Name: "starboard hook", Stage: result.StarboardWing, Note: "only the newer set-up has it"},
			{Name: "motor", Stage: result.MotorAndSignal, With: &result.Apart{AtMost: math.Inf(1), Unit: "%", Way: "LESS", Text: "0 % LESS", Was: "stopped", Is: "stopped"}},
		},
		Same: []string{"port flap", "rudder"},
		Checks: []result.CheckChange{
			{Stage: result.StarboardWing, Scenario: "Flaps roll too", Sentence: "the starboard flap rises, at least 8°", Subject: "starboard flap",
				Place: result.Place{File: script, Line: 20, Column: 5}, Pose: []string{"rate switch high", "roll stick full right"}, Wanted: "rises at least 8°",
				Was: "passed", Is: "failed", GotWas: "rises 12.4° (10 mm)", GotIs: "drops 12.4° (10 mm)", Script: "both"},
			{Stage: result.Tail, Scenario: "Elevator", Sentence: "the elevator rises 15° ± 1°", Subject: "elevator", Place: result.Place{File: script, Line: 30, Column: 5},
				Pose: []string{"pitch stick full back"}, Wanted: "rises 15° ± 1°", Was: "failed", Is: "passed", GotWas: "rises 12° (10 mm)", GotIs: "rises 15.2° (13 mm)", Script: "both"},
			{Stage: result.StarboardWing, Scenario: "The hook", Sentence: "the hook is in", Subject: "starboard hook", Place: result.Place{File: script, Line: 40, Column: 5},
				Wanted: "IN", Is: "failed", GotIs: "OUT 100 %", Script: "newer"},
			{Stage: result.Tail, Scenario: "Rudder", Sentence: "the rudder moves right", Subject: "rudder", Place: result.Place{File: script, Line: 44, Column: 5},
				Pose: []string{"yaw stick full right"}, Wanted: "moves RIGHT", Was: "failed", Is: "failed", GotWas: "stays still", GotIs: "stays still", Script: "newer"},
		},
		Both: 14, Failing: 1,
		Notes:    []string{"the newer script cannot be held against the older set-up: line 40: no part is called \"hook\""},
		Findings: []result.Finding{{Code: "idle-position", Message: "rate switch mid changes nothing", Hint: "use it or take it away", Place: in(8, 3, "  rate switch: [low, mid, high]")}},
		Cautions: []string{"Walk around the model itself."},
		Verdict:  result.SomeWorse,
	}
}

// NoneWorse is a comparison in which no check got worse.
func NoneWorse() *result.Comparison {
	c := Comparison()
	c.Checks, c.Verdict, c.Stopped = c.Checks[1:2], result.NoneWorse, "stopped by hand"
	return c
}

// NoneCompared is one without a check.
func NoneCompared() *result.Comparison {
	c := Comparison()
	c.Checks, c.Both, c.Failing, c.Verdict = nil, 0, 0, result.NoneCompared
	c.Notes = []string{"the newer set-up has no script"}
	return c
}

// NoDifference is one of two that are the same.
func NoDifference() *result.Comparison {
	c := Comparison()
	return &result.Comparison{Tool: c.Tool, Old: c.Old, New: c.New, OldScripts: c.OldScripts, NewScripts: c.NewScripts,
		Same: []string{"elevator", "motor"}, Cautions: c.Cautions, Verdict: result.NoDifference}
}
