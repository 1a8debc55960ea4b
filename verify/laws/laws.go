package laws

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
)

// Info is what a law asks.
type Info struct {
	Code  string // "control-sense"
	Title string // "Control sense"
	Means string // what it asks, in one sentence
}

// law is an Info with what makes its claims about a model.
type law struct {
	Info
	make func(*maker)
}

// all are the laws in the order in which they are shown: sense first, then what
// spoils it, then what switches do.
var all = []law{
	controlSense, travel, stops, linkages, symmetry, trims, rates, rateOrder, motorSafe, motorSignal, switchScope,
}

// Codes are what the laws ask, in the order in which they are shown.
func Codes() []Info {
	var list []Info
	for _, l := range all {
		list = append(list, l.Info)
	}
	return list
}

// CodeNothingSelected is the code of a selection that fits no law.
const CodeNothingSelected = "nothing-selected"

// CheckOnly says which entries of a selection of laws fit none: each must be the
// code of a law or words of its title.
func CheckOnly(only []string) (problems []diag.Problem) {
	for _, entry := range only {
		if slices.ContainsFunc(all, func(l law) bool { return l.fits(entry) }) {
			continue
		}
		problems = append(problems, diag.Problem{Code: CodeNothingSelected,
			Message: fmt.Sprintf("no law is called %q", entry), Hint: hintFor(entry)})
	}
	return problems
}

// selected says whether a selection takes a law; an empty one takes all.
func selected(only []string, l *law) bool {
	return len(only) == 0 || slices.ContainsFunc(only, l.fits)
}

// fits says whether an entry of a selection is the law's code or words of its
// title, whole and in a row.
func (l *law) fits(entry string) bool {
	words := airframes.FoldName(entry)
	return words != "" && (words == airframes.FoldName(l.Code) ||
		strings.Contains(" "+airframes.FoldName(l.Title)+" ", " "+words+" "))
}

func hintFor(entry string) string {
	var codes []string
	for _, l := range all {
		codes = append(codes, l.Code)
	}
	if best, ok := diag.Closest(strings.ToLower(strings.TrimSpace(entry)), codes); ok {
		return fmt.Sprintf("did you mean %q?", best)
	}
	return "the laws are: " + strings.Join(codes, ", ")
}
