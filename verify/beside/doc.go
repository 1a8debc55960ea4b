// Package beside puts a part of one set-up and a part of another side by side into one
// set-up, under the same controls, so that a prover can decide how far apart they are.
//
// Controls of both are matched first: see [Match]. Phases, demands and channels that are
// the same in both are there once, so that what two forms have in common falls out of
// their difference. It decides nothing itself. Start at [Parts].
package beside
