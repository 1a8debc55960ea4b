package main

import (
	"bytes"
	"io"

	"golang.org/x/term"
)

// key is a key that quits.
type key struct{}

// keys listens for q, Ctrl-C, Ctrl-D and the end of the input. On a terminal
// it reads keys as they are pressed; restore puts the terminal back and must
// be called.
func (s *session) keys() (quits <-chan key, restore func()) {
	restore = func() {}
	if t := terminalFile(s.stdin); t != nil {
		if before, err := term.MakeRaw(int(t.Fd())); err == nil {
			stdout, stderr := s.stdout, s.stderr
			if terminalFile(stdout) != nil {
				s.onScreen = true
				s.stdout = &carriageWriter{s.results()}
			}
			if terminalFile(stderr) != nil {
				s.stderr = &carriageWriter{stderr}
			}
			restore = func() {
				term.Restore(int(t.Fd()), before)
				s.stdout, s.stderr, s.onScreen = stdout, stderr, false
			}
		}
	}
	pressed := make(chan key, 1)
	go func() {
		buffer := make([]byte, 64)
		for {
			n, err := s.stdin.Read(buffer)
			if bytes.ContainsAny(buffer[:n], "qQ\x03\x04") || err != nil {
				pressed <- key{}
				return
			}
		}
	}()
	return pressed, restore
}

// carriageWriter is for a terminal that is read key by key, which leaves the
// cursor where it is at the end of a line.
type carriageWriter struct{ w io.Writer }

func (c *carriageWriter) Write(text []byte) (int, error) {
	if _, err := c.w.Write(bytes.ReplaceAll(text, []byte("\n"), []byte("\r\n"))); err != nil {
		return 0, err
	}
	return len(text), nil
}
