package said

import (
	"fmt"
	"strings"

	"example.com/hingeline/verify/result"
)

// StillWrong is said of a set-up that its own script does not pass on, to who walks around a
// model with it.
const StillWrong = "A model that is seen to do all that is written is still wrong: put the set-up right, check it, and walk around anew."

// BenchVerdict is what a walk at the bench has come to.
func BenchVerdict(r *result.Bench) Verdict {
	if r.Fails {
		v := Verdict{Bad, "DO NOT FLY", ": "}
		if r.Script != "" {
			v.Text += ScriptFails(r.Script) + ". "
		}
		v.Text += StillWrong
		if r.Verdict == result.SeenDiffers {
			v.Text += " And NOT AS EXPECTED: " + DifferingParts(r) + "."
		}
		v.Text += fmt.Sprintf(" Seen as it is written: %s%s.", rightOf(r), leftOutOf(r))
		return v
	}
	switch r.Verdict {
	case result.SeenDiffers:
		return Verdict{Bad, "DO NOT FLY", fmt.Sprintf(": NOT AS EXPECTED: %s. %s not as the set-up does it; %s as expected%s.",
			DifferingParts(r), Does(len(stepsThat(r, result.StepDiffers)), "step", "is", "are"), rightOf(r), leftOutOf(r))}
	case result.SeenAsExpected:
		if r.Stands != "" {
			return Verdict{Bad, "DO NOT FLY", fmt.Sprintf(": %s. In this walk %s as expected.", r.Stands, rightOf(r))}
		}
		v := Verdict{Good, "SEEN AS EXPECTED", ": " + rightOf(r) + " as the set-up does it. "}
		if !r.Ruler {
			v.Word += ", as far as can be seen by eye"
			v.Text = ": in " + rightOf(r) + " every part goes the way the set-up has it; " + HowFar(r) + ". "
		}
		still := "Range check and loss-of-signal check, balance"
		if r.SignalWasLost() {
			still = "Range check, balance"
		}
		v.Text += still + ", linkages and batteries are still to be checked before the model flies." + notMoved(r)
		return v
	case result.NotFinished:
		return Verdict{Heed, "NOT FINISHED, which is not a yes", fmt.Sprintf(": %s as expected%s. %s%s", rightOf(r), leftOutOf(r), howOn(r), notMoved(r))}
	}
	return Verdict{Heed, "NOTHING SEEN", ": this says nothing about the model."}
}

// rightOf is in how many steps all was as expected: "12 of 14 steps".
func rightOf(r *result.Bench) string {
	return fmt.Sprintf("%d of %s", len(stepsThat(r, result.StepAsExpected)), Count(len(r.Steps), "step"))
}

// leftOutOf names the steps of which it is not known whether all was as expected.
func leftOutOf(r *result.Bench) (text string) {
	for _, left := range []struct {
		what  string
		steps []int
	}{
		{"by eye and not measured", stepsThat(r, result.StepByEye)},
		{"skipped", stepsThat(r, result.StepSkipped)},
		{"not all seen", stepsThat(r, result.StepUnsure)},
		{"not seen", stepsThat(r, result.StepOpen)},
	} {
		if n := len(left.steps); n > 0 {
			text += fmt.Sprintf(", %d %s (%s %s)", n, left.what, Number(n, "step", "steps"), Runs(left.steps))
		}
	}
	return text
}

// howOn is how a walk that is not finished is brought to an end.
func howOn(r *result.Bench) string {
	if len(stepsThat(r, result.StepOpen)) > 0 || len(stepsThat(r, result.StepAsExpected)) == len(r.Steps) {
		return "--resume goes on where it was left."
	}
	return "That is still to be seen: walk around anew."
}

func notMoved(r *result.Bench) string {
	if len(r.Unmoved) == 0 {
		return ""
	}
	return " Not moved in this walk: " + strings.Join(r.Unmoved, ", ") + "."
}

// stepsThat are the numbers of the steps of which the same became.
func stepsThat(r *result.Bench, became result.BenchState) (numbers []int) {
	for i := range r.Steps {
		if r.Steps[i].State == became {
			numbers = append(numbers, r.Steps[i].Number)
		}
	}
	return numbers
}
