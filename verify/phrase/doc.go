// Package phrase is the sentences of a script: which there are, what each
// means for one model, and whether a position or movement of the controls
// makes it true.
//
// Start at [NewVocabulary], which knows what the model's parts, controls and
// channels may be called, then [Vocabulary.Parse], which turns the text of one
// step into a [Meaning] or a [Problem] with its place in the text, then
// [Judge], which holds one [Outcome] against a [Situation]. [Sentences] lists
// every form with an example that works.
//
// A sentence is read left to right by a hand-written grammar: setting.go and
// value.go read where a control stands, outcome.go, position.go and compare.go
// what a part does, subject.go which part, amount.go how far. turn.go, share.go,
// adverse.go and torque.go read what is asked of the model and of its servos, by
// package effect. oneline.go reads a scenario in one line, toothless.go refuses
// amounts that nothing could miss, way.go judges what must hold at every moment,
// advice.go finds the sentence that other words were meant for.
//
// An outcome may be about every position of some controls ([Every]): every_prefix.go,
// every_stretch.go and every_when.go read over which positions, every_verb.go and
// rising.go what must hold there, every_asks.go refuses what cannot be asked so,
// every_claim.go says what package prove has to decide, every_judge.go and
// every_words.go what was decided. It is never judged by trying positions.
//
// Angles are degrees, lengths millimetres along the trailing
// edge, pulses microseconds, times seconds, speeds metres a second, all else
// percent. [Asked] is an outcome with all that is around it, for a look at the
// script itself.
//
// The package never reads a file, knows nothing of Gherkin, and never takes a
// sentence that it does not understand for one that holds.
package phrase
