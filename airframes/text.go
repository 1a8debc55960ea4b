package airframes

import (
	"bytes"
	"fmt"
	"unicode/utf8"

	"example.com/hingeline/airframes/diag"
)

// checkText refuses what is no plain UTF-8 text with ordinary line breaks: then
// nothing more can be said about the file. At most a few places are named.
func checkText(source *diag.Source) []diag.Problem {
	text := source.Text
	if len(bytes.TrimSpace(bytes.TrimPrefix(text, []byte("\uFEFF")))) == 0 {
		return []diag.Problem{{Place: source.Whole(), Code: "empty-file",
			Message: "the file is empty, want an airframe",
			Hint:    `begin with "hingeline: 1"; "hingeline schema --example" prints one to start from`}}
	}
	if bytes.HasPrefix(text, []byte("\xFF\xFE")) || bytes.HasPrefix(text, []byte("\xFE\xFF")) {
		return []diag.Problem{{Place: source.Whole(), Code: "not-plain-text",
			Message: "the file is in UTF-16, want UTF-8",
			Hint:    "save it as UTF-8"}}
	}
	const enough = 5
	var problems []diag.Problem
	for offset := 0; offset < len(text) && len(problems) < enough; {
		r, size := utf8.DecodeRune(text[offset:])
		if message := strangeCharacter(text, offset, r, size); message != "" {
			problems = append(problems, diag.Problem{Place: source.At(offset, 1), Code: "not-plain-text",
				Message: message, Hint: "the file must be plain UTF-8 text: save it as such, or retype this line"})
		}
		offset += size
	}
	return problems
}

// strangeCharacter says what is wrong with a character, or nothing.
func strangeCharacter(text []byte, offset int, r rune, size int) string {
	switch {
	case r == '\n' || r == '\t':
		return ""
	case r == '\r':
		if offset+1 < len(text) && text[offset+1] == '\n' {
			return ""
		}
		return "a carriage return stands alone, want a line break"
	case r == utf8.RuneError && size == 1:
		return fmt.Sprintf("byte 0x%02X is no UTF-8 text", text[offset])
	case r == '\uFEFF' && offset == 0:
		return ""
	case r < ' ' || r >= 0x7F && r < 0xA0 || r == '\u2028' || r == '\u2029' || r == '\uFEFF' || r == '\uFFFE' || r == '\uFFFF':
		return fmt.Sprintf("control character U+%04X stands in the text", r)
	}
	return ""
}
