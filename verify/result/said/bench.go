package said

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"example.com/hingeline/verify/result"
)

// Decimal is a number with at most so many decimals, as it is written.
func Decimal(x float64, decimals int) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return "unknown"
	}
	scale := math.Pow10(decimals)
	r := math.Round(x*scale) / scale
	if r == 0 {
		r = 0 // never −0
	}
	return strings.Replace(strconv.FormatFloat(r, 'f', -1, 64), "-", "−", 1)
}

// Kilograms is a mass.
func Kilograms(kg float64) string { return strconv.FormatFloat(kg, 'f', -1, 64) + " kg" }

// Degrees is the angle of one end of a throw, with its tolerance.
func Degrees(e *result.ThrowEnd) string {
	words := Decimal(e.Degrees, 1) + "°"
	if e.Tolerance.Degrees > 0 {
		words += " ± " + Decimal(e.Tolerance.Degrees, 1) + "°"
	}
	return words
}

// Millimetres is how far the trailing edge goes at one end of a throw, with its tolerance;
// empty where the chord is not known.
func Millimetres(e *result.ThrowEnd) string {
	if e.Millimetres == 0 && e.Tolerance.Millimetres == 0 {
		return ""
	}
	words := Decimal(e.Millimetres, 1) + " mm"
	if e.Tolerance.Millimetres > 0 {
		words += " ± " + Decimal(e.Tolerance.Millimetres, 1) + " mm"
	}
	return words
}

// Used is the stretch of a channel that is used, of what it may use.
func Used(t *result.Travel) string {
	return Decimal(t.Low, 0) + " to " + Decimal(t.High, 0) + " µs of " + Decimal(t.Min, 0) + " to " + Decimal(t.Max, 0) + " µs"
}

// Spare is what is left of a channel's travel where least is. A motor's channel is meant
// to use all of it.
func Spare(t *result.Travel, p *result.Paper) (Tone, string) {
	switch {
	case t.Bites != "":
		return Heed, "none: " + t.Bites
	case t.Spare <= 0 && drivesMotor(p, t.Channel):
		return Good, "none: it uses all of its travel, as a motor's should"
	case t.Spare <= 0:
		return Heed, "none: it uses all of its travel"
	}
	return Good, Decimal(t.Spare, 1) + " % before the first limit"
}

// drivesMotor reports whether a channel drives a motor.
func drivesMotor(p *result.Paper, channel string) bool {
	return slices.ContainsFunc(p.Motors, func(m result.Motor) bool { return m.Channel == channel })
}

// leastApart is how far two sides differ at least, in degrees, for a warning: less is not
// seen with a ruler.
const leastApart = 0.5

// Apart is how the difference of a throw from that of the part on the other side is meant:
// what is within the tolerance is only told.
func Apart(t *result.Throw) Tone {
	within := leastApart
	for i := range t.Ends {
		within = max(within, t.Ends[i].Tolerance.Degrees)
	}
	if t.Differs < within {
		return Good
	}
	return Heed
}

// NotSure is what is to be known of a travel that was not searched to the end.
const NotSure = "the search ended before every position was decided: it may use more"

// LostMotor is what the loss of signal does to a motor; empty for a channel that drives none.
func LostMotor(s *result.Signal) (Tone, string) {
	switch {
	case !s.Motor:
		return Good, ""
	case s.Runs:
		return Bad, "THE MOTOR MAY GO ON RUNNING"
	}
	return Good, "the motor stops"
}

// MendFirst stands in place of a box to tick where the model must not fly as it is.
const MendFirst = "mend this before flight"

// LostSteps are how the loss of signal is tried so that it shows something, one after the
// other: with everything at rest a channel that holds looks like one that goes to its middle.
func LostSteps(p *result.Paper) []string {
	first, hold := "Restrain the model.", "Hold the sticks full right and full back"
	see := "Look at every channel below"
	if len(p.Motors) > 0 {
		first += " Propeller off if you can. The motor switch live, only if it is safe to do so."
		hold += ", the throttle half"
		see = "Look at the motor first, then at every channel below"
	}
	if slices.ContainsFunc(p.Shape.Parts, func(o result.Outline) bool { return o.Kind == "flap" }) {
		hold += ", the flaps down"
	}
	return []string{first, hold + ".", "THEN switch the transmitter off.",
		see + ": what holds stays where you held it, what goes somewhere goes there, though you still hold the sticks."}
}

