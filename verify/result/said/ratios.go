package said

import (
	"fmt"
	"strings"

	"example.com/hingeline/verify/result"
)

// BySize announces surfaces that go wrong by the same part everywhere.
const BySize = "BY THE SAME PART EVERYWHERE, which is no mistake of direction but a size"

// RatioOf is how far a surface goes and what may be behind it.
func RatioOf(r *result.BenchRatio) string {
	text := fmt.Sprintf("goes to %.2f of computed at %s", r.Ratio, Count(r.Places, "place"))
	switch {
	case r.OneWay:
		text += ", " + strings.Join(r.Ways, " and ") + " only; to the other side it goes as far as computed"
	case len(r.Ways) > 1:
		text += ", both ways"
	default:
		text += ", " + strings.Join(r.Ways, "") + "; nothing was measured to the other side that tells"
	}
	return text + ": " + sizeCauses(r)
}

func sizeCauses(r *result.BenchRatio) string {
	switch {
	case r.OneWay && r.Ratio < 1:
		return "an end point or a travel limit in the radio, the differential, an arm that leans, or something in the way"
	case r.OneWay:
		return "an end point or a travel limit in the radio, the differential, or an arm that leans"
	case r.Ratio < 1:
		return "arm too short, horn too long, pushrod in another hole, a rate or travel limit in the radio, or something that gives"
	}
	return "arm too long, horn too short, pushrod in another hole, or more travel in the radio (a rate, end points, a limit)"
}
