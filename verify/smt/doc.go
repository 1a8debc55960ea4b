// Package smt writes a claim of package prove as SMT-LIB 2, so that anyone can have it
// confirmed by a solver that shares nothing with Hingeline.
//
// A file asks for a position at which the claim fails. A solver answers unsat where
// there is none, so that the claim holds, or sat, with a position at which it fails.
//
// Start at [Write]; then follow the chain as mixcore's package comment tells it:
// view.go (controls and conditions), demand.go with curve.go, mix.go, channel.go,
// part.go with fourbar.go, and want.go for what must hold. The package reads the
// Setup, not the forms of the prover: it is a second reading of the same settings.
//
// # Numbers
//
// A setting is the decimal number that its file has, and everything that follows from
// it is exact: controls and sums are real numbers, smooth curves are cubics with
// rational coefficients. Two things are not polynomials and are written with a bound
// of their error. Where one four-bar alone decides whether a part is beyond a place,
// the place is moved back to the output at which the Plan reaches it (limit.go).
// Elsewhere the angle is a number of its own, held near a line of straight pieces and
// between slopes that the four-bar keeps (fourbar.go). Both bounds are on the safe
// side: unsat is a confirmation in any case, while sat may mean a position so near to
// the limit that the bounds cannot tell; the file says how near.
//
// # What it never does
//
// It never runs a solver, and it never leaves out a part of a claim: what it cannot
// write it refuses, with [ErrNotWritten].
package smt
