package diag

import (
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

func TestSourceLinesLeaveOutBreaksAndMark(t *testing.T) {
	s := NewSource("f", []byte("\uFEFFone\r\ntwo\n\nlast"))
	want := []string{"one", "two", "", "last"}
	if s.Lines() != len(want) {
		t.Fatalf("got %d lines, want %d", s.Lines(), len(want))
	}
	for i, line := range want {
		if got, ok := s.Line(i + 1); !ok || got != line {
			t.Errorf("line %d: got %q, %v, want %q", i+1, got, ok, line)
		}
	}
	for _, number := range []int{-1, 0, 5} {
		if _, ok := s.Line(number); ok {
			t.Errorf("line %d: want none", number)
		}
	}
}

func TestSourceAtCountsCharacters(t *testing.T) {
	text := "\uFEFFgrün: 1\r\n  日本: 2\n"
	s := NewSource("f", []byte(text))
	for _, c := range []struct {
		of           string
		line, column int
	}{
		{"grün", 1, 1}, {": 1", 1, 5}, {"日本", 2, 3}, {": 2", 2, 5},
	} {
		got := s.At(strings.Index(text, c.of), 1)
		if want := (Place{"f", c.line, c.column, 1}); got != want {
			t.Errorf("%q: got %+v, want %+v", c.of, got, want)
		}
	}
	if got := s.At(len(text)+9, 0); got.Line != 3 || got.Column != 1 {
		t.Errorf("beyond the end: got %+v, want line 3 column 1", got)
	}
	if got := s.At(-4, 0); got.Line != 1 || got.Column != 1 {
		t.Errorf("before the start: got %+v, want line 1 column 1", got)
	}
}

func TestSourcePlaceAndOffsetAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pieces := rapid.SliceOf(rapid.SampledFrom([]string{"a", "é", "日", "🛩", "\n", "\r\n", strings.Repeat("x", 600), strings.Repeat("ü", 400), " "})).Draw(t, "pieces")
		text := strings.Join(pieces, "")
		s := NewSource("f", []byte(text))
		offset := rapid.IntRange(0, len(text)).Draw(t, "offset")
		for offset < len(text) && !utf8.RuneStart(text[offset]) {
			offset++
		}
		if offset < len(text) && text[offset] == '\n' && offset > 0 && text[offset-1] == '\r' {
			offset--
		}
		place := s.At(offset, 1)
		if before := text[:offset]; place.Line != strings.Count(before, "\n")+1 ||
			place.Column != utf8.RuneCountInString(before[strings.LastIndex(before, "\n")+1:])+1 {
			t.Fatalf("offset %d is at %+v", offset, place)
		}
		if back, ok := s.Offset(place); !ok || back != offset {
			t.Fatalf("offset %d is at %+v, which is offset %d, %v", offset, place, back, ok)
		}
	})
}

func TestSourceOffsetStopsAtTheEndOfTheLine(t *testing.T) {
	s := NewSource("f", []byte("abc\r\nd"))
	if got, ok := s.Offset(Place{Line: 1, Column: 99}); !ok || got != 3 {
		t.Errorf("got %d, %v, want 3", got, ok)
	}
	if _, ok := s.Offset(Place{Line: 3, Column: 1}); ok {
		t.Error("there is no line 3")
	}
}
