// Package mistake is the catalogue of what people do wrong when they set up and build
// a model: each mistake is one small edit of the set-up, with a sentence that a
// modeller understands and the instruction that takes it back.
//
// It makes mistakes and never judges them. Start at [All]; the catalogue itself is
// [Kinds], a row for each way of going wrong.
//
// A new kind is a new row in catalogue.go: a code, a title, what it means, how often it
// happens, and a lister that calls add for each place in a set-up where it can be
// made. The lister leaves out what would change nothing on paper; whether an edit that
// changes something can be seen is for others to find out. Edits replace conditions and
// curves and never change one (mixcore.Setup.Clone), and keep every control, channel and
// part at its index. Those of the kinds that pairs are made of work on what they find, so
// that another edit may have been made before; others may take away the line that one of
// them is about.
package mistake
