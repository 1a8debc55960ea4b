package signoff

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
)

var errStopped = errors.New("the machine stopped")

// frail is a disk on which one step goes wrong.
type frail struct {
	quick
	step  int   // counts down; the step at 0 is the one
	fails error // what it and every step after it says
	only  bool  // only steps that need room fail, and what was written can be removed
}

// ok says whether a step is done.
func (d *frail) ok(needsRoom bool) bool {
	if d.only && !needsRoom {
		return true
	}
	d.step--
	return d.step >= 0
}

func (d *frail) makeDir(name string) error {
	if !d.ok(true) {
		return d.fails
	}
	return d.quick.makeDir(name)
}

func (d *frail) create(name string) (diskFile, error) {
	if !d.ok(true) {
		return nil, d.fails
	}
	f, err := d.quick.create(name)
	return &frailFile{f, d}, err
}

func (d *frail) name(from, to string) error {
	if !d.ok(true) {
		return d.fails
	}
	return d.quick.name(from, to)
}

func (d *frail) replace(from, to string) error {
	if !d.ok(true) {
		return d.fails
	}
	return d.quick.replace(from, to)
}

func (d *frail) remove(name string) error {
	if !d.ok(false) {
		return d.fails
	}
	return d.quick.remove(name)
}

func (d *frail) settle(dir string) error {
	if !d.ok(true) {
		return d.fails
	}
	return d.quick.settle(dir)
}

type frailFile struct {
	diskFile
	disk *frail
}

// Write writes half where it goes wrong.
func (f *frailFile) Write(text []byte) (int, error) {
	if !f.disk.ok(true) {
		n, _ := f.diskFile.Write(text[:len(text)/2])
		return n, f.disk.fails
	}
	return f.diskFile.Write(text)
}

func (f *frailFile) Sync() error {
	if !f.disk.ok(true) {
		return f.disk.fails
	}
	return f.diskFile.Sync()
}

// Whatever step of writing goes wrong, the machine stopping or the disk being full: what
// was there is there, nothing half is taken for a record, and the next run goes on.
func TestSignLosesNothingWhereverItIsStopped(t *testing.T) {
	key := quickKey(t)
	for _, fault := range []struct {
		name string
		disk frail
	}{
		{"stopped", frail{fails: errStopped}},
		{"full", frail{fails: syscall.ENOSPC, only: true}},
	} {
		for _, with := range []*Key{nil, key} {
			for before := range 2 {
				steps := 0
				for ; ; steps++ {
					d := fault.disk
					d.step = steps
					if !stoppedAt(t, &d, before, with) {
						break
					}
				}
				least := 6
				if with != nil {
					least = 11
				}
				if steps < least {
					t.Errorf("%s: only %d steps were tried: this test sees less than there is", fault.name, steps)
				}
			}
		}
	}
}

// stoppedAt signs on a frail disk, and says whether it went wrong.
func stoppedAt(t *testing.T, d *frail, before int, key *Key) bool {
	airframe := newAirframe(t)
	dir := Directory(airframe)
	var kept [][]byte
	for range before {
		kept = append(kept, read(t, mustSign(t, request(t, airframe)).File))
	}
	_, err := signOn(d, request(t, airframe).by("Ben Poole", Second, key))
	all := entries(t, airframe)
	whole := len(all) - before
	switch {
	case err == nil && whole != 1:
		t.Fatalf("no error, and %d records more", whole)
	case err != nil && whole > 0 && !errors.Is(err, ErrMayNotLast) && !errors.Is(err, errStopped):
		t.Fatalf("it said %v, and wrote a record", err)
	case err != nil && !errors.Is(err, d.fails):
		t.Fatalf("got %v, want %v", err, d.fails)
	}
	for i, e := range all {
		if !e.genuine() {
			t.Fatalf("after %v: record %d: %s", err, e.number, e.wrong)
		}
		if i < before && !bytes.Equal(e.text, kept[i]) {
			t.Fatalf("after %v record %d is another", err, e.number)
		}
	}
	s := mustSign(t, request(t, airframe).by("Cy Lund", Inspector, key.other(whole > 0)))
	if s.Record.Number != len(all)+1 {
		t.Fatalf("after %v the next is record %d", err, s.Record.Number)
	}
	for _, wrong := range wrongs(t, airframe) {
		if wrong != "" {
			t.Fatalf("after %v, and signed again: %s", err, wrong)
		}
	}
	listed, err2 := os.ReadDir(dir)
	if err2 != nil {
		t.Fatal(err2)
	}
	for _, e := range listed {
		if strings.HasPrefix(e.Name(), ".new-") {
			t.Fatalf("after %v, and signed again, %s is still there", err, e.Name())
		}
	}
	return err != nil
}

// other is no key where this one has signed as somebody else already.
func (k *Key) other(used bool) *Key {
	if used {
		return nil
	}
	return k
}

// Signatures that a stopped run left are not taken for those of the next record.
func TestSignRemovesWhatAStoppedRunLeft(t *testing.T) {
	airframe := newAirframe(t)
	mustSign(t, request(t, airframe))
	dir := Directory(airframe)
	left := filepath.Join(dir, "0002.json.sig")
	write(t, left, []byte("half a signature"))
	write(t, filepath.Join(dir, ".new-0002.json"), []byte("{"))
	if got := wrongs(t, airframe); len(got) != 1 || got[0] != "" {
		t.Errorf("what a stopped run left counts: %q", got)
	}
	mustSign(t, request(t, airframe).by("Ben Poole", Second, nil))
	if _, err := os.Stat(left); err == nil {
		t.Error("the signature is still there")
	}
	if got := wrongs(t, airframe); len(got) != 2 || got[0]+got[1] != "" {
		t.Errorf("%q", got)
	}
}

func TestSignAtTheSameTimeMakesOneChain(t *testing.T) {
	airframe := newAirframe(t)
	req := request(t, airframe)
	key := quickKey(t)
	names := []string{"Ada Crane", "Ben Poole", "Cy Lund", "Dot Vane", "Eli Marsh", "Fay Holm"}
	var wait sync.WaitGroup
	for i, name := range names {
		wait.Go(func() {
			with := key
			if i > 0 {
				with = nil
			}
			if _, err := signOn(quick{}, req.by(name, Builder, with)); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		})
	}
	wait.Wait()
	seen := map[string]bool{}
	for i, e := range entries(t, airframe) {
		if !e.genuine() || e.number != i+1 {
			t.Errorf("record %d: %s", e.number, e.wrong)
			continue
		}
		seen[e.record.Name] = true
	}
	if len(seen) != len(names) {
		t.Errorf("%d of %d signed", len(seen), len(names))
	}
}

func TestRecordIsNeverWrittenOverAnother(t *testing.T) {
	dir := t.TempDir()
	if err := appendRecord(realDisk{}, dir, 1, []byte("first"), nil); err != nil {
		t.Fatal(err)
	}
	if err := appendRecord(realDisk{}, dir, 1, []byte("second"), nil); !errors.Is(err, os.ErrExist) {
		t.Errorf("got %v, want that it is there", err)
	}
	if got := read(t, filepath.Join(dir, "0001.json")); string(got) != "first" {
		t.Errorf("it is %q now", got)
	}
}
