package diag

import "unicode"

// tabStop is how far apart tab stops are in an excerpt, in terminal columns.
const tabStop = 4

// unprintable stands in an excerpt for a character that would move the cursor,
// turn the writing direction or hide itself.
const unprintable = '\uFFFD'

// wideRanges are the characters that take two columns of a terminal: East
// Asian wide and full-width forms and most pictographs.
var wideRanges = [][2]rune{
	{0x1100, 0x115F}, {0x231A, 0x231B}, {0x2E80, 0x303E}, {0x3041, 0x33FF},
	{0x3400, 0x4DBF}, {0x4E00, 0x9FFF}, {0xA000, 0xA4CF}, {0xA960, 0xA97F},
	{0xAC00, 0xD7A3}, {0xF900, 0xFAFF}, {0xFE30, 0xFE6F}, {0xFF00, 0xFF60},
	{0xFFE0, 0xFFE6}, {0x1F300, 0x1F64F}, {0x1F680, 0x1F6FF},
	{0x1F900, 0x1F9FF}, {0x20000, 0x3FFFD},
}

// columnsOf is how many columns of a terminal a printable character takes.
func columnsOf(r rune) int {
	if r < 0x300 {
		return 1
	}
	if unicode.In(r, unicode.Mn, unicode.Me) || isJoiner(r) {
		return 0
	}
	for _, wide := range wideRanges {
		if r >= wide[0] && r <= wide[1] {
			return 2
		}
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
