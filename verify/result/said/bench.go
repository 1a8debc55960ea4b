package said

import (
	"math"
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

// Spare is what is left of a channel's travel where least is.
func Spare(t *result.Travel) (Tone, string) {
	switch {
	case t.Bites != "":
		return Heed, "none: " + t.Bites
	case t.Spare <= 0:
		return Heed, "none: it uses all of its travel"
	}
	return Good, Decimal(t.Spare, 1) + " % before the first limit"
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

// Remark is words and how they are meant.
type Remark struct {
	Tone Tone
	Text string
}

// MotorSights is what must be seen on a motor, one after the other.
func MotorSights(m *result.Motor) []Remark {
	var all []Remark
	if m.StoppedWhen != "" {
		all = append(all, Remark{Good, "stopped, and stays so wherever the throttle is, when " + m.StoppedWhen})
	} else {
		all = append(all, Remark{Heed, "no switch is said to stop it: the throttle is all that holds it"})
	}
	if m.Rest != "" {
		all = append(all, Remark{Good, "with everything at rest: " + m.Rest})
	}
	if len(m.Full) > 0 {
		all = append(all, Remark{Good, "full power at " + strings.Join(m.Full, ", ")})
	}
	return all
}

// PropellerOff comes before whatever may run a motor.
const PropellerOff = "Propeller off, or the model restrained."
