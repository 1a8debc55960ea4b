package mixcore

// Percent is percent of full travel: −100…+100 for an axis, a trim, a demand or
// a channel, 0…100 for a lever, a motor or an extra; shares and end points may
// be larger. Settings are whole multiples of 0.001 %.
type Percent float64

// Degrees is an angle. For a part's angle see the sign convention in the
// package comment.
type Degrees float64

// Millimetres is a length, never negative unless said.
type Millimetres float64

// Microseconds is the length of a servo pulse; 1500 is the centre and 1000 and
// 2000 are minus and plus 100 % (MAVLink common.xml, RC_CHANNELS, has the same
// ends; the centre is common practice).
type Microseconds float64

// Seconds is a time, never negative.
type Seconds float64

// Sides is a setting that may differ either side of zero. Plus counts where the
// value it applies to is zero or more.
type Sides struct{ Plus, Minus Percent }

// Both is the same setting on both sides.
func Both(p Percent) Sides { return Sides{Plus: p, Minus: p} }
