package script

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"example.com/hingeline/airframes/diag"
)

// File is a script: its name, as messages call it, and its text.
type File struct {
	Name string
	Text []byte
}

// checkFiles finds what is wrong with the files before they are read.
func checkFiles(files []File) (problems []diag.Problem) {
	if len(files) == 0 {
		return []diag.Problem{{Code: codeNoScenarios, Message: "there is no script", Hint: "name a script, or write one with \"hingeline new\""}}
	}
	for i, f := range files {
		for _, earlier := range files[:i] {
			switch {
			case earlier.Name == f.Name:
				problems = append(problems, diag.Problem{Place: diag.Place{File: f.Name}, Code: codeSameScript,
					Message: "the script is named twice", Hint: "name it once"})
			case len(f.Text) > 0 && bytes.Equal(earlier.Text, f.Text):
				problems = append(problems, diag.Problem{Place: diag.Place{File: f.Name}, Code: codeSameScript,
					Message: fmt.Sprintf("the script says the same as %s", earlier.Name), Hint: "leave one of them out"})
			}
		}
		if problem, bad := checkText(f); bad {
			problems = append(problems, problem)
		}
	}
	return problems
}

// checkText refuses what is no text of a script at all.
func checkText(f File) (diag.Problem, bool) {
	if len(f.Text) > maxBytes {
		return diag.Problem{Place: diag.Place{File: f.Name}, Code: codeTooBig,
			Message: fmt.Sprintf("the script has %d bytes, a script may have %d", len(f.Text), maxBytes),
			Hint:    "split it into several scripts"}, true
	}
	if lines := bytes.Count(f.Text, []byte("\n")); lines > maxLines {
		return diag.Problem{Place: diag.Place{File: f.Name}, Code: codeTooBig,
			Message: fmt.Sprintf("the script has %d lines, a script may have %d", lines, maxLines),
			Hint:    "split it into several scripts"}, true
	}
	line, start := 1, 0
	place := func(at int) diag.Place {
		return diag.Place{File: f.Name, Line: line, Column: utf8.RuneCount(f.Text[start:at]) + 1}
	}
	for i, r := range string(f.Text) {
		switch {
		case r == '\n':
			line, start = line+1, i+1
		case i-start > maxLine:
			return diag.Problem{Place: diag.Place{File: f.Name, Line: line}, Code: codeTooBig,
				Message: fmt.Sprintf("the line has more than %d bytes", maxLine), Hint: "split it into several sentences"}, true
		default:
			if message := diag.Strange(f.Text, i); message != "" {
				return diag.Problem{Place: place(i), Code: codeNotText,
					Message: message, Hint: "save the script as plain UTF-8 text with ordinary line breaks"}, true
			}
		}
	}
	return diag.Problem{}, false
}

// source is a script with its lines at hand.
type source struct {
	name  string
	text  []byte // without a byte order mark
	lines []string
}

func newSource(f File) *source {
	text := bytes.TrimPrefix(f.Text, []byte("\uFEFF"))
	lines := strings.Split(string(text), "\n")
	for i := range lines {
		lines[i] = strings.TrimSuffix(lines[i], "\r")
	}
	return &source{name: f.Name, text: text, lines: lines}
}

// line is a line by its number; empty if there is none.
func (s *source) line(number int) string {
	if number < 1 || number > len(s.lines) {
		return ""
	}
	return s.lines[number-1]
}

// at is the place of what stands on a line without the space around it.
func (s *source) at(number int) diag.Place {
	line := s.line(number)
	trimmed := strings.TrimSpace(line)
	before, _, _ := strings.Cut(line, trimmed)
	return diag.Place{File: s.name, Line: number, Column: utf8.RuneCountInString(before) + 1, Width: max(utf8.RuneCountInString(trimmed), 1)}
}
