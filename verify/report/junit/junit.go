// Package junit writes a control check as JUnit XML, the report of a test run that build
// servers and editors read.
//
// Every stage of the walk-around is a suite and every check a test case; a script that is
// wrong, checks that were left out and a run in which nothing was checked are test cases
// of a last suite, so that a reader who counts cases never sees more of a pass than there
// is. It never decides anything, and no time in it is measured: a check takes none.
// Start at [Render].
package junit

import (
	"encoding/xml"
	"io"
	"strings"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// Render writes the report. The error is the writer's.
func Render(w io.Writer, r *result.Report) error {
	doc := documentOf(r)
	var text strings.Builder
	text.WriteString(xml.Header)
	e := xml.NewEncoder(&text)
	e.Indent("", "  ")
	if err := e.Encode(doc); err != nil {
		return err
	}
	text.WriteByte('\n')
	_, err := io.WriteString(w, text.String())
	return err
}

func documentOf(r *result.Report) *suitesXML {
	doc := &suitesXML{Name: r.Model.Name, Time: noTime}
	b := builder{r: r, all: said.ChecksOf(r), named: map[[2]string]int{}}
	for _, stage := range stagesOf(r) {
		doc.add(b.stage(stage))
	}
	if s := b.whole(); len(s.Cases) > 0 {
		doc.add(s)
	}
	// What belongs to the run as a whole is in its first suite: the format has no place
	// for it further out that all readers know.
	first := &doc.Suites[0]
	first.Properties = &propertiesXML{propertiesOf(r)}
	first.Out = &outXML{remarks(r)}
	return doc
}

// stagesOf are the stages that have checks, in walking order, and any other behind them.
func stagesOf(r *result.Report) (stages []result.Stage) {
	has := map[result.Stage]bool{}
	for i := range r.Checks {
		has[r.Checks[i].Stage] = true
	}
	for _, s := range result.Stages {
		if has[s] {
			stages = append(stages, s)
			delete(has, s)
		}
	}
	for i := range r.Checks {
		if s := r.Checks[i].Stage; has[s] {
			stages = append(stages, s)
			delete(has, s)
		}
	}
	return stages
}

// add takes a suite in and counts it.
func (d *suitesXML) add(s suiteXML) {
	d.Suites = append(d.Suites, s)
	d.Tests += s.Tests
	d.Failures += s.Failures
	d.Errors += s.Errors
	d.Skipped += s.Skipped
}

// add takes a case in and counts it.
func (s *suiteXML) add(c caseXML) {
	s.Cases = append(s.Cases, c)
	s.Tests++
	switch {
	case c.Failure != nil:
		s.Failures++
	case c.Error != nil:
		s.Errors++
	case c.Skipped != nil:
		s.Skipped++
	}
}

func propertiesOf(r *result.Report) []propertyXML {
	verdict := said.VerdictOf(r)
	list := []propertyXML{
		{"hingeline.tool", r.Tool},
		{"hingeline.model", r.Model.Name},
		{"hingeline.airframe", r.Model.File},
		{"hingeline.scripts", strings.Join(r.Scripts, "\n")},
		{"hingeline.verdict", string(r.Verdict)},
		{"hingeline.verdict.words", verdict.String()},
		{"hingeline.setup", r.SetUp},
		{"hingeline.asked", r.Asked},
		{"hingeline.date", r.Date},
	}
	for _, p := range r.Prints {
		list = append(list, propertyXML{"hingeline.sha256:" + p.File, p.SHA256})
	}
	kept := list[:0]
	for _, p := range list {
		if p.Value != "" {
			kept = append(kept, p)
		}
	}
	return kept
}
