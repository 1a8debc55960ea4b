package serve

import (
	"fmt"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// outcome is what a walk has come to, where only a little is read: the verdict first.
type outcome struct {
	Tone    string   `json:"tone"` // "good", "heed" or "bad"
	Word    string   `json:"word"`
	Text    string   `json:"text"`
	First   string   `json:"first"`   // where to look first
	Differs []string `json:"differs"` // part by part
}

// scriptFails is said of a set-up that its own script does not pass on.
const scriptFails = "The script does not pass on this set-up: a model that is seen to do all of it is still wrong. Put that right first."

func outcomeOf(r *result.Bench) *outcome {
	o := &outcome{First: said.LookFirst(r)}
	for _, d := range said.Differing(r) {
		o.Differs = append(o.Differs, said.DifferenceOf(&d))
	}
	right := 0
	for i := range r.Steps {
		if r.Steps[i].State == result.StepAsExpected {
			right++
		}
	}
	of := fmt.Sprintf("%d of %s as expected", right, said.Count(len(r.Steps), "step"))
	switch {
	case r.Verdict == result.SeenDiffers:
		o.Tone, o.Word, o.Text = "bad", "DO NOT FLY", fmt.Sprintf("Not as expected: %s. %s.", said.DifferingParts(r), of)
	case r.Fails:
		o.Tone, o.Word, o.Text = "bad", "DO NOT FLY", fmt.Sprintf("Seen: %s.", of)
	case r.Verdict == result.SeenAsExpected && r.Ruler:
		o.Tone, o.Word, o.Text = "good", "SEEN AS EXPECTED", of+"."
	case r.Verdict == result.SeenAsExpected:
		o.Tone, o.Word, o.Text = "good", "SEEN AS EXPECTED, as far as can be seen by eye", fmt.Sprintf("%s; %s.", of, said.HowFar(r))
	case r.Verdict == result.NotFinished:
		o.Tone, o.Word, o.Text = "heed", "NOT FINISHED, which is not a yes", of+"."
	default:
		o.Tone, o.Word, o.Text = "heed", "NOTHING SEEN", "This says nothing about the model."
	}
	if r.Fails {
		o.Text += " " + scriptFails
	}
	return o
}
