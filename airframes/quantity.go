package airframes

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"example.com/hingeline/airframes/diag"
)

// unit is what a number is counted in.
type unit struct {
	want     string   // in messages: "a percent"
	suffixes []string // that may follow the number; none is always fine
	shown    string   // behind a number in messages
	example  string
	bare     float64 // a number nearer to 0 than this, 0 apart, must carry its unit
}

var (
	inPercent = unit{want: "a percent", suffixes: []string{"%"}, shown: " %", example: "50%"}
	inTravel  = unit{want: "a percent", suffixes: []string{"%"}, shown: " %", example: "50%", bare: 2}
	inDegrees = unit{want: "an angle in degrees", suffixes: []string{"°", "deg"}, shown: "°", example: "12°"}
	inSeconds = unit{want: "a time in seconds", suffixes: []string{"s"}, shown: " s", example: "1.5 s"}
	inPulse   = unit{want: "a pulse in microseconds", suffixes: []string{"µs", "μs", "us"}, shown: " µs", example: "1500 µs"}
	inLength  = unit{want: "a length in millimetres", suffixes: []string{"mm"}, shown: " mm", example: "12"}
	inKilos   = unit{want: "a mass in kilograms", shown: " kg", example: "3.2"}
	inTorque  = unit{want: "a torque in newton centimetres", shown: " N·cm", example: "25"}
	inSpeed   = unit{want: "a speed in metres a second", suffixes: []string{"m/s"}, shown: " m/s", example: "16"}
	inNothing = unit{want: "a plain number", example: "1"}
)

// Problem codes of numbers.
const (
	codeBadNumber = "bad-number"
	codeBadUnit   = "bad-unit"
)

// decimals is how many places a number may have behind the point: settings are
// whole multiples of 0.001, so that sums of them stay exact.
const decimals = 3

// number reads a number in a unit, from low to high, ends included. What is
// what the number is, in messages.
func (r *reader) number(n *yaml.Node, what string, u unit, low, high float64) (float64, bool) {
	if !readable(n) {
		return 0, false
	}
	if n.Kind != yaml.ScalarNode {
		r.wrongKind(n, what, u.want+", such as "+u.example)
		return 0, false
	}
	return r.numberText(r.place(n), strings.TrimSpace(n.Value), what, u, low, high)
}

// numberText is number for text that stands at a place.
func (r *reader) numberText(at diag.Place, text, what string, u unit, low, high float64) (float64, bool) {
	value, suffix, wrong := splitNumber(text)
	if wrong != nil {
		hint := wrong.hint
		if hint == "" {
			hint = "write " + u.want + ", such as " + u.example
		}
		r.fail(at, codeBadNumber, hint, "%s is %s, %s", what, quoted(text), wrong.message)
		return 0, false
	}
	if suffix != "" && !slices.Contains(u.suffixes, suffix) {
		r.fail(at, codeBadUnit, u.converted(value, suffix, low, high), "%s is %s, want %s, such as %s", what, quoted(text), u.want, u.example)
		return 0, false
	}
	if hint := u.tooBare(value, suffix, low, high); hint != "" {
		r.fail(at, codeBadUnit, hint, "%s is %s, but %s moves almost nothing", what, quoted(text), u.show(value))
		return 0, false
	}
	if value < low || value > high {
		r.fail(at, codeOutOfRange, "", "%s is %s, want %s", what, u.show(value), u.between(low, high))
		return 0, false
	}
	return value, true
}

func (u unit) show(value float64) string { return plainNumber(value) + u.shown }

func (u unit) between(low, high float64) string {
	return plainNumber(low) + " to " + u.show(high)
}

func plainNumber(value float64) string { return strconv.FormatFloat(value, 'f', -1, 64) }

// numberFault is why text is no number of an airframe file.
type numberFault struct{ message, hint string }

// splitNumber reads a plain decimal and what follows it. It takes no exponent,
// no leading zero, no other base, no NaN and no infinity.
func splitNumber(text string) (value float64, suffix string, wrong *numberFault) {
	sign, digits := "", text
	if text != "" && (text[0] == '+' || text[0] == '-') {
		sign, digits = text[:1], text[1:]
	}
	whole := leadingDigits(digits)
	rest := digits[len(whole):]
	if whole == "" {
		return 0, "", noNumber(sign, digits)
	}
	fraction, point := "", false
	if strings.HasPrefix(rest, ".") {
		point = true
		fraction = leadingDigits(rest[1:])
		rest = rest[1+len(fraction):]
	}
	if wrong := numberForm(sign, whole, fraction, point, rest); wrong != nil {
		return 0, "", wrong
	}
	value, err := strconv.ParseFloat(sign+whole+"."+fraction+"0", 64)
	if err != nil {
		return 0, "", &numberFault{"which is too large a number", ""}
	}
	if value == 0 {
		value = 0 // never minus zero
	}
	return value, strings.TrimSpace(rest), nil
}

func leadingDigits(text string) string {
	end := 0
	for end < len(text) && text[end] >= '0' && text[end] <= '9' {
		end++
	}
	return text[:end]
}

// noNumber says why text without a leading digit is no number.
func noNumber(sign, digits string) *numberFault {
	lower := strings.ToLower(digits)
	switch {
	case strings.HasPrefix(strings.TrimPrefix(lower, "."), "nan"), strings.HasPrefix(strings.TrimPrefix(lower, "."), "inf"):
		return &numberFault{"which is not a number that anything can be set to", ""}
	case strings.HasPrefix(digits, ".") && leadingDigits(digits[1:]) != "":
		return &numberFault{"which begins with a point", fmt.Sprintf("write %s0%s", sign, digits)}
	case strings.HasPrefix(digits, "−"), strings.HasPrefix(digits, "–"):
		return &numberFault{"which begins with a dash of another kind", "write the minus of the keyboard, -"}
	case sign != "" && strings.TrimLeft(digits, " +-") != digits:
		return &numberFault{"want one sign right before the number", ""}
	}
	return &numberFault{"which is no number", ""}
}

// numberForm says why a number is not in the plain form.
func numberForm(sign, whole, fraction string, point bool, rest string) *numberFault {
	lower := strings.ToLower(rest)
	switch {
	case strings.HasPrefix(rest, "_"):
		return &numberFault{"want the digits without _", ""}
	case whole == "0" && lower != "" && strings.ContainsAny(lower[:1], "xob"):
		return &numberFault{"want a decimal number", ""}
	case strings.HasPrefix(rest, ","):
		return &numberFault{"want a decimal point, not a comma", hintComma(sign + whole + "." + strings.TrimLeft(rest, ","))}
	case strings.HasPrefix(lower, "e") && leadingDigits(strings.TrimLeft(lower[1:], "+-")) != "":
		return &numberFault{"want it written out, without an exponent", ""}
	case leadingDigits(strings.TrimLeft(rest, " '")) != "":
		return &numberFault{"want the digits without a gap", ""}
	case len(whole) > 1 && whole[0] == '0':
		return &numberFault{"which begins with a 0", fmt.Sprintf("write %s%s", sign, strings.TrimLeft(whole[:len(whole)-1], "0")+whole[len(whole)-1:])}
	case point && fraction == "":
		return &numberFault{"want digits behind the point", fmt.Sprintf("write %s%s or %s%s.0", sign, whole, sign, whole)}
	case len(fraction) > decimals:
		return &numberFault{fmt.Sprintf("want at most %d places behind the point", decimals), fmt.Sprintf("write %s%s.%s", sign, whole, fraction[:decimals])}
	case len(whole) > 9:
		return &numberFault{"which is too large a number", ""}
	}
	return nil
}
