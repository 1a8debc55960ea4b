package diag

import (
	"bytes"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// On a terminal of known width no line of a file runs over its edge, and the
// caret stays under what it points at.
func TestWriteWithinKeepsToTheTerminal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		filler := rapid.SampledFrom([]string{"x", "ü", "日", "ab "}).Draw(t, "filler")
		before := rapid.IntRange(0, 120).Draw(t, "before")
		after := rapid.IntRange(0, 120).Draw(t, "after")
		columns := rapid.IntRange(40, 130).Draw(t, "columns")
		line := strings.Repeat(filler, before) + "HERE" + strings.Repeat(filler, after)
		source := NewSource("f", []byte(line))
		var out bytes.Buffer
		WriteWithin(&out, columns, []Problem{{Place: source.At(strings.Index(line, "HERE"), len("HERE")), Message: "m", Hint: "a hint"}}, source)
		lines := strings.Split(out.String(), "\n")
		if got, want := caretColumn(lines[2]), columnOf(lines[1], "HERE"); got != want {
			t.Fatalf("the caret is at column %d, the word at %d:\n%s\n%s", got, want, lines[1], lines[2])
		}
		for _, l := range lines {
			if n := columnOf(l+"END", "END"); n > columns {
				t.Fatalf("%d columns of %d: %q", n, columns, l)
			}
		}
		if n := strings.Count(out.String(), "a hint"); n != 1 {
			t.Fatalf("the hint is there %d times:\n%s", n, &out)
		}
	})
}
