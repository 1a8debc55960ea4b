package walk

import (
	"bytes"
	"fmt"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/wording"
)

// Script is the walk-around as a script: a scenario for each step, a sentence for each
// part. It passes on the model as it should be; with what was really seen written in, it
// is what package cause reads. A part of which no sentence is true, because it moves by
// more than nothing and by less than anybody sees, is left out.
func (f *Found) Script() []byte {
	w := &writer{found: f, setup: &f.Table.Model.Setup, vocabulary: phrase.NewVocabulary(f.Table.Model), stood: map[string]bool{}}
	w.heading()
	for i, step := range f.Order {
		w.scenario(i, step)
	}
	return w.text.Bytes()
}

// writer is one script in the making.
type writer struct {
	found      *Found
	setup      *mixcore.Setup
	vocabulary *phrase.Vocabulary
	stood      map[string]bool // poses of which it has been said where everything stands
	text       bytes.Buffer
}

func (w *writer) line(indent int, format string, values ...any) {
	fmt.Fprintln(&w.text, strings.Repeat("  ", indent)+fmt.Sprintf(format, values...))
}

const heading = `# The shortest walk-around: go through it with the model in hand. Take the propeller
# off, or restrain the model, before you switch on.
#
# Bring the controls to where Given says, look, move what When says, and look again.
# Where the model does something else, write here what it really does, and let
# "hingeline faults --seen" with this file say what is wrong. Take out what you did not
# look at.
#
# What you see is %s.
`

func (w *writer) heading() {
	fmt.Fprintf(&w.text, heading, lookWords(w.found.Look))
	w.line(0, "Feature: %s, the shortest walk-around", strings.Join(strings.Fields(w.found.Table.Model.Name), " "))
}

func (w *writer) scenario(i, step int) {
	st := &w.found.Table.Steps[step]
	said := strings.Join(moved(w.setup, st), ", ")
	if said == "" {
		said = "as it stands"
	}
	w.line(0, "")
	w.line(1, "Scenario: Step %d, %s", i+1, said)
	keyword := "Given"
	for _, c := range poses.FromRest(w.setup, &st.From) {
		if at := st.From.Position[c]; at != w.setup.Controls[c].Rest() {
			w.line(2, "%s %s", keyword, w.setting(c, at))
			keyword = "And"
		}
	}
	if keyword == "Given" {
		w.line(2, "Given everything rests")
	}
	before := phrase.RestPose(w.setup)
	copy(before.Position, st.From.Position)
	w.outcomes(w.standing(step, before))
	if st.Stands() {
		return
	}
	keyword = "When"
	now := phrase.Pose{Position: st.To.Position}
	for _, c := range poses.HandOrder(w.setup, &st.From, &st.To) {
		if at := st.To.Position[c]; at != st.From.Position[c] {
			w.line(2, "%s %s", keyword, w.setting(c, at))
			keyword = "And"
		}
	}
	if st.To.SignalLost {
		w.line(2, "When the signal is lost")
		now = before.Take(w.setup, &phrase.Group{Signal: phrase.SignalLost})
	}
	w.outcomes(w.moving(step, phrase.Situation{Before: before, Now: now, Moved: true}))
}

func (w *writer) outcomes(sentences []string) {
	keyword := "Then"
	for _, s := range sentences {
		w.line(2, "%s %s", keyword, s)
		keyword = "And"
	}
}

// setting is "the flap lever is at landing".
func (w *writer) setting(control int, at float64) string {
	c := &w.setup.Controls[control]
	verb := "is"
	if c.Kind == mixcore.LeverControl {
		verb = "is at"
	}
	return fmt.Sprintf("the %s %s %s", c.Name, verb, strings.ReplaceAll(wording.Stand(c, at), " %", "%"))
}

// standing is where everything stands before a step: of the step in which nothing is
// moved; with a ruler; and of motors, which may have to be stopped. It is said once of
// the same pose.
func (w *writer) standing(step int, pose phrase.Pose) (sentences []string) {
	st := &w.found.Table.Steps[step]
	key := fmt.Sprint(pose.Position)
	said := w.stood[key]
	w.stood[key] = true
	out := w.found.Table.Model.Plan.NewOutput()
	w.found.Table.Model.Plan.Eval(&st.From, out)
	for _, i := range script.PartOrder(w.setup) {
		p := &w.setup.Parts[i]
		if said || !st.Stands() && !w.found.Look.Ruler && p.Motion != mixcore.Power {
			continue
		}
		at := phrase.Situation{Now: pose}
		place := out.Parts[i].Place()
		verbs := w.stands(p, place)
		if way := w.found.Look.Way(p, sight.Move{To: place}); st.Stands() && !w.found.Look.Ruler && p.Motion.Hinged() &&
			(way == sight.Plus || way == sight.Minus) && w.lessIsSeen(i, step, place) {
			verbs = []string{w.standsFar(p, place)}
		}
		sentences = append(sentences, w.true(at, p, verbs)...)
	}
	return sentences
}

// moving is what everything does in a step.
func (w *writer) moving(step int, at phrase.Situation) (sentences []string) {
	t := w.found.Table
	for _, i := range script.PartOrder(w.setup) {
		p := &w.setup.Parts[i]
		sentences = append(sentences, w.true(at, p, w.moves(i, step))...)
		if w.mayStop(i, step) {
			sentences = append(sentences, w.true(at, p, []string{"runs"})...)
		}
		if w.found.Look.Ruler {
			sentences = append(sentences, w.true(at, p, w.stands(p, t.Move(table.None, step, i).To))...)
		}
	}
	return append(sentences, w.onTheWay(step, at)...)
}

// true are the first of the sentences about a part that holds, if one does.
func (w *writer) true(at phrase.Situation, p *mixcore.Part, verbs []string) []string {
	for _, verb := range verbs {
		prefix, rest, timed := strings.Cut(verb, timeMark)
		sentence := "the " + p.Name + " " + verb
		if timed {
			sentence = prefix + "the " + p.Name + " " + rest
		}
		meaning, problem := w.vocabulary.Parse(phrase.Then, sentence)
		if problem != nil || len(meaning.Outcomes) != 1 || len(meaning.Outcomes[0].Subject.Parts) != 1 {
			continue
		}
		if verdicts := w.vocabulary.Judge(&meaning.Outcomes[0], at); len(verdicts) == 1 && verdicts[0].Passed {
			return []string{sentence}
		}
	}
	return nil
}
