package terminal

import (
	"fmt"
	"io"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

func ofBench(r *result.Bench) writing {
	return func(w io.Writer, o Options) error { return RenderBench(w, r, o) }
}

func ofStep(s *result.BenchStep, look BenchLook) writing {
	return func(w io.Writer, o Options) error { return RenderBenchStep(w, s, look, o) }
}

var benchReports = map[string]writing{
	"bench":         ofBench(sample.Bench()),
	"bench_right":   ofBench(sample.BenchRight()),
	"bench_wrong":   ofBench(sample.BenchWrongAsWritten()),
	"bench_sizes":   ofBench(sample.BenchSizes()),
	"bench_ratio":   ofBench(sample.BenchRatio()),
	"bench_byeye":   ofBench(sample.BenchByEye()),
	"bench_grouped": ofBench(sample.BenchGrouped()),
	"bench_near":    ofBench(sample.BenchNear()),
	"bench_nocause": ofBench(sample.BenchNoCause()),
	"bench_open":    ofBench(sample.BenchOpen()),
	"bench_nothing": ofBench(sample.BenchNothing()),
	"bench_step":    ofStep(sample.BenchStep(), BenchLook{Picture: true}),
	"bench_ruler":   ofStep(sample.BenchStep(), BenchLook{Picture: true, Ruler: true}),
	"bench_flat":    ofStep(sample.BenchStep(), BenchLook{Picture: true, Rows: 16}),
	"bench_words":   ofStep(sample.BenchStep(), BenchLook{}),
	"bench_stands":  ofStep(sample.BenchStands(), BenchLook{Picture: true}),
}

func TestReportsOfTheBenchGolden(t *testing.T) {
	for name, write := range benchReports {
		t.Run(name, func(t *testing.T) { golden(t, name, write.text(t, Options{})) })
	}
	for _, name := range []string{"bench", "bench_step"} {
		for look, o := range map[string]Options{"narrow": {Width: 40}, "ascii": {ASCII: true}, "brief": {Brief: true}} {
			t.Run(name+"_"+look, func(t *testing.T) { golden(t, name+"_"+look, benchReports[name].text(t, o)) })
		}
	}
}

// Of a set-up that its script does not pass on the last word is DO NOT FLY, whatever was
// seen, and no line of it is marked as right at the end.
func TestSetUpThatFailsIsNeverAYes(t *testing.T) {
	for _, verdict := range []result.BenchVerdict{result.SeenAsExpected, result.SeenDiffers, result.NotFinished, result.NothingSeen} {
		for _, brief := range []bool{false, true} {
			r := sample.BenchWrongAsWritten()
			r.Verdict = verdict
			text := ofBench(r).text(t, Options{Brief: brief})
			last := text[strings.LastIndex(text, "✗"):]
			if !strings.HasPrefix(last, "✗ DO NOT FLY: 2 of 14 checks fail on the set-up as written") || strings.Contains(last, "\n▲") || strings.Contains(text, "\n✓") || strings.Contains(text, "before the model flies") {
				t.Errorf("%s: %s", verdict, text)
			}
		}
	}
}

// Nothing is wider than the terminal, and no report says that a model may fly.
func TestReportsOfTheBenchFitTheTerminal(t *testing.T) {
	for name, write := range benchReports {
		for _, width := range []int{40, 60, 80} {
			text := write.text(t, Options{Width: width, ASCII: true})
			for line := range strings.Lines(text) {
				if columns(strings.TrimSuffix(line, "\n")) > width {
					t.Errorf("%s at %d columns: %q", name, width, line)
				}
			}
			if strings.Contains(strings.ToLower(text), "safe to fly") {
				t.Errorf("%s says safe to fly", name)
			}
		}
	}
}

// mostPicture is the most columns that a picture has.
const mostPicture = 76

// Whatever the places of its parts, a picture stays within its columns, in characters that
// every terminal has, and shows the number of each part that moves.
func TestPictureStaysWithinItsColumns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := &result.BenchStep{Number: 1, Of: 1, Move: []string{"roll stick full right"}}
		for n := range rapid.IntRange(1, 30).Draw(t, "parts") {
			from := rapid.Float64Range(-1, 1).Draw(t, "from")
			s.Parts = append(s.Parts, result.BenchPart{
				Number: n + 1, Name: "surface", Motion: result.UpDown, Sure: true, Moves: true, Way: rapid.SampledFrom([]string{"UP", "DOWN", "LEFT", "RIGHT", "STAYS"}).Draw(t, "way"),
				Spot: result.Spot{Row: rapid.SampledFrom([]string{"", "wing", "brakes", "tail", "canard", "fin", "wheel"}).Draw(t, "row"), From: from, To: rapid.Float64Range(from, 1).Draw(t, "to")},
			})
		}
		p := newPage(Options{})
		rows := rapid.IntRange(0, 16).Draw(t, "rows")
		p.picture(s, rows)
		if n := strings.Count(p.out.String(), "\n"); rows > 0 && n > rows {
			t.Fatalf("%d rows of %d", n, rows)
		}
		for line := range strings.Lines(p.out.String()) {
			line = strings.TrimSuffix(line, "\n")
			if len(line) > mostPicture || strings.ContainsFunc(line, func(r rune) bool { return r > '~' }) {
				t.Fatalf("%d columns: %q", len(line), line)
			}
		}
	})
}

