package sample

import "example.com/hingeline/verify/result"

// Causes is something odd that was seen, with several mistakes that explain it.
func Causes() *result.Causes {
	return &result.Causes{
		Tool:  "0.1.0",
		Model: result.Model{Name: "Tarn Sampler", File: airframe},
		Seen:  6, Tried: 115,
		Wrong: []result.SeenOdd{{Sentence: "the port flap rises", Place: at(11, 5), Got: "drops 12.4° (10 mm)"}},
		Suspects: []result.Suspect{
			{
				Kind: "channel-reversed", Text: "channel 4 (port flap) is reversed", Odds: "often", Place: in(21, 3, "  4:"),
				Alike: []string{"the pushrod of the port flap is on the other side of its horn"},
			},
			{
				Kind: "share-sign", Text: "the share of roll on channel 4 (port flap) has the wrong sign", Odds: "now and then",
				Place: in(23, 9, "      - {add: roll, share: -40%}"),
			},
		},
		Next:    nextStep(),
		Script:  result.Asked{Checks: 14},
		Repairs: append(putBack(), repairs()[1]),
		Edits: []result.FileEdit{
			{Edit: "reverse channel 4 (port flap)", Place: in(21, 3, "  4:"), Failing: 2},
			{Edit: "turn the linkage of the port flap about: pushrod to the other side of its horn", Place: in(44, 5, "    linkage: {arm_mm: 10, horn_mm: 16, horn: below}"), Failing: 14},
		},
		Findings: []result.Finding{{
			Code: "uneven-throws", Message: "roll throws differ: 90 % right, 85 % left",
			Hint: "say the same throw for both sides unless it is meant", Place: in(12, 24, "    throw: {right: 90%, left: 85%}"),
		}},
		Cautions: cautions(),
		Verdict:  result.SeveralCause,
	}
}

func nextStep() *result.NextStep {
	return &result.NextStep{
		Step: result.WalkStep{
			Ready: []string{"rate switch low"}, Move: []string{"flap lever landing"},
			Parts: []result.WalkPart{{Name: "port flap", Stage: result.PortWing, Way: "DOWN", Exact: "neutral to 18.4° DOWN"}},
		},
		Answers: []result.NextAnswer{
			{See: []string{"port flap UP"}, Suspects: []string{"channel 4 (port flap) is reversed"}},
			{See: []string{"port flap DOWN"}, Suspects: []string{"the share of roll on channel 4 (port flap) has the wrong sign"}},
		},
		Left: 2,
	}
}

// putBack are the changes that put the model as its file says.
func putBack() []result.Repair {
	return []result.Repair{
		{Change: "take the reversing off channel 4 (port flap)", AsFile: true, Place: in(21, 3, "  4:"), Checks: 14, Claims: 12},
		{Change: "move the pushrod of the port flap to the other side of its horn", OnModel: true, AsFile: true, Place: in(44, 5, "    linkage: {arm_mm: 10, horn_mm: 16, horn: below}"), Checks: 14, Claims: 12},
	}
}

func repairs() []result.Repair {
	return []result.Repair{
		{Change: "reverse channel 4 (port flap)", Place: in(21, 3, "  4:"), Checks: 14, Claims: 12},
		{Change: "turn the linkage of the port flap about: pushrod to the other side of its horn", OnModel: true, Place: in(44, 5, "    linkage: {arm_mm: 10, horn_mm: 16, horn: below}"), Checks: 14, Claims: 1},
	}
}

// OneCause is something that one mistake explains.
func OneCause() *result.Causes {
	r := Causes()
	r.Suspects, r.Next, r.Repairs, r.Edits, r.Findings, r.Verdict = r.Suspects[:1], nil, r.Repairs[:1], r.Edits[:1], nil, result.OneCause
	return r
}

// NoCause is something that no single mistake explains.
func NoCause() *result.Causes {
	r := OneCause()
	r.Suspects, r.Repairs, r.Edits, r.Verdict = nil, nil, nil, result.NoCause
	return r
}

// NearCauses is something that mistakes explain all but for a few answers.
func NearCauses() *result.Causes {
	r := NoCause()
	r.Seen, r.Near = 23, []result.Near{
		{
			Suspect: result.Suspect{Kind: "channel-reversed", Text: "channel 4 (port flap) is reversed", Odds: "often", Place: in(21, 3, "  4:"),
				Alike: []string{"the pushrod of the port flap is on the other side of its horn"}},
			Undo: "take the reversing off channel 4 (port flap)", Explains: 21, Of: 23, Lost: true,
			Against: []result.Against{{Step: 12, What: []string{"port flap"}}, {Step: 21, What: []string{"port flap", "rudder"}}},
		},
		{
			Suspect: result.Suspect{Kind: "horn-side", Text: "the pushrod of the rudder is on the other side of its horn", Odds: "now and then", Place: in(44, 5, "    linkage: {arm_mm: 10, horn_mm: 16, horn: below}")},
			Undo:    "move the pushrod of the rudder to the other side of its horn", OnModel: true, Explains: 22, Of: 23,
			Against: []result.Against{{What: []string{"the port flap rises"}, Place: at(11, 5)}},
		},
	}
	return r
}

// Commoner is one mistake that explains all, and one made more often that nearly does.
func Commoner() *result.Causes {
	r := OneCause()
	r.Near = NearCauses().Near[:1]
	return r
}

// FileInQuestion is one whose script fails on the set-up as written, and passes on what the
// model does.
func FileInQuestion() *result.Causes {
	r := OneCause()
	r.Script.Failing, r.Edits[0].Failing = 2, 0
	r.Repairs[0].Checks, r.Repairs[0].Claims = 0, 0
	return r
}

// SeenAsItShould is nothing odd, with mistakes that would look the same.
func SeenAsItShould() *result.Causes {
	r := NoCause()
	r.Wrong, r.Possible, r.Verdict = nil, 31, result.AsItShould
	return r
}

// NotToldApart is a person who stopped answering before anything was decided.
func NotToldApart() *result.Causes {
	r := SeenAsItShould()
	r.Seen, r.Verdict = 1, result.NotToldApart
	return r
}

// Offered is a failed check with changes that make it pass.
func Offered() *result.Report {
	r := Failing()
	r.Repairs = &result.Repairs{List: repairs(), Tried: 230, Apart: nextStep()}
	return r
}

// OfferedOne is one with a single change, and OfferedNone one with none.
func OfferedOne() *result.Report {
	r := Failing()
	r.Repairs = &result.Repairs{List: repairs()[:1], Tried: 230}
	return r
}

// OfferedNone is a failed check that no single change makes pass.
func OfferedNone() *result.Report {
	r := Failing()
	r.Repairs = &result.Repairs{Tried: 230}
	return r
}
