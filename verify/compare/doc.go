// Package compare says what changed between two set-ups: the differences in sentences,
// how far each part is elsewhere at the same position of the controls, and which checks
// come out otherwise.
//
// The largest change of a part is found over every position that both set-ups have, by
// putting the two side by side (package beside) and asking the prover for their widest
// difference; both Plans confirm it at the pose that is told. Everything is at rest: what
// happens on the way is not compared.
//
// It never says which of the two is right. Start at [Compare].
package compare
