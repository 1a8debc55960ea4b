// Package said is how a control check is said, by every renderer alike: its verdict, how
// the controls stand, what a check got, how many there are. It makes words of package
// result's values and decides nothing.
//
// Start at [VerdictOf].
package said

import (
	"strconv"
	"strings"

	"example.com/hingeline/verify/result"
)

// Count is a number and its noun, in the plural where it wants one.
func Count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	if strings.HasSuffix(noun, "x") {
		noun += "e"
	}
	return Grouped(n) + " " + noun + "s"
}

// Grouped is a number with its thousands marked: 200,000.
func Grouped(n int) string {
	digits := strconv.Itoa(n)
	for i := len(digits) - 3; i > 0 && digits[i-1] != '-'; i -= 3 {
		digits = digits[:i] + "," + digits[i:]
	}
	return digits
}

// Number is the word that fits a number: wants, want.
func Number(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// At is a place the way editors and terminals make it a link: models/a.yaml:33:5.
func At(place result.Place) string {
	where := place.File
	if place.Line > 0 {
		where += ":" + strconv.Itoa(place.Line)
		if place.Column > 0 {
			where += ":" + strconv.Itoa(place.Column)
		}
	}
	return where
}

// WithArticle is a part or channel in a sentence: the port flap, channel 3.
func WithArticle(of string) string {
	if strings.HasPrefix(of, "channel ") {
		return of
	}
	return "the " + of
}
