package jsonout

import (
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"example.com/hingeline/verify/result"
)

// The shapes of the open mutation-testing report schema, version 2, that the viewers of
// mutation-testing reports read: what they call a mutant is a mistake of ours, the file
// that it is made in is the airframe file, and a test is a sentence of the script.
type mutationsJSON struct {
	SchemaVersion string                      `json:"schemaVersion"`
	Thresholds    thresholdsJSON              `json:"thresholds"`
	Files         map[string]mutationFileJSON `json:"files"`
	TestFiles     map[string]testFileJSON     `json:"testFiles"`
	Framework     frameworkJSON               `json:"framework"`
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

type testFileJSON struct {
	Tests []testJSON `json:"tests"`
}

type testJSON struct {
	ID   string `json:"id"`
	Name string `json:"name"`
}

type frameworkJSON struct {
	Name    string `json:"name"`
	Version string `json:"version,omitempty"`
}

// mutationStatus is what that schema calls a state. Undecided is Survived, never Timeout,
// which its readers count as detected.
var mutationStatus = map[result.FaultState]string{
	result.Caught: "Killed", result.Missed: "Survived", result.Open: "Survived",
	result.Invisible: "Ignored", result.NotBuilt: "CompileError",
}

// usualThreshold is the percentage from which a viewer shows a score as half good, where
// nobody said how much must be caught. Common practice, no source.
const usualThreshold = 80

// RenderMutations writes the mistakes as a mutation-testing report with their places in
// the text of the airframe file. The error is the writer's.
func RenderMutations(w io.Writer, r *result.Faults, text string) error {
	lines := strings.Split(text, "\n")
	file := mutationFileJSON{Language: "yaml", Source: text, Mutants: []mutantJSON{}}
	tests := map[string]testFileJSON{}
	for i := range r.Faults {
		f := &r.Faults[i]
		m := mutantJSON{
			ID: strconv.Itoa(i + 1), MutatorName: f.Kind, Description: f.Text, Location: locationIn(lines, f.Place),
			Status: mutationStatus[f.State], StatusReason: f.Reason,
		}
		if f.State == result.Missed {
			m.StatusReason = f.Consequence
		}
		for k := range f.By {
			if id := noteTest(tests, &f.By[k]); !slices.Contains(m.KilledBy, id) {
				m.KilledBy = append(m.KilledBy, id)
			}
		}
		file.Mutants = append(file.Mutants, m)
	}
	return write(w, mutationsJSON{
		SchemaVersion: "2", Thresholds: thresholdsJSON{High: 100, Low: max(r.Min, usualThreshold)},
		Files: map[string]mutationFileJSON{r.Model.File: file}, TestFiles: tests,
		Framework: frameworkJSON{Name: "Hingeline", Version: r.Tool},
	})
}

// noteTest keeps the sentence that caught a mistake, and returns its name among the tests.
func noteTest(tests map[string]testFileJSON, by *result.CaughtBy) string {
	id := fmt.Sprintf("%s:%d:%d", by.Place.File, by.Place.Line, by.Place.Column)
	file := tests[by.Place.File]
	if !slices.ContainsFunc(file.Tests, func(t testJSON) bool { return t.ID == id }) {
		file.Tests = append(file.Tests, testJSON{ID: id, Name: by.Scenario + ": " + by.Sentence})
		tests[by.Place.File] = file
	}
	return id
}

// locationIn is from a place to the end of its line; that schema knows no place without
// a column, and no file as a whole.
func locationIn(lines []string, place result.Place) locationJSON {
	line, column := min(max(place.Line, 1), len(lines)), max(place.Column, 1)
	end := max(len([]rune(strings.TrimRight(lines[line-1], "\r")))+1, column)
	return locationJSON{positionJSON{line, column}, positionJSON{line, end}}
}

// IsMutations says whether a text is a mutation-testing report, by its outermost keys.
func IsMutations(text []byte) bool {
	var r struct {
		Version *string         `json:"schemaVersion"`
		Files   *map[string]any `json:"files"`
	}
	return json.Unmarshal(text, &r) == nil && r.Version != nil && r.Files != nil
}
