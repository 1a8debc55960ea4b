package signoff

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
)

// disk is what writing a record does to the file system, one step each, so that tests
// can stop it or fill it up after any of them.
type disk interface {
	makeDir(name string) error
	create(name string) (diskFile, error) // one that is not there yet
	name(from, to string) error           // gives a file a name that none has yet
	replace(from, to string) error
	remove(name string) error
	settle(dir string) error // makes names in the directory last
}

type diskFile interface {
	io.Writer
	Sync() error
	Close() error
}

// realDisk is the disk of this machine.
type realDisk struct{}

func (realDisk) makeDir(name string) error {
	err := os.Mkdir(name, 0o755)
	if errors.Is(err, fs.ErrExist) {
		return nil
	}
	return err
}

func (realDisk) create(name string) (diskFile, error) {
	return os.OpenFile(name, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o644)
}

func (realDisk) name(from, to string) error {
	err := os.Link(from, to)
	if err == nil || errors.Is(err, fs.ErrExist) {
		return err
	}
	// The file system knows no links. Only the holder of the lock gives names, so that
	// looking first is enough.
	if _, err := os.Lstat(to); err == nil {
		return &fs.PathError{Op: "create", Path: to, Err: fs.ErrExist}
	}
	return os.Rename(from, to)
}

func (realDisk) replace(from, to string) error { return os.Rename(from, to) }

func (realDisk) remove(name string) error { return os.Remove(name) }

func (realDisk) settle(dir string) error {
	if runtime.GOOS == "windows" {
		return nil // a directory cannot be flushed there
	}
	d, err := os.Open(dir)
	if err != nil {
		return err
	}
	return errors.Join(d.Sync(), d.Close())
}

// appendRecord writes a record, and its signature before it if it has one, under the next
// number. Whatever stops it, the records that were there stay, and the new one is there
// whole or not at all. The lock must be held.
func appendRecord(d disk, dir string, number int, text, armoured []byte) error {
	name := filepath.Join(dir, nameOf(number))
	if armoured != nil {
		if err := place(d, dir, name+signatureSuffix, armoured, d.replace); err != nil {
			return err
		}
		if err := d.settle(dir); err != nil {
			return err
		}
	}
	if err := place(d, dir, name, text, d.name); err != nil {
		if armoured != nil {
			d.remove(name + signatureSuffix)
		}
		return err
	}
	if err := d.settle(dir); err != nil {
		return fmt.Errorf("%w: %w", ErrMayNotLast, err)
	}
	return nil
}

// place writes a file under another name and then gives it its own.
func place(d disk, dir, name string, text []byte, give func(from, to string) error) error {
	temporary := filepath.Join(dir, ".new-"+filepath.Base(name))
	f, err := d.create(temporary)
	if err != nil {
		return err
	}
	defer d.remove(temporary) // gone already where it was renamed
	_, err = f.Write(text)
	if err == nil {
		err = f.Sync()
	}
	if err = errors.Join(err, f.Close()); err != nil {
		return err
	}
	return give(temporary, name)
}

// tidy removes what a run that was stopped left behind: files not yet given their name,
// and signatures without their record. The lock must be held.
func tidy(d disk, dir string) error {
	f, err := look(dir)
	if err != nil {
		return err
	}
	leftovers := f.temporary
	last := 0
	if n := len(f.records); n > 0 {
		last = f.records[n-1]
	}
	for _, n := range f.signatures {
		if n > last {
			leftovers = append(leftovers, nameOf(n)+signatureSuffix)
		}
	}
	if len(leftovers) == 0 {
		return nil
	}
	for _, name := range leftovers {
		if err := d.remove(filepath.Join(dir, name)); err != nil {
			return err
		}
	}
	return d.settle(dir)
}
