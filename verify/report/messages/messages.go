// Package messages writes a control check as Cucumber messages, one JSON object in each
// line, for the many programs that read what a Gherkin script came to.
//
// A scenario, or a row of an outline, is a test case if any of its checks ran. A step
// fails if one of its checks failed, or if the sentence fights the aeroplane so that the
// script fails; a step of which a check was left out is skipped, never passed. The run
// succeeds only if the verdict is that every check passed. No time is measured: every
// moment is the date of the check.
// Start at [Render].
package messages

import (
	"encoding/json"
	"errors"
	"io"
	"strings"
	"time"

	messages "github.com/cucumber/messages/go/v34"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// Protocol is the version of the messages.
const Protocol = "34.2.0"

// ErrNoSources is returned for a report that does not hold its scripts.
var ErrNoSources = errors.New("the report does not hold its scripts, which Cucumber messages begin with")

// Ids of what there is one of. All others begin with one of these, or are Gherkin's, which
// are numbers.
const (
	definitionID = "definition"
	runID        = "run"
)

// Render writes the report, whose Sources must be filled. Further errors are the
// writer's, and a [MismatchError] for a report whose checks are not of its Sources.
func Render(w io.Writer, r *result.Report) error {
	if len(r.Sources) == 0 {
		return ErrNoSources
	}
	cases, err := casesOf(r)
	if err != nil {
		return err
	}
	s := &stream{e: json.NewEncoder(w), now: moment(r.Date)}
	s.e.SetEscapeHTML(false)
	s.write(&messages.Envelope{Meta: metaOf(r)})
	for i := range r.Sources {
		s.source(&r.Sources[i])
	}
	s.definition(r.Sources[0].Pattern)
	s.write(&messages.Envelope{TestRunStarted: &messages.TestRunStarted{Timestamp: s.now, Id: runID}})
	for i := range cases {
		s.write(&messages.Envelope{TestCase: cases[i].message()})
	}
	for i := range cases {
		s.run(&cases[i])
	}
	s.write(&messages.Envelope{TestRunFinished: s.finished(r)})
	return s.err
}

// stream writes messages until the first error.
type stream struct {
	e   *json.Encoder
	now *messages.Timestamp
	err error
}

func (s *stream) write(message any) {
	if s.err == nil {
		s.err = s.e.Encode(message)
	}
}

// moment is the date of a check; without one the beginning of 1970, for the messages must
// have one.
func moment(date string) *messages.Timestamp {
	for _, layout := range []string{time.RFC3339, time.DateOnly} {
		if at, err := time.Parse(layout, date); err == nil {
			return &messages.Timestamp{Seconds: at.Unix(), Nanos: int64(at.Nanosecond())}
		}
	}
	return &messages.Timestamp{}
}

// metaOf says who wrote the messages. On which machine is not in the report, so that it is
// the same on every machine.
func metaOf(r *result.Report) *messages.Meta {
	unsaid := &messages.Product{Name: "not recorded"}
	return &messages.Meta{
		ProtocolVersion: Protocol,
		Implementation:  &messages.Product{Name: implementation, Version: r.Tool},
		Runtime:         &messages.Product{Name: "go"}, Os: unsaid, Cpu: unsaid,
	}
}

// source writes a script, its syntax tree and its pickles.
func (s *stream) source(src *result.Source) {
	s.write(&messages.Envelope{Source: &messages.Source{
		Uri: src.URI, Data: src.Text, MediaType: messages.SourceMediaType(src.MediaType),
	}})
	s.write(map[string]json.RawMessage{"gherkinDocument": src.Document})
	for i := range src.Pickles {
		s.write(map[string]json.RawMessage{"pickle": src.Pickles[i].Message})
	}
}

// definition writes the one step definition that there is: it takes every sentence, and
// what a sentence means is worked out behind it.
func (s *stream) definition(pattern string) {
	s.write(&messages.Envelope{StepDefinition: &messages.StepDefinition{
		Id:              definitionID,
		Pattern:         &messages.StepDefinitionPattern{Source: pattern, Type: messages.StepDefinitionPatternType_REGULAR_EXPRESSION},
		SourceReference: &messages.SourceReference{Uri: "example.com/hingeline/verify/phrase"},
	}})
}

// finished ends the run, with whatever no step shows.
func (s *stream) finished(r *result.Report) *messages.TestRunFinished {
	lines := []string{said.VerdictOf(r).String()}
	for _, f := range said.ScriptFindings(r) {
		lines = append(lines, "ABOUT THE SCRIPT: "+said.ScriptFinding(f)+" "+said.At(f.Place))
	}
	for _, f := range r.Findings {
		lines = append(lines, "WARNING: "+f.Message+" ["+f.Code+"] "+said.At(f.Place))
	}
	lines = append(lines, said.Uncovered(r)...)
	for _, c := range r.Cautions {
		lines = append(lines, "LEFT TO DO: "+c)
	}
	end := &messages.TestRunFinished{
		Message: strings.Join(lines, "\n"), Success: r.Verdict == result.Passed, Timestamp: s.now, TestRunStartedId: runID,
	}
	if wrong, _, _ := r.ScriptCounts(); wrong > 0 {
		end.Exception = &messages.Exception{Type: "script is wrong", Message: wrongScript(r)}
	} else if r.Verdict == result.NothingChecked {
		end.Exception = &messages.Exception{Type: string(r.Verdict), Message: lines[0]}
	}
	return end
}

// wrongScript is what fails the check of a script that is wrong.
func wrongScript(r *result.Report) string {
	var lines []string
	for i := range r.Script {
		if f := &r.Script[i]; f.Fails {
			lines = append(lines, finding(f)...)
		}
	}
	return strings.Join(lines, "\n")
}

func finding(f *result.ScriptFinding) []string {
	return append([]string{said.ScriptFinding(f)}, said.ScriptReasons(f)...)
}
