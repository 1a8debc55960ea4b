// Package provetest makes set-ups and claims for tests of provers: random ones that
// use every part of the chain, and more of what is hard to decide than any model in a
// hangar has.
//
//	setup := provetest.Setup(t)         // Compile accepts it
//	plan, _ := mixcore.Compile(setup)
//	claim := provetest.Claim(t, plan)   // of any Want, with any Other; near what the plan does
//	poses := provetest.Poses(plan, claim, random)
//	pose, ok := poses.Draw()            // one that the claim speaks of
//	err := provetest.Covers(plan, claim, pose)
//
// [Setup] draws repeated controls (added and scaled by one lever), straight and smooth
// curves, expo both ways, differential and trims, conditions and phases with
// thresholds on every kind of control, linkages up to nearly locked and tables with
// flat pieces, parts with several servos, motors, extras, failsafe values, and pairs
// of channels and parts that mirror each other, exactly or all but. Every setting is a
// whole multiple of 0.001 and inside what an airframe file may say, but for the
// geometry of linkages. [Tiny] is the same with few controls, for what is slow.
//
// [Claim] puts the bounds of a claim where some of the plan's own values are, so that
// some claims hold, some fail, and some hold by nothing. [Poses] prefers the ends of
// spans, thresholds and the numbers next to them, curve points and centres.
//
// It is for tests only.
package provetest
