package said

import (
	"fmt"
	"strings"

	"example.com/hingeline/verify/result"
)

// Sentence is what check i asks, and of which part where the sentence leaves that open.
func (all *Checks) Sentence(i int) string {
	if of := strings.TrimSuffix(all.of(i), ": "); of != "" {
		return all.report.Checks[i].Sentence + " (" + of + ")"
	}
	return all.report.Checks[i].Sentence
}

// Headline is what is wrong with failed check i, in one line.
func (all *Checks) Headline(i int) string {
	if miss := all.report.Checks[i].Miss; miss != "" {
		return miss
	}
	return "wanted " + all.Wanted(i) + "; got " + all.Got(i)
}

// Failure is failed check i in plain lines: what was wanted and got, how the controls
// stand, and why.
func (all *Checks) Failure(i int) []string {
	c := &all.report.Checks[i]
	var lines []string
	if c.Miss != "" {
		lines = append(lines, c.Miss)
	}
	lines = append(lines, "wanted: "+all.Wanted(i), "got: "+all.Got(i))
	if pose := all.Pose(i); pose != "" {
		lines = append(lines, "controls: "+pose)
	}
	for _, words := range twoOf(HowDecided(c.Proof)) {
		if words != "" {
			lines = append(lines, words)
		}
	}
	return append(lines, Causes(c)...)
}

func twoOf(a, b string) []string { return []string{a, b} }

// Causes are why a failed check got what it got, in plain lines: every value from the
// pilot's hand on, then the lines of the airframe file to look at.
func Causes(c *result.Check) []string {
	var lines []string
	for k, why := range c.Why {
		lines = append(lines, Why(c, k)+":")
		for _, s := range why.Chain {
			lines = append(lines, "  "+StepWords(s))
			if s.Limit != "" {
				lines = append(lines, "    limit: "+s.Limit)
			}
		}
		for _, place := range MostTelling(why.LookAt) {
			where := "look at " + At(place)
			if place.Note != "" {
				where += "  " + place.Note
			}
			lines = append(lines, where)
			if excerpt := strings.TrimRight(place.Excerpt, " \t"); excerpt != "" && place.Line > 0 {
				lines = append(lines, fmt.Sprintf("%5d | %s", place.Line, excerpt))
			}
		}
	}
	return lines
}

// StepWords is one step of a cause chain in one line, without its limit.
func StepWords(s result.Step) string {
	head := s.Stage
	switch {
	case strings.HasPrefix(s.Name, s.Stage):
		head = s.Name
	case s.Name != "":
		head += " " + s.Name
	}
	switch {
	case s.Text == "":
		return head + ": " + s.Value
	case s.Value == "":
		return head + ": " + s.Text
	}
	return head + ": " + s.Text + " = " + s.Value
}

// ScriptReasons are what there is to say about a finding about the script, in plain lines
// after its message.
func ScriptReasons(f *result.ScriptFinding) []string {
	var lines []string
	for _, l := range []struct{ label, words string }{
		{"sentence", f.Sentence}, {"why", f.Reason}, {"look", f.Picture}, {"right", f.Right},
	} {
		if l.words != "" {
			lines = append(lines, l.label+": "+l.words)
		}
	}
	if f.Hint != "" && !f.OnPurpose {
		lines = append(lines, "do: "+f.Hint)
	}
	return lines
}

// Uncovered is what no check touched, in plain lines; none where there is nothing.
func Uncovered(r *result.Report) []string {
	var lines []string
	for _, u := range []struct {
		label string
		names []string
	}{
		{"parts that no check looks at", r.Uncovered.Parts},
		{"controls that no check moves", r.Uncovered.Controls},
		{"positions that no check uses", r.Uncovered.Positions},
	} {
		if len(u.names) > 0 {
			lines = append(lines, "NOT COVERED: "+u.label+": "+strings.Join(u.names, ", "))
		}
	}
	return lines
}
