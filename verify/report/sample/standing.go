package sample

import "example.com/hingeline/verify/result"

// SignedModel is the model that the signatures are about.
func SignedModel() result.Model { return result.Model{Name: "Tarn Sampler", File: airframe} }

const someKey = "SHA256:McUkEp6JIlmTLVUiU+IsaJt5sRnRyBIdTrvul9tI/ok"

// Signed is a model that two people have signed, one in spite of a warning.
func Signed() *result.Standing {
	return &result.Standing{
		Signatures: []result.Signature{
			{
				Number: 1, Name: "Ada Crane", Role: "builder", Date: "2026-11-25T20:15:00Z", Place: "Long Mead",
				Accepted: []string{"roll throws differ: 90 % right, 85 % left [uneven-throws]: the servo horn allows no more"},
				Seen: &result.Seen{
					Record: "tarn-sampler.bench/0001.jsonl", Date: "2026-11-25T19:40:00Z", Steps: 6, AsExpected: 5, Skipped: 1,
					Summary: "seen on the model: 5 of 6 steps as expected, 1 skipped, 2026-11-25",
				},
				Genuine: true, Current: true, Counts: true,
			},
			{
				Number: 2, Name: "王 小明", Role: "second", Date: "2026-11-26T08:00:00Z", Key: someKey, Vouched: "wang@club.example",
				Remarks: "with both batteries", Tool: "0.0.9", Genuine: true, Current: true, Counts: true,
			},
		},
		Seen:    "seen on the model: 5 of 6 steps as expected, 1 skipped, 2026-11-25",
		Summary: "signed 2 days ago by Ada Crane (builder) and 1 day ago by 王 小明 (second person); seen on the model: 5 of 6 steps as expected, 1 skipped, 2026-11-25",
	}
}

// SignedBefore is a model that has changed since it was signed.
func SignedBefore() *result.Standing {
	s := Signed()
	for i := range s.Signatures {
		s.Signatures[i].Current, s.Signatures[i].Note = false, "the set-up or the script has changed since"
	}
	s.Changes = []result.Change{
		{
			Text: "port flap: share of flap −55 → −65 %", Place: in(23, 24, "      - {add: flap, share: -65%}"), Parts: []string{"port flap", "elevator"},
			Checks: []string{"the port flap rises", "the port flap drops", "the elevator stays still", "the elevator is at neutral", "both flaps drop 18° ± 2°"},
		},
		{Text: `check gone: "the rudder moves right" (with everything at rest)`, Place: at(31, 5)},
	}
	s.Seen = ""
	s.Summary = "signed 2 days ago by Ada Crane (builder) and 1 day ago by 王 小明 (second person); out of date: port flap: share of flap −55 → −65 %, and 1 more change"
	return s
}

// SignedFalsely is a model with records that are not to be trusted, and a person who
// signed twice.
func SignedFalsely() *result.Standing {
	s := Signed()
	s.Signatures[0].Genuine, s.Signatures[0].Counts, s.Signatures[0].Note = false, false, "it is not as it was written: its sum is another"
	s.Signatures = append(s.Signatures,
		result.Signature{
			Number: 3, Name: "王 小明", Role: "inspector", Date: "2026-11-27T08:00:00Z", Key: someKey, Genuine: true, Current: true,
			Note: "it is by the same person as signature 2, so it does not count as another",
		},
		result.Signature{Number: 4, Note: "it is cut short, or no record"},
	)
	s.Seen = result.OnlySetUp
	s.Troubles = []string{"record 1: it is not as it was written: its sum is another", "record 4: it is cut short, or no record"}
	s.Summary = "the signatures are not to be trusted: " + s.Troubles[0] + ", and 1 more; signed 1 day ago by 王 小明 (second person); " + s.Seen
	return s
}

// SignedInSpite is a model that was signed though not all was as expected on it.
func SignedInSpite() *result.Standing {
	s := Signed()
	s.Signatures[0].Seen = &result.Seen{
		Record: "tarn-sampler.bench/0002.jsonl", Date: "2026-11-25T20:01:00Z", Steps: 6, AsExpected: 4, Differ: 1, Unseen: 1,
		Summary: "seen on the model: 4 of 6 steps as expected, 1 NOT AS EXPECTED, 1 not seen, 2026-11-25",
		Reason:  "the wheel goes the other way until its arm is turned round; it stays on the ground",
	}
	s.Seen = s.Signatures[0].Seen.Summary
	s.Summary = "signed 2 days ago by Ada Crane (builder) and 1 day ago by 王 小明 (second person); " + s.Seen
	return s
}

// SignedThenSeen is a model on which something was not as expected since it was signed.
func SignedThenSeen() *result.Standing {
	s := Signed()
	s.Signatures[0].Seen.ReasonUnseen = "the nose wheel was seen on the day before"
	s.Since = "since then seen on the model: NOT AS EXPECTED, record tarn-sampler.bench/0002.jsonl: DO NOT FLY"
	for i := range s.Signatures {
		s.Signatures[i].Counts, s.Signatures[i].Note = false, s.Since
	}
	s.Summary += "; " + s.Since
	return s
}

// SignedByOne is a model that one person has signed in two roles, by hand: neither record
// counts for another.
func SignedByOne() *result.Standing {
	s := Signed()
	s.Signatures = s.Signatures[:1]
	s.Signatures[0].Counts, s.Signatures[0].Note = false, "it was checked by Hingeline 0.0.9; with 0.1.0: run again, its check does not pass: it is FAILED"
	s.Seen, s.Summary = "", "no signature counts"
	return s
}

// NotSigned is a model that nobody has signed.
func NotSigned() *result.Standing { return &result.Standing{Summary: "nothing is signed"} }