// No line ends between the number of a part and its name, nor within the name.
func TestStepBreaksNoItem(t *testing.T) {
	s := &result.BenchStep{Number: 1, Of: 1, Move: []string{"roll stick full right"}}
	for n, name := range []string{"port outer flap", "port inner flap", "elevator", "starboard inner flap", "starboard outer flap", "rudder", "nose wheel"} {
		s.Parts = append(s.Parts, result.BenchPart{Number: n + 1, Name: name, Motion: result.UpDown, Way: "STAYS", Exact: "neutral", Sure: true})
	}
	for width := MinWidth; width <= MaxWidth; width++ {
		text := ofStep(s, BenchLook{}).text(t, Options{Width: width})
		for i := range s.Parts {
			if item := fmt.Sprintf("%d %s", s.Parts[i].Number, s.Parts[i].Name); !strings.Contains(text, item) {
				t.Errorf("at %d columns %q is broken:\n%s", width, item, text)
			}
		}
		for line := range strings.Lines(text) {
			if columns(strings.TrimSuffix(line, "\n")) > width {
				t.Errorf("at %d columns: %q", width, line)
			}
		}
	}
}

// What scrolls by last is what is wrong: the parts, and the first cause to look at.
func TestBenchEndsWithThePartAndItsCause(t *testing.T) {
	for name, c := range map[string]struct {
		r    *result.Bench
		says []string
	}{
		"a cause": {sample.Bench(), []string{"LOOK FIRST: channel 4 (port flap) is reversed; in the radio: take the reversing off channel 4 (port flap)", "NOT AS EXPECTED: port aileron, rudder."}},
		"a size":  {sample.BenchRatio(), []string{"LOOK FIRST: port flap goes to 0.80 of computed", "NOT AS EXPECTED: port aileron, rudder."}},
		"nearly":  {sample.BenchNear(), []string{"LOOK FIRST: it may be that channel 4 (port flap) is reversed, which explains 21 of 23; look again at step 12", "NOT AS EXPECTED: port aileron, rudder."}},
	} {
		text := ofBench(c.r).text(t, Options{Width: 200})
		lines := strings.Split(strings.TrimSpace(text), "\n")
		end := strings.Join(strings.Fields(strings.Join(lines[max(0, len(lines)-9):], " ")), " ")
		for _, want := range c.says {
			if !strings.Contains(end, want) {
				t.Errorf("%s: wanted %q at the end, got %q", name, want, end)
			}
		}
	}
	if text := ofBench(sample.BenchGrouped()).text(t, Options{}); strings.Count(text, "port aileron: ") != 1 || !strings.Contains(text, "port aileron: the other way at all 5 steps where it should move") {
		t.Errorf("the port aileron is not told of once:\n%s", text)
	}
}

// Where the file is right nothing tells to write a mistake of the model into it.
func TestCausesNeverBlameTheFileThatPasses(t *testing.T) {
	for name, write := range map[string]writing{"bench": ofBench(sample.Bench()), "causes": ofCauses(sample.Causes()), "near": ofCauses(sample.NearCauses())} {
		text := write.text(t, Options{Width: 200})
		if strings.Contains(text, "must be written into the airframe file") || strings.Contains(text, "^") {
			t.Errorf("%s:\n%s", name, text)
		}
	}
}
