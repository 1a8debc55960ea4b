package pdf

import (
	"fmt"
	"slices"
	"strings"
	"sync"
	"unicode"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// style is how words are written.
type style uint8

const (
	regular style = iota
	bold
	mono // lines of files
	styles
)

// typeface is one font file with what is needed to set words in it.
type typeface struct {
	name   string // as the document calls it
	data   []byte
	parsed *sfnt.Font
}

// goFaces are the fonts that come with the program, by style.
var goFaces = sync.OnceValue(func() [styles]*typeface {
	var faces [styles]*typeface
	for i, data := range [styles][]byte{goregular.TTF, gobold.TTF, gomono.TTF} {
		parsed, err := sfnt.Parse(data)
		if err != nil {
			panic(err) // the fonts are part of the program
		}
		faces[i] = &typeface{name: [styles]string{"go", "gobold", "gomono"}[i], data: data, parsed: parsed}
	}
	return faces
})

// fonts are the fonts of one document. They measure words and say which font each letter
// is set in.
type fonts struct {
	faces   [styles]*typeface
	extra   [styles]*typeface // where the faces above lack a letter; nil for none
	known   [styles]map[rune]glyph
	buf     sfnt.Buffer
	missing map[rune]bool
}

// glyph is how one letter is set.
type glyph struct {
	face    *typeface // nil: no font has it
	advance float64   // as a part of the size
}

func newFonts(o Options) (*fonts, error) {
	f := &fonts{faces: goFaces(), missing: map[rune]bool{}}
	for i := range f.known {
		f.known[i] = map[rune]glyph{}
	}
	for i, given := range []struct {
		what, name string
		data       []byte
	}{{"font", "other", o.Font}, {"bold font", "otherbold", o.Bold}} {
		if given.data == nil {
			continue
		}
		face, err := parseFont(given.name, given.data)
		if err != nil {
			return nil, fmt.Errorf("the %s cannot be used: %w", given.what, err)
		}
		f.extra[i] = face
	}
	if f.extra[regular] == nil {
		f.extra[regular] = f.extra[bold]
	}
	if f.extra[bold] == nil {
		f.extra[bold] = f.extra[regular]
	}
	f.extra[mono] = f.extra[regular]
	return f, nil
}

// Usable says why a font cannot be one of Options; nil where it can.
func Usable(font []byte) error {
	_, err := parseFont("other", font)
	return err
}

// parseFont reads a font that somebody has given. Whatever is in it, it is used or refused.
func parseFont(name string, data []byte) (face *typeface, err error) {
	defer func() {
		if recover() != nil {
			face, err = nil, fmt.Errorf("it is damaged; wanted a TrueType font")
		}
	}()
	parsed, err := sfnt.Parse(data)
	if err != nil {
		return nil, fmt.Errorf("%w; wanted a TrueType font", err)
	}
	if err := setsTrueType(data); err != nil {
		return nil, err
	}
	face = &typeface{name: name, data: data, parsed: parsed}
	// The document's own reader of fonts must get through it too.
	probe := fpdf.New("P", "mm", "A4", "")
	probe.AddPage()
	probe.AddUTF8FontFromBytes(name, "", slices.Clone(data))
	probe.SetFont(name, "", 8)
	probe.Text(0, 0, "A")
	if err := probe.Output(nothing{}); err != nil {
		return nil, fmt.Errorf("it is damaged; wanted a TrueType font")
	}
	return face, nil
}

// nothing takes what is written and keeps none of it.
type nothing struct{}

func (nothing) Write(b []byte) (int, error) { return len(b), nil }

// replaced is how a letter that no font has is written, so that it is not lost.
func replaced(r rune) string { return fmt.Sprintf("[U+%04X]", r) }

// spaces are letters that are written as a space where a font lacks them, and never break
// a line out of its place.
func space(r rune) bool {
	return r == '\t' || r == '\n' || r == '\r' || r == '\u00a0' || unicode.Is(unicode.Zs, r)
}

// plain makes words fit to be set in one line: spaces of every kind are a space, and letters
// that cannot be set are replaced.
func (f *fonts) plain(words string, s style) string {
	ascii := true
	for i := 0; i < len(words) && ascii; i++ {
		ascii = ' ' <= words[i] && words[i] <= '~'
	}
	if ascii {
		return words
	}
	var b strings.Builder
	for _, r := range words {
		switch {
		case space(r):
			b.WriteByte(' ')
		case f.glyph(r, s).face == nil:
			f.missing[r] = true
			b.WriteString(replaced(r))
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// lastSettable is the last letter that the document's fonts can hold.
const lastSettable = 0xFFFF

func (f *fonts) glyph(r rune, s style) glyph {
	if g, ok := f.known[s][r]; ok {
		return g
	}
	g := glyph{}
	if r <= lastSettable && !unicode.IsControl(r) && !unicode.Is(unicode.Cf, r) {
		for _, face := range []*typeface{f.faces[s], f.extra[s]} {
			if face == nil {
				continue
			}
			if advance, ok := f.advance(face, r); ok {
				g = glyph{face, advance}
				break
			}
		}
	}
	f.known[s][r] = g
	return g
}

// advance is the width of a letter of a face, as a part of its size, and whether it has it.
func (f *fonts) advance(face *typeface, r rune) (wide float64, ok bool) {
	index, err := face.parsed.GlyphIndex(&f.buf, r)
	if err != nil || index == 0 {
		return 0, false
	}
	units := face.parsed.UnitsPerEm()
	a, err := face.parsed.GlyphAdvance(&f.buf, index, fixed.I(int(units)), font.HintingNone)
	if err != nil {
		return 0, false
	}
	return float64(a) / 64 / float64(units), true
}

// width is how wide words are in millimetres; they have been made plain.
func (f *fonts) width(words string, s style, size float64) float64 {
	w := 0.0
	for _, r := range words {
		w += f.glyph(r, s).advance
	}
	return w * size
}

// lacked are the letters that were asked for and that no font has.
func (f *fonts) lacked() []rune {
	var all []rune
	for r := range f.missing {
		all = append(all, r)
	}
	slices.Sort(all)
	return all
}
