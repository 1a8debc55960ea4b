// Package sentence writes what a set-up does at one pose of the controls as sentences that
// a script may have.
//
// What it writes is what the set-up does, never what it should do: whoever puts it into a
// script must have looked. It never judges and never reads a script, but to see that what
// it wrote can be read back and holds. Start at [Scenario]; [Setting] and [Stands] are the
// pieces.
package sentence

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/wording"
)

// Setting is where a control stands, as a sentence behind "with" has it: "the rate switch
// high", "the roll stick 30% right", "the flap lever at landing".
func Setting(c *mixcore.Control, at float64) string {
	place := strings.ReplaceAll(wording.Stand(c, at), " %", "%")
	if c.Kind == mixcore.LeverControl {
		place = "at " + place
	}
	return "the " + c.Name + " " + place
}

// Stands says where a part is to within a tolerance, in degrees, or percent of motors and
// extras: "is 7.2° ± 0.8° up". A surface nearer to neutral than still is at neutral, and
// the tolerance of one near it leaves no room for the other way.
func Stands(p *mixcore.Part, at mixcore.PartOutput, still mixcore.Degrees, tolerance float64) string {
	switch {
	case p.Motion == mixcore.Power && p.Motor.Stopped(at.Amount):
		return "is stopped"
	case p.Motion == mixcore.Power:
		return fmt.Sprintf("is at %s%% ± %s%%", decimal(float64(at.Amount)), decimal(tolerance))
	case p.Motion == mixcore.OutIn && at.Amount < phrase.EndReach:
		return "is in"
	case p.Motion == mixcore.OutIn && at.Amount > 100-phrase.EndReach:
		return "is out"
	case p.Motion == mixcore.OutIn:
		return fmt.Sprintf("is %s%% ± %s%% out", decimal(float64(at.Amount)), decimal(tolerance))
	case math.Abs(float64(at.Angle)) < float64(still):
		return "is at neutral"
	}
	way := strings.ToLower(wording.Direction(p.Motion, at.Angle > 0))
	size := math.Abs(float64(at.Angle))
	return fmt.Sprintf("is %s° ± %s° %s", decimal(size), decimal(min(tolerance, Tenths(size/2))), way)
}

// Tenths is a number with one decimal, rounded down.
func Tenths(x float64) float64 { return math.Floor(x*10) / 10 }

func decimal(x float64) string { return strconv.FormatFloat(math.Round(x*10)/10, 'f', -1, 64) }
