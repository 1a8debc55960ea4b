package main

import (
	"errors"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/verify/bench"
)

// startedRecord begins a record of a built-in model in the working directory and pauses it.
func startedRecord(t *testing.T) *bench.Record {
	t.Helper()
	t.Chdir(t.TempDir())
	if err := os.WriteFile("begin.txt", []byte("yes\nyes\nyes\ny\np\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, messages, code := called("bench", "pellin-park", "--shortest", "--answers", "begin.txt"); code != statusNo {
		t.Fatalf("exit status %d: %s", code, messages)
	}
	text, err := os.ReadFile(recordPath("pellin-park.bench", 1))
	if err != nil {
		t.Fatal(err)
	}
	r, err := bench.Read(text)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// While a walk is on, nobody else goes on with its record, and it stays as it is; what was
// written meanwhile is never cut off.
func TestRecordIsOpenOnce(t *testing.T) {
	r := startedRecord(t)
	f, err := openRecordFile("pellin-park.bench", 1, r)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := openRecordFile("pellin-park.bench", 1, r); !errors.Is(err, errRecordInUse) {
		t.Errorf("opened a second time: %v", err)
	}
	_, messages, code := called("bench", "pellin-park", "--resume", "--answers", "begin.txt")
	if code != statusBadInput || !strings.Contains(messages, "open in another window") {
		t.Errorf("exit status %d: %s", code, messages)
	}
	line := []byte(`{"event":"resumed","at":"2026-11-25T12:00:00Z"}` + "\n")
	if err := errors.Join(f.Append(line), f.close()); err != nil {
		t.Fatal(err)
	}
	if _, err := openRecordFile("pellin-park.bench", 1, r); err == nil || !strings.Contains(err.Error(), "by another program meanwhile") {
		t.Errorf("opened as it was before: %v", err)
	}
	if text, _ := os.ReadFile(recordPath("pellin-park.bench", 1)); !slices.Equal(text, append(slices.Clone(r.Text), line...)) {
		t.Errorf("the record holds\n%s", text)
	}
}

// failingDisk takes half of a line, or all of it without making it last.
type failingDisk struct {
	recordDisk
	takes func(line []byte) []byte
}

var errDiskFull = errors.New("the disk is full")

func (d *failingDisk) WriteAt(line []byte, at int64) (int, error) {
	if taken := d.takes(line); len(taken) < len(line) {
		n, err := d.recordDisk.WriteAt(taken, at)
		return n, errors.Join(err, errDiskFull)
	}
	return d.recordDisk.WriteAt(line, at)
}

func (d *failingDisk) Sync() error { return errDiskFull }

// Of an answer that could not be kept the record holds nothing; the next one stands in its
// place.
func TestAnswerThatWasNotKeptIsNotInTheRecord(t *testing.T) {
	line := []byte(`{"event":"resumed","at":"2026-11-25T12:00:00Z"}` + "\n")
	for name, takes := range map[string]func([]byte) []byte{
		"half of it": func(line []byte) []byte { return line[:len(line)/2] },
		"nothing":    func([]byte) []byte { return nil },
		"all of it":  func(line []byte) []byte { return line },
	} {
		t.Run(name, func(t *testing.T) {
			r := startedRecord(t)
			f, err := openRecordFile("pellin-park.bench", 1, r)
			if err != nil {
				t.Fatal(err)
			}
			disk := f.file
			f.file = &failingDisk{disk, takes}
			if err := f.Append(line); !errors.Is(err, errDiskFull) {
				t.Fatalf("a full disk: %v", err)
			}
			if text, _ := os.ReadFile(recordPath("pellin-park.bench", 1)); !slices.Equal(text, r.Text) {
				t.Errorf("the record holds\n%s", text)
			}
			f.file = disk
			if err := errors.Join(f.Append(line), f.close()); err != nil {
				t.Fatal(err)
			}
			if text, _ := os.ReadFile(recordPath("pellin-park.bench", 1)); !slices.Equal(text, append(slices.Clone(r.Text), line...)) {
				t.Errorf("later it holds\n%s", text)
			}
		})
	}
}

// A record whose header cannot be written is none; an empty one, as a full disk leaves it,
// does not hide the one before it.
func TestEmptyRecordHidesNone(t *testing.T) {
	startedRecord(t)
	f := newRecordFile("pellin-park.bench", &bench.Header{Look: bench.LookJSON{Visible: math.NaN()}})
	if err := f.Append([]byte("{}\n")); err == nil {
		t.Error("a header that cannot be written is written")
	}
	if left, _ := filepath.Glob("pellin-park.bench/*"); len(left) != 1 || f.path() != "" {
		t.Errorf("it leaves %q", left)
	}
	if err := os.WriteFile(recordPath("pellin-park.bench", 2), nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if n := unfinished("pellin-park.bench"); n != 1 {
		t.Errorf("record %d is not finished, wanted 1", n)
	}
	if err := os.WriteFile("on.txt", []byte("no\nyes\nyes\nyes\np\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, messages, _ := called("bench", "pellin-park", "--resume", "--answers", "on.txt"); !strings.Contains(messages, "going on with record 1") {
		t.Error(messages)
	}
}
