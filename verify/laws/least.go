package laws

// The least that counts: the same as for the sentences of a script.
const (
	// clearly is the least difference between two movements that makes one of them
	// more, in degrees or percent.
	clearly = 0.1
	// stopReach is how near its stop a part counts as being at it, in degrees.
	stopReach = 0.05
	// rounding is what arithmetic in binary may add to or take from a value that
	// stands exactly at a bound.
	rounding = 1e-6
)

// still is the least change that counts as a movement of a part, in degrees or
// percent.
func (mk *maker) still(part int) float64 { return mk.m.StillOf(&mk.s.Parts[part]) }

// beyond is further than any part, channel or arm can go, in degrees or percent: an
// end of a range that is never reached. Provers take it more easily than infinity.
const beyond = 1000

// unlessBeyond is an end of a range, infinite or not, as a number.
func unlessBeyond(x float64) float64 { return min(max(x, -beyond), beyond) }

// isFree is true for a range without an end that can be reached.
func isFree(low, high float64) bool { return low <= -beyond && high >= beyond }
