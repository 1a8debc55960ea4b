// Package tap writes a control check in version 14 of the Test Anything Protocol: one
// line for each check, for programs that count them.
//
// A script that is wrong and a run in which nothing was checked are lines that are "not
// ok": the protocol takes an empty plan for a run that was skipped on purpose, which
// reads as a pass. Checks that were left out are one line with SKIP; nothing that passed
// or failed ever has it. It never decides anything.
// Start at [Render].
package tap

import (
	"fmt"
	"io"
	"strings"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// Render writes the report. The error is the writer's.
func Render(w io.Writer, r *result.Report) error {
	points := pointsOf(r)
	var text strings.Builder
	fmt.Fprintf(&text, "TAP version 14\n1..%d\n", len(points))
	comment(&text, "Hingeline "+r.Tool+", control check of "+r.Model.Name+", "+r.Model.File)
	for i, p := range points {
		p.write(&text, i+1)
	}
	for _, line := range remarks(r) {
		comment(&text, line)
	}
	_, err := io.WriteString(w, text.String())
	return err
}

// point is one line that is counted, with what belongs to it.
type point struct {
	ok   bool
	name string
	skip string // why it was not run; empty for one that was
	more []field
}

// pointsOf are all that is counted: never none.
func pointsOf(r *result.Report) []point {
	all := said.ChecksOf(r)
	var points []point
	for i := range r.Checks {
		c := &r.Checks[i]
		p := point{ok: c.Passed, name: c.Scenario + ": " + all.Sentence(i)}
		if !c.Passed {
			p.more = failure(all, i, c)
		}
		points = append(points, p)
	}
	for i := range r.Script {
		if f := &r.Script[i]; f.Fails {
			points = append(points, point{name: "the script: " + f.Message, more: scriptFinding(f)})
		}
	}
	if r.NotSelected > 0 {
		points = append(points, point{ok: true, name: "every check ran", skip: said.LeftOut(r)})
	}
	if name := unsaid(r); name != "" {
		points = append(points, point{name: name, more: []field{{"message", said.VerdictOf(r).String()}}})
	}
	return points
}

// unsaid names what is not ok with a report although no check and no finding shows it;
// empty for none.
func unsaid(r *result.Report) string {
	_, failed := r.Counts()
	wrong, _, _ := r.ScriptCounts()
	switch {
	case r.Verdict == result.NothingChecked, len(r.Checks) == 0:
		return "something was checked"
	case r.Verdict == result.Failed && failed+wrong == 0:
		return "the verdict"
	}
	return ""
}

func (p *point) write(to *strings.Builder, number int) {
	if !p.ok {
		to.WriteString("not ")
	}
	fmt.Fprintf(to, "ok %d - %s", number, escape(oneLine(p.name)))
	if p.skip != "" {
		to.WriteString(" # SKIP " + escape(oneLine(p.skip)))
	}
	to.WriteByte('\n')
	if len(p.more) > 0 {
		to.WriteString("  ---\n")
		for _, f := range p.more {
			f.write(to, "  ")
		}
		to.WriteString("  ...\n")
	}
}

// remarks are what no line that is counted says.
func remarks(r *result.Report) []string {
	var lines []string
	for _, f := range r.Findings {
		lines = append(lines, "WARNING: "+f.Message+" ["+f.Code+"] "+said.At(f.Place))
	}
	for _, f := range said.ScriptFindings(r) {
		if !f.Fails {
			lines = append(lines, "ABOUT THE SCRIPT: "+said.ScriptFinding(f)+" "+said.At(f.Place))
		}
	}
	lines = append(lines, said.Uncovered(r)...)
	for _, c := range r.Cautions {
		lines = append(lines, "LEFT TO DO: "+c)
	}
	return append(lines, said.VerdictOf(r).String())
}

func comment(to *strings.Builder, line string) {
	to.WriteString("# " + strings.TrimRight(oneLine(line), " ") + "\n")
}
