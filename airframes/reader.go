package airframes

import (
	"fmt"
	"strings"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
)

// reader turns one file into a Model and collects what is wrong with it.
//
// Whatever is wrong, it goes on with the next thing, and a thing that is half
// wrong still gets its place in the set-up, so that what names it is not
// reported as well.
type reader struct {
	source   *diag.Source
	problems []diag.Problem
	more     int // problems beyond maxProblems
	compared int // names looked at for suggestions

	model    *Model
	setup    *mixcore.Setup
	controls names
	phases   names
	demands  names
	channels names
	parts    names

	sound  bool         // what parts depend on has been read and has no problems
	broken map[int]bool // parts that have problems

	channelAt  map[int]int          // channel number → index
	trims      map[int]trim         // by the index of the axis
	akaAt      map[int][]diag.Place // of the further names of a part, by its index
	drivePaths [][]string           // in Places.Fields, by part and drive
}

// Problem codes that several files of this package use.
const (
	codeWrongKind     = "wrong-kind"
	codeUnknownKey    = "unknown-key"
	codeUnknownName   = "unknown-name"
	codeUnknownWord   = "unknown-word"
	codeMissingKey    = "missing-key"
	codeDuplicateName = "duplicate-name"
	codeDuplicateKey  = "duplicate-key"
	codeOutOfRange    = "out-of-range"
	codeNotTogether   = "not-together"
	codeNothingThere  = "holds-nothing"
	codeTooMany       = "too-many"
)

func newReader(source *diag.Source) *reader {
	model := &Model{Source: source, Still: DefaultStill}
	model.Places.Fields = map[string]diag.Place{}
	return &reader{
		source:    source,
		model:     model,
		setup:     &model.Setup,
		controls:  newNames("control", FoldName),
		phases:    newNames("phase", FoldName),
		demands:   newNames("demand", FoldName),
		channels:  newNames("channel", FoldName),
		parts:     newNames("part", FoldPart),
		channelAt: map[int]int{},
		broken:    map[int]bool{},
		trims:     map[int]trim{},
		akaAt:     map[int][]diag.Place{},
	}
}

// fail records a problem.
func (r *reader) fail(at diag.Place, code, hint, format string, args ...any) {
	if len(r.problems) >= maxProblems {
		r.more++
		return
	}
	r.problems = append(r.problems, diag.Problem{Place: at, Code: code,
		Hint: shortened(hint, longestRemark), Message: shortened(fmt.Sprintf(format, args...), longestRemark)})
}

// count is how many problems there are so far.
func (r *reader) count() int { return len(r.problems) + r.more }

// closest is diag.Closest while a suggestion is of use and its price is within
// what a file may cost.
func (r *reader) closest(name string, among []string) (string, bool) {
	r.compared += len(among)
	if len(r.problems) >= maxProblems || r.compared > maxCompared {
		return "", false
	}
	return diag.Closest(name, among)
}

// finish is every problem in order of place.
func (r *reader) finish() []diag.Problem {
	diag.Sort(r.problems)
	if r.more > 0 {
		r.problems = append(r.problems, diag.Problem{Place: r.source.At(len(r.source.Text), 0), Code: codeTooMany,
			Message: fmt.Sprintf("%d more mistakes are not shown", r.more),
			Hint:    "mend some of those above and try again"})
	}
	return r.problems
}

// quoted is a word of the file in a message: in quotes, not too long.
func quoted(text string) string {
	return fmt.Sprintf("%q", shortened(text, 40))
}

// shortened is text of at most so many characters.
func shortened(text string, most int) string {
	count, end := 0, 0
	for at := range text {
		switch count++; {
		case count == most:
			end = at
		case count > most:
			return text[:end] + "…"
		}
	}
	return text
}

// listed is a list in words, "a, b or c"; a long one is cut, and so is a long
// item, which no right name is.
func listed(items []string, last string) string {
	const most = 16
	all := make([]string, min(len(items), most))
	for i := range all {
		all[i] = shortened(items[i], maxNameLength)
	}
	switch {
	case len(items) == 0:
		return "none"
	case len(items) == 1:
		return all[0]
	case len(items) > most:
		return strings.Join(all, ", ") + " …"
	}
	return strings.Join(all[:len(all)-1], ", ") + " " + last + " " + all[len(all)-1]
}

// suggestion is the hint for a word that is not among those there are.
func (r *reader) suggestion(word string, among []string, say string) string {
	if best, ok := r.closest(word, among); ok {
		return fmt.Sprintf("did you mean %q?", best)
	}
	return say
}
