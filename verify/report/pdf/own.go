package pdf

import (
	"bytes"
	"unicode/utf16"
)

// What tells our documents from others, and from one another: who made them, and the end
// of their title.
const (
	maker       = "Hingeline "
	sheetTitled = "control check"
	cardTitled  = "field card"
)

// IsReport says whether a file is a report that Render wrote, of whatever version.
func IsReport(file []byte) bool { return isOurs(file, sheetTitled) }

// IsCard says the same of a card that RenderCard wrote.
func IsCard(file []byte) bool { return isOurs(file, cardTitled) }

func isOurs(file []byte, title string) bool {
	const mark = "\xfe\xff" // before a text of UTF-16
	return bytes.HasPrefix(file, []byte("%PDF-")) &&
		bytes.Contains(file, append([]byte("/Producer ("+mark), wide(maker)...)) &&
		bytes.Contains(file, append(wide(": "+title), ')'))
}

// wide is a text of plain letters in UTF-16, as a document holds it.
func wide(text string) []byte {
	var b []byte
	for _, unit := range utf16.Encode([]rune(text)) {
		b = append(b, byte(unit>>8), byte(unit))
	}
	return b
}
