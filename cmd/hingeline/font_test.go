package main

import (
	"os"
	"strings"
	"testing"
)

// A font that cannot be used is told before anything is checked or written.
func TestFontThatCannotBeUsedIsToldFirst(t *testing.T) {
	t.Chdir(t.TempDir())
	for name, text := range map[string]string{"empty.ttf": "", "short.ttf": "\x00\x01\x00\x00", "words.ttf": strings.Repeat("no font at all ", 99)} {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		out, messages, code := called("check", "ousel-trainer", "--pdf", "a.pdf", "--html", "a.html", "--font", name)
		if code != statusWrongUse || out != "" || !strings.Contains(messages, "--font: "+name) {
			t.Errorf("%s: exit status %d, %q", name, code, messages)
		}
		if left, err := os.ReadDir("."); err != nil || strings.Contains(names(left), ".html") {
			t.Errorf("%s: %s was written", name, names(left))
		}
	}
	if _, messages, code := called("check", "ousel-trainer", "--pdf", "a.pdf", "--font", "."); code != statusWrongUse || !strings.Contains(messages, "no plain file") {
		t.Errorf("a directory: exit status %d, %q", code, messages)
	}
}

func names(entries []os.DirEntry) string {
	var all []string
	for _, e := range entries {
		all = append(all, e.Name())
	}
	return strings.Join(all, " ")
}
