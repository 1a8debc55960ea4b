package main

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

func namesIn(t *testing.T, dir string) []string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

func claimFiles(dir string, names ...string) []newFile {
	var files []newFile
	for _, name := range names {
		files = append(files, newFile{filepath.Join(dir, name), []byte(smtMark + "; " + name + "\n")})
	}
	return files
}

// Files of an earlier run give way, the ones that are no longer written too.
func TestReplaceOursLeavesNothingOld(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "new", "claims")
	if err := replaceOurs(dir, claimFiles(dir, "001-a.smt2", "002-b.smt2", "003-c.smt2")); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, ".hidden"), nil, 0o644); err != nil {
		t.Fatal(err)
	}
	again := claimFiles(dir, "001-a.smt2", "002-z.smt2")
	again[0].text = append(again[0].text, "new"...)
	if err := replaceOurs(dir, again); err != nil {
		t.Fatal(err)
	}
	if got, want := namesIn(t, dir), []string{".hidden", "001-a.smt2", "002-z.smt2"}; !slices.Equal(got, want) {
		t.Errorf("the directory holds %q, wanted %q", got, want)
	}
	if text, _ := os.ReadFile(again[0].name); !strings.HasSuffix(string(text), "new") {
		t.Errorf("the file is still\n%s", text)
	}
}

// What we did not write is never written over, and nothing is written beside it.
func TestReplaceOursRefusesWhatIsNotOurs(t *testing.T) {
	for name, make := range map[string]func(dir string) error{
		"another kind of file": func(dir string) error {
			return os.WriteFile(filepath.Join(dir, "flight.log"), []byte(smtMark), 0o644)
		},
		"another's file": func(dir string) error {
			return os.WriteFile(filepath.Join(dir, "001-a.smt2"), []byte("(check-sat)\n"), 0o644)
		},
		"an empty file": func(dir string) error {
			return os.WriteFile(filepath.Join(dir, "001-a.smt2"), nil, 0o644)
		},
		"a directory": func(dir string) error { return os.Mkdir(filepath.Join(dir, "001-a.smt2"), 0o755) },
	} {
		dir := t.TempDir()
		if err := make(dir); err != nil {
			t.Fatal(err)
		}
		before := namesIn(t, dir)
		var foreign *foreignError
		if err := replaceOurs(dir, claimFiles(dir, "001-a.smt2", "002-b.smt2")); !errors.As(err, &foreign) {
			t.Errorf("%s: %v", name, err)
		}
		if got := namesIn(t, dir); !slices.Equal(got, before) {
			t.Errorf("%s: the directory holds %q, wanted %q", name, got, before)
		}
	}
}

// Where one file cannot be written, no other is, and nothing is left behind.
func TestReplaceOursIsAllOrNothing(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := replaceOurs(file, claimFiles(file, "001-a.smt2")); err == nil {
		t.Error("a file was taken for a directory")
	}
	if err := replaceOurs(filepath.Join(file, "claims"), nil); err == nil {
		t.Error("a directory was made in a file")
	}
}
