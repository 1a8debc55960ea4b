package pdf

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

// composed is a report laid out.
func composed(t testing.TB, r *result.Report, o Options) *document {
	t.Helper()
	d, err := compose(r, o)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// onPaper fails where a piece is split, runs over another one or leaves its page.
func onPaper(t interface {
	Errorf(string, ...any)
	Helper()
}, d *document) {
	t.Helper()
	for n, l := range d.leaves {
		below := 0.0
		for _, p := range l.placed {
			if p.top < below-0.01 || p.bottom > d.bottom()+0.01 || p.bottom < p.top {
				t.Errorf("page %d: %s stands from %.1f to %.1f mm, after %.1f mm, on a page that ends at %.1f mm", n+1, p.what, p.top, p.bottom, below, d.bottom())
			}
			below = p.bottom
		}
		for _, m := range l.marks {
			w, ok := m.(words)
			if !ok {
				continue
			}
			if end := w.x + d.fonts.width(w.text, w.style, w.size); w.x < 0 || end > d.width-marginSide+0.3 || w.y < 0 || w.y > d.height {
				t.Errorf("page %d: %q runs from %.1f to %.1f mm at %.1f mm", n+1, w.text, w.x, end, w.y)
			}
		}
	}
}

func TestRowsAreNeverSplit(t *testing.T) {
	for name, r := range reports() {
		for _, paper := range []Paper{A4, Letter} {
			d := composed(t, r, Options{Paper: paper})
			onPaper(t, d)
			rows := 0
			for _, l := range d.leaves {
				for _, p := range l.placed {
					if p.what == "row" {
						rows++
					}
				}
			}
			if rows < len(d.checks.Walk()) {
				t.Errorf("%s: %d stops in %d rows", name, len(d.checks.Walk()), rows)
			}
		}
	}
}

// crowdedBench is a report with tables of many pages.
func crowdedBench() *result.Report {
	r := fortyStops()
	for range 5 {
		r.Paper.Throws = append(r.Paper.Throws, r.Paper.Throws...)
		r.Paper.Signal = append(r.Paper.Signal, r.Paper.Signal...)
		r.Paper.Travel = append(r.Paper.Travel, r.Paper.Travel...)
	}
	return r
}

func TestTablesRepeatTheirHead(t *testing.T) {
	d := composed(t, crowdedBench(), Options{})
	onPaper(t, d)
	onPages := map[string]int{}
	for n, l := range d.leaves {
		for i, p := range l.placed {
			if !slices.Contains([]string{"row", "throw", "signal", "travel"}, p.what) || i > 0 && l.placed[i-1].what == p.what {
				continue
			}
			onPages[p.what]++
			if i == 0 || l.placed[i-1].what != "table head" && l.placed[i-1].what != "heading" {
				t.Errorf("page %d: the first %s has no head", n+1, p.what)
			}
		}
	}
	for _, what := range []string{"row", "throw", "signal", "travel"} {
		if onPages[what] < 2 {
			t.Errorf("%s rows are on %d pages: this test looks at nothing", what, onPages[what])
		}
	}
}

func TestHeadingsAreNeverLast(t *testing.T) {
	for name, r := range reports() {
		for n, l := range composed(t, r, Options{}).leaves {
			if len(l.placed) == 0 {
				t.Errorf("%s: page %d is empty", name, n+1)
				continue
			}
			if last := l.placed[len(l.placed)-1].what; last == "heading" || last == "table head" {
				t.Errorf("%s: page %d ends with a %s", name, n+1, last)
			}
		}
	}
}

func TestStopsAreChecksOfOnePose(t *testing.T) {
	r := sample.Passing()
	d := composed(t, r, Options{})
	var got []string
	for _, s := range d.checks.Stops() {
		got = append(got, fmt.Sprint(s.Stage, s.Checks))
	}
	want := []string{"before power[0 1 2]", "port wing[3]", "starboard wing[4]"}
	if !slices.Equal(got, want) {
		t.Errorf("got %v, wanted %v", got, want)
	}
}

func TestStopWithTooMuchToSeeGoesOn(t *testing.T) {
	r := sample.Passing()
	one := r.Checks[0]
	r.Checks = nil
	for n := range 90 {
		one.Sentence = fmt.Sprintf("the part with the number %d and a name that is long enough stays where it is", n)
		r.Checks = append(r.Checks, one)
	}
	d := composed(t, r, Options{})
	onPaper(t, d)
	if len(d.checks.Stops()) != 1 {
		t.Fatalf("%d stops", len(d.checks.Stops()))
	}
	_, pages := rendered(t, r, Options{})
	all := strings.Join(pages, " ")
	says(t, all, "(the same, continued)", "row")
	for i := range r.Checks {
		says(t, all, r.Checks[i].Sentence, "sentence")
	}
}

func TestTooTallIsMadeSmaller(t *testing.T) {
	r := sample.Passing()
	r.Checks[0].Sentence = strings.Repeat("a sentence without an end ", 900)
	d := composed(t, r, Options{})
	onPaper(t, d)
	_, pages := rendered(t, r, Options{})
	says(t, strings.Join(pages, " "), r.Checks[0].Sentence, "sentence")
}

// oddName draws names as nobody would give them.
func oddName() *rapid.Generator[string] {
	return rapid.OneOf(
		rapid.StringN(0, 60, 200),
		rapid.StringOfN(rapid.RuneFrom([]rune("aWij .-_/°µ谷翼ضпβ\t\n\u00a0\u200b\u202e\u0301🛩\\()")), 0, 200, -1),
		rapid.SampledFrom([]string{"", " ", "(", `\`, "port aileron", strings.Repeat("W", 300), "a\x00b", "\xff\xfe"}))
}

func TestOddNamesAreLaidOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := with(sample.Failing(), sample.Paper())
		name := func(what string) string { return oddName().Draw(t, what) }
		r.Model.Name = name("model")
		r.Checks[2].Sentence, r.Checks[2].Subject = name("sentence"), name("subject")
		r.Checks[1].Pose = []string{name("pose")}
		r.Cautions = append(r.Cautions, name("caution"))
		r.Uncovered.Parts = []string{name("part")}
		r.Paper.Shape.Parts[0].Name = name("outline")
		r.Paper.Throws[0].Part, r.Paper.Travel[0].Channel = name("thrown"), name("channel")
		d, err := compose(r, Options{})
		if err != nil {
			t.Fatal(err)
		}
		onPaper(t, d)
		if _, err := composeCard(r, Options{}); err != nil {
			t.Fatal(err)
		}
		var all strings.Builder
		for _, l := range d.leaves {
			for _, m := range l.marks {
				if w, ok := m.(words); ok {
					all.WriteString(w.text)
				}
			}
		}
		for _, text := range []string{r.Model.Name, r.Checks[2].Sentence, r.Cautions[2], r.Uncovered.Parts[0], r.Paper.Throws[0].Part} {
			if !strings.Contains(packed(all.String()), packed(d.fonts.plain(text, bold))) {
				t.Fatalf("%q is lost", text)
			}
		}
	})
}

func TestOddNamesAreWritten(t *testing.T) {
	r := with(sample.Failing(), sample.Paper())
	odd := []string{"(", `\`, `\\(\)`, "a\rb", "\u0029", "谷(翼", "с\u0301", "Ж\u0d0a", "\u5c5c", "\xff", "🛩"}
	r.Cautions = append(r.Cautions, odd...)
	_, pages := rendered(t, r, Options{})
	for _, name := range odd {
		says(t, strings.Join(pages, " "), name, "caution")
	}
	if err := RenderCard(nothing{}, r, Options{}); err != nil {
		t.Error(err)
	}
}
