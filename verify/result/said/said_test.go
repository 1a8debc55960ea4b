package said_test

import (
	"math"
	"strings"
	"testing"

	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

func TestVerdictIsSaid(t *testing.T) {
	for _, row := range []struct {
		report *result.Report
		tone   said.Tone
		word   string
	}{
		{sample.Passing(), said.Good, "PASSED"},
		{sample.Warned(), said.Heed, "PASSED, BUT 1 WARNING"},
		{sample.InPart(), said.Heed, "PASSED IN PART"},
		{sample.Failing(), said.Bad, "DO NOT FLY"},
		{sample.Backwards(), said.Bad, "DO NOT FLY"},
		{sample.Nothing(), said.Heed, "NOTHING WAS CHECKED"},
		{&result.Report{Verdict: "of another kind"}, said.Heed, "NOTHING WAS CHECKED"},
	} {
		v := said.VerdictOf(row.report)
		if v.Tone != row.tone || v.Word != row.word || !strings.HasPrefix(v.Text, ": ") || v.String() != v.Word+v.Text {
			t.Errorf("got %d %q %q, wanted %d %q", v.Tone, v.Word, v.Text, row.tone, row.word)
		}
		if strings.Contains(v.String(), "safe") {
			t.Errorf("%q promises something", v)
		}
	}
}

func TestDecimalIsSaidOrUnknown(t *testing.T) {
	for x, want := range map[float64]string{
		math.NaN(): "unknown", math.Inf(1): "unknown", math.Inf(-1): "unknown", -0.01: "0", -2.25: "−2.3", 11: "11", 0.05: "0.1",
	} {
		if got := said.Decimal(x, 1); got != want {
			t.Errorf("%v: got %q, wanted %q", x, got, want)
		}
	}
}

func TestSharedPlacesNeedManyFailures(t *testing.T) {
	at := func(line int) result.Place { return result.Place{File: "a.yaml", Line: line, Note: "noted"} }
	failure := func(lines ...int) result.Check {
		var why result.Reason
		for _, l := range lines {
			why.LookAt = append(why.LookAt, at(l))
		}
		return result.Check{Why: []result.Reason{why}}
	}
	r := &result.Report{Checks: []result.Check{failure(1, 2, 2), failure(2, 3)}}
	if got := said.SharedPlaces(r); len(got) != 0 {
		t.Errorf("two failures share %v", got)
	}
	r.Checks = append(r.Checks, failure(3, 2))
	got := said.SharedPlaces(r)
	if len(got) != 2 || got[0].Place.Line != 2 || got[0].Failures != 3 || got[1].Place.Line != 3 || got[1].Failures != 2 || got[0].Place.Note != "" {
		t.Errorf("got %v", got)
	}
}

func TestStopsLeaveOutWhatNobodyCanSet(t *testing.T) {
	check := func(stage result.Stage, pose string, proof *result.Proof) result.Check {
		return result.Check{Stage: stage, Pose: []string{pose}, Proof: proof, Passed: true, Sentence: "the same"}
	}
	r := &result.Report{Checks: []result.Check{
		check(result.PortWing, "a", nil), check(result.PortWing, "b", nil), check(result.PortWing, "a", nil),
		check(result.PortWing, "a", &result.Proof{Answer: result.Proved}), check(result.PortWing, "a", &result.Proof{Answer: result.Disproved}),
		check(result.Tail, "a", nil),
	}}
	all := said.ChecksOf(r)
	stops := all.Stops()
	if len(stops) != 3 || len(stops[0].Checks) != 3 || stops[0].Checks[2] != 4 || stops[2].Stage != result.Tail {
		t.Errorf("got %v", stops)
	}
	if got := all.Everywhere(); len(got) != 1 || got[0] != 3 {
		t.Errorf("got %v", got)
	}
}
