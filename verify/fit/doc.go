// Package fit corrects one surface of a set-up from measurements: the lengths and angles
// of its linkage, or its measured table, and writes them into the text of an airframe
// file, of which everything else is kept.
//
// Of a linkage three things can be told from how far a surface goes: how far it goes at
// all, which is the ratio of arm to horn; how much further one way than the other, which
// is how the arm leans; and where it rests, which is the pushrod's length. How the horn
// leans shows in the same way as how the arm does: measurements to half a degree do not
// tell the two apart, so the horn's angle is kept as it was written.
//
// The model is mixcore's exact one; the least squares are solved with gonum's
// matrices. It never judges which
// of the file and the measurements is right. Start at [Linkage], [Table] and [Rewrite].
package fit
