package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
)

// maxFileBytes is the most that an input file may hold: many times the largest
// airframe file or script that a person would write.
const maxFileBytes = 1 << 20

// stdinName is how messages call what was read from standard input.
const stdinName = "(stdin)"

// fileKind is what sort of file was wanted, for messages.
type fileKind struct {
	noun   string // "an airframe file"
	suffix string // ".yaml"
}

var (
	airframeKind = fileKind{"an airframe file", ".yaml"}
	scriptKind   = fileKind{"a script", ".feature"}
)

// suffixes are the endings of files of this kind.
func (k fileKind) suffixes() []string {
	if k == airframeKind {
		return []string{".yaml", ".yml"}
	}
	return []string{k.suffix}
}

// other is the other kind of file.
func (k fileKind) other() fileKind {
	if k == airframeKind {
		return scriptKind
	}
	return airframeKind
}

// readFile reads a file of the given kind, or standard input for "-".
func (s *session) readFile(name string, kind fileKind) ([]byte, *diag.Problem) {
	if name == "-" {
		return readAtMost(s.stdin, stdinName, kind)
	}
	info, err := os.Stat(name)
	if err == nil && info.IsDir() {
		return nil, directoryProblem(name, kind)
	}
	if s.follows && err == nil && !info.Mode().IsRegular() {
		return nil, &diag.Problem{
			Place: diag.Place{File: name}, Code: "file-unreadable",
			Message: "is a pipe or a device, which has no changes to wait for; wanted " + kind.noun,
		}
	}
	if other := kind.other(); err == nil && slices.Contains(other.suffixes(), filepath.Ext(name)) {
		return nil, &diag.Problem{
			Place: diag.Place{File: name}, Code: "wrong-kind-of-file",
			Message: fmt.Sprintf("is %s by its name, wanted %s", other.noun, kind.noun),
			Hint:    "the airframe file comes first, then its scripts: hingeline check my-model.yaml my-model.feature",
		}
	}
	if err != nil {
		return nil, openProblem(name, kind, err)
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, openProblem(name, kind, err)
	}
	defer f.Close()
	return readAtMost(f, name, kind)
}

func readAtMost(r io.Reader, name string, kind fileKind) ([]byte, *diag.Problem) {
	text, err := io.ReadAll(io.LimitReader(r, maxFileBytes+1))
	switch {
	case err != nil:
		return nil, openProblem(name, kind, err)
	case len(text) > maxFileBytes:
		return nil, &diag.Problem{
			Place: diag.Place{File: name}, Code: "too-large-to-read",
			Message: fmt.Sprintf("holds more than %d kB, which no %s does", maxFileBytes/1000, strings.TrimPrefix(strings.TrimPrefix(kind.noun, "an "), "a ")),
			Hint:    "is it the right file?",
		}
	}
	return text, nil
}

func openProblem(name string, kind fileKind, err error) *diag.Problem {
	p := &diag.Problem{Place: diag.Place{File: name}}
	var path *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		p.Code = "file-missing"
		p.Message = "there is no such file; wanted " + kind.noun
		p.Hint = nearName(name, kind)
	case errors.Is(err, fs.ErrPermission):
		p.Code = "file-unreadable"
		p.Message = "you may not read this file; wanted " + kind.noun
		p.Hint = "look at the file's permissions"
	default:
		if errors.As(err, &path) {
			err = path.Err
		}
		p.Code = "file-unreadable"
		p.Message = fmt.Sprintf("cannot be read: %v", err)
	}
	return p
}

func directoryProblem(name string, kind fileKind) *diag.Problem {
	p := &diag.Problem{
		Place: diag.Place{File: name}, Code: "file-is-directory",
		Message: "is a directory, wanted " + kind.noun,
		Hint:    fmt.Sprintf("there is no %s file in it", kind.suffix),
	}
	switch found := filesIn(name, kind); {
	case len(found) == 1:
		p.Hint = fmt.Sprintf("did you mean %q?", filepath.Join(name, found[0]))
	case len(found) > 1:
		p.Hint = fmt.Sprintf("name one of the files in it, such as %q", filepath.Join(name, found[0]))
	}
	return p
}

// nearName is the hint for a file that is missing.
func nearName(name string, kind fileKind) string {
	dir, base := filepath.Split(name)
	found := filesIn(filepath.Clean(dir+"."), kind)
	if best, ok := closestFile(base, found); ok {
		return fmt.Sprintf("did you mean %q?", dir+best)
	}
	if slices.Contains(found, base+kind.suffix) {
		return fmt.Sprintf("did you mean %q?", dir+base+kind.suffix)
	}
	if kind == airframeKind && dir == "" {
		bare := strings.TrimSuffix(base, kind.suffix)
		shipped := airframes.Shipped()
		if slices.Contains(shipped, bare) {
			return fmt.Sprintf("the built-in model is called %q, without %s", bare, kind.suffix)
		}
		if best, ok := diag.Closest(bare, shipped); ok {
			return fmt.Sprintf("did you mean the built-in model %q?", best)
		}
		return fmt.Sprintf("a file, or one of the built-in models: %s", strings.Join(shipped, ", "))
	}
	return ""
}

// closestFile is the file whose name without its ending is most like that of
// another: endings that are the same make no names alike.
func closestFile(name string, among []string) (string, bool) {
	var stems []string
	for _, file := range among {
		stems = append(stems, strings.TrimSuffix(file, filepath.Ext(file)))
	}
	best := strings.TrimSuffix(name, filepath.Ext(name))
	if !slices.Contains(stems, best) {
		var ok bool
		if best, ok = diag.Closest(best, stems); !ok {
			return "", false
		}
	}
	return among[slices.Index(stems, best)], true
}

// filesIn lists the files of a kind in a directory, none if it cannot be read.
func filesIn(dir string, kind fileKind) []string {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil
	}
	var names []string
	for _, e := range entries {
		if slices.Contains(kind.suffixes(), filepath.Ext(e.Name())) && !e.IsDir() {
			names = append(names, e.Name())
		}
	}
	return names
}
