package pdf

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"slices"
	"strings"
	"sync"
	"testing"

	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"pgregory.net/rapid"

	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

// named is a passed report of a model with a name.
func named(name string) *result.Report {
	r := sample.Passing()
	r.Model.Name = name
	return r
}

func TestLettersThatNoFontHasAreShown(t *testing.T) {
	for name, want := range map[string]struct {
		shown   string
		missing []rune
	}{
		"Tarn":                 {"Tarn", nil},
		"Größe, Łódź, Скат, λ": {"Größe, Łódź, Скат, λ", nil},
		"谷 Tarn 翼谷":            {"[U+8C37] Tarn [U+7FFC][U+8C37]", []rune{'翼', '谷'}},
		"ض🛩":                   {"[U+0636][U+1F6E9]", []rune{'ض', '🛩'}},
		"a\u202eb\u200bc\x07":  {"a[U+202E]b[U+200B]c[U+0007]", []rune{7, '\u200b', '\u202e'}},
		"a\u00a0b\tc\u3000d":   {"a b c d", nil},
	} {
		r := named(name)
		_, pages := rendered(t, r, Options{})
		if !strings.Contains(pages[0], want.shown) {
			t.Errorf("%q is not shown as %q", name, want.shown)
		}
		if got := missing(t, r, Options{}); !slices.Equal(got, want.missing) {
			t.Errorf("%q: got %q missing, wanted %q", name, got, want.missing)
		}
	}
}

func TestLettersInDrawingsAreMissedToo(t *testing.T) {
	r := with(sample.Passing(), sample.PassingPaper())
	r.Paper.Shape.Parts[r.Paper.Pictures[3].Of[0]].Name = "翼"
	if got := missing(t, r, Options{}); !slices.Equal(got, []rune{'翼'}) {
		t.Errorf("got %q", got)
	}
}

// fontWith is a font that has one letter, drawn as another font's glyph: for letters that
// no font at hand has.
func fontWith(t testing.TB, letter rune, base []byte, glyph uint16) []byte {
	t.Helper()
	cmap := []uint16{
		0, 1, 3, 1, 0, 12, // one table, of Unicode, at 12
		4, 32, 0, 4, 4, 1, 0, // two segments
		uint16(letter), 0xFFFF, 0, uint16(letter), 0xFFFF, // ends, starts
		glyph - uint16(letter), 1, 0, 0, // differences, no tables of glyphs
	}
	tables := map[string][]byte{}
	for i := range int(binary.BigEndian.Uint16(base[4:])) {
		r := base[12+16*i:]
		at, size := binary.BigEndian.Uint32(r[8:]), binary.BigEndian.Uint32(r[12:])
		tables[string(r[:4])] = base[at : at+size]
	}
	tables["cmap"] = nil
	for _, v := range cmap {
		tables["cmap"] = binary.BigEndian.AppendUint16(tables["cmap"], v)
	}
	names := make([]string, 0, len(tables))
	for name := range tables {
		names = append(names, name)
	}
	slices.Sort(names)
	font := append(slices.Clone(base[:4]), 0, byte(len(names)), 0, 0, 0, 0, 0, 0)
	at := len(font) + 16*len(names)
	var bodies []byte
	for _, name := range names {
		font = append(font, name...)
		for _, v := range []int{0, at + len(bodies), len(tables[name])} {
			font = binary.BigEndian.AppendUint32(font, uint32(v))
		}
		bodies = append(bodies, tables[name]...)
		for len(bodies)%4 != 0 {
			bodies = append(bodies, 0)
		}
	}
	return append(font, bodies...)
}

func TestGivenFontWritesWhatTheOthersLack(t *testing.T) {
	given := fontWith(t, '谷', goregular.TTF, 36)
	if _, err := sfnt.Parse(given); err != nil {
		t.Fatal("this test's font: ", err)
	}
	r := named("谷 Tarn 翼")
	for _, o := range []Options{{Font: given}, {Bold: given}, {Font: given, Bold: given}, {Font: fontWith(t, '谷', gomono.TTF, 36)}} {
		document, pages := rendered(t, r, o)
		if !strings.Contains(pages[0], "谷") || strings.Contains(pages[0], "[U+8C37] Tarn [") {
			t.Error("the letter of the given font is not written")
		}
		if !strings.Contains(pages[0], "[U+7FFC]") {
			t.Error("the letter of no font is not shown")
		}
		again, _ := rendered(t, r, o)
		if !bytes.Equal(document, again) {
			t.Error("not the same every time")
		}
	}
	if got := missing(t, r, Options{Font: given}); !slices.Equal(got, []rune{'翼'}) {
		t.Errorf("got %q missing", got)
	}
}

func TestFontThatIsNoneIsRefused(t *testing.T) {
	collection := append([]byte("ttcf"), goregular.TTF[4:]...)
	for what, data := range map[string][]byte{
		"nothing": {}, "text": []byte("this is no font, it is a text"), "half": goregular.TTF[:len(goregular.TTF)/2], "collection": collection,
	} {
		for _, o := range []Options{{Font: data}, {Bold: data}} {
			err := render(nothing{}, named("谷"), o)
			if err == nil || !strings.Contains(err.Error(), "font cannot be used") {
				t.Errorf("%s: got %v", what, err)
			}
		}
	}
}

func TestDamagedFontIsUsedOrRefused(t *testing.T) {
	whole := fontWith(t, '谷', goregular.TTF, 36)
	rapid.Check(t, func(t *rapid.T) {
		data := slices.Clone(whole)
		for range rapid.IntRange(1, 6).Draw(t, "places") {
			at := rapid.OneOf(rapid.IntRange(0, 400), rapid.IntRange(0, len(data)-1)).Draw(t, "at")
			data[at] = rapid.Byte().Draw(t, "byte")
		}
		data = data[:len(data)-rapid.SampledFrom([]int{0, 0, 1, 1000}).Draw(t, "cut")]
		d, err := composeCard(named("谷"), Options{Font: data})
		if err == nil {
			_ = d.write(nothing{}) // an error or none, but no panic
		}
	})
}

func TestFontsOfTheProgramAreNotChanged(t *testing.T) {
	sums := func() (all [styles][32]byte) {
		for i, face := range goFaces() {
			all[i] = sha256.Sum256(face.data)
		}
		return all
	}
	before := sums()
	var all sync.WaitGroup
	for range 4 {
		all.Go(func() {
			if err := render(nothing{}, with(sample.Failing(), sample.Paper()), Options{}); err != nil {
				t.Error(err)
			}
		})
	}
	all.Wait()
	if sums() != before {
		t.Error("a report has written into a font")
	}
}
