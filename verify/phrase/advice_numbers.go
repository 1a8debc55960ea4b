package phrase

import (
	"regexp"
	"strconv"
	"strings"
)

// marks are signs that sentences do not have.
func marks() []rewording {
	return []rewording{
		plain(`["“”„]`, " "),
		plain(`[!;]+\s*$`, " "),
		plain(`\s*&\s*`, " and "),
		plain(`º|˚`, "°"),
		plain(`(\d)\s*deg\.`, "$1°"),
		plain(`\s*[=:]\s*`, " is "),
		plain(`\([^)]*\)`, " "),
		plain(`\+\s*/\s*[-–−]|\bplus or minus\b|\bplus minus\b|\bplus/minus\b|,?\s*\bgive or take\b`, " ± "),
	}
}

// a number, and a number with or without its unit.
const (
	figure  = `(\d+(?:[.,]\d+)?)`
	unitful = `\s*(°|degrees?|deg|mm|%|percent|µs|us)`
)

// usualSlack is the tolerance that advice gives to an amount said to be "about".
var usualSlack = map[string]string{"°": "2°", "mm": "2 mm", "%": "2 %", "µs": "5 µs"}

// lengths are other units of length, in millimetres.
var lengths = map[string]float64{"cm": 10, "centimetres": 10, "centimeters": 10, "in": 25.4, "inch": 25.4, "inches": 25.4}

// numbers are amounts in other words and units.
func numbers() []rewording {
	return []rewording{
		plain(`(\d),(\d)`, "$1.$2"),
		{regexp.MustCompile(`\b(?:about|around|approximately|approx\.?|roughly|circa|ca\.?|some|nearly|almost|exactly|precisely)\s+` + figure + unitful), func(_ *Vocabulary, f []string) string {
			unit := units[strings.ToLower(f[2])]
			return spaced(f[1], unit) + " ± " + usualSlack[unit]
		}},
		{regexp.MustCompile(`\b(?:from\s+)?` + figure + `(?:` + unitful + `)?\s*(?:to|-|–|—|…|\.\.+)\s*` + figure + unitful), func(_ *Vocabulary, f []string) string {
			unit := units[strings.ToLower(f[4])]
			return "between " + spaced(f[1], unit) + " and " + spaced(f[3], unit)
		}},
		{regexp.MustCompile(figure + `\s*(cm|centimetres|centimeters|inches|inch|in)\b`), func(_ *Vocabulary, f []string) string {
			n, err := strconv.ParseFloat(f[1], 64)
			if err != nil {
				return ""
			}
			return strconv.FormatFloat(n*lengths[strings.ToLower(f[2])], 'f', 0, 64) + " mm"
		}},
		{regexp.MustCompile(figure + `\s*(ms|msec|milliseconds)\b`), func(_ *Vocabulary, f []string) string {
			n, err := strconv.ParseFloat(f[1], 64)
			if err != nil {
				return ""
			}
			return strconv.FormatFloat(n/1000, 'f', -1, 64) + " s"
		}},
		plain(`\b(after|within) (?:a|one) second\b`, "$1 1 s"),
		plain(`\b(?:in less than|inside|in under|no later than) `+figure+`\s*(s|sec|seconds?)\b`, "within $1 $2"),
		plain(`(?:>=|≥)|\b(?:min|minimum|no less than|not less than|at minimum|at a minimum|a minimum of|minimum of)\b`, " at least "),
		plain(`(?:<=|≤)|\b(?:max|maximum|no more than|not more than|up to|at maximum|at a maximum|a maximum of|maximum of)\b`, " at most "),
		plain(`\s*>|\b(?:over|above|greater than|further than|farther than)\b`, " more than "),
		plain(`\s*<|\b(?:under|below|fewer than|smaller than)\b`, " less than "),
		plain(figure+unitful+` or more\b`, "at least $1 $2"),
		plain(figure+unitful+` or less\b`, "at most $1 $2"),
	}
}

// spaced is a number with its unit as sentences have it.
func spaced(number, unit string) string {
	if unit == "°" {
		return number + unit
	}
	return number + " " + unit
}
