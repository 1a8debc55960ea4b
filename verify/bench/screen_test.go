package bench_test

import (
	"bytes"
	"strings"
	"testing"

	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/report/terminal"
)

// The screen that every step must fit on, with what is asked.
const (
	screenRows    = 24
	screenColumns = 80
)

// fitsTheTerminal wants every step of a walk on one screen, as plain lines in the order in
// which somebody hears them: what to set, what to move, what must be seen, and the picture,
// which says nothing more, last.
func fitsTheTerminal(t *testing.T, w *bench.Walk) {
	t.Helper()
	g := bench.NewGuide(w, bench.Nowhere{}, at)
	for range bench.Questions {
		g.Take("yes")
	}
	for range w.Steps {
		ask := g.Ask()
		var screen bytes.Buffer
		if err := terminal.RenderBenchStep(&screen, ask.Step, terminal.BenchLook{Picture: true, Rows: screenRows - 3, Ruler: w.Look.Ruler}, terminal.Options{Width: screenColumns, ASCII: true}); err != nil {
			t.Fatal(err)
		}
		said := terminal.NewText(terminal.Options{Width: screenColumns, ASCII: true})
		said.Paragraph(2, ask.Said)
		said.Render(&screen)
		text := screen.String() + ask.Prompt
		if rows := strings.Count(text, "\n") + 1; rows > screenRows {
			t.Errorf("%s, step %d: %d rows\n%s", w.Model.Name, ask.Step.Number, rows, text)
		}
		last := 0
		for _, word := range []string{"STEP ", "  set ", "must ", "from behind:"} {
			at := strings.Index(text, word)
			if at < last && (at >= 0 || word != "from behind:") {
				t.Errorf("%s, step %d: %q is at %d, after what is at %d\n%s", w.Model.Name, ask.Step.Number, word, at, last, text)
			}
			last = max(last, at)
		}
		for line := range strings.Lines(text) {
			if line = strings.TrimSuffix(line, "\n"); len(line) > screenColumns || strings.ContainsFunc(line, func(r rune) bool { return r < ' ' || r == 0x7f }) {
				t.Errorf("%s, step %d: %q", w.Model.Name, ask.Step.Number, line)
			}
		}
		g.Take("y")
	}
}
