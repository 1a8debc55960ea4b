package resolved

import (
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"hash"
	"slices"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
)

// Setting is one thing that a set-up says, with every default filled in.
type Setting struct {
	Path  string     // "channels/03/mix/1/share"; names in it as they are compared
	Value string     // exact: numbers in the shortest form that gives them back
	Place diag.Place // of the setting in its file, or of the nearest thing around it that the file has

	name  string // what sentences call it: "share of roll"
	words string // the value as people read it; empty of what is said by yes and no
	unit  string // behind words and exact value: " %", "°"
	yes   string // of what is so or not: "is reversed"
	no    string // "is no longer reversed"
	bears []string
}

// SetUp is every setting of a model that bears on any answer, sorted by path.
func SetUp(m *airframes.Model) []Setting {
	var list []Setting
	m0 := build(m, &m.Setup)
	m0.flatten("", &list)
	slices.SortFunc(list, func(a, b Setting) int { return strings.Compare(a.Path, b.Path) })
	return list
}

// The formats of what is hashed; they change when what they hold does.
const (
	setUpFormat  = "hingeline set-up, format 1\n"
	scriptFormat = "hingeline script, format 1\n"
)

// Digest is a fingerprint of settings: "sha256:" and 64 hexadecimal digits. Each path
// and value is hashed with its length before it, so that nothing can be moved from
// one into the other.
func Digest(settings []Setting) string {
	h := newHash(setUpFormat, len(settings))
	for i := range settings {
		write(h, settings[i].Path)
		write(h, settings[i].Value)
	}
	return said(h)
}

func newHash(format string, count int) hash.Hash {
	h := sha256.New()
	write(h, format)
	writeCount(h, count)
	return h
}

func write(h hash.Hash, text string) {
	writeCount(h, len(text))
	h.Write([]byte(text))
}

func writeCount(h hash.Hash, n int) {
	var size [8]byte
	binary.BigEndian.PutUint64(size[:], uint64(n))
	h.Write(size[:])
}

func said(h hash.Hash) string { return "sha256:" + hex.EncodeToString(h.Sum(nil)) }
