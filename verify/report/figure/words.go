package figure

import (
	"strings"
	"unicode"
)

// TextWidth is about how wide words are, in millimetres, at a size: on the wide side for
// the plain fonts in use, so that what is laid out by it does not overlap.
func TextWidth(words string, size float64, bold bool) float64 {
	w := 0.0
	for _, r := range words {
		w += runeWidth(r)
	}
	if bold {
		w *= 1.16
	}
	return w * size
}

// runeWidth is in parts of the font's size.
func runeWidth(r rune) float64 {
	switch {
	case unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf):
		return 0
	case r >= 0x1100 && !unicode.In(r, unicode.Latin, unicode.Greek, unicode.Cyrillic, unicode.Punct):
		return 1
	case strings.ContainsRune("iljftrI.,:;'|!()[]/ ’°", r):
		return 0.4
	case strings.ContainsRune("mwMW@%µ", r):
		return 0.95
	case unicode.IsUpper(r), r > 0x2000:
		return 0.72
	case r > 0x400:
		return 0.68
	}
	return 0.6
}

// cut shortens words to a width, marked with an ellipsis where they were cut.
func cut(words string, width, size float64, bold bool) string {
	if TextWidth(words, size, bold) <= width {
		return words
	}
	fits := ""
	for i := range words {
		if TextWidth(words[:i]+"…", size, bold) > width {
			break
		}
		fits = words[:i]
	}
	return strings.TrimRight(fits, " ") + "…"
}

// wrapped breaks words at spaces, or within a word that is wider than a line, into lines
// of at most a width, and at most so many lines, of which the last is then cut.
func wrapped(words string, width, size float64, bold bool, most int) []string {
	var lines []string
	rest := strings.TrimSpace(words)
	for rest != "" && len(lines) < most-1 && TextWidth(rest, size, bold) > width {
		end, within := 0, 0
		for i, r := range rest {
			if TextWidth(rest[:i], size, bold) > width {
				break
			}
			within = i
			if r == ' ' && !bound(rest[:i], rest[i+1:]) {
				end = i
			}
		}
		if end == 0 {
			end = within
		}
		if end == 0 {
			break
		}
		lines = append(lines, strings.TrimSpace(rest[:end]))
		rest = strings.TrimSpace(rest[end:])
	}
	if rest != "" {
		lines = append(lines, cut(rest, width, size, bold))
	}
	return lines
}

// bound is true for a space that holds a number and its unit or its tolerance together.
func bound(before, after string) bool {
	next, _, _ := strings.Cut(after, " ")
	switch strings.TrimRight(next, ".,;:)") {
	case "±", "mm", "%", "µs":
		return true
	}
	return strings.HasSuffix(before, "±")
}

// plain is text without what has no place in a line: control characters, and bytes that
// are no text.
func plain(words string) string {
	words = strings.ToValidUTF8(words, "�")
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t', r == '\n', r == '\r':
			return ' '
		case unicode.IsControl(r), unicode.In(r, unicode.Cf), r == 0xfffe, r == 0xffff:
			return -1
		}
		return r
	}, words)
}
