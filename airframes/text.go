package airframes

import (
	"bytes"
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
		_, size := utf8.DecodeRune(text[offset:])
		if message := diag.Strange(text, offset); message != "" {
			problems = append(problems, diag.Problem{Place: source.At(offset, 1), Code: "not-plain-text",
				Message: message, Hint: "the file must be plain UTF-8 text: save it as such, or retype this line"})
		}
		offset += size
	}
	return problems
}
