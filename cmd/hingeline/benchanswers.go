package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"strings"
	"syscall"
	"unicode"
	"unicode/utf8"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/bench"
)

// answersFile are answers that were written beforehand.
type answersFile struct {
	source *diag.Source
	lines  []string
	at     []int // by line: its number in the file
}

// answers reads a file of answers; nil without a name.
func (s *session) answers(name string) (*answersFile, string) {
	if name == "" {
		return nil, ""
	}
	var text []byte
	var err error
	if name == "-" {
		name = stdinName
		text, err = readUpTo(s.stdin, maxFileBytes)
	} else {
		text, err = readFileUpTo(name, maxFileBytes)
	}
	if err != nil {
		return nil, fmt.Sprintf("the answers in %s cannot be read: %v", name, err)
	}
	a := &answersFile{source: diag.NewSource(name, text)}
	for n := 1; n <= a.source.Lines(); n++ {
		line, _ := a.source.Line(n)
		said := strings.TrimSpace(line)
		if said == "" || said == "#" || strings.HasPrefix(said, "# ") {
			continue
		}
		a.lines, a.at = append(a.lines, said), append(a.at, n)
	}
	return a, ""
}

// rehearsed finds every answer of which nothing would come, before anything is begun; the
// guide is for nothing else.
func (a *answersFile) rehearsed(g *bench.Guide, in *inputs) error {
	if a == nil {
		return nil
	}
	wrong, err := bench.Rehearse(g, a.lines)
	if err != nil || len(wrong) == 0 {
		return err
	}
	problems := in.problems
	for _, w := range wrong {
		line, _ := a.source.Line(a.at[w.Line])
		column, width := wordsFrom(line, w.Word)
		p := diag.Problem{
			Place: diag.Place{File: a.source.Name, Line: a.at[w.Line], Column: column, Width: width},
			Code:  "answer-unknown", Message: w.Text, Hint: w.Hint,
		}
		if w.Over {
			p.Code, p.Hint = "answer-left-over", "take it out, and what is behind it"
		}
		problems = append(problems, p)
	}
	return &inputError{problems, append(in.sources, a.source)}
}

// wordsFrom is the column, from 1, at which a word of a line begins, counted from 0, and
// how many characters there are from there to the end of the last word. Where there are
// fewer words it is the whole line.
func wordsFrom(line string, word int) (column, width int) {
	at, inWord, first := -1, false, 0
	for i, r := range line {
		begins := !unicode.IsSpace(r) && !inWord
		inWord = !unicode.IsSpace(r)
		if !begins {
			continue
		}
		if at++; at == 0 {
			first = i
		}
		if at == word {
			first = i
			break
		}
	}
	rest := strings.TrimRightFunc(line[first:], unicode.IsSpace)
	return 1 + utf8.RuneCountInString(line[:first]), utf8.RuneCountInString(rest)
}

// untilLeft is a context that ends when somebody interrupts, or closes the terminal: then
// the walk is paused. Where the shell was told to outlive its terminal, that ends nothing.
func untilLeft() (ctx context.Context, stop func()) {
	signals := []os.Signal{os.Interrupt, syscall.SIGTERM}
	if !signal.Ignored(syscall.SIGHUP) {
		signals = append(signals, syscall.SIGHUP)
	}
	ctx, stop = signal.NotifyContext(context.Background(), signals...)
	context.AfterFunc(ctx, stop)
	return ctx, stop
}
