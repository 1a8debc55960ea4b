package said

import "example.com/hingeline/verify/result"

// Measured is what was read of a part at the bench: "measured 9.7° UP before the movement,
// 1.9° short".
func Measured(r *result.BenchReading) string {
	text := "measured " + r.Says
	if r.Before {
		text += " before the movement"
	}
	if r.Off != "" {
		text += ", " + r.Off
	}
	return text
}
