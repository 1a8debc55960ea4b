package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime"
	"strings"
	"sync"
	"syscall"
	"time"

	"example.com/hingeline/verify/report/terminal"
)

// untilInterrupted is a context that ends at the first Ctrl-C. From then on, or
// from stop on, a Ctrl-C ends the program as usual.
func untilInterrupted() (ctx context.Context, stop func()) {
	ctx, stop = signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	context.AfterFunc(ctx, stop)
	return ctx, stop
}

const (
	// progressAfter is how long a search goes on before it says so: most are over
	// sooner.
	progressAfter = 300 * time.Millisecond
	// progressEvery is how often the line is written anew at most.
	progressEvery = 100 * time.Millisecond
)

// progressLine is one line of a terminal that tells how far a search is. The nil
// line, where there is no terminal, writes nothing.
type progressLine struct {
	to     io.Writer
	layout terminal.Options
	now    func() time.Time

	mu    sync.Mutex
	next  time.Time
	shown bool
}

// progress is the line on the terminal of messages, nil where there is none.
func (s *session) progress() *progressLine {
	if terminalFile(s.stderr) == nil || os.Getenv("TERM") == "dumb" {
		return nil
	}
	return newProgressLine(s.stderr, s.messageColumns(), time.Now)
}

// leastColumns is the narrowest terminal that a line is written for.
const leastColumns = 20

func newProgressLine(to io.Writer, columns int, now func() time.Time) *progressLine {
	if columns <= 0 {
		columns = terminal.MaxWidth
	}
	return &progressLine{
		to:     to,
		layout: terminal.Options{Width: max(columns, leastColumns) - 1, ASCII: !speaksUTF8(runtime.GOOS, os.Getenv)},
		now:    now,
		next:   now().Add(progressAfter),
	}
}

// show writes how many claims of all are decided, which is being decided, and how
// many boxes that took until now.
func (p *progressLine) show(done, all int, claim string, boxes int) {
	head := fmt.Sprintf("proving %d of %d", min(done+1, all), all)
	tail := ""
	if boxes > 0 {
		tail = ", " + terminal.Grouped(boxes) + " boxes"
	}
	room := p.layout
	room.Width -= len(head) + len(": ") + len(tail)
	line := head + tail
	if room.Width > 0 {
		line = head + ": " + terminal.OneLine(claim, room) + tail
	}
	p.tell(line)
}

// tell writes the line, unless it was written a moment ago.
func (p *progressLine) tell(line string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.now().Before(p.next) {
		return
	}
	p.next = p.now().Add(progressEvery)
	p.clear()
	fmt.Fprint(p.to, terminal.OneLine(line, p.layout))
	p.shown = true
}

// erase takes the line away.
func (p *progressLine) erase() {
	if p == nil {
		return
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	p.clear()
}

// clear empties the line with spaces, which every terminal understands.
func (p *progressLine) clear() {
	if p.shown {
		fmt.Fprint(p.to, "\r"+strings.Repeat(" ", p.layout.Width)+"\r")
		p.shown = false
	}
}