// SignalBack is what must be seen when the signal comes back.
func SignalBack(p *result.Paper) string {
	if len(p.Motors) > 0 {
		return "The signal comes back (throttle at its lowest and the motor switch safe first, then the transmitter on): the motor stays stopped, every surface answers again."
	}
	return "The signal comes back (the transmitter on again): every surface goes where the sticks are, and answers again."
}

// RangeSights are what must be seen at the far end of a range check.
func RangeSights(p *result.Paper) []string {
	if p != nil && len(p.Motors) == 0 {
		return []string{
			"every surface answers at once and the right way",
			"the surfaces stay still while nothing is moved",
			"transmitter off: every surface does what the set-up says",
		}
	}
	return []string{
		"every surface answers at once and the right way, motor stopped",
		"the same with the motor running, the model held",
		"the surfaces stay still while nothing is moved",
		"transmitter off: the motor stops, and every surface does what the set-up says",
	}
}

// DayLines are what is written down about the model and the day.
func DayLines(p *result.Paper) []string {
	lines := []string{"owner and registration", "transmitter, name of the model memory", "receiver"}
	if p == nil || len(p.Motors) > 0 {
		lines = append(lines, "propeller and motor, or fuel")
	}
	return append(lines, "batteries before", "batteries after", "wind", "who moved the sticks", "who watched")
}

// DaySights are what is looked at by hand before all else.
var DaySights = []string{
	"screws of the servos, clevises, hinges and horns looked at",
	"no servo hums or jitters with the sticks still",
}

// Outcomes are what may come of a check. None says that the model is fit to fly: that is for
// who flies it to answer.
var Outcomes = []string{"released: no", "needs another check"}

// ThrowsNote is how throws are measured and what counts.
const ThrowsNote = "From where the part stands with the sticks centred to the furthest that it goes, at the trailing edge, straight across; " +
	"every switch, lever and trim that is not named at rest: elsewhere a throw may be another. Where a measured throw is off by more than the tolerance, the model is not as this check has it; " +
	"where your script says less than this tolerance, your script counts."

// Remark is words and how they are meant.
type Remark struct {
	Tone Tone
	Text string
}

// Stopped is how a motor stands that does not turn.
const Stopped = "stopped"

// MotorSights is what must be seen on a motor, one after the other.
func MotorSights(m *result.Motor) []Remark {
	var all []Remark
	switch {
	case len(m.Breaks) > 0:
		all = append(all, Remark{Bad, "IT RUNS although " + m.StoppedWhen + ", when it is said to be stopped: at " + strings.Join(m.Breaks, ", ")})
	case m.StoppedWhen != "" && m.NotSure:
		all = append(all, Remark{Heed, "stopped, and stays so wherever the throttle is, when " + m.StoppedWhen + "; the search ended before that was decided: it may run"})
	case m.StoppedWhen != "":
		all = append(all, Remark{Good, "stopped, and stays so wherever the throttle is, when " + m.StoppedWhen})
	default:
		all = append(all, Remark{Heed, "no switch is said to stop it: the throttle is all that holds it"})
	}
	switch m.Rest {
	case "":
	case Stopped:
		all = append(all, Remark{Good, "with everything at rest: " + m.Rest})
	default:
		all = append(all, Remark{Bad, "IT RUNS with everything at rest: " + m.Rest})
	}
	if len(m.Full) > 0 {
		all = append(all, Remark{Good, "full power at " + strings.Join(m.Full, ", ")})
	}
	return all
}

// PropellerOff comes before whatever may run a motor.
const PropellerOff = "Propeller off, or the model restrained."
