package pdf

import (
	"bytes"
	"compress/zlib"
	"io"
	"strings"
	"testing"
	"unicode/utf16"

	"example.com/hingeline/verify/result"
)

// pagesOf are the words of every page of a document, in the order in which they are drawn.
func pagesOf(t testing.TB, document []byte) []string {
	t.Helper()
	var pages []string
	for rest := document; ; {
		_, after, found := bytes.Cut(rest, []byte("stream\n"))
		if !found {
			return pages
		}
		body, next, found := bytes.Cut(after, []byte("\nendstream"))
		if !found {
			t.Fatal("a stream without an end")
		}
		rest = next
		if r, err := zlib.NewReader(bytes.NewReader(body)); err == nil {
			if body, err = io.ReadAll(r); err != nil {
				t.Fatal(err)
			}
		}
		if words := drawnWords(body); words != "" {
			pages = append(pages, words)
		}
	}
}

// drawnWords are the words that a page's stream draws, with a space between any two.
func drawnWords(stream []byte) string {
	var all []string
	for {
		_, after, found := bytes.Cut(stream, []byte(" Td ("))
		if !found {
			return strings.Join(all, " ")
		}
		var units []byte
		i := 0
		for ; after[i] != ')'; i++ {
			if after[i] == '\\' {
				i++
				if after[i] == 'r' {
					units = append(units, '\r')
					continue
				}
			}
			units = append(units, after[i])
		}
		stream = after[i:]
		var letters []uint16
		for k := 0; k+1 < len(units); k += 2 {
			letters = append(letters, uint16(units[k])<<8|uint16(units[k+1]))
		}
		all = append(all, string(utf16.Decode(letters)))
	}
}

// render lays a report out and writes it.
func render(w io.Writer, r *result.Report, o Options) error {
	s, err := Lay(r, o)
	if err != nil {
		return err
	}
	return s.Write(w)
}

// missing are the letters of a report that no font has.
func missing(t testing.TB, r *result.Report, o Options) []rune {
	t.Helper()
	s, err := Lay(r, o)
	if err != nil {
		t.Fatal(err)
	}
	return s.Missing()
}

// rendered is a report as a document, with its pages' words.
func rendered(t testing.TB, r *result.Report, o Options) ([]byte, []string) {
	t.Helper()
	var b bytes.Buffer
	if err := render(&b, r, o); err != nil {
		t.Fatal(err)
	}
	return b.Bytes(), pagesOf(t, b.Bytes())
}

// packed is text without its spaces, so that it is found however lines were broken.
func packed(text string) string {
	return strings.Map(func(r rune) rune {
		if space(r) {
			return -1
		}
		return r
	}, text)
}

// says fails where words, as the fonts can write them, are not among others.
func says(t testing.TB, all, words, what string) {
	t.Helper()
	f, err := newFonts(Options{})
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(packed(all), packed(f.plain(words, regular))) {
		t.Errorf("%s %q is not there", what, words)
	}
}

// A line that ends in a number and goes on with its unit is misread.
func TestANumberKeepsItsUnitOnItsLine(t *testing.T) {
	for text, want := range map[string]string{
		"(9.2 mm) at most":    "(9.2 mm)",
		"0 %; port flap":      "0 %;",
		"±1 mm":               "±1 mm",
		"1500 µs":             "1500 µs",
		"5 mm ± 1 mm":         "5 mm",
		"42 of 42 checks":     "42",
		"roll 50 %":           "roll",
		"flap % of it":        "flap",
		"2":                   "2",
		"- 5 %":               "-",
		"40° up":              "40°",
		"100 % of its travel": "100 %",
	} {
		if got := text[:wordEnd(text)]; got != want {
			t.Errorf("%q is parted behind %q, wanted %q", text, got, want)
		}
	}
}
