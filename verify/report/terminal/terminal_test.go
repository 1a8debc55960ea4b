package terminal

import (
	"flag"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

var update = flag.Bool("update", false, "write the golden files anew")

func render(t *testing.T, r *result.Report, o Options) string {
	t.Helper()
	var b strings.Builder
	if err := Render(&b, r, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	airframestest.Golden(t, filepath.Join("testdata", name+".txt"), []byte(got), *update)
}

func TestRenderGolden(t *testing.T) {
	for _, c := range []struct {
		name string
		r    *result.Report
		o    Options
	}{
		{"passing", sample.Passing(), Options{}},
		{"passing_brief", sample.Passing(), Options{Brief: true}},
		{"failing", sample.Failing(), Options{}},
		{"failing_brief", sample.Failing(), Options{Brief: true}},
		{"failing_color", sample.Failing(), Options{Color: true}},
		{"failing_ascii", sample.Failing(), Options{ASCII: true}},
		{"failing_narrow", sample.Failing(), Options{Width: 44}},
		{"nothing", sample.Nothing(), Options{}},
		{"warned", sample.Warned(), Options{}},
		{"warned_brief", sample.Warned(), Options{Brief: true}},
		{"in_part", sample.InPart(), Options{}},
	} {
		t.Run(c.name, func(t *testing.T) { golden(t, c.name, render(t, c.r, c.o)) })
	}
}

func TestRenderShownGolden(t *testing.T) {
	for name, o := range map[string]Options{
		"shown": {}, "shown_brief": {Brief: true}, "shown_narrow": {Width: 44}, "shown_ascii": {ASCII: true},
	} {
		t.Run(name, func(t *testing.T) {
			var b strings.Builder
			if err := RenderShown(&b, sample.OnePosition(), o); err != nil {
				t.Fatal(err)
			}
			golden(t, name, b.String())
		})
	}
}

// A pass is plain only without a warning, be it about the set-up or the script.
func TestWarningAboutTheScriptIsNoPlainPass(t *testing.T) {
	r := sample.Passing()
	r.Script = []result.ScriptFinding{
		{Code: "kept", Message: "it is meant so", OnPurpose: true},
		{Code: "odd", Message: "the sentence is odd"},
	}
	if text := render(t, r, Options{Brief: true}); !strings.Contains(text, "\n▲ PASSED, BUT 1 WARNING ABOUT THE SCRIPT: the sentence is odd. 5 of 5 checks") {
		t.Errorf("got\n%s", text)
	}
	r.Script = r.Script[:1]
	if text := render(t, r, Options{Brief: true}); !strings.Contains(text, "\n✓ PASSED: 5 of 5 checks") {
		t.Errorf("with what is meant so only, got\n%s", text)
	}
	r.Script = []result.ScriptFinding{{Code: "odd", Message: "the sentence fights the aeroplane", Fails: true}}
	r.Verdict = result.Failed
	if text := render(t, r, Options{Brief: true}); !strings.HasSuffix(text, "\n  first: the sentence fights the aeroplane\n") {
		t.Errorf("with a script that is wrong, got\n%s", text)
	}
}

// What must be seen before anything is switched on stands before everything but
// the name, and again where the motor is looked at; and what rests means is said
// once.
func TestCautionComesFirst(t *testing.T) {
	text := render(t, sample.Failing(), Options{})
	const caution = "▲ Take the propeller off or restrain the model before you switch on.\n"
	for _, want := range []string{
		"Tarn Sampler: control check\n" + caution,
		"\nMOTOR AND LOSS OF SIGNAL: 2 checks\n  " + caution,
		"\nAT REST: sticks and trims centred · throttle 0 % · flap lever parked",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("report lacks %q:\n%s", want, text)
		}
	}
	if n := strings.Count(text, "AT REST"); n != 1 {
		t.Errorf("says %d times what rest is", n)
	}
}

// withoutColor takes the colours out of a text.
func withoutColor(text string) string {
	var b strings.Builder
	for len(text) > 0 {
		if strings.HasPrefix(text, "\x1b[") {
			if i := strings.IndexByte(text, 'm'); i > 0 {
				text = text[i+1:]
				continue
			}
		}
		b.WriteByte(text[0])
		text = text[1:]
	}
	return b.String()
}

func TestColorAddsNothingButColor(t *testing.T) {
	colored := render(t, sample.Failing(), Options{Color: true})
	if !strings.Contains(colored, "\x1b[") {
		t.Fatal("no colour at all")
	}
	if got, want := withoutColor(colored), render(t, sample.Failing(), Options{}); got != want {
		t.Errorf("with its colours taken out:\n%s\nwanted:\n%s", got, want)
	}
}

func TestASCIIHasNoOtherSigns(t *testing.T) {
	for _, r := range []*result.Report{sample.Passing(), sample.Failing(), sample.Nothing(), sample.Warned(), sample.InPart()} {
		for i, c := range render(t, r, Options{ASCII: true}) {
			if c > 0x7e {
				t.Fatalf("byte %d is %q", i, c)
			}
		}
	}
}

func TestVerdictIsLastAndNeverSafe(t *testing.T) {
	for _, c := range []struct {
		r    *result.Report
		want string
	}{
		{sample.Passing(), "✓ PASSED: 5 of 5 checks: the set-up as written does what the script asks."},
		{sample.Failing(), "✗ DO NOT FLY: 2 of 6 checks failed, 4 passed. 2 warnings want a look. Not"},
		{sample.Warned(), "▲ PASSED, BUT 1 WARNING: roll throws differ: 90 % right, 85 % left. 5 of 5\n  checks: the set-up"},
		{sample.InPart(), "▲ PASSED IN PART: 5 of 14 checks: the set-up as written does what this part of"},
		{sample.Nothing(), "▲ NOTHING WAS CHECKED: no check ran, so this says nothing about the model. Not"},
	} {
		for _, brief := range []bool{false, true} {
			text := render(t, c.r, Options{Brief: brief})
			paragraphs := strings.Split(strings.TrimSpace(text), "\n\n")
			last := paragraphs[len(paragraphs)-1]
			if !strings.HasPrefix(last, c.want) {
				t.Errorf("last paragraph is %q, wanted it to begin with %q", last, c.want)
			}
			if strings.Contains(strings.ToLower(text), "safe to fly") {
				t.Errorf("says safe to fly:\n%s", text)
			}
		}
	}
}

func TestBriefShowsFailuresOnly(t *testing.T) {
	text := render(t, sample.Failing(), Options{Brief: true})
	for _, want := range []string{"the elevator rises 14° ± 1°", "WANTED", "GOT", "2 warnings want a look",
		"▲ warning: roll throws differ", "[uneven-throws]",
		"\n  first: the elevator rises 14° ± 1° · WRONG WAY: wanted UP, it goes DOWN\n"} {
		if !strings.Contains(text, want) {
			t.Errorf("brief report lacks %q:\n%s", want, text)
		}
	}
	for _, unwanted := range []string{"pass ✓", "NOT COVERED", "LEFT TO DO", "AT REST"} {
		if strings.Contains(text, unwanted) {
			t.Errorf("brief report has %q:\n%s", unwanted, text)
		}
	}
}

// Whatever is in a report, no line is wider than asked, no control character
// gets through, every failure is shown with what was wanted and got, and
// neither a verdict nor a number is lost.
func TestRenderLaws(t *testing.T) {
	text := rapid.StringOfN(rapid.RuneFrom([]rune("aA \t°±µ翼機̈é\u200d😀\x1b\n-m[31")), 0, 90, -1)
	rapid.Check(t, func(t *rapid.T) {
		r := sample.Failing()
		r.Model.Name = text.Draw(t, "model")
		for i := range r.Checks {
			c := &r.Checks[i]
			c.Scenario, c.Sentence = text.Draw(t, "scenario"), text.Draw(t, "sentence")
			c.Got, c.Wanted = text.Draw(t, "got"), text.Draw(t, "wanted")
			c.Passed = rapid.Bool().Draw(t, "passed")
			for _, why := range c.Why {
				for j := range why.Chain {
					s := &why.Chain[j]
					s.Name, s.Text, s.Value = text.Draw(t, "name"), text.Draw(t, "text"), text.Draw(t, "value")
				}
				for j := range why.LookAt {
					why.LookAt[j].Excerpt = text.Draw(t, "excerpt")
				}
			}
		}
		o := Options{
			Width: rapid.IntRange(0, 120).Draw(t, "width"),
			ASCII: rapid.Bool().Draw(t, "ascii"),
			Brief: rapid.Bool().Draw(t, "brief"),
		}
		var b strings.Builder
		if err := Render(&b, r, o); err != nil {
			t.Fatal(err)
		}
		fits(t, b.String(), o)
		_, failed := r.Counts()
		if got := strings.Count(b.String(), "\n   WANTED"); got != failed {
			t.Fatalf("%d failures shown, wanted %d", got, failed)
		}
	})
}

func TestColumns(t *testing.T) {
	for _, c := range []struct {
		text string
		want int
	}{
		{"", 0}, {"flap", 4}, {"14.2°", 5}, {"e\u0301", 1}, {"翼", 2}, {"😀", 2}, {"a\u200db", 2},
	} {
		if got := columns(c.text); got != c.want {
			t.Errorf("columns(%q) = %d, wanted %d", c.text, got, c.want)
		}
	}
}

func TestWrap(t *testing.T) {
	for _, c := range []struct {
		text  string
		width int
		want  string
	}{
		{"", 10, ""},
		{"the port flap drops", 10, "the port|flap drops"},
		{"the port flap drops", 8, "the port|flap|drops"},
		{"abcdefghij", 4, "abcd|efgh|ij"},
		{"a abcdefgh", 4, "a|abcd|efgh"},
		{"翼翼翼", 5, "翼翼|翼"},
	} {
		if got := strings.Join(wrap(c.text, c.width), "|"); got != c.want {
			t.Errorf("wrap(%q, %d) = %q, wanted %q", c.text, c.width, got, c.want)
		}
	}
}

// A line that fits is taken as it is; with its spaces doubled it has to be put
// together, and must come out the same.
func TestWrapTakesTheShortWayOnlyWhereItIsTheSame(t *testing.T) {
	word := rapid.StringOfN(rapid.RuneFrom([]rune("aA1.,°µ翼%ms")), 1, 12, -1)
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(word, 0, 12).Draw(t, "words")
		width := rapid.IntRange(4, 60).Draw(t, "width")
		short, long := wrap(strings.Join(words, " "), width), wrap("  "+strings.Join(words, "  "), width)
		if !slices.Equal(short, long) {
			t.Fatalf("%q, with its spaces doubled %q", short, long)
		}
		for _, line := range short {
			n := 0
			for _, r := range line {
				n += runeColumns(r)
			}
			if columns(line) != n || n > width {
				t.Fatalf("%q has %d columns, counted %d, of %d", line, n, columns(line), width)
			}
		}
	})
}

