package airframes_test

import (
	"fmt"
	"runtime"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
)

// hostile are files that no person wrote, each with the code of its first
// problem.
var hostile = map[string]struct {
	text string
	code string
}{
	"open brackets":        {strings.Repeat("[", 60_000), "too-deep"},
	"brackets of settings": {strings.Repeat("{a: ", 60_000), "too-deep"},
	"dashes":               {strings.Repeat("- ", 60_000) + "a", "too-deep"},
	"question marks":       {strings.Repeat("? ", 60_000) + "a", "too-deep"},
	"stairs":               {stairs(400), "too-deep"},
	"aliases":              {"a: &a [x]\n" + strings.Repeat("b: *a\n", 10_000), "alias"},
	"unknown alias":        {"a: *b\n", "alias"},
	"open quote":           {"a: \"" + strings.Repeat("x\n", 50_000), "quote"},
	"open apostrophe":      {"a: '" + strings.Repeat("x", 100_000), "quote"},
	"many keys":            {numbered("k%d: 1\n", 10_000), "unknown-key"},
	"one key":              {strings.Repeat("a: 1\n", 10_000), "duplicate-key"},
	"many demands":         {"demands:\n" + numbered(" k%d: x\n", 10_000), "too-many"},
	"many mix lines":       {"hingeline: 1\ndemands: {b: a}\ncontrols: {a: roll}\nchannels:\n 1:\n  mix:\n" + strings.Repeat("   - {add: c}\n", 5000), "missing-key"},
	"many brackets":        {"phases: {b: " + strings.Repeat("(", 1500) + "}", "missing-key"},
	"many nots":            {"phases: {b: " + strings.Repeat("not ", 400) + "a}", "missing-key"},
	"one long line":        {"a: [" + strings.Repeat("b,", 50_000) + "]", "unknown-key"},
	"tabs":                 {strings.Repeat("\ta: b\n", 10_000), "tab-indentation"},
	"quotes":               {numbered("a%d: \"\n", 10_000), "quote"},
	"long names":           {longNames(15) + "demands:\n" + numbered("  d%d: z\n", 100), "unknown-name"},
	"many names":           {manyNames(64, 16) + "demands:\n" + numbered("  d%d: brown gadgets aplentyy %[1]d\n", 100), "unknown-name"},
	"documents":            {strings.Repeat("---\n", 10_000), "several-documents"},
	"carriage returns":     {strings.Repeat("a: b\r", 10_000), "not-plain-text"},
	"line separators":      {"a: b\u2028c: d\n", "not-plain-text"},
	"UTF-16":               {"\xFF\xFEh\x00i\x00", "not-plain-text"},
	"nothing":              {"", "empty-file"},
	"white space":          {strings.Repeat(" \n", 10_000), "empty-file"},
	"a mark":               {"\uFEFF", "empty-file"},
	"a word":               {"airframe", "wrong-kind"},
	"a list":               {"- hingeline: 1\n", "wrong-kind"},
	"null":                 {"---\n", "empty-file"},
	"keys of lists":        {"? [a, b]\n: c\n", "wrong-kind"},
	"percents":             {"%" + strings.Repeat("a", 10_000), "yaml-syntax"},
	"a folded number":      {"hingeline: 1\nsurfaces:\n  flap: {channel: 2, measured: {1,0%a\n  b,c d:: 40° down}}\n", "missing-key"},
	"tags":                 {"!a " + strings.Repeat("x", 10), "tag"},
}

func stairs(steps int) string {
	var text strings.Builder
	for i := range steps {
		text.WriteString(strings.Repeat(" ", i) + "a:\n")
	}
	return text.String()
}

// longNames is a file with a control that has so many further names of 10,000
// characters.
func longNames(count int) string {
	text := "hingeline: 1\nname: x\ncontrols:\n  stick: {axis: roll, aka: ["
	for i := range count {
		text += fmt.Sprintf("b%d%s, ", i, strings.Repeat("x", 10_000))
	}
	return text + "c]}\n"
}

// manyNames is a file with so many controls that have so many further names.
func manyNames(controls, names int) string {
	text := "hingeline: 1\nname: x\ncontrols:\n"
	for i := range controls {
		text += fmt.Sprintf("  stick %d: {axis: roll, aka: [", i)
		for j := range names {
			text += fmt.Sprintf("brown gadgets aplenty %d, ", i*names+j)
		}
		text += fmt.Sprintf("brown thing %d]}\n", i)
	}
	return text
}

