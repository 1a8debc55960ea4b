// Package fit corrects one surface of a set-up from measurements: the lengths and angles
// of its linkage, or its measured table, and writes them into the text of an airframe
// file, of which everything else is kept.
//
// Of a linkage three things can be told from how far a surface goes: how far it goes at
// all, which is the ratio of arm to horn; how much further one way than the other, which
// is how the arm leans; and where it rests, which is the pushrod's length. A servo that
// swings more than written shows as a longer arm, and a horn that leans as an arm that
// does: with usual linkages ten degrees of the horn leave at most 0.25° over, as a root mean
// square, once the arm's lean is fitted, and readings to half a degree 0.29°. So the swing
// is kept as it was written, and so is the horn's lean unless the readings tell it apart:
// that takes an arm nearly as long as the horn, or a servo that swings far, and many
// readings. Where readings go with another lean as well as with another swing, and with
// neither as written, nothing is fitted. What they tell of the horn's lean is told from the
// line between the pivots: that line turned is both leans turned.
//
// Of several servos on one surface readings tell their mean only, which is not told apart
// into theirs; a [Correction] is of one servo, measured alone.
//
// The model is mixcore's exact one; the least squares are solved with gonum's matrices.
// How well values are told is worked out for readings that are up to half a degree off,
// and nothing is fitted where that leaves open what the surface does in its travel, where
// the search comes to an edge, or where readings do not go together. The package never
// judges which of the file and the measurements is right. Start at [Linkage], [Table] and
// [Rewrite].
package fit
