// Package prove decides what holds always or never: at every position of the
// switches and at every place of every stick, lever and trim, not at those that
// somebody thought of trying.
//
// Start at [Claim], which says over which positions something must hold and what,
// then [Prover.Decide], which answers proved (with the smallest margin and where),
// disproved (with a position that the Plan confirms, as near to rest as can be), or
// undecided, where the search reached its limit.
//
// # How it decides
//
// Conditions cut every control's travel into stretches (cells.go) between which
// nothing switches: their ends are neighbouring numbers, so that no position is in
// two of them or in none. In one choice of stretches a channel's sum is a fixed form
// (form.go): terms of one demand each, in whole thousandths, so that 10 % and 20 %
// make exactly 30 %. The rest of the chain never turns back, so that the range of
// the form is the range of the surface. Two surfaces, or one surface at two poses,
// are compared by the difference of their forms, in which what they share cancels,
// and never by the difference of two ranges. What is left to search, a control that
// comes in by two ways, is cut in halves (search.go) until it is decided or the
// limit is reached.
//
// # What an answer rests on
//
// Ranges are rounded outward. Where the Plan itself rounds, its error is bounded and
// added (form.go, tail.go). A counterexample is an answer only after Plan.Eval has
// confirmed it. Comparisons are written so that a number that is none leaves a claim
// undecided. Everything is judged at rest: on the way there, while a phase fades or a
// slowed channel moves, is not covered, and Decision says where that matters.
//
// The package knows the arithmetic only: no names, no words, no files.
package prove
