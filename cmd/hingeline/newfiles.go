package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"unicode"
)

// newFile is a file that is not there yet.
type newFile struct {
	name string
	text []byte
}

// writeNew writes files, all of them or none, and never over one that is there.
// Nobody sees a file half written: each is written under another name and then
// gets its own.
func writeNew(files []newFile) (err error) {
	for _, f := range files {
		if _, err := os.Lstat(f.name); err == nil {
			return &fs.PathError{Op: "create", Path: f.name, Err: fs.ErrExist}
		}
	}
	var done []string
	defer func() {
		if err != nil {
			for _, name := range done {
				os.Remove(name)
			}
		}
	}()
	for _, f := range files {
		if err := writeOne(f); err != nil {
			return err
		}
		done = append(done, f.name)
	}
	return nil
}

func writeOne(f newFile) error {
	temporary, err := os.CreateTemp(filepath.Dir(f.name), ".hingeline-*")
	if err != nil {
		return err
	}
	defer os.Remove(temporary.Name())
	_, err = temporary.Write(f.text)
	err = errors.Join(err, temporary.Chmod(newFileMode), temporary.Sync(), temporary.Close())
	if err != nil {
		return err
	}
	err = os.Link(temporary.Name(), f.name)
	if err == nil || errors.Is(err, fs.ErrExist) {
		return err
	}
	return nameWithoutLinks(temporary.Name(), f.name)
}

// newFileMode is what anyone may do with a file that was written.
const newFileMode = 0o644

// nameWithoutLinks gives a file its name where the file system knows no links:
// the name is taken first, by a file that only we can have made.
func nameWithoutLinks(temporary, name string) error {
	taken, err := os.OpenFile(name, os.O_CREATE|os.O_EXCL|os.O_WRONLY, newFileMode)
	if err != nil {
		return err
	}
	taken.Close()
	if err := os.Rename(temporary, name); err != nil {
		os.Remove(name)
		return err
	}
	return nil
}

// notWritten says why nothing was written.
func (s *session) notWritten(err error) error {
	name, why := "the file", err
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		name, why = path.Path, path.Err
	case errors.As(err, &link):
		name, why = link.New, link.Err
	}
	switch {
	case errors.Is(err, fs.ErrExist):
		return s.refuse(fmt.Sprintf("%s is there already, so nothing was written", name),
			"choose another name or another directory, or move that file away")
	case errors.Is(err, fs.ErrNotExist):
		return s.refuse(fmt.Sprintf("there is no directory %s, so nothing was written", filepath.Dir(name)),
			"make it first, or choose another")
	case errors.Is(err, fs.ErrPermission):
		return s.refuse(fmt.Sprintf("you may not write into %s, so nothing was written", filepath.Dir(name)),
			"choose another directory")
	}
	return s.refuse(fmt.Sprintf("%s cannot be written: %v; nothing was written", name, why), "")
}

// longestName is the most characters that an airframe file lets a model's name
// have.
const longestName = 80

// longestBase is the most characters of a file name without its ending.
const longestBase = 60

// devices are names that Windows keeps for itself, whatever their ending.
var devices = []string{"con", "prn", "aux", "nul", "com1", "com2", "com3", "com4", "com5", "com6", "com7", "com8", "com9",
	"lpt1", "lpt2", "lpt3", "lpt4", "lpt5", "lpt6", "lpt7", "lpt8", "lpt9"}

// plainLetters spells what file names cannot be trusted with: the letters that
// names of the Latin alphabet have besides a to z.
var plainLetters = strings.NewReplacer(
	"ä", "a", "à", "a", "á", "a", "â", "a", "ã", "a", "å", "a", "æ", "ae", "ç", "c", "č", "c", "ć", "c",
	"è", "e", "é", "e", "ê", "e", "ë", "e", "ě", "e", "ì", "i", "í", "i", "î", "i", "ï", "i", "ł", "l",
	"ñ", "n", "ń", "n", "ö", "o", "ò", "o", "ó", "o", "ô", "o", "õ", "o", "ø", "o", "œ", "oe", "ř", "r",
	"ß", "ss", "š", "s", "ś", "s", "ü", "u", "ù", "u", "ú", "u", "û", "u", "ů", "u", "ý", "y", "ÿ", "y", "ž", "z", "ż", "z",
)

// fileBase is the name of a model as a file is called on every system, without
// its ending: "Wren 2" is wren-2. The problem is empty if there is none.
func fileBase(name string) (base, problem string) {
	if strings.ContainsFunc(name, unicode.IsControl) {
		return "", fmt.Sprintf("the name %q holds a character that cannot be seen", name)
	}
	if count := len([]rune(name)); count > longestName {
		return "", fmt.Sprintf("the name has %d characters, want at most %d", count, longestName)
	}
	var b strings.Builder
	for _, word := range strings.FieldsFunc(plainLetters.Replace(strings.ToLower(name)), func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= '0' && r <= '9')
	}) {
		if b.Len() > 0 {
			b.WriteByte('-')
		}
		b.WriteString(word)
	}
	base = strings.TrimRight(b.String()[:min(b.Len(), longestBase)], "-")
	switch {
	case base == "":
		return "", fmt.Sprintf("the name %q has nothing in it to call a file by", name)
	case slices.Contains(devices, base):
		base += "-model"
	}
	return base, ""
}
