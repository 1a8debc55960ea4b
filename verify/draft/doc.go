// Package draft writes a first script for a model: for every axis control, trim,
// lever detent and switch position, what each surface should do.
//
// What should happen comes from the physical sense, never from what the set-up
// computes, else a draft would bless a reversed channel: which way this part
// turns the model (package effect; roll right, nose up for back, nose right: 14
// CFR 23.779), or what its kind is for (a flap lever lowers flaps, a brake lever
// opens brakes, a throttle speeds a motor up). The set-up only tells which parts
// and controls there are, and where a part answers a control at all. So where
// set-up and sense disagree, the draft says what is right, and the check fails.
//
// Where sense cannot tell, the draft has a comment that begins with [YouDecide]
// and says what the set-up does; it asks nothing until the pilot takes the mark
// away. It never says how far a part moves: only the pilot knows that.
//
// Start at [Script] for a model that is there, [Layouts] and [Airframe] for a
// new one. The package never touches a file.
package draft
