// Package effect is what moved surfaces do to the aeroplane: which way it
// rolls, pitches and yaws, and, where the wing is measured, how fast it rolls
// and what the servos must hold.
//
// Start at [New] and [Airframe.Change] for directions, [Airframe.Helix],
// [Airframe.AdverseYaw] and [Airframe.Loads] for numbers, [ThinFlap] for the aerofoil theory underneath.
//
// # Axes
//
// Roll is plus for the right wing going down, pitch for the nose going up, yaw
// for the nose going right: the response that 14 CFR 23.779 asks of the controls
// that move right, rearward and right. Places are from the balance point: out to
// starboard, aft and up. A force of F = (aft, out, up) there has
//
//	roll  = up·Fout − out·Fup
//	pitch = up·Faft − aft·Fup
//	yaw   = out·Faft − aft·Fout
//
// A trailing edge that goes down (left, on an upright surface) pushes its
// surface along the surface's own normal: up on a flat one, out to starboard on
// an upright one, and in between on a tilted one. A canard is a surface ahead of
// the balance point, a V-tail a pair of tilted ones, an elevon an aileron behind
// it, a spoiler one that only goes up: no layout is a special case.
//
// # What the numbers are worth
//
// Directions need no measuring: kind and side say where a part is well enough
// for a sign, and every sign is checked against a vortex lattice (testdata/vortex).
// Where the wing is not measured, lengths are held against what is usual to guess a
// scale for all of them (scale.go), never some in one scale and some in another.
// What is small beside a stronger axis is not nothing ([Slight]): only what is
// small by itself is [None]. A model that yaws may roll by its dihedral and sweep,
// which nobody has said: then no roll is never sure, and a roll only where there is
// something for it.
// Sizes between parts are estimates from thin-aerofoil theory and strips, which
// makes a single moment up to 40 % too high (see the tests). In the helix angle
// pb/2V the same error is in both the moment and the damping: for ailerons at the
// tips it is within 5 % of lifting line; for flaps further in, and on wings of
// low aspect ratio, it is low by up to 25 %, so that what flaps add to the roll is
// if anything understated. All of it is linear: past about 20° ([LinearTo]) the air
// leaves a plain flap, and what is said of surfaces so far out, flaps at landing
// above all, is too much. What a wing flap or spoiler does to pitch depends on
// downwash that no strip knows: its pitch is a range, not a number, even where
// the builder has said how far aft it acts.
package effect
