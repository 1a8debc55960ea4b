package main

import (
	"bytes"
	"testing"
)

func TestSpeaksUTF8(t *testing.T) {
	for _, c := range []struct {
		name string
		goos string
		env  map[string]string
		want bool
	}{
		{"plain Linux console", "linux", nil, false},
		{"UTF-8 by LANG", "linux", map[string]string{"LANG": "en_GB.UTF-8"}, true},
		{"UTF-8 written short", "freebsd", map[string]string{"LC_CTYPE": "C.utf8"}, true},
		{"LC_ALL goes first", "linux", map[string]string{"LC_ALL": "C", "LANG": "de_DE.UTF-8"}, false},
		{"an older alphabet", "linux", map[string]string{"LANG": "de_DE.ISO-8859-1"}, false},
		{"Windows", "windows", nil, true},
		{"macOS", "darwin", nil, true},
	} {
		if got := speaksUTF8(c.goos, func(name string) string { return c.env[name] }); got != c.want {
			t.Errorf("%s: %v, wanted %v", c.name, got, c.want)
		}
	}
}

func TestWantsColor(t *testing.T) {
	for _, c := range []struct {
		flag, no, force string
		want            bool
	}{
		{"auto", "", "", false}, // a buffer is no terminal
		{"auto", "", "1", true},
		{"auto", "", "0", false},
		{"auto", "1", "1", false},
		{"auto", "1", "", false},
		{"always", "1", "", true},
		{"never", "", "1", false},
	} {
		t.Setenv("NO_COLOR", c.no)
		t.Setenv("FORCE_COLOR", c.force)
		s := &session{stdout: &bytes.Buffer{}, colorFlag: c.flag}
		if got := s.wantsColor(); got != c.want {
			t.Errorf("--color %s NO_COLOR=%q FORCE_COLOR=%q: %v, wanted %v", c.flag, c.no, c.force, got, c.want)
		}
	}
}

func TestCarriageWriterEndsLinesForARawTerminal(t *testing.T) {
	var b bytes.Buffer
	w := &carriageWriter{&b}
	if n, err := w.Write([]byte("one\ntwo\n")); n != 8 || err != nil {
		t.Errorf("wrote %d, %v; wanted 8", n, err)
	}
	if got := b.String(); got != "one\r\ntwo\r\n" {
		t.Errorf("got %q", got)
	}
}
