package main

import (
	"bufio"
	"context"
	"os"
)

// typed are lines that somebody types at a terminal, one for each question: what was typed
// before a question stood there is no answer to it.
type typed struct {
	terminal *os.File
	wanted   chan struct{}
	lines    chan string
	ctx      context.Context
}

// typedUntil reads a terminal, a line only when one is wanted, until ctx is done.
func typedUntil(ctx context.Context, terminal *os.File) *typed {
	t := &typed{terminal: terminal, wanted: make(chan struct{}), lines: make(chan string), ctx: ctx}
	go func() {
		defer close(t.lines)
		in := bufio.NewScanner(terminal)
		for {
			select {
			case <-t.wanted:
			case <-ctx.Done():
				return
			}
			if !in.Scan() {
				return
			}
			select {
			case t.lines <- in.Text():
			case <-ctx.Done():
				return
			}
		}
	}()
	return t
}

// forget throws away what was typed so far and not read. A terminal that cannot do so keeps
// it.
func (t *typed) forget() { _ = dropTyped(t.terminal) }

// line is the next line; more is false at the end of the input and where ctx is done.
func (t *typed) line() (line string, more bool) {
	select {
	case t.wanted <- struct{}{}:
	case <-t.ctx.Done():
		return "", false
	}
	select {
	case line, more = <-t.lines:
		return line, more
	case <-t.ctx.Done():
		return "", false
	}
}
