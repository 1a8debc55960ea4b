package terminal

import (
	"iter"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/width"
)

// columns is how many columns of a terminal the text takes: none for marks that
// stand on the letter before them, two for wide East Asian letters and pictures.
func columns(text string) int {
	n := len(text)
	for i := 0; i < len(text); i++ {
		if text[i] >= utf8.RuneSelf {
			n = i
			for _, r := range text[i:] {
				n += runeColumns(r)
			}
			break
		}
	}
	return n
}

func runeColumns(r rune) int {
	switch {
	case r < 0x300:
		return 1
	case unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf):
		return 0
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return 2
	}
	return 1
}

// wrap breaks text at its spaces into lines of at most width columns, but not
// between a number and its unit. A word that is wider than a line is broken
// within. There is always one line.
func wrap(text string, width int) []string {
	if isTidy(text) && columns(text) <= width {
		return []string{text}
	}
	var lines []string
	var line strings.Builder
	used := 0
	flush := func() {
		lines = append(lines, line.String())
		line.Reset()
		used = 0
	}
	for word := range unbreakable(text) {
		w := columns(word)
		if used > 0 && used+1+w > width {
			flush()
		}
		if used > 0 {
			line.WriteByte(' ')
			used++
		}
		if used+w <= width {
			line.WriteString(word)
			used += w
			continue
		}
		for _, r := range word {
			n := runeColumns(r)
			if used > 0 && used+n > width {
				flush()
			}
			line.WriteRune(r)
			used += n
		}
	}
	flush()
	return lines
}

// isTidy is true for text whose words stand one plain space apart, so that it
// is a line as it is.
func isTidy(text string) bool {
	space := true
	for _, r := range text {
		was := space
		space = unicode.IsSpace(r)
		if space && (was || r != ' ') {
			return false
		}
	}
	return !space || text == ""
}

// unbreakable are the pieces of text between the spaces where a line may end.
func unbreakable(text string) iter.Seq[string] {
	return func(yield func(string) bool) {
		piece := ""
		for word := range strings.FieldsSeq(text) {
			switch {
			case piece == "":
				piece = word
			case isUnit(word) && endsInDigit(piece):
				piece += " " + word
			case !yield(piece):
				return
			default:
				piece = word
			}
		}
		if piece != "" {
			yield(piece)
		}
	}
}

func isUnit(word string) bool {
	switch strings.TrimRight(word, ".,;:)") {
	case "%", "mm", "s", "µs", "us", "deg", "kg":
		return true
	}
	return false
}

func endsInDigit(word string) bool {
	return word != "" && '0' <= word[len(word)-1] && word[len(word)-1] <= '9'
}

// cut shortens text to width columns, with the given mark where it was cut.
func cut(text string, width int, mark string) string {
	if columns(text) <= width {
		return text
	}
	var b strings.Builder
	used := columns(mark)
	for _, r := range text {
		if used+runeColumns(r) > width {
			break
		}
		b.WriteRune(r)
		used += runeColumns(r)
	}
	return b.String() + mark
}

// pad fills text up with spaces to width columns.
func pad(text string, width int) string {
	return text + spaces(width-columns(text))
}

const blanks = "                                                                                "

// spaces is that many spaces, none for a negative number.
func spaces(n int) string {
	if n <= len(blanks) {
		return blanks[:max(n, 0)]
	}
	return strings.Repeat(" ", n)
}
