package sample

import "example.com/hingeline/verify/result"

// Backwards is a check that passed with a script that fights the aeroplane, with a
// sentence kept on purpose and with a trim that is not checked.
func Backwards() *result.Report {
	r := Passing()
	r.Verdict = result.Failed
	r.Script = []result.ScriptFinding{
		{
			Code:     "suspicious-expectation",
			Message:  "the port flap rises as the roll stick moves to the right: that fights the aeroplane",
			Sentence: "with rates high and right roll, the port flap rises",
			Place:    result.Place{File: script, Line: 16, Column: 7, Excerpt: "      * with rates high and right roll, the port flap rises"},
			Reason:   "a rising port flap pushes the port wing DOWN and rolls the model LEFT; the roll stick to the right should roll it RIGHT",
			Picture:  "seen from behind: trailing edge of the port flap UP, port wing DOWN, starboard wing UP",
			Right:    "the port flap drops",
			Hint:     "write “the port flap drops”, or end the sentence with “on purpose”",
			Fails:    true,
		},
		{
			Code:     "suspicious-expectation",
			Message:  "the elevator drops as the pitch trim moves back: that fights the aeroplane",
			Sentence: "the elevator drops on purpose",
			Place:    result.Place{File: script, Line: 19, Column: 7, Excerpt: "        | back | drops on purpose |"},
			Reason:   "a dropping elevator pushes the tail UP and pitches the model DOWN; the pitch trim back should pitch it UP",
			Picture:  "seen from the side: trailing edge of the elevator DOWN, nose DOWN, tail UP",
			Right:    "the elevator rises", Hint: "write “the elevator rises”, or end the sentence with “on purpose”",
			OnPurpose: true,
		},
		{
			Code:    "trim-unchecked",
			Message: "no sentence says which way the model answers the roll trim",
			Place:   in(8, 3, "  roll stick: {axis: roll, trim: 10%}"),
			Reason:  "a reversed trim is found in the air, where every click makes it worse",
			Right:   "with roll trim full right, the model rolls right",
			Hint:    "write “with roll trim full right, the model rolls right”",
		},
	}
	return r
}
