package main

import (
	"errors"
	"io/fs"
	"os"
)

// ownFile is a file that a run writes, over one that an earlier run wrote.
type ownFile struct {
	name string
	what string                 // what it holds, with its article: "a mutation-testing report"
	ours func(text []byte) bool // whether a text is one of these
}

// taken says why the file may not be written: something else is there by this name.
// Empty where it may.
func (f *ownFile) taken() string {
	info, err := os.Stat(f.name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		if _, err := os.Lstat(f.name); err == nil {
			return f.name + " is a link that leads to no file"
		}
		return ""
	case err != nil:
		return "" // that it cannot be written is told when it is
	case !info.Mode().IsRegular(): // a device or pipe would be replaced, and reading one need not end
		return f.name + " is there already and is no plain file"
	}
	there, err := os.ReadFile(f.name)
	if err == nil && len(there) > 0 && !f.ours(there) {
		return f.name + " is there already and is not " + f.what
	}
	return ""
}

// put writes the file, whole or not at all.
func (f *ownFile) put(text []byte) error {
	switch _, err := os.Stat(f.name); {
	case errors.Is(err, fs.ErrNotExist):
		return writeNew([]newFile{{f.name, text}})
	case err != nil:
		return err
	case f.taken() != "": // it came meanwhile
		return &fs.PathError{Op: "replace", Path: f.name, Err: fs.ErrExist}
	}
	return replaceFile(f.name, text)
}
