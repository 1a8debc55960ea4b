package said_test

import (
	"strings"
	"testing"

	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// walkOf is a walk of one step for each letter: as expected, by eye, differs, skipped, unsure
// or open.
func walkOf(letters string, verdict result.BenchVerdict) *result.Bench {
	states := map[rune]result.BenchState{'a': result.StepAsExpected, 'e': result.StepByEye, 'd': result.StepDiffers,
		's': result.StepSkipped, 'u': result.StepUnsure, 'o': result.StepOpen}
	r := &result.Bench{Verdict: verdict, Ruler: true}
	for i, letter := range letters {
		s := result.BenchStep{Number: i + 1, State: states[letter]}
		if letter == 'd' {
			s.Parts = []result.BenchPart{{Name: "rudder", Differs: true, How: "the other way"}}
		}
		r.Steps = append(r.Steps, s)
	}
	return r
}

// Each step that was skipped, not seen or not reached is named, so that the last words can be
// acted on by themselves; nothing but all as expected is good.
func TestBenchVerdictNamesEachStepThatIsLeft(t *testing.T) {
	for _, c := range []struct {
		walk string
		of   result.BenchVerdict
		tone said.Tone
		word string
		says []string
	}{
		{"aaa", result.SeenAsExpected, said.Good, "SEEN AS EXPECTED", []string{"3 of 3 steps", "still to be checked before the model flies"}},
		{"aso", result.NotFinished, said.Heed, "NOT FINISHED, which is not a yes", []string{"1 of 3 steps", "1 skipped (step 2)", "1 not seen (step 3)", "--resume"}},
		{"asasooooo", result.NotFinished, said.Heed, "NOT FINISHED, which is not a yes", []string{"2 skipped (steps 2, 4)", "5 not seen (steps 5 to 9)"}},
		{"aao", result.NotFinished, said.Heed, "NOT FINISHED, which is not a yes", []string{"1 not seen (step 3)", "--resume"}}, // b at the end, and p
		{"aaa", result.NotFinished, said.Heed, "NOT FINISHED, which is not a yes", []string{"3 of 3 steps as expected.", "--resume"}},
		{"auss", result.NotFinished, said.Heed, "NOT FINISHED, which is not a yes", []string{"2 skipped (steps 3, 4)", "1 not all seen (step 2)", "walk around anew"}},
		{"aee", result.NotFinished, said.Heed, "NOT FINISHED, which is not a yes", []string{"2 by eye and not measured (steps 2, 3)", "walk around anew"}},
		{"dads", result.SeenDiffers, said.Bad, "DO NOT FLY", []string{"NOT AS EXPECTED: rudder. 2 steps are not", "1 skipped (step 4)"}},
		{"", result.NothingSeen, said.Heed, "NOTHING SEEN", []string{"nothing about the model"}},
	} {
		v := said.BenchVerdict(walkOf(c.walk, c.of))
		if v.Tone != c.tone || v.Word != c.word {
			t.Errorf("%s: got %d %q, wanted %d %q", c.walk, v.Tone, v.Word, c.tone, c.word)
		}
		for _, says := range c.says {
			if !strings.Contains(v.Text, says) {
				t.Errorf("%s: %q does not say %q", c.walk, v.Text, says)
			}
		}
		if resumes := strings.Contains(v.Text, "--resume"); resumes && strings.Contains(v.Text, "anew") {
			t.Errorf("%s: %q says two things to do", c.walk, v.Text)
		}
		r := walkOf(c.walk, c.of)
		r.Fails, r.Script = true, "it fails 2 of 14 checks"
		if v := said.BenchVerdict(r); v.Tone != said.Bad || v.Word != "DO NOT FLY" || !strings.Contains(v.Text, "the script fails 2 of 14 checks") || !strings.Contains(v.Text, said.StillWrong) {
			t.Errorf("%s, of a set-up that is wrong: %+v", c.walk, v)
		}
	}
	stands := walkOf("aaa", result.SeenAsExpected)
	stands.Stands = "record 0001 measured it"
	if v := said.BenchVerdict(stands); v.Tone != said.Bad || v.Word != "DO NOT FLY" || v.Text != ": record 0001 measured it. In this walk 3 of 3 steps as expected." {
		t.Errorf("measured before: %+v", v)
	}
	eye := walkOf("aaa", result.SeenAsExpected)
	eye.Ruler, eye.Unmoved = false, []string{"rate switch"}
	if v := said.BenchVerdict(eye); v.Tone != said.Good || v.Word != "SEEN AS EXPECTED, as far as can be seen by eye" || !strings.Contains(v.Text, "how far was not measured") || !strings.Contains(v.Text, "Not moved in this walk: rate switch.") {
		t.Errorf("by eye: %+v", v)
	}
}

// A check that passes is no pass where the model was seen otherwise and nobody signed that.
func TestNoCheckPassesOverAModelThatDiffers(t *testing.T) {
	for name, r := range map[string]*result.Report{"passing": sample.Passing(), "warned": sample.Warned(), "in part": sample.InPart()} {
		r.Standing = sample.SignedThenSeen()
		if v := said.VerdictOf(r); v.Tone != said.Bad || v.Word != "DO NOT FLY" || !strings.Contains(v.Text, "passed, but at the bench the model was not as expected") {
			t.Errorf("%s: %+v", name, v)
		}
		if s := said.StatementOf(r); s.Tone != said.Bad || strings.Contains(s.Title, "check failed") {
			t.Errorf("%s: %+v", name, s)
		}
		r.Standing = sample.Signed()
		if v := said.VerdictOf(r); v.Tone == said.Bad {
			t.Errorf("%s, and signed: %+v", name, v)
		}
	}
	r := sample.Failing()
	r.Standing = sample.SignedThenSeen()
	if v := said.VerdictOf(r); !strings.Contains(v.Text, "failed") {
		t.Errorf("failing: %+v", v)
	}
}
