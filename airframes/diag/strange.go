package diag

import (
	"fmt"
	"unicode"
	"unicode/utf8"
)

// Strange says what is wrong with the character that begins at an offset, in bytes, of a
// file of plain text; nothing is the empty string. Whatever an editor may show as a line
// break and a reader does not take for one would put two things on one line.
func Strange(text []byte, offset int) string {
	r, size := utf8.DecodeRune(text[offset:])
	switch {
	case r == '\n', r == '\t', r == '\r' && offset+1 < len(text) && text[offset+1] == '\n':
		return ""
	case r == '\r':
		return "a carriage return stands alone, want a line break"
	case r == utf8.RuneError && size == 1:
		return fmt.Sprintf("byte 0x%02X is no UTF-8 text", text[offset])
	case r == '\uFEFF' && offset == 0:
		return ""
	case unicode.IsControl(r), unicode.In(r, unicode.Zl, unicode.Zp), r == '\uFEFF', r == '\uFFFE', r == '\uFFFF':
		return fmt.Sprintf("control character U+%04X stands in the text", r)
	}
	return ""
}
