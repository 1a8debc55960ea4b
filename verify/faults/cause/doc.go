// Package cause finds what explains what was seen on the model: which single mistakes of
// the catalogue would look so, what to look at next to tell them apart, and which single
// changes put it right.
//
// It offers and never applies. An explanation is only as good as the catalogue: a model
// with two mistakes at once may look like neither. Start at [Explain], [NewSession] and
// [Repairs].
package cause
