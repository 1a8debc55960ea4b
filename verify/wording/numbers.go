// Package wording is how values are said to people, everywhere alike: in the
// terminal, on the printed sheet, in findings and in the cause chain.
//
// Numbers are rounded for reading, never for judging: angles to 0.1°, percent
// to 0.1 %, millimetres to whole ones (to 0.1 mm under 10 mm), pulses to whole
// microseconds. A direction is always a word (UP, DOWN, LEFT, RIGHT, OUT, IN),
// never a sign, and nothing ever reads "-0".
//
// It never computes what the model does and never decides whether a check
// passed. Start at [Position] and [Pose].
package wording

import (
	"cmp"
	"math"
	"strconv"

	"example.com/hingeline/mixcore"
)

// NeutralBelow is the angle under which a surface is said to be at neutral: it
// would be shown as 0°.
const NeutralBelow mixcore.Degrees = 0.05

// wholeFrom is the length from which millimetres are said without decimals.
const wholeFrom mixcore.Millimetres = 10

// settingDecimals is how fine a set value is said: settings and positions are
// whole multiples of 0.001.
const settingDecimals = 3

// Percent says a percent to 0.1 %, such as "49.5 %" or "-27.5 %".
func Percent(p mixcore.Percent) string { return number(float64(p), 1) + " %" }

// Setpoint says a percent that somebody set or chose, as it was set: to
// 0.001 %.
func Setpoint(p mixcore.Percent) string { return number(float64(p), settingDecimals) + " %" }

// SetAngle says the size of an angle that somebody set or measured, as it was
// written: to 0.001°.
func SetAngle(d mixcore.Degrees) string { return number(math.Abs(float64(d)), settingDecimals) + "°" }

// SetLength says a length that somebody measured, as it was written: to
// 0.001 mm.
func SetLength(l mixcore.Millimetres) string { return number(float64(l), settingDecimals) + " mm" }

// Angle says how large an angle is to 0.1°, without its direction.
func Angle(d mixcore.Degrees) string { return number(math.Abs(float64(d)), 1) + "°" }

// Length says how long something is, to whole millimetres or, under 10 mm, to
// 0.1 mm.
func Length(l mixcore.Millimetres) string {
	size := math.Abs(float64(l))
	tenths := number(size, 1)
	if size >= float64(wholeFrom) || tenths == "10" {
		return number(size, 0) + " mm"
	}
	return tenths + " mm"
}

// Pulse says a pulse to whole microseconds.
func Pulse(p mixcore.Microseconds) string { return number(float64(p), 0) + " µs" }

// Time says a time to 0.001 s.
func Time(t mixcore.Seconds) string { return number(float64(t), settingDecimals) + " s" }

// AngleBeside is Angle with as many decimals more (at most three in all) as are
// needed to tell on which side it is of the bound it is read against: 7.96° beside a
// wanted 8° is "7.96°", not "8°".
func AngleBeside(d, bound mixcore.Degrees) string {
	return beside(math.Abs(float64(d)), math.Abs(float64(bound)), 1) + "°"
}

// PercentBeside is Percent in the manner of AngleBeside.
func PercentBeside(p, bound mixcore.Percent) string {
	return beside(float64(p), float64(bound), 1) + " %"
}

// LengthBeside is Length in the manner of AngleBeside.
func LengthBeside(l, bound mixcore.Millimetres) string {
	decimals := 1
	if math.Abs(float64(l)) >= float64(wholeFrom) {
		decimals = 0
	}
	return beside(math.Abs(float64(l)), math.Abs(float64(bound)), decimals) + " mm"
}

// PulseBeside is Pulse in the manner of AngleBeside.
func PulseBeside(p, bound mixcore.Microseconds) string {
	return beside(float64(p), float64(bound), 0) + " µs"
}

func beside(x, bound float64, decimals int) string {
	side := cmp.Compare(x, bound)
	for decimals < settingDecimals && side != 0 && cmp.Compare(rounded(x, decimals), rounded(bound, settingDecimals)) != side {
		decimals++
	}
	return number(x, decimals)
}

// number rounds halves away from zero and drops what a reader does not need:
// trailing zeros and the sign of a zero.
func number(x float64, decimals int) string {
	return strconv.FormatFloat(rounded(x, decimals), 'f', -1, 64)
}

// noise is how fine a value is taken for exact, as a part of the last decimal shown:
// 38.75 may have been computed as 38.7499999999999, and reads as 38.8.
const noise = 1e6

func rounded(x float64, decimals int) float64 {
	scale := math.Pow10(decimals)
	exact := math.Round(x*scale*noise) / noise
	if r := math.Round(exact) / scale; r != 0 {
		return r
	}
	return 0
}
