package pdf

import (
	"encoding/binary"
	"errors"
)

var (
	errOutlines = errors.New("it has no TrueType outlines; wanted a TrueType font (.ttf), not a collection and not OpenType with PostScript outlines")
	errLetters  = errors.New("it does not say which letters it has; wanted a TrueType font with a Unicode table")
)

// needed are the tables of a TrueType font that a document needs.
var needed = []string{"cmap", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post", "OS/2"}

// setsTrueType reports why a font cannot be put into a document, nil if it can: what the
// document's reader of fonts takes for granted. (OpenType specification, "cmap" and font
// file.) The font has been parsed before, so its tables are within it.
func setsTrueType(data []byte) error {
	const header, record = 12, 16
	kind := binary.BigEndian.Uint32(data)
	if kind != 0x00010000 && kind != 0x74727565 {
		return errOutlines
	}
	tables := map[string][]byte{}
	for i := range int(binary.BigEndian.Uint16(data[4:])) {
		r := data[header+i*record:]
		at, size := binary.BigEndian.Uint32(r[8:]), binary.BigEndian.Uint32(r[12:])
		tables[string(r[:4])] = data[at : at+size]
	}
	for _, name := range needed {
		if len(tables[name]) == 0 {
			return errOutlines
		}
	}
	cmap := tables["cmap"]
	for i := range int(binary.BigEndian.Uint16(cmap[2:])) {
		r := cmap[4+i*8:]
		platform, encoding, at := binary.BigEndian.Uint16(r), binary.BigEndian.Uint16(r[2:]), binary.BigEndian.Uint32(r[4:])
		unicode := platform == 0 || platform == 3 && encoding == 1
		const segments = 4 // the format that has every letter up to U+FFFF
		if unicode && binary.BigEndian.Uint16(cmap[at:]) == segments {
			return nil
		}
	}
	return errLetters
}
