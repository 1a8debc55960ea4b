package diag

import (
	"unicode"

	"golang.org/x/text/width"
)

// tabStop is how far apart tab stops are in an excerpt, in terminal columns.
const tabStop = 4

// unprintable stands in an excerpt for a character that would move the cursor,
// turn the writing direction or hide itself.
const unprintable = '\uFFFD'

// columnsOf is how many columns of a terminal a printable character takes.
func columnsOf(r rune) int {
	if r < 0x300 {
		return 1
	}
	if unicode.In(r, unicode.Mn, unicode.Me) || isJoiner(r) {
		return 0
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth: // most pictographs among them
		return 2
	}
	return 1
}

// isJoiner tells the two invisible characters that some scripts need from the
// other invisible ones.
func isJoiner(r rune) bool { return r == '\u200C' || r == '\u200D' }

// printable is the character, or a stand-in if it must not reach a terminal.
func printable(r rune) rune {
	if r < ' ' || unicode.Is(unicode.Cc, r) || unicode.In(r, unicode.Cf, unicode.Zl, unicode.Zp) && !isJoiner(r) {
		return unprintable
	}
	return r
}

// clean is text that may go to a terminal on one line.
func clean(text string) string {
	runes := []rune(text)
	for i, r := range runes {
		if r == '\t' || r == '\n' {
			runes[i] = ' '
			continue
		}
		runes[i] = printable(r)
	}
	return string(runes)
}

// widthOf is how many columns of a terminal a text takes.
func widthOf(text string) int {
	n := 0
	for _, r := range text {
		n += columnsOf(r)
	}
	return n
}
