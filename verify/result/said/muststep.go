package said

import (
	"strings"

	"example.com/hingeline/verify/result"
)

// MayMove stands before how far a part goes of which an eye could not tell which way it
// goes: nobody can tick "a little".
const MayMove = "may move a bit"

// MustDo is what a part that must be seen to do something does in a step at the bench: "UP
// by 15.4° (10 mm)", and where it then stands where that is not the same. With a ruler it is from where to where.
func MustDo(s *result.BenchStep, part *result.BenchPart, ruler bool) string {
	does := part.Way
	if part.Amount != "" {
		does += " by " + part.Amount
		if s.Stands() || strings.HasPrefix(part.Amount, "power") {
			does = part.Way + ", " + part.Amount
		}
	}
	switch {
	case ruler && part.Motion != result.Power && !s.Stands():
		does = part.Way + " from " + part.Exact
	case ruler:
		does = part.Way + ", " + part.Exact
	case part.To != "":
		does += ", to " + part.To
	}
	if !part.Sure {
		does += "; perhaps too little to be seen"
	}
	if part.Takes != "" {
		does += ", and takes " + part.Takes
	}
	return does
}
