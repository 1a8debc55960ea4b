package serve

import (
	"strings"
	"unicode"
	"unicode/utf8"

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
const scriptFails = said.StillWrong

func outcomeOf(r *result.Bench) *outcome {
	v := said.BenchVerdict(r)
	text := strings.TrimPrefix(v.Text, ": ")
	first, size := utf8.DecodeRuneInString(text)
	o := &outcome{Tone: tones[v.Tone], Word: v.Word, Text: string(unicode.ToUpper(first)) + text[size:], First: said.LookFirst(r)}
	for _, d := range said.Differing(r) {
		o.Differs = append(o.Differs, said.DifferenceOf(&d))
	}
	return o
}
