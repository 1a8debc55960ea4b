package said

import (
	"fmt"

	"example.com/hingeline/verify/result"
)

// Offer is how what would make a failed check pass is announced, and how it is meant.
func Offer(r *result.Repairs) string {
	switch n := len(r.List); n {
	case 0:
		return fmt.Sprintf("NO SINGLE CHANGE of %s makes every check pass.", Count(r.Tried, "change")+" tried")
	case 1:
		return "ONE CHANGE would make every check pass, if that is what is wrong"
	default:
		return fmt.Sprintf("EACH OF %d CHANGES by itself would make every check pass, if that is what is wrong", n)
	}
}

// RepairOf is a change and where it is made.
func RepairOf(r *result.Repair) string {
	if r.OnModel {
		return r.Change + " (on the model)"
	}
	return r.Change + " (in the set-up)"
}

// WithRepair is what holds with a change; empty where that was not counted.
func WithRepair(r *result.Repair) string {
	if r.Checks == 0 {
		return ""
	}
	return fmt.Sprintf("with it %s and %s", Does(r.Checks, "check", "passes", "pass"), Does(r.Claims, "claim", "holds", "hold"))
}

// NothingByItself comes after all changes that are offered.
const NothingByItself = "Hingeline changes nothing by itself. What is changed on the model must be written into the airframe file, and checked again."

// NotTried says how many changes were not tried; empty for none.
func NotTried(r *result.Repairs) string {
	if r.Open == 0 {
		return ""
	}
	return Does(r.Open, "more change", "was", "were") + " not tried: it would have taken too long."
}

// WhichOfThem announces the step that tells changes apart.
const WhichOfThem = "WHICH OF THEM: after these changes this step looks different; take what the model should do"

// LookAsItStands stands in place of a movement where there is none.
const LookAsItStands = "nothing: look at the model as it stands"

// Does is how many things do something: "1 check passes".
func Does(n int, noun, one, many string) string { return Count(n, noun) + " " + Number(n, one, many) }
