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
	there, err := os.ReadFile(f.name)
	if err == nil && len(there) > 0 && !f.ours(there) {
		return f.name + " is there already and is not " + f.what
	}
	return ""
}

// put writes the file, whole or not at all.
func (f *ownFile) put(text []byte) error {
	switch there, err := os.ReadFile(f.name); {
	case errors.Is(err, fs.ErrNotExist):
		return writeNew([]newFile{{f.name, text}})
	case err != nil:
		return err
	case len(there) > 0 && !f.ours(there): // it came meanwhile
		return &fs.PathError{Op: "replace", Path: f.name, Err: fs.ErrExist}
	}
	return replaceFile(f.name, text)
}
