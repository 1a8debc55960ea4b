package signoff

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"time"

	"example.com/hingeline/verify/bench"
)

// BenchDirectory is where the records of the bench about an airframe file are.
func BenchDirectory(airframe string) string { return bare(airframe) + ".bench" }

var benchRecordName = regexp.MustCompile(`^([0-9]{4})\.jsonl$`)

// BenchRecordNumber is the number of a record of the bench by its name without a directory;
// 0 of another file.
func BenchRecordNumber(name string) int {
	if m := benchRecordName.FindStringSubmatch(name); m != nil {
		return number(m[1])
	}
	return 0
}

// walked is a walk-around of a set-up that is beside its airframe file.
type walked struct {
	number int
	file   string // from the directory of the airframe file, with slashes
	text   []byte
	seen   *Seen // nil where it cannot be used
	seal   *bench.Seal
	last   time.Time // of its last answer
	wrong  error     // why it cannot be used
}

// walks are the walk-arounds of a set-up in which anything was said, and those of which it
// cannot be told.
func walks(airframe, setUp string) (all []walked, err error) {
	dir := BenchDirectory(airframe)
	entries, err := os.ReadDir(dir)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	for _, e := range entries {
		n := BenchRecordNumber(e.Name())
		if n == 0 || e.IsDir() {
			continue
		}
		w := walked{number: n, file: filepath.Base(dir) + "/" + e.Name()}
		if w.read(filepath.Join(dir, e.Name()), setUp) {
			all = append(all, w)
		}
	}
	return all, err
}

// read says whether a record has something to say of a set-up, or cannot be used.
func (w *walked) read(name, setUp string) bool {
	if w.text, w.wrong = readSome(name, MaxBenchBytes); w.wrong != nil {
		return true
	}
	if len(w.text) == 0 { // begun, and not one line written
		return false
	}
	if len(w.text) > MaxBenchBytes {
		w.wrong = errors.New("it is far too large")
		return true
	}
	r, err := bench.Read(w.text)
	switch {
	case err != nil:
		w.wrong = err
		return true
	case r.Header.SetUp != setUp || len(r.Events) == 0:
		return false
	}
	if w.seal, w.wrong = r.Seal(); w.wrong == nil {
		w.seen = seenOf(w.file, w.text, w.seal)
		w.last, w.wrong = time.Parse(time.RFC3339, w.seal.Date)
	}
	return true
}

// replaces says whether what a walk-around says holds in place of what another said: it
// was begun behind it and ended behind it, and looked again at what the other found.
func (w *walked) replaces(other *walked) bool {
	return w.wrong == nil && w.seal.Replaces(other.seal) && w.number > other.number && !w.last.Before(other.last)
}

// holding are the walk-arounds that something speaks against, and in place of which none
// behind them holds, the newest first.
func holding(all []walked, against func(*walked) bool) (list []*walked) {
	for i := range all {
		w := &all[i]
		if against(w) && !slices.ContainsFunc(all, func(other walked) bool { return other.replaces(w) }) {
			list = append(list, w)
		}
	}
	slices.SortStableFunc(list, func(a, b *walked) int { return cmp.Or(b.last.Compare(a.last), b.number-a.number) })
	return list
}

func differing(w *walked) bool { return w.wrong == nil && w.seal.Against() }

// benchBeside are the walk-arounds of a set-up beside its airframe file in which something
// was not as expected and in place of which no later one holds, the newest first. The error
// says why it cannot be told.
func benchBeside(airframe, setUp string) ([]*walked, error) {
	all, err := walks(airframe, setUp)
	if err != nil {
		return nil, refuse("", "the records of the bench in %s cannot be read: %v", BenchDirectory(airframe), err)
	}
	if bad := holding(all, func(w *walked) bool { return w.wrong != nil }); len(bad) > 0 {
		return nil, refuse("walk around the model anew with \"hingeline bench\", or move that file away and keep it",
			"%s, a record of the bench, cannot be used, and it may say DO NOT FLY, so nothing is signed: %v", bad[0].file, bad[0].wrong)
	}
	return holding(all, differing), nil
}

// inSpite is the name by which somebody takes it on themselves.
func (w *walked) inSpite() string {
	if w.seal.Steps.Differ > 0 {
		return Differs
	}
	return NotAllSeen
}

// differs refuses to sign over a walk-around in which something was not as expected. With
// is the record that was named to be signed; empty for none.
func (w *walked) differs(with string) *Refusal {
	hint := "put it right and walk around anew, all of the same steps, or say why it is signed all the same"
	if with != "" {
		hint = fmt.Sprintf("put it right and walk around anew, all of the same steps, or sign with that record in place of %s and say why", with)
	}
	refusal := refuse(hint, "not all was as expected on the model, so nothing is signed: DO NOT FLY")
	refusal.Details = []string{
		fmt.Sprintf("record %s: %s; no walk-around since then looked at all of it again", w.file, w.seen.Summary),
		fmt.Sprintf("--bench %s --accept %s=\"why it is all right\"", w.file, w.inSpite()),
	}
	return refusal
}

// named is the record as sign is given it.
func (w *walked) named(airframe string) *Bench {
	return &Bench{File: filepath.Join(filepath.Dir(airframe), filepath.FromSlash(w.file)), Text: w.text}
}

// lookSince looks for walk-arounds of what is there now that speak against it, and of which
// no signature speaks. The line is empty where there is none; the trouble is one that
// cannot be used.
func (j *judging) lookSince(genuine []*Record) (line, trouble string) {
	if len(genuine) == 0 {
		return "", ""
	}
	all, err := walks(j.airframe, j.present.setUp)
	if err != nil {
		return "", fmt.Sprintf("the records of the bench cannot be read: %v", err)
	}
	signed, files, last := map[string]bool{}, map[string]bool{}, ""
	for _, r := range genuine {
		if r.Seen != nil {
			files[r.Seen.File] = true
		}
		if j.unvouched[r] != "" || !j.work(r).same(j.present) {
			continue
		}
		last = max(last, r.Date)
		if r.Seen != nil {
			signed[r.Seen.SHA256] = true
		}
	}
	if bad := holding(all, func(w *walked) bool { return w.wrong != nil && !files[w.file] }); len(bad) > 0 {
		trouble = fmt.Sprintf("%s, a record of the bench, cannot be used, and it may say DO NOT FLY: %v", bad[0].file, bad[0].wrong)
	}
	unsigned := slices.DeleteFunc(holding(all, differing), func(w *walked) bool { return signed[w.seen.SHA256] })
	switch {
	case len(unsigned) == 0:
		return "", trouble
	case strings.Compare(formatDate(unsigned[0].last), last) >= 0:
		return fmt.Sprintf("since then seen on the model: NOT AS EXPECTED, record %s: DO NOT FLY", unsigned[0].file), trouble
	}
	return fmt.Sprintf("seen on the model: NOT AS EXPECTED, record %s, of which no signature speaks: DO NOT FLY", unsigned[0].file), trouble
}
