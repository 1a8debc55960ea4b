// Package laws is what a modeller expects of every model, whatever it is: that
// each stick turns it the right way, that nothing runs out of travel or against a
// stop, that left and right agree, that low rates are low, that a safe motor is
// stopped. Nobody needs to write a script for these; they are decided for every
// position of the controls.
//
// A law (laws.go) makes claims (claim.go) about the model at hand, each a sentence
// and one or more things that package prove decides. Start at [Prove]; each law is
// a file of its own, and answer.go says in words what was decided.
//
// A law asks nothing that a sound model may have good reason not to do: what it
// leaves out is said in its meaning, or where it has nothing to ask. Which claims
// there are may be found out by trying poses; whether they hold, never.
//
// It never changes a model, never reads a file and never prints.
package laws
