package main

import (
	"fmt"
	"io"
	"os"
	"runtime"
	"strings"
	"time"

	"github.com/fatih/color"
	"golang.org/x/term"

	"example.com/hingeline/verify/report/terminal"
	"example.com/hingeline/verify/result"
)

// session is one run of the program: where it reads and writes, and what the
// global flags said.
type session struct {
	stdin          io.Reader
	stdout, stderr io.Writer
	proving        proving
	clock          func() time.Time // how long a question stood there before it was answered
	colorFlag      string
	status         int
	verdict        result.Verdict // of the last check; empty where there was none
	asJSON         bool           // what is wrong with files goes to stdout too, as JSON
	onScreen       bool           // stdout is a terminal that --watch clears
	follows        bool           // the files are read again whenever they change
}

// terminalFile is the terminal behind a reader or writer, or nil.
func terminalFile(stream any) *os.File {
	f, ok := stream.(*os.File)
	if !ok || f == nil || !term.IsTerminal(int(f.Fd())) {
		return nil
	}
	return f
}

// layout decides once how results look: colour, signs and width.
func (s *session) layout(brief bool) terminal.Options {
	o := terminal.Options{Brief: brief, Color: s.wantsColor()}
	color.NoColor = !o.Color
	if t := terminalFile(s.stdout); t != nil {
		o.ASCII = !speaksUTF8(runtime.GOOS, os.Getenv)
		if width, _, err := term.GetSize(int(t.Fd())); err == nil {
			o.Width = width
		}
	}
	return o
}

// messageColumns is how wide the terminal of messages is, 0 where there is none.
func (s *session) messageColumns() int {
	columns, _ := s.messageSize()
	return columns
}

// messageSize is how wide and high the terminal of messages is, 0 where there is none.
func (s *session) messageSize() (columns, rows int) {
	to := s.stderr
	if w, ok := to.(*carriageWriter); ok {
		to = w.w
	}
	if t := terminalFile(to); t != nil {
		if width, height, err := term.GetSize(int(t.Fd())); err == nil {
			return width, height
		}
	}
	return 0, 0
}

// tell writes a message, on a terminal in lines that fit it. Spaces at the beginning of a
// line stand before all lines of it.
func (s *session) tell(message string) {
	width := s.messageColumns()
	if width == 0 {
		fmt.Fprintln(s.stderr, message)
		return
	}
	text := terminal.NewText(terminal.Options{Width: width, ASCII: !speaksUTF8(runtime.GOOS, os.Getenv)})
	for line := range strings.Lines(message) {
		words := strings.TrimLeft(line, " ")
		text.Paragraph(len(line)-len(words), strings.TrimSuffix(words, "\n"))
	}
	text.Render(s.stderr)
}

// wantsColor is what --color says; left to itself, no colour if NO_COLOR is
// set, colour if FORCE_COLOR is, and else colour on a terminal that has it.
func (s *session) wantsColor() bool {
	switch s.colorFlag {
	case "always":
		return true
	case "never":
		return false
	}
	if os.Getenv("NO_COLOR") != "" {
		return false
	}
	if force := os.Getenv("FORCE_COLOR"); force != "" {
		return force != "0" && force != "false"
	}
	return terminalFile(s.stdout) != nil && os.Getenv("TERM") != "dumb"
}

// results is where results are written. On a Windows console that knows no
// colour sequences it is a writer that understands them in its place.
func (s *session) results() io.Writer {
	if s.stdout == io.Writer(os.Stdout) && terminalFile(s.stdout) != nil && runtime.GOOS == "windows" {
		return color.Output
	}
	return s.stdout
}

// speaksUTF8 tells from the locale whether a terminal shows more than ASCII.
// The consoles of Windows and macOS do whatever the locale says.
func speaksUTF8(goos string, getenv func(string) string) bool {
	if goos == "windows" || goos == "darwin" {
		return true
	}
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if locale := strings.ToLower(getenv(name)); locale != "" {
			return strings.Contains(locale, "utf-8") || strings.Contains(locale, "utf8")
		}
	}
	return false
}
