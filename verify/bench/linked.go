package bench

import (
	"fmt"
	"math"

	"example.com/hingeline/mixcore/linkage"
	"example.com/hingeline/verify/fit"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// linkageChanges are the values of a linkage that a fit corrects.
func linkageChanges(was *linkage.Geometry, f *fit.Fitted) (list []result.FitChange) {
	add := func(key string, was, is, within float64, unit string) {
		if trimmed(was) == trimmed(is) {
			return
		}
		c := result.FitChange{Key: key, Is: trimmed(is) + unit}
		if was != 0 {
			c.Was = trimmed(was) + unit
		} else {
			c.Was = "none"
		}
		if within > 0 {
			c.Within = "told to ± " + trimmed(math.Max(2*within, 0.01)) + unit
		}
		list = append(list, c)
	}
	add("arm_mm", was.Arm, f.Geometry.Arm, f.RatioOff*f.Geometry.Horn, " mm")
	add("arm_deg", was.ArmDeg, f.Geometry.ArmDeg, f.ArmOff, "°")
	add("horn_deg", was.HornDeg, f.Geometry.HornDeg, f.Horn.Off, "°")
	add("pushrod_mm", was.Pushrod, f.Geometry.Pushrod, f.PushrodOff, " mm")
	return list
}

// linkageNote is what a fit tells beside its values.
func linkageNote(f *fit.Fitted) string {
	return fmt.Sprintf("The ratio of arm to horn is %s. %s", trimmed(f.Geometry.Arm/f.Geometry.Horn), hornNote(&f.Horn))
}

// Where the horn's lean would be told to so much only, in degrees, it is not told at all.
const notTold = 90

// hornNote is what became of the horn's lean.
func hornNote(h *fit.Horn) string {
	within := math.Round(2 * h.Off)
	switch h.Kept {
	case fit.HornFitted:
		return "How the horn leans was fitted too. It is told from the line between the pivots: an offset_mm that is not as written shows as the same."
	case fit.HornAsWritten:
		return fmt.Sprintf("As written horn_deg fits, to ± %.0f°, and is kept.", math.Max(within, 1))
	case fit.HornOneReading:
		return fmt.Sprintf("horn_deg is kept as written: only what was read at %s of the channel speaks for another. Measure that again.", wording.Percent(h.Output))
	}
	if within >= notTold {
		return "How the horn leans shows as how the arm does: horn_deg is not told by these readings, and is kept as written."
	}
	return fmt.Sprintf("How the horn leans shows as how the arm does: horn_deg would be told to ± %.0f° only, and is kept as written.", within)
}