func TestWindowKeepsTheColumnInSight(t *testing.T) {
	p := newPage(Options{})
	for _, c := range []struct {
		text   string
		column int
		width  int
		want   string
	}{
		{"a short line", 3, 40, "a short line"},
		{"0123456789 0123456789 0123456789", 1, 20, "0123456789 01234567…"},
		{"linkage: {arm_mm: 12, horn_mm: 13, pivots_mm: 58, horn: below}", 51, 30, "…, pivots_mm: 58, horn: below}"},
	} {
		got := p.window(c.text, c.column, c.width)
		if got != c.want {
			t.Errorf("window(%q, %d, %d) = %q, wanted %q", c.text, c.column, c.width, got, c.want)
		}
	}
}

// Many failures often have one cause: the line that they share is named.
func TestManyFailuresNameWhatTheyShare(t *testing.T) {
	r := sample.Failing()
	for i := range r.Checks {
		r.Checks[i].Passed = false
		shared := result.Place{File: "m.yaml", Line: 3, Excerpt: "shared"}
		r.Checks[i].Why = []result.Reason{
			{Of: "port flap", LookAt: []result.Place{{File: "m.yaml", Line: 10 + i}, shared}},
			{Of: "starboard flap", LookAt: []result.Place{shared}},
		}
	}
	text := render(t, r, Options{Brief: true})
	if want := "one cause\n   m.yaml:3, by 6 failures\n       3 | shared\n\n"; !strings.Contains(text, want) {
		t.Errorf("report lacks %q:\n%s", want, text)
	}
}

// fits fails where a line is wider than it may be, ends in spaces, or holds a control
// character.
func fits(t *rapid.T, text string, o Options) {
	t.Helper()
	limit := max(min(o.Width, MaxWidth), MinWidth)
	if o.Width == 0 {
		limit = MaxWidth
	}
	for line := range strings.Lines(text) {
		line = strings.TrimSuffix(line, "\n")
		if columns(line) > limit {
			t.Fatalf("%d columns, wanted at most %d: %q", columns(line), limit, line)
		}
		if strings.TrimRight(line, " ") != line {
			t.Fatalf("spaces at the end of %q", line)
		}
		for _, c := range line {
			if c < ' ' || c == 0x7f {
				t.Fatalf("control character %q in %q", c, line)
			}
		}
	}
}
