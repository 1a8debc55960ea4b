// Package diag is a problem in a file that a person wrote: where it is, what
// was got and wanted, and a hint, shown with an excerpt and a caret. Airframe
// files and scripts share it.
//
// Problems are values. A reader collects all it can find in one run and never
// stops at the first. The package never reads a file and never ends the
// program. Start at [Problem] and [Write]; [Explain] tells more about a code.
package diag

import (
	"cmp"
	"slices"
)

// Severity says whether a problem stops the file from being used.
type Severity uint8

// The severities.
const (
	Error   Severity = iota // the file cannot be used
	Warning                 // the file can be used, but this wants a look
)

// Place is where something stands in a file. The zero Place is nowhere.
type Place struct {
	File   string
	Line   int // from 1; 0 is the file as a whole
	Column int // from 1, in characters (not bytes); 0 is the line as a whole
	Width  int // how many characters the caret underlines; 0 counts as 1
}

// Problem is one mistake, in words that name what was got and wanted, lower
// case, without a full stop.
type Problem struct {
	Place
	Severity Severity
	Code     string // kebab-case; Explain tells more about it
	Message  string
	Hint     string // one line, may be empty
}

// Sort puts problems in the order of their places: by file name, line and
// column, then by code and message so that the order is always the same.
func Sort(problems []Problem) {
	slices.SortStableFunc(problems, func(a, b Problem) int {
		return cmp.Or(
			cmp.Compare(a.File, b.File),
			cmp.Compare(a.Line, b.Line),
			cmp.Compare(a.Column, b.Column),
			cmp.Compare(a.Code, b.Code),
			cmp.Compare(a.Message, b.Message),
		)
	})
}

// HasErrors says whether a problem among these stops a file from being used.
func HasErrors(problems []Problem) bool {
	return slices.ContainsFunc(problems, func(p Problem) bool { return p.Severity == Error })
}
