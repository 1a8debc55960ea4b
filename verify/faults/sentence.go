package faults

import (
	"cmp"
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/sentence"
	"example.com/hingeline/verify/wording"
)

// addSentences finds for each mistake that slips through a sentence that catches it, the
// worst mistake first. One that an earlier sentence catches needs none of its own.
func (j *judge) addSentences(list []result.Fault) {
	slices.SortStableFunc(j.missed, func(a, b missed) int { return cmp.Compare(list[a.fault].Rank, list[b.fault].Rank) })
	for i := range j.missed {
		f := &list[j.missed[i].fault]
		if f.Sentence != "" {
			continue
		}
		sentence, trial := j.catching(&j.missed[i])
		if trial == nil {
			continue
		}
		f.Sentence = sentence
		for k := i + 1; k < len(j.missed); k++ {
			if other := &list[j.missed[k].fault]; other.Sentence == "" && j.catches(trial, &j.missed[k]) {
				other.Sentence = sentence
			}
		}
	}
}

// catching is the first sentence that catches a mistake; the trial is nil where none does.
func (j *judge) catching(m *missed) (sentence string, trial *script.Trial) {
	for _, sentence := range j.sentences(m) {
		if trial := j.tryOut(sentence); trial != nil && j.catches(trial, m) {
			return sentence, trial
		}
	}
	return "", nil
}

// tryOut reads a sentence by itself; nil if it cannot be read or does not hold on the
// model.
func (j *judge) tryOut(sentence string) *script.Trial {
	text := "Feature: One sentence\n\n  Scenario: It\n    " + sentence + "\n"
	trial, _ := script.NewTrial(j.m, []script.File{{Name: "added.feature", Text: []byte(text)}})
	if trial == nil || len(trial.Failing(j.m, 1)) > 0 {
		return nil
	}
	return trial
}

func (j *judge) catches(trial *script.Trial, m *missed) (caught bool) {
	trial.Try(m.variant, m.touched, func(_ int, h phrase.Holding) bool {
		caught = h == phrase.Fails
		return !caught
	})
	return caught
}

// sentences say where the part that a mistake shows at should be, the plainest first: "*
// with the rate switch high and the roll stick half right, the port aileron is 7.2° ± 0.8°
// up"; on the way, where it matters what was moved last, "* with the camber knob at 100%,
// when the task switch climb, the port flap is 1.8° ± 0.9° up after 0.1 s".
func (j *judge) sentences(m *missed) []string {
	shows := &m.shows
	_, right := outputs(j.m.Plan, shows)
	p := &j.m.Setup.Parts[shows.part]
	stands := "the " + p.Name + " " + sentence.Stands(p, right.Parts[shows.part], j.m.Still, j.tolerance(m))
	if shows.after > 0 {
		stands += " after " + wording.Time(shows.after)
	}
	settings := j.settings(&shows.step.To, func(i int) bool { return true })
	if len(settings) == 0 {
		return []string{"* " + stands}
	}
	list := []string{"* with " + wording.Listed(settings) + ", " + stands}
	if shows.after > 0 {
		moves := func(i int) bool { return shows.step.To.Position[i] != shows.step.From.Position[i] }
		moved := "when " + wording.Listed(j.settings(&shows.step.To, moves)) + ", " + stands
		if before := j.settings(&shows.step.From, func(int) bool { return true }); len(before) > 0 {
			moved = "with " + wording.Listed(before) + ", " + moved
		}
		list = append(list, "* "+moved)
	}
	return list
}

// settings are where some of the controls stand that do not rest, and that the signal is
// lost.
func (j *judge) settings(at *mixcore.Input, of func(control int) bool) (list []string) {
	for i, position := range at.Position {
		if c := &j.m.Setup.Controls[i]; position != c.Rest() && of(i) {
			list = append(list, sentence.Setting(c, position))
		}
	}
	if at.SignalLost {
		list = append(list, "the signal lost")
	}
	return list
}

// tolerance is a number that a sentence allows either way: half of the difference that it
// must tell, and no more than a builder can set a surface to.
func (j *judge) tolerance(m *missed) float64 {
	_, right := outputs(j.m.Plan, &m.shows)
	_, wrong := outputs(m.variant.Plan, &m.shows)
	apart := math.Abs(right.Parts[m.shows.part].Place() - wrong.Parts[m.shows.part].Place())
	most := 5.0 // percent of a motor or extra
	if j.m.Setup.Parts[m.shows.part].Motion.Hinged() {
		most = 1
	}
	return max(min(most, sentence.Tenths(apart/2)), 0.1)
}
