package said

import (
	"slices"
	"testing"

	"example.com/hingeline/verify/result"
)

func TestStopsGatherChecksOfOneStageAndPose(t *testing.T) {
	right, left := []string{"roll stick full right"}, []string{"roll stick full left"}
	proved := &result.Proof{Answer: result.Proved}
	r := &result.Report{Checks: []result.Check{
		{Stage: result.PortWing, Pose: right, Sentence: "a", Passed: true},
		{Stage: result.PortWing, Pose: left, Sentence: "b", Passed: true},
		{Stage: result.PortWing, Pose: right, Sentence: "a", Passed: true, Subject: "channel 3 (port flap)"},
		{Stage: result.PortWing, Pose: right, Sentence: "a"},
		{Stage: result.PortWing, Sentence: "always", Proof: proved, Passed: true},
		{Stage: result.Tail, Pose: right, Sentence: "c", Proof: &result.Proof{Answer: result.Disproved}},
	}}
	all := ChecksOf(r)
	var got [][]int
	for _, s := range all.Stops() {
		got = append(got, s.Checks)
	}
	if want := [][]int{{0, 2, 3}, {1}, {5}}; !slices.EqualFunc(got, want, slices.Equal) {
		t.Errorf("stops of %v, wanted %v", got, want)
	}
	if got := all.Everywhere(); !slices.Equal(got, []int{4}) {
		t.Errorf("checks of every position are %v, wanted 4", got)
	}
	got = nil
	for _, s := range all.Sights([]int{0, 2, 3}) {
		got = append(got, s.Checks)
	}
	if want := [][]int{{0, 2}, {3}}; !slices.EqualFunc(got, want, slices.Equal) {
		t.Errorf("sights of %v, wanted %v: what failed stands alone", got, want)
	}
	if !OfChannel(&r.Checks[2]) || OfChannel(&r.Checks[0]) {
		t.Error("a channel is taken for a part")
	}
}

func TestStandingOfNeverCallsGoodWhatDoesNotStand(t *testing.T) {
	signed := result.Signature{Name: "Ada", Role: "builder", Genuine: true, Current: true, Counts: true}
	old := signed
	old.Current = false
	for _, c := range []struct {
		of   result.Standing
		tone Tone
		word string
	}{
		{result.Standing{}, Heed, "NOT SIGNED"},
		{result.Standing{Troubles: []string{"a record is gone"}}, Bad, "NOT TO BE TRUSTED"},
		{result.Standing{Signatures: []result.Signature{signed}, Troubles: []string{"a"}}, Bad, "NOT TO BE TRUSTED"},
		{result.Standing{Signatures: []result.Signature{signed}}, Good, "SIGNED AND CURRENT"},
		{result.Standing{Signatures: []result.Signature{old}, Changes: []result.Change{{Text: "a"}}}, Bad, "OUT OF DATE"},
		{result.Standing{Signatures: []result.Signature{old}}, Heed, "NO SIGNATURE COUNTS"},
	} {
		if tone, word := StandingOf(&c.of); tone != c.tone || word != c.word {
			t.Errorf("%+v is %q (%d), wanted %q (%d)", c.of, word, tone, c.word, c.tone)
		}
	}
}
