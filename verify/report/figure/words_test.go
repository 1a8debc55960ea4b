package figure_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

func TestCutAndWrappedWordsFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.String().Draw(t, "words")
		width := rapid.Float64Range(4, 80).Draw(t, "width")
		const size = 2.4
		if got := figure.Cut(words, width, size, true); figure.TextWidth(got, size, true) > width {
			t.Fatalf("%q is cut to %q, wider than %g", words, got, width)
		}
		lines := figure.Wrapped(words, width, size, false, 3)
		if len(lines) > 3 {
			t.Fatalf("%d lines", len(lines))
		}
		for _, line := range lines {
			if figure.TextWidth(line, size, false) > width {
				t.Fatalf("the line %q is wider than %g", line, width)
			}
		}
	})
}

func TestWrappedKeepsNumbersTogether(t *testing.T) {
	got := figure.Wrapped("trailing edge UP 14° ± 1°, or 20 mm", 26, 2.4, false, 4)
	for _, line := range got {
		if strings.HasSuffix(line, "±") || strings.HasPrefix(line, "±") || strings.HasPrefix(line, "mm") {
			t.Errorf("%q is broken within a number", got)
		}
	}
	if all := strings.Join(got, " "); all != "trailing edge UP 14° ± 1°, or 20 mm" {
		t.Errorf("got %q", all)
	}
}

func TestToldSaysTheWayWhereThePlaceDoesNot(t *testing.T) {
	for _, row := range []struct {
		stand result.Stand
		moves bool
		want  string
	}{
		{result.Stand{From: -14, At: -14, Moved: true, Way: "UP", Says: "trailing edge UP 14° (9 mm)"}, false, "UP 14° (9 mm)"},
		{result.Stand{From: 0, At: -14, Moved: true, Way: "UP", Says: "trailing edge UP 14° (9 mm)"}, true, "UP 14° (9 mm)"},
		{result.Stand{From: -4, At: -14, Moved: true, Way: "UP", Says: "trailing edge UP 14° (9 mm)"}, true, "goes UP, stands UP 14° (9 mm)"},
		{result.Stand{From: 30, At: 20, Moved: true, Way: "UP", Says: "trailing edge DOWN 20° (9 mm)"}, true, "goes UP, stands DOWN 20° (9 mm)"},
		{result.Stand{From: 30, At: 0, Moved: true, Way: "UP", Says: "neutral"}, true, "goes UP to neutral"},
		{result.Stand{From: 30, At: 30, Says: "trailing edge DOWN 30°", Way: "DOWN"}, true, "DOWN 30°"},
		{result.Stand{From: 40, At: 0, Moved: true, Way: "LESS", Says: "stopped"}, true, "stops"},
		{result.Stand{From: 40, At: 20, Moved: true, Way: "LESS", Says: "power 20 %"}, true, "power falls to 20 %"},
		{result.Stand{From: 0, At: 40, Moved: true, Way: "MORE", Says: "power 40 %"}, true, "power rises to 40 %"},
		{result.Stand{From: 14, At: -0.7, Moved: true, Way: "UP", Says: "trailing edge UP 0.7°"}, true, "goes UP, stands UP 0.7°"},
		{result.Stand{From: -9, At: -0.7, Moved: true, Way: "DOWN", Says: "trailing edge UP 0.7°"}, true, "goes DOWN, stands UP 0.7°"},
		{result.Stand{From: 0.03, At: -9.5, Moved: true, Way: "UP", Says: "trailing edge UP 9.5°"}, true, "UP 9.5°"},
		{result.Stand{From: 0.13, At: 0.03, Moved: true, Way: "UP", Says: "neutral"}, true, "neutral"},
		{result.Stand{From: 100, At: 0, Moved: true, Way: "IN", Says: "IN"}, true, "IN"},
		{result.Stand{From: 100, At: 40, Moved: true, Way: "IN", Says: "OUT 40 %"}, true, "goes IN, stands OUT 40 %"},
		{result.Stand{From: 0, At: 100, Moved: true, Way: "OUT", Says: "100 % OUT"}, true, "100 % OUT"},
	} {
		if got := figure.Told(&row.stand, row.moves); got != row.want {
			t.Errorf("%+v: got %q, want %q", row.stand, got, row.want)
		}
	}
}

// What is drawn is described: every part by its name, and of those marked where it stands.
func TestEveryPartIsDescribed(t *testing.T) {
	r := sample.Crowded()
	for i := range r.Paper.Pictures {
		p := &r.Paper.Pictures[i]
		for _, d := range []figure.Drawing{figure.Behind(&r.Paper.Shape, p, ""), figure.Plan(&r.Paper.Shape, p, "")} {
			told := strings.ToLower(d.Description)
			for part, o := range r.Paper.Shape.Parts {
				if !strings.Contains(told, strings.ToLower(o.Name)) {
					t.Errorf("picture %d: %s is not described", i, o.Name)
				}
				if st := p.Stands[part]; st.Moved && !strings.Contains(d.Description, st.Says) {
					t.Errorf("picture %d: it is not described that %s stands at %s", i, o.Name, st.Says)
				}
			}
		}
	}
}

// Moved parts are told in words on the sheet itself, each once: beside it or by a number.
func TestEveryMovedPartHasItsWords(t *testing.T) {
	r := sample.Crowded()
	p := &r.Paper.Pictures[1]
	for _, d := range []figure.Drawing{figure.Behind(&r.Paper.Shape, p, ""), figure.Plan(&r.Paper.Shape, p, "")} {
		want := map[string]int{}
		for i := range p.Stands {
			if st := &p.Stands[i]; st.Moved {
				want[figure.Told(st, true)]++
			}
		}
		// Words in two lines are two texts, one after the other.
		all := strings.Join(texts(d), " ")
		for words, n := range want {
			if got := strings.Count(all, words); got != n {
				t.Errorf("%q is on the sheet %d times, want %d", words, got, n)
			}
		}
	}
}
