package bench

import (
	"strings"
	"testing"

	"example.com/hingeline/mixcore/linkage"
	"example.com/hingeline/verify/fit"
)

// What is said of the horn's lean says how well it is told, and why it is kept.
func TestHornNote(t *testing.T) {
	for _, c := range []struct {
		horn fit.Horn
		says string
	}{
		{fit.Horn{Kept: fit.HornFitted, Off: 2}, "an offset_mm that is not as written shows as the same"},
		{fit.Horn{Kept: fit.HornAsWritten, Off: 1.1}, "As written horn_deg fits, to ± 2°, and is kept."},
		{fit.Horn{Kept: fit.HornAsWritten, Off: 0.1}, "to ± 1°"},
		{fit.Horn{Kept: fit.HornOneReading, Off: 1, Output: -100}, "only what was read at -100 % of the channel"},
		{fit.Horn{Kept: fit.HornNotTold, Off: 20.4}, "would be told to ± 41° only, and is kept as written"},
		{fit.Horn{Kept: fit.HornNotTold, Off: 45}, "is not told by these readings, and is kept as written"},
	} {
		if got := hornNote(&c.horn); !strings.Contains(got, c.says) {
			t.Errorf("%+v: %q, wanted %q in it", c.horn, got, c.says)
		}
	}
}

// A horn's lean that was fitted is among the changes, with how well it is told.
func TestFittedLeanOfTheHornIsAChange(t *testing.T) {
	is := linked
	is.HornDeg = 75
	got := linkageChanges(&linked, &fit.Fitted{Geometry: is, Horn: fit.Horn{Off: 1.5}})
	if len(got) != 1 || got[0].Key != "horn_deg" || got[0].Was != "90°" || got[0].Is != "75°" || got[0].Within != "told to ± 3°" {
		t.Errorf("%+v", got)
	}
}

var linked = linkage.Geometry{Arm: 12, Horn: 14, Pivots: 213, ArmDeg: 90, HornDeg: 90}
