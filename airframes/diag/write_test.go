package diag

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func shown(problems []Problem, sources ...*Source) string {
	var out bytes.Buffer
	Write(&out, problems, sources...)
	return out.String()
}

func TestWriteShowsPlaceExcerptAndHint(t *testing.T) {
	source := NewSource("bracken.yaml", []byte("a: b\r\n  - {add: rol, share: 100%}\r\n"))
	place := Place{File: "bracken.yaml", Line: 2, Column: 11, Width: 3}
	for name, c := range map[string]struct {
		problem Problem
		want    string
	}{
		"error": {Problem{Place: place, Code: "unknown-name", Message: `mix adds "rol"`, Hint: `did you mean "roll"?`},
			"bracken.yaml:2:11: mix adds \"rol\" [unknown-name]\n" +
				"    2 |   - {add: rol, share: 100%}\n" +
				"      |           ^^^ did you mean \"roll\"?\n"},
		"warning without a hint": {Problem{Place: place, Severity: Warning, Code: "x", Message: "m"},
			"bracken.yaml:2:11: warning: m [x]\n" +
				"    2 |   - {add: rol, share: 100%}\n" +
				"      |           ^^^\n"},
		"line as a whole": {Problem{Place: Place{File: "bracken.yaml", Line: 1}, Code: "x", Message: "m", Hint: "h"},
			"bracken.yaml:1: m [x]\n    1 | a: b\n      | h\n"},
		"file as a whole": {Problem{Place: Place{File: "bracken.yaml"}, Code: "x", Message: "m", Hint: "h"},
			"bracken.yaml: m [x]\n      h\n"},
		"another file": {Problem{Place: Place{File: "other", Line: 1, Column: 1}, Code: "x", Message: "m", Hint: "h"},
			"other:1:1: m [x]\n      h\n"},
		"nowhere": {Problem{Message: "m"}, "m\n"},
		"behind the end of the line": {Problem{Place: Place{File: "bracken.yaml", Line: 1, Column: 9, Width: 4}, Message: "m"},
			"bracken.yaml:1:9: m\n    1 | a: b\n      |     ^\n"},
		"wider than the line": {Problem{Place: Place{File: "bracken.yaml", Line: 1, Column: 4, Width: 400}, Message: "m"},
			"bracken.yaml:1:4: m\n    1 | a: b\n      |    ^\n"},
	} {
		if got := shown([]Problem{c.problem}, NewSource("another", nil), nil, source); got != c.want {
			t.Errorf("%s: got\n%swant\n%s", name, got, c.want)
		}
	}
}

func TestWriteKeepsTheCaretUnderItsWord(t *testing.T) {
	for _, line := range []string{
		"\tkey: here", "a\tb here", "grün: here", "e\u0301te\u0301: here", "日本: here", "🛩 here", "\uFEFFname: here",
	} {
		source := NewSource("f", []byte(line))
		at := source.At(strings.Index(line, "here"), len("here"))
		lines := strings.Split(shown([]Problem{{Place: at, Message: "m"}}, source), "\n")
		if got, want := caretColumn(lines[2]), columnOf(lines[1], "here"); got != want {
			t.Errorf("%q: the caret is at column %d, the word at %d:\n%s\n%s", line, got, want, lines[1], lines[2])
		}
		if !strings.HasSuffix(lines[2], " ^^^^") {
			t.Errorf("%q: want four carets: %q", line, lines[2])
		}
	}
}

// columnOf is at which column of a terminal a word of a line begins.
func columnOf(line, word string) int {
	columns := 0
	for _, r := range line[:strings.Index(line, word)] {
		columns += columnsOf(r)
	}
	return columns
}

func caretColumn(line string) int { return strings.Index(line, "^") }

func TestWriteTrimsLongLinesAroundTheCaret(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		filler := rapid.SampledFrom([]string{"x", "ü", "日", "ab "}).Draw(t, "filler")
		before := rapid.IntRange(0, 3000).Draw(t, "before")
		after := rapid.IntRange(0, 3000).Draw(t, "after")
		line := strings.Repeat(filler, before) + "HERE" + strings.Repeat(filler, after)
		source := NewSource("f", []byte("first\n"+line+"\nlast"))
		at := source.At(strings.Index("first\n"+line, "HERE"), len("HERE"))
		lines := strings.Split(shown([]Problem{{Place: at, Message: "m"}}, source), "\n")
		if got, want := caretColumn(lines[2]), columnOf(lines[1], "HERE"); got != want {
			t.Fatalf("the caret is at column %d, the word at %d:\n%s\n%s", got, want, lines[1], lines[2])
		}
		if width := columnOf(lines[1]+"END", "END"); width > excerptColumns+len("12345 | ")+2 {
			t.Fatalf("the excerpt is %d columns wide", width)
		}
		if cut := columnOf(line+"END", "END") > excerptColumns; cut != strings.Contains(lines[1], ellipsis) {
			t.Fatalf("cut %v, but the excerpt is %q", cut, lines[1])
		}
	})
}

func TestWriteLetsNothingStrangeReachTheTerminal(t *testing.T) {
	source := NewSource("f", []byte("a\x1b[31mb\u202Ec\u200Bd\x07"))
	got := shown([]Problem{{Place: Place{File: "f", Line: 1, Column: 1}, Message: "bad \x1b[0m\nthing", Hint: "do\tit\u2028"}}, source)
	for _, r := range got {
		if r != '\n' && printable(r) != r {
			t.Errorf("%U reaches the terminal: %q", r, got)
		}
	}
	if lines := strings.Count(got, "\n"); lines != 3 {
		t.Errorf("got %d lines, want 3: %q", lines, got)
	}
}

func FuzzWrite(f *testing.F) {
	f.Add([]byte("a: b\n"), 1, 4, 1)
	f.Add([]byte("\xff\xfe\r\r\n\t日"), 2, 0, 9)
	f.Fuzz(func(t *testing.T, text []byte, line, column, width int) {
		source := NewSource("f", text)
		got := shown([]Problem{{Place: Place{"f", line, column, width}, Message: "m", Hint: "h"}}, source)
		if !strings.HasPrefix(got, "f") || !strings.Contains(got, "m\n") {
			t.Errorf("the message is lost: %q", got)
		}
		if len(got) > 4000 {
			t.Errorf("%d bytes are shown", len(got))
		}
	})
}

func BenchmarkWrite(b *testing.B) {
	var text strings.Builder
	for i := range 500 {
		fmt.Fprintf(&text, "  surface %d: {channel: 1, measured: {100%%: 20° down}}\n", i)
	}
	source := NewSource("f", []byte(text.String()))
	var problems []Problem
	for i := range 100 {
		problems = append(problems, Problem{Place: Place{"f", i*5 + 1, 16, 7}, Code: "x", Message: "message", Hint: "hint"})
	}
	b.ReportAllocs()
	for b.Loop() {
		var out bytes.Buffer
		Write(&out, problems, source)
	}
}
