package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestFileBaseSuitsEverySystem(t *testing.T) {
	for name, want := range map[string]string{
		"Wren":                    "wren",
		"Wren 2":                  "wren-2",
		"  Big -- Möwe_3!  ":      "big-mowe-3",
		"../../etc/passwd":        "etc-passwd",
		`C:\Wren`:                 "c-wren",
		"CON":                     "con-model",
		"Straße":                  "strasse",
		strings.Repeat("ab ", 26): strings.TrimRight(strings.Repeat("ab-", 20), "-"),
	} {
		if got, problem := fileBase(name); got != want || problem != "" {
			t.Errorf("%q: got %q (%s), want %q", name, got, problem, want)
		}
	}
	for _, name := range []string{"", "  ", "!?", "日本", "a\nb", "a\x00", strings.Repeat("a", longestName+1)} {
		if got, problem := fileBase(name); problem == "" {
			t.Errorf("%q: got %q, want a problem", name, got)
		}
	}
}

func TestWriteNewWritesAllOrNone(t *testing.T) {
	dir := t.TempDir()
	one, two := filepath.Join(dir, "one"), filepath.Join(dir, "two")
	if err := os.WriteFile(two, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	err := writeNew([]newFile{{one, []byte("1")}, {two, []byte("2")}})
	if !errors.Is(err, fs.ErrExist) {
		t.Errorf("got %v, want that it is there already", err)
	}
	wantFiles(t, dir, map[string]string{"two": "mine"})

	// The second fails once the first is there: the first goes too.
	err = writeNew([]newFile{{one, []byte("1")}, {filepath.Join(dir, "nowhere", "two"), []byte("2")}})
	if !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("got %v, want that there is no directory", err)
	}
	wantFiles(t, dir, map[string]string{"two": "mine"})

	if err := writeNew([]newFile{{one, []byte("1")}, {filepath.Join(dir, "three"), []byte("3")}}); err != nil {
		t.Fatal(err)
	}
	wantFiles(t, dir, map[string]string{"one": "1", "two": "mine", "three": "3"})
}

func TestNameWithoutLinksNeverReplaces(t *testing.T) {
	dir := t.TempDir()
	temporary, name := filepath.Join(dir, "temporary"), filepath.Join(dir, "name")
	for _, path := range []string{temporary, name} {
		if err := os.WriteFile(path, []byte(filepath.Base(path)), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if err := nameWithoutLinks(temporary, name); !errors.Is(err, fs.ErrExist) {
		t.Errorf("got %v, want that it is there already", err)
	}
	wantFiles(t, dir, map[string]string{"temporary": "temporary", "name": "name"})
	if err := nameWithoutLinks(temporary, filepath.Join(dir, "other")); err != nil {
		t.Fatal(err)
	}
	wantFiles(t, dir, map[string]string{"other": "temporary", "name": "name"})
}

// wantFiles wants a directory to hold these files with these texts, and no more.
func wantFiles(t *testing.T, dir string, want map[string]string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		text, err := os.ReadFile(filepath.Join(dir, e.Name()))
		if err != nil {
			t.Fatal(err)
		}
		if wanted, ok := want[e.Name()]; !ok || wanted != string(text) {
			t.Errorf("%s holds %q, want %q (%v)", e.Name(), text, wanted, ok)
		}
	}
	if len(entries) != len(want) {
		t.Errorf("%d files, want %d", len(entries), len(want))
	}
}
