// Package sense looks at the script itself: a script that is wrong passes a
// reversed model.
//
// Start at [Look]. It has two ways of looking.
//
// By the aeroplane: what a stick asks is known (right stick rolls right, back
// pitches up, right rudder yaws right, more flap lever lowers the flaps, more
// throttle runs the motor faster: 14 CFR 23.779), and package effect knows which
// way a part that moves turns the model. A sentence that wants a part to move
// against the stick is a suspicious expectation, whether the set-up happens to
// satisfy it or not: the set-up is never asked which way a part should go.
// Claims are made only where there is nothing to argue about: for one axis at a
// time, and for kinds of part that are there for it. A flap that follows the
// pitch stick or a rudder that follows roll is the pilot's business.
//
// By logic: sentences that contradict each other or that nothing could ever
// fail, and parts, controls, trims and rates that no sentence tries.
//
// The package never reads a file, never judges the set-up and knows nothing of
// Gherkin.
package sense
