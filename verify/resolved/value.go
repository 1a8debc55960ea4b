package resolved

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/wording"
)

// none is what is said of what is not there or not limited.
const none = "none"

// exact is a number in the shortest form that gives it back; zero has no sign.
func exact(x float64) string {
	switch {
	case x == 0:
		return "0"
	case math.IsInf(x, 1):
		return none
	}
	return strconv.FormatFloat(x, 'g', -1, 64)
}

// number is a setting with a unit, " %" or " mm". The number zero may be said in a
// word of its own.
func number(path, name string, x float64, unit string, zero ...string) Setting {
	s := Setting{Path: path, Value: exact(x), name: name, unit: unit}
	switch {
	case x == 0 && len(zero) > 0:
		s.words, s.unit = zero[0], ""
	case math.IsInf(x, 1):
		s.words, s.unit = none, ""
	default:
		s.words = strings.TrimSuffix(wording.Setpoint(mixcore.Percent(x)), " %")
	}
	return s
}

func percent(path, name string, x mixcore.Percent) Setting {
	return number(path, name, float64(x), " %")
}

func length(path, name string, x mixcore.Millimetres, zero ...string) Setting {
	return number(path, name, float64(x), " mm", zero...)
}

// maybe is a setting that may not have been said at all.
func maybe(s Setting, isSaid bool) Setting {
	if !isSaid {
		s.Value, s.words, s.unit = none, none, ""
	}
	return s
}

// word is a setting that is a word.
func word(path, name, value string) Setting {
	return Setting{Path: path, Value: value, name: name, words: value}
}

// named is a setting that is the name of something.
func named(path, name, fold, shown string) Setting {
	return Setting{Path: path, Value: fold, name: name, words: shown}
}

// flag is a setting that is so or not.
func flag(path string, is bool, yes, no string) Setting {
	return Setting{Path: path, Value: strconv.FormatBool(is), yes: yes, no: no}
}

// sides is a percent that may differ for two directions.
func sides(path, name string, p mixcore.Sides, plus, minus string) Setting {
	s := percent(path, name, p.Plus)
	if p.Plus == p.Minus {
		return s
	}
	s.Value = exact(float64(p.Plus)) + " plus, " + exact(float64(p.Minus)) + " minus"
	s.words = wording.Setpoint(p.Plus) + " " + plus + ", " + wording.Setpoint(p.Minus) + " " + minus
	s.unit = ""
	return s
}

// directions are the words for the plus and the minus side of what comes from a
// control.
func directions(c *mixcore.Control) (plus, minus string) {
	if c.Axis == mixcore.NoAxis {
		return "plus", "minus"
	}
	return wording.AxisSide(c.Axis, true), wording.AxisSide(c.Axis, false)
}

// alsoCalled is the path of further names.
const alsoCalled = "aka"

// aka is the further names of something.
func aka(names []string, fold func(string) string) Setting {
	folded := make([]string, len(names))
	for i, name := range names {
		folded[i] = fold(name)
	}
	slices.Sort(folded)
	s := Setting{Path: alsoCalled, Value: strings.Join(folded, ", "), name: "further names", words: strings.Join(names, ", ")}
	if len(names) == 0 {
		s.words = none
	}
	return s
}
