package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/laws"
	"example.com/hingeline/verify/smt"
)

// smtMark is the first line of every file that --smt writes: what lacks it is not
// ours, and is never written over.
const smtMark = "; written by hingeline prove --smt\n"

// smtSuffix ends the names of those files.
const smtSuffix = ".smt2"

// writeClaims writes every claim of the selected laws as a file into a directory,
// and says so. Where it cannot, nothing is changed, what is wrong has been said,
// and written is false.
func (s *session) writeClaims(m *airframes.Model, only []string, dir string) (written bool, err error) {
	var files []newFile
	var not []string
	for _, c := range laws.Claims(m) {
		if !laws.Selects(only, c.Law) {
			continue
		}
		var text bytes.Buffer
		text.WriteString(smtMark)
		if err := smt.Write(&text, m.Plan, &c.Claim, c.Sentence); err != nil {
			not = append(not, fmt.Sprintf("%s: %v", c.Sentence, err))
			continue
		}
		files = append(files, newFile{filepath.Join(dir, c.Name+smtSuffix), text.Bytes()})
	}
	if err := replaceOurs(dir, files); err != nil {
		return false, s.smtNotWritten(dir, err)
	}
	fmt.Fprintf(s.stderr, "wrote %d claims as SMT-LIB 2 into %s; an independent solver answers unsat for each that holds:\n"+
		"  for f in %s*%s; do echo \"$f\"; z3 \"$f\"; done\n", len(files), inQuotes(dir), inQuotes(dir+string(filepath.Separator)), smtSuffix)
	for _, claim := range not {
		fmt.Fprintf(s.stderr, "  not written: %s\n", claim)
	}
	return true, nil
}

// foreignError is a directory that holds something that is not ours.
type foreignError struct{ name string }

func (e *foreignError) Error() string { return e.name + " is not of our making" }

// replaceOurs puts files into a directory, which is made if it is missing, in the
// place of those that an earlier run left there. A directory that holds anything
// else is left as it is. No file is ever half written.
func replaceOurs(dir string, files []newFile) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	old, err := oursIn(dir)
	if err != nil {
		return err
	}
	var temporary []string
	defer func() {
		for _, name := range temporary {
			os.Remove(name)
		}
	}()
	for _, f := range files {
		name, err := writeTemporary(dir, f.text)
		if name != "" {
			temporary = append(temporary, name)
		}
		if err != nil {
			return err
		}
	}
	for i, f := range files {
		if err := os.Rename(temporary[i], f.name); err != nil {
			return err
		}
		delete(old, f.name)
	}
	for name := range old {
		if err := os.Remove(name); err != nil {
			return err
		}
	}
	return nil
}

// oursIn are the files in a directory that an earlier run wrote. Anything else
// there is a foreignError; hidden files do not count.
func oursIn(dir string) (map[string]bool, error) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil, err
	}
	ours := map[string]bool{}
	for _, e := range entries {
		name := filepath.Join(dir, e.Name())
		switch {
		case strings.HasPrefix(e.Name(), "."):
		case !e.Type().IsRegular() || filepath.Ext(e.Name()) != smtSuffix || !hasMark(name):
			return nil, &foreignError{name}
		default:
			ours[name] = true
		}
	}
	return ours, nil
}

func hasMark(name string) bool {
	f, err := os.Open(name)
	if err != nil {
		return false
	}
	defer f.Close()
	begin := make([]byte, len(smtMark))
	_, err = io.ReadFull(f, begin)
	return err == nil && string(begin) == smtMark
}

// writeTemporary writes a file under a name that no one else uses.
func writeTemporary(dir string, text []byte) (string, error) {
	f, err := os.CreateTemp(dir, ".hingeline-*")
	if err != nil {
		return "", err
	}
	_, err = f.Write(text)
	return f.Name(), errors.Join(err, f.Chmod(newFileMode), f.Sync(), f.Close())
}

// smtNotWritten says why no claim was written.
func (s *session) smtNotWritten(dir string, err error) error {
	var foreign *foreignError
	var path *fs.PathError
	switch {
	case errors.As(err, &foreign):
		return s.refuse(fmt.Sprintf("%s holds %s, which --smt did not write, so nothing was written", dir, filepath.Base(foreign.name)),
			"name a directory that is new, empty, or holds the files of an earlier run only")
	case errors.Is(err, fs.ErrPermission):
		return s.refuse(fmt.Sprintf("you may not write into %s, so nothing was written", dir), "name another directory")
	case errors.As(err, &path):
		err = path.Err
	}
	return s.refuse(fmt.Sprintf("%s cannot be written into: %v", dir, err), "name another directory")
}
