package jsonout

import (
	"io"
	"strconv"
	"strings"

	"example.com/hingeline/verify/result"
)

// The shapes of the open mutation-testing report schema, version 2, that the viewers of
// mutation-testing reports read: what they call a mutant is a mistake of ours, and the
// file that it is made in is the airframe file.
type mutationsJSON struct {
	SchemaVersion string                      `json:"schemaVersion"`
	Thresholds    thresholdsJSON              `json:"thresholds"`
	Files         map[string]mutationFileJSON `json:"files"`
}

type thresholdsJSON struct {
	High int `json:"high"`
	Low  int `json:"low"`
}

type mutationFileJSON struct {
	Language string       `json:"language"`
	Source   string       `json:"source"`
	Mutants  []mutantJSON `json:"mutants"`
}

type mutantJSON struct {
	ID           string       `json:"id"`
	MutatorName  string       `json:"mutatorName"`
	Description  string       `json:"description"`
	Location     locationJSON `json:"location"`
	Status       string       `json:"status"`
	StatusReason string       `json:"statusReason,omitempty"`
	KilledBy     []string     `json:"killedBy,omitempty"`
}

type locationJSON struct {
	Start positionJSON `json:"start"`
	End   positionJSON `json:"end"`
}

type positionJSON struct {
	Line   int `json:"line"`
	Column int `json:"column"`
}

// mutationStatus is what that schema calls a state. Undecided is Survived, never Timeout,
// which its readers count as detected.
var mutationStatus = map[result.FaultState]string{
	result.Caught: "Killed", result.Missed: "Survived", result.Open: "Survived",
	result.Invisible: "Ignored", result.NotBuilt: "CompileError",
}

// RenderMutations writes the mistakes as a mutation-testing report with their places in
// the text of the airframe file. The error is the writer's.
func RenderMutations(w io.Writer, r *result.Faults, text string) error {
	lines := strings.Split(text, "\n")
	file := mutationFileJSON{Language: "yaml", Source: text, Mutants: []mutantJSON{}}
	for i := range r.Faults {
		f := &r.Faults[i]
		m := mutantJSON{ID: strconv.Itoa(i + 1), MutatorName: f.Kind, Description: f.Text, Status: mutationStatus[f.State], StatusReason: f.Reason}
		if f.State == result.Missed {
			m.StatusReason = f.Consequence
		}
		for _, by := range f.By {
			m.KilledBy = append(m.KilledBy, by.Scenario+": "+by.Sentence)
		}
		line, column := max(f.Place.Line, 1), max(f.Place.Column, 1)
		end := column
		if line <= len(lines) {
			end = max(len([]rune(strings.TrimRight(lines[line-1], "\r")))+1, column)
		}
		m.Location = locationJSON{positionJSON{line, column}, positionJSON{line, end}}
		file.Mutants = append(file.Mutants, m)
	}
	return write(w, mutationsJSON{
		SchemaVersion: "2", Thresholds: thresholdsJSON{High: 100, Low: 80},
		Files: map[string]mutationFileJSON{r.Model.File: file},
	})
}
