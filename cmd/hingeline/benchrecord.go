package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/signoff"
)

// maxBenchRecords is the most records about one model.
const maxBenchRecords = 9999

// maxRecordBytes is the most that a record may hold: many times the longest airframe file
// with its scripts and thousands of answers.
const maxRecordBytes = 64 << 20

// recordDirectory is where the records about a model are: beside its file, under its name
// with another ending; those of a built-in model in the working directory.
func recordDirectory(in *inputs) string { return signoff.BenchDirectory(recordedAs(in)) }

// recordedAs is the file that the records are beside.
func recordedAs(in *inputs) string {
	name := strings.TrimPrefix(in.sources[0].Name, builtIn)
	if len(in.disk) > 0 {
		name = in.disk[0].name
	}
	return name
}

// numberOf is the number that a text is, 0 for none.
func numberOf(text string) int {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > maxBenchRecords {
		return 0
	}
	return n
}

// newestIn is the number of the newest record in a directory; 0 for none.
func newestIn(dir string) int {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return 0
	}
	newest := 0
	for _, e := range entries {
		newest = max(newest, signoff.BenchRecordNumber(e.Name()))
	}
	return newest
}

func recordPath(dir string, number int) string {
	return filepath.Join(dir, fmt.Sprintf("%04d.jsonl", number))
}

// newestWritten is the number of the newest record in which anything stands; 0 for none.
func newestWritten(dir string) int {
	for n := newestIn(dir); n > 0; n-- {
		if info, err := os.Stat(recordPath(dir, n)); err == nil && info.Size() > 0 {
			return n
		}
	}
	return 0
}

// readRecord reads the file of a record that may hold so many bytes, and never waits for
// one that is none.
func readRecord(name string, most int64) ([]byte, error) {
	info, err := os.Stat(name)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, errors.New("it is no file")
	}
	return readFileUpTo(name, most)
}

// unfinished is the number of the newest record where that was not gone through to its
// end; 0 where it was, or there is none.
func unfinished(dir string) int {
	n := newestWritten(dir)
	if n == 0 {
		return 0
	}
	text, err := readRecord(recordPath(dir, n), maxRecordBytes)
	if err != nil {
		return 0
	}
	r, err := bench.Read(text)
	if err != nil || r.Ended() {
		return 0
	}
	return n
}

// recordDisk is the file of a record, as a disk has it that may be full.
type recordDisk interface {
	io.WriterAt
	io.Closer
	Truncate(size int64) error
	Sync() error
	Stat() (fs.FileInfo, error)
}

// recordFile is a record on disk. It is made with the first line that is written, under
// the next number that is free; a line is on the disk when Append returns.
type recordFile struct {
	dir    string
	number int
	header *bench.Header // that is still to be written; nil of a record that is there
	file   recordDisk    // nil until then
	size   int64         // of the lines that are there
}

func newRecordFile(dir string, header *bench.Header) *recordFile {
	return &recordFile{dir: dir, header: header}
}

// errRecordInUse is that a walk with a record is on elsewhere.
var errRecordInUse = errors.New("it is open in another window: go on there, or pause it there first")

// openRecordFile goes on with a record that was read, behind its whole lines.
func openRecordFile(dir string, number int, read *bench.Record) (*recordFile, error) {
	f, err := os.OpenFile(recordPath(dir, number), os.O_RDWR, 0)
	if err != nil {
		return nil, err
	}
	if err := lockRecord(f); err != nil {
		f.Close()
		return nil, errRecordInUse
	}
	r := &recordFile{dir: dir, number: number, file: f, size: int64(len(read.Text))}
	if err := r.untouched(); err != nil {
		f.Close()
		return nil, err
	}
	r.size = int64(read.Whole)
	if err := errors.Join(f.Truncate(r.size), f.Sync()); err != nil {
		f.Close()
		return nil, err
	}
	return r, nil
}

// shown is where records are, as it is said.
func (r *recordFile) shown() string { return filepath.ToSlash(r.dir) }

// path is the file, empty where there is none yet.
func (r *recordFile) path() string {
	if r.file == nil {
		return ""
	}
	return filepath.ToSlash(recordPath(r.dir, r.number))
}

// Append writes one line, and returns once it is on the disk. A line that does not come to
// be there in whole is taken away again.
func (r *recordFile) Append(line []byte) error {
	if r.file == nil {
		if err := r.create(); err != nil {
			return err
		}
		header := r.header
		r.header = nil
		if err := header.Begin(r); err != nil { // a record without its header is none
			err = errors.Join(err, r.file.Close(), os.Remove(recordPath(r.dir, r.number)))
			r.file, r.header, r.size = nil, header, 0
			return err
		}
	}
	if err := r.untouched(); err != nil {
		return err
	}
	if _, err := r.file.WriteAt(line, r.size); err != nil {
		return errors.Join(err, r.file.Truncate(r.size))
	}
	if err := r.file.Sync(); err != nil {
		return errors.Join(err, r.file.Truncate(r.size))
	}
	r.size += int64(len(line))
	return nil
}

// untouched says whether another program wrote to the file.
func (r *recordFile) untouched() error {
	info, err := r.file.Stat()
	if err == nil && info.Size() != r.size {
		err = fmt.Errorf("%s was written to by another program meanwhile", r.path())
	}
	return err
}

// create makes the file under the next free number.
func (r *recordFile) create() error {
	if err := os.MkdirAll(r.dir, 0o755); err != nil {
		return err
	}
	for n := newestIn(r.dir) + 1; n <= maxBenchRecords; n++ {
		f, err := os.OpenFile(recordPath(r.dir, n), os.O_CREATE|os.O_EXCL|os.O_WRONLY, newFileMode)
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err != nil {
			return err
		}
		if err := lockRecord(f); err != nil {
			f.Close()
			return errRecordInUse
		}
		r.file, r.number = f, n
		syncDirectory(r.dir)
		return nil
	}
	return fmt.Errorf("%s holds %d records already", r.dir, maxBenchRecords)
}

// syncDirectory makes a new name last. Not every system lets a directory be synced; there
// it lasts by itself.
func syncDirectory(dir string) {
	if d, err := os.Open(dir); err == nil {
		d.Sync()
		d.Close()
	}
}

func (r *recordFile) close() error {
	if r.file == nil {
		return nil
	}
	return r.file.Close()
}
