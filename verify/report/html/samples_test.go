package html

import (
	"bytes"
	"testing"

	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

// reports are the reports that between them show everything.
func reports() map[string]*result.Report {
	passing := sample.Passing()
	passing.Paper = sample.PassingPaper()
	passing.Date = "2026-11-25T20:15:00Z"
	passing.SetUp = "sha256:" + digest("a")
	passing.Asked = "sha256:" + digest("b")
	passing.Prints = []result.Print{{File: passing.Model.File, SHA256: digest("c")}, {File: passing.Scripts[0], SHA256: digest("d")}}
	passing.Standing = sample.Signed()
	failing := sample.Failing()
	failing.Paper = sample.Paper()
	failing.Date = "2026-11-25"
	failing.Standing = sample.SignedBefore()
	failing.Repairs = offered()
	return map[string]*result.Report{
		"passing": passing, "failing": failing, "crowded": sample.Crowded(), "backwards": sample.Backwards(),
		"nothing": sample.Nothing(), "warned": sample.Warned(), "in_part": sample.InPart(), "universal": universal(), "hostile": hostileReport(),
	}
}

func digest(of string) string { return string(bytes.Repeat([]byte(of+"0123456"), 8)) }

func offered() *result.Repairs {
	return &result.Repairs{
		List: []result.Repair{
			{Change: "reverse channel 4 (elevator)", Checks: 6, Claims: 40, Place: result.Place{File: "models/tarn-sampler.yaml", Line: 33, Column: 5, Excerpt: "    reversed: true"}},
			{Change: "put the horn of the elevator on the other side", OnModel: true, Checks: 6, Claims: 40},
		},
		Tried: 90, Open: 2,
		Apart: &result.NextStep{Step: result.WalkStep{Ready: []string{"flap lever landing"}, Move: []string{"pitch stick full back"}},
			Answers: []result.NextAnswer{{See: []string{"elevator UP"}, Suspects: []string{"reverse channel 4 (elevator)"}}, {Suspects: []string{"nothing"}}}},
	}
}

// universal is a report with sentences about every position, of every answer.
func universal() *result.Report {
	r := sample.Passing()
	r.Verdict = result.Failed
	base := r.Checks[4]
	for _, answer := range []result.ProofAnswer{result.Proved, result.Disproved, result.Undecided, result.Empty} {
		c := base
		c.Sentence = "at every stick position the rudder stays clear of its stop, " + string(answer)
		c.Passed = answer == result.Proved
		c.Proof = &result.Proof{Answer: answer, Over: "12 switch states", Limit: 1000, Assumes: []string{"once everything has come to rest"},
			Counter: &result.Counter{Pose: []string{"yaw stick full left"}, Got: "at its stop"}}
		r.Checks = append(r.Checks, c)
	}
	return r
}

// hostileReport has a text that breaks out of most formats wherever a file could put one,
// and records that are not to be trusted.
func hostileReport() *result.Report {
	r := sample.Hostile()
	r.Paper, r.Standing = sample.Paper(), sample.SignedFalsely()
	return r
}

func render(t *testing.T, r *result.Report) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Render(&b, r); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}
