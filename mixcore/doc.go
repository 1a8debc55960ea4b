// Package mixcore is the chain from the pilot's hand to the trailing edge, as
// pure arithmetic: no files, no text to parse, no printing.
//
// Start reading at [Setup] (what one model is), then [Compile], then
// [Plan.Eval]. Every stage of the chain is one file, in the chain's order:
// control.go, demand.go (with curve.go), mix.go, channel.go, servo.go (with
// package linkage and table.go) and part.go.
//
// # The order of the chain
//
// Percent are percent of full travel, angles are degrees, lengths are
// millimetres, pulses are microseconds, times are seconds.
//
//  1. Control. A position p: an axis or a trim −100…+100 (0 at rest), a lever
//     0…100 (rests at its lowest detent, or 0), a switch the index of its
//     position (rests at 0). Plus is right for roll and yaw and back (nose up)
//     for pitch, the sense of 14 CFR 23.779.
//  2. Demand. x = p/100 for an axis or lever; for a switch the value the
//     demand gives that position, divided by 100. Expo k in [0, 1] softens the
//     centre, y = (1−k)·x + k·x³; k in [−1, 0) sharpens it,
//     y = (1−|k|)·x + |k|·sign(x)·(1−(1−|x|)³). Then the curve, if there is
//     one, y = curve(100·y)/100. Then the throw: the plus throw where y ≥ 0,
//     the minus throw where y < 0. Then the trim: the trim's position/100
//     times its range is added. Throw and expo are those of the first rate
//     whose condition holds; the last rate has no condition. With fading
//     conditions the rates blend: from the first rate down, weight w of this
//     rate and 1−w of what follows it.
//  3. Mix. The lines of a channel in order, starting from sum = 0, each with a
//     weight w (1 where it has no condition or the condition holds, 0 where it
//     does not, between while a phase fades):
//     add: sum += w·share·demand/100 (the plus share where the demand ≥ 0, the
//     minus share where it is < 0); fixed: sum += w·value; scale by:
//     sum ×= 1 + w·(demand/100 − 1); replace with: sum += w·(value − sum). A
//     line whose weight is 0 does nothing.
//  4. Channel. v = sum limited to ± the travel limit; then v = −v if reversed;
//     then v ×= plus end point/100 where v ≥ 0, minus end point/100 where
//     v < 0; then v += sub-trim; pulse = 1500 + 5·v limited to the pulse
//     limits. The output is (pulse−1500)/5. On loss of signal a channel with a
//     failsafe value puts that out instead (limited to its pulse limits, and
//     not reversed, scaled or trimmed again: it is what leaves the channel); a
//     channel that holds keeps the output that it had.
//  5. Servo. Arm swing = swing·output/100, plus is aft where plus swings aft
//     and fore where it swings fore, limited to the servo's maximum.
//  6. Linkage. A four-bar (package linkage) from arm swing to hinge angle, or a
//     measured table, straight lines from channel output percent to degrees.
//  7. Part. The mean of its servos' angles, limited at its stops; trailing
//     edge travel 2·chord·sin(|angle|/2). A motor: (pulse − idle)/(full −
//     idle)·100 limited to 0…100. An extra (retract, hook, drag rudder): (output +
//     100)/2, or (100 − output)/2 where plus moves it in, limited to 0…100.
//
// Every limit that bites is recorded beside the value it limited (see [Limit]);
// nothing is clipped in silence.
//
// # Conditions and phases
//
// A condition is true or false at a position, weight 1 or 0. A phase is a
// condition with a name; while it fades its weight runs in a straight line from
// where it was to where it goes. Weights combine as: and is the smaller, or is
// the larger, not is 1 − w.
//
// # Sign convention
//
// Trailing edge down is positive for a horizontal hinge, trailing edge left for
// a vertical one (AIAA R-004-1992 as summarised in the DAVE-ML conventions); a
// wheel that turns the rolling model left is positive. People are never shown the sign: see
// [Direction].
//
// # What it never does
//
// It never reads or prints, never keeps state between calls, never returns NaN
// for a Setup that Compile accepted and an Input that CheckInput accepts, and
// never uses a fused multiply-add: products are rounded by an explicit
// conversion before they are added, so that results are the same on every
// processor.
package mixcore
