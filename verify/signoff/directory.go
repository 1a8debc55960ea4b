package signoff

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// Directory is where the records about an airframe file are: beside it, under its name
// with another ending.
func Directory(airframe string) string { return bare(airframe) + ".signed" }

// bare is the name of an airframe file without its ending.
func bare(airframe string) string {
	for _, suffix := range []string{".yaml", ".yml"} {
		if bare, ok := strings.CutSuffix(airframe, suffix); ok && filepath.Base(airframe) != suffix {
			return bare
		}
	}
	return airframe
}

// maxRecords is the most records about one model.
const maxRecords = 9999

var (
	recordName    = regexp.MustCompile(`^([0-9]{4})\.json$`)
	signatureName = regexp.MustCompile(`^([0-9]{4})\.json\.sig$`)
	temporaryName = regexp.MustCompile(`^\.new-`)
)

func nameOf(number int) string { return fmt.Sprintf("%04d.json", number) }

const signatureSuffix = ".sig"

// found is what is in a directory of records.
type found struct {
	records    []int // their numbers, ascending
	signatures []int
	temporary  []string // names of files whose writing was broken off
}

// look lists a directory. One that is not there holds nothing.
func look(dir string) (found, error) {
	entries, err := os.ReadDir(dir)
	if errors.Is(err, fs.ErrNotExist) {
		return found{}, nil
	}
	var f found
	for _, e := range entries {
		if m := recordName.FindStringSubmatch(e.Name()); m != nil {
			f.records = append(f.records, number(m[1]))
		} else if m := signatureName.FindStringSubmatch(e.Name()); m != nil {
			f.signatures = append(f.signatures, number(m[1]))
		} else if temporaryName.MatchString(e.Name()) {
			f.temporary = append(f.temporary, e.Name())
		}
	}
	slices.Sort(f.records)
	return f, err
}

func number(digits string) int {
	n, err := strconv.Atoi(digits)
	if err != nil {
		panic(err) // the pattern lets digits only through
	}
	return n
}

// entry is one record as it was found.
type entry struct {
	number int
	text   []byte
	record *Record    // nil: it cannot be read
	by     *signature // of a record with a key: its signature, nil if that is wrong
	wrong  string     // what is wrong with it, a sentence about "it"; empty if nothing is
}

// genuine says whether nothing is wrong with a record.
func (e *entry) genuine() bool { return e.wrong == "" }

// readAll reads every record of a directory, with what is wrong with each. The error is
// that of a directory or file that may not be read; what is wrong with what was read is
// none.
func readAll(dir string) ([]entry, error) {
	f, err := look(dir)
	if err != nil {
		return nil, err
	}
	var all []entry
	for i, n := range f.records {
		e := entry{number: n}
		if e.text, err = readSome(filepath.Join(dir, nameOf(n)), maxRecordBytes); err != nil {
			return nil, err
		}
		var before *entry
		if i > 0 {
			before = &all[i-1]
		}
		e.look(before)
		if err := e.lookAtSignature(dir, slices.Contains(f.signatures, n)); err != nil {
			return nil, err
		}
		all = append(all, e)
	}
	return all, nil
}

// readSome is the text of a file, or one byte more than the most of a longer one.
func readSome(name string, most int64) ([]byte, error) {
	if info, err := os.Stat(name); err == nil && !info.Mode().IsRegular() { // opening a pipe would wait for ever
		return nil, &fs.PathError{Op: "read", Path: name, Err: errors.New("it is no file")}
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, most+1))
}

// look decodes a record and sees whether it follows the one before it.
func (e *entry) look(before *entry) {
	if len(e.text) > maxRecordBytes {
		e.wrong = "it is far too large for a record"
		return
	}
	r, err := decode(e.text)
	if err != nil {
		e.wrong = err.Error()
		return
	}
	e.record = r
	last := 0
	if before != nil {
		last = before.number
	}
	switch {
	case r.Number != e.number:
		e.wrong = fmt.Sprintf("it was record %d, and has been given another number", r.Number)
	case e.number != last+1:
		e.wrong = fmt.Sprintf("record %d, before it, is missing", e.number-1)
	case before == nil:
	case r.Previous != digestOf(before.text):
		e.wrong = fmt.Sprintf("record %d is not the one that was before it when it was signed", before.number)
	case before.record != nil && r.Date < before.record.Date:
		e.wrong = fmt.Sprintf("it is dated before record %d, which it follows", before.number)
	}
}

// lookAtSignature sees whether the signature beside a record is right.
func (e *entry) lookAtSignature(dir string, there bool) error {
	if e.record == nil {
		return nil
	}
	complain := func(format string, args ...any) {
		if e.wrong == "" {
			e.wrong = fmt.Sprintf(format, args...)
		}
	}
	switch {
	case e.record.Key == "" && there:
		complain("there is a signature beside it that it does not speak of")
		return nil
	case e.record.Key == "":
		return nil
	case !there:
		complain("the signature of its key is missing")
		return nil
	}
	text, err := readSome(filepath.Join(dir, nameOf(e.number)+signatureSuffix), maxSignatureBytes)
	if err != nil {
		return err
	}
	s, err := checkSignature(text, e.text, e.record.Key)
	if err != nil {
		complain("its signature is not right: %v", err)
		return nil
	}
	e.by = s
	return nil
}

// checkSignature reads a signature file and holds it against the message and the
// fingerprint that it must be by.
func checkSignature(text, message []byte, fingerprint string) (*signature, error) {
	s, err := parseSignature(text)
	if err != nil {
		return nil, err
	}
	if s.fingerprint() != fingerprint {
		return nil, fmt.Errorf("it is by the key %s, wanted %s", s.fingerprint(), fingerprint)
	}
	return s, s.verify(message)
}