func numbered(format string, count int) string {
	var text strings.Builder
	for i := range count {
		fmt.Fprintf(&text, format, i)
	}
	return text.String()
}

func TestLoadRefusesHostileFiles(t *testing.T) {
	for name, c := range hostile {
		model, problems := airframes.Load("f", []byte(c.text))
		if model != nil || len(problems) == 0 {
			t.Errorf("%s: it is taken", name)
			continue
		}
		if !hasCode(problems, c.code) {
			t.Errorf("%s: got %s %q, want %s", name, problems[0].Code, problems[0].Message, c.code)
		}
		if len(problems) > 1001 {
			t.Errorf("%s: %d problems are kept", name, len(problems))
		}
	}
}

func TestLoadSaysHowManyMistakesItLeavesOut(t *testing.T) {
	_, problems := airframes.Load("f", []byte(numbered("k%d: 1\n", 3000)))
	last := problems[len(problems)-1]
	if last.Code != "too-many" || !strings.Contains(last.Message, "2006 more") {
		t.Errorf("got %+v", last)
	}
}

// A file that is too large must be refused before anything is made of it.
func TestLoadRefusesALargeFileWithoutReadingIt(t *testing.T) {
	text := []byte(strings.Repeat("a: 1\n", 2_000_000))
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	_, problems := airframes.Load("f", text)
	runtime.ReadMemStats(&after)
	if len(problems) != 1 || problems[0].Code != "file-too-large" || !strings.Contains(problems[0].Message, "10000000 bytes") {
		t.Errorf("got %+v", problems)
	}
	const enough = 100_000
	if took := after.TotalAlloc - before.TotalAlloc; took > enough {
		t.Errorf("it takes %d bytes to refuse", took)
	}
	if _, problems := airframes.Load("f", text[:airframes.MaxBytes]); hasCode(problems, "file-too-large") {
		t.Error("a file of the largest size is called too large")
	}
}

// checkProblems holds what must be true of the problems of any text.
func checkProblems(t rapid.TB, text []byte, model *airframes.Model, problems []diag.Problem) {
	t.Helper()
	if (model == nil) != diag.HasErrors(problems) {
		t.Errorf("model %v, but problems %+v", model != nil, problems)
	}
	source := diag.NewSource("f", text)
	for i, p := range problems {
		if _, ok := diag.Explain(p.Code); !ok {
			t.Errorf("%q is not explained", p.Code)
		}
		const longest = 1000
		if len([]rune(p.Message)) > longest || len([]rune(p.Hint)) > longest {
			t.Errorf("a message of %d and a hint of %d characters", len([]rune(p.Message)), len([]rune(p.Hint)))
		}
		if p.Message == "" || p.File != "f" {
			t.Errorf("without message or file: %+v", p)
		}
		if i > 0 && (p.Line < problems[i-1].Line || p.Line == problems[i-1].Line && p.Column < problems[i-1].Column) {
			t.Errorf("out of order: %+v after %+v", p, problems[i-1])
		}
		if p.Line == 0 {
			continue
		}
		line, ok := source.Line(p.Line)
		if !ok || p.Column < 0 || p.Column > len([]rune(line))+1 {
			t.Errorf("outside the text: %+v", p)
		}
		if p.Width > 1 && p.Column-1+p.Width > len([]rune(line)) {
			t.Errorf("wider than the line: %+v", p)
		}
	}
}

func TestProblemsOfHostileFilesHoldTogether(t *testing.T) {
	for name, c := range hostile {
		t.Run(name, func(t *testing.T) {
			model, problems := airframes.Load("f", []byte(c.text))
			checkProblems(t, []byte(c.text), model, problems)
		})
	}
}

// A suggestion costs a look at every name; beyond a few thousand looks there
// are no more of them.
func TestLoadStopsSuggestingWhereItCostsTooMuch(t *testing.T) {
	suggested := func(mistakes int) (count int) {
		_, problems := airframes.Load("f", []byte(manyNames(64, 15)+"demands:\n"+numbered("  d%d: brown gadget aplenty 7\n", mistakes)))
		for _, p := range problems {
			if strings.HasPrefix(p.Hint, "did you mean") {
				count++
			}
		}
		return count
	}
	const few, many, most = 5, 120, 20
	if got := suggested(few); got < few {
		t.Errorf("%d suggestions for %d mistakes", got, few)
	}
	if got := suggested(many); got > most {
		t.Errorf("%d suggestions for %d mistakes, want at most %d", got, many, most)
	}
}
