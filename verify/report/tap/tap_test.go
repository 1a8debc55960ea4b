package tap

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"

	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

var update = flag.Bool("update", false, "write the golden files anew")

func rendered(t *testing.T, r *result.Report) string {
	t.Helper()
	var b bytes.Buffer
	if err := Render(&b, r); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// read is one test point as a harness sees it.
type read struct {
	ok, skip    bool
	description string
	more        map[string]any
}

var (
	pointLine = regexp.MustCompile(`^(not )?ok (\d+) - (.*)$`)
	directive = regexp.MustCompile(`(?i)^\s*(SKIP|TODO)\S*(\s|$)`)
)

// harness reads TAP 14 by the rules of its specification, strictly: what is no valid line
// is an error.
func harness(text string) (points []read, err error) {
	lines := strings.Split(text, "\n")
	if lines[len(lines)-1] != "" {
		return nil, errors.New("the last line does not end")
	}
	lines = lines[:len(lines)-1]
	if lines[0] != "TAP version 14" {
		return nil, fmt.Errorf("version line %q", lines[0])
	}
	planned := -1
	for i := 1; i < len(lines); i++ {
		line := lines[i]
		var n int
		if found := pointLine.FindStringSubmatch(line); found != nil {
			if _, err := fmt.Sscan(found[2], &n); err != nil || n != len(points)+1 {
				return nil, fmt.Errorf("point %s, wanted %d", found[2], len(points)+1)
			}
			p := read{ok: found[1] == ""}
			p.description, p.skip, err = unescape(found[3])
			if err != nil {
				return nil, err
			}
			points = append(points, p)
		} else if line == "  ---" && len(points) > 0 && points[len(points)-1].more == nil {
			end := i + 1
			for end < len(lines) && lines[end] != "  ..." {
				if !strings.HasPrefix(lines[end], "  ") {
					return nil, fmt.Errorf("line %d is in a block and not indented", end+1)
				}
				end++
			}
			if end == len(lines) {
				return nil, errors.New("a block does not end")
			}
			if err := yaml.Unmarshal([]byte(strings.Join(lines[i+1:end], "\n")), &points[len(points)-1].more); err != nil {
				return nil, err
			}
			i = end
		} else if strings.HasPrefix(line, "1..") && planned < 0 && len(points) == 0 {
			if _, err := fmt.Sscanf(line, "1..%d", &planned); err != nil {
				return nil, err
			}
		} else if !strings.HasPrefix(line, "#") {
			return nil, fmt.Errorf("line %d is %q", i+1, line)
		}
	}
	if planned != len(points) {
		return nil, fmt.Errorf("%d points, planned %d", len(points), planned)
	}
	return points, nil
}

// unescape reads a description up to its directive.
func unescape(text string) (description string, skip bool, err error) {
	for i := 0; i < len(text); i++ {
		switch {
		case text[i] == '\\' && i+1 < len(text) && (text[i+1] == '\\' || text[i+1] == '#'):
			i++
			description += text[i : i+1]
		case text[i] == '#':
			if !directive.MatchString(text[i+1:]) {
				return "", false, fmt.Errorf("unescaped # in %q", text)
			}
			return strings.TrimRight(description, " "), true, nil
		default:
			description += text[i : i+1]
		}
	}
	return description, false, nil
}

var samples = map[string]func() *result.Report{
	"passing": sample.Passing, "failing": sample.Failing, "warned": sample.Warned, "in-part": sample.InPart,
	"nothing": sample.Nothing, "backwards": sample.Backwards, "hostile": sample.Hostile,
}

func TestRenderGolden(t *testing.T) {
	for name, r := range samples {
		t.Run(name, func(t *testing.T) {
			text := rendered(t, r())
			airframestest.Golden(t, filepath.Join("testdata", name+".tap"), []byte(text), *update)
			if _, err := harness(text); err != nil {
				t.Error(err)
			}
		})
	}
}

// A planted fault for each rule: the harness that the tests trust refuses it.
func TestHarnessRefusesPlantedFaults(t *testing.T) {
	good := rendered(t, sample.Failing())
	for _, c := range []struct{ name, from, to string }{
		{"another version", "TAP version 14", "TAP version 13"},
		{"a point too few", "1..7", "1..8"},
		{"no plan", "1..7\n", ""},
		{"two plans", "ok 1 ", "1..7\nok 1 "},
		{"a number twice", "ok 2 -", "ok 1 -"},
		{"a block that does not end", "  ...\n", ""},
		{"a block that is no YAML", `wanted: "rises`, `wanted: "rises"`},
		{"a # that is not escaped", "the motor stops", "the motor # stops"},
		{"a line of another kind", "# DO NOT", "DO NOT"},
	} {
		bad := strings.Replace(good, c.from, c.to, 1)
		if bad == good {
			t.Fatalf("%s: nothing was planted", c.name)
		}
		if _, err := harness(bad); err == nil {
			t.Errorf("%s: accepted", c.name)
		}
	}
}

func TestRenderCountsWhatTheReportSays(t *testing.T) {
	for _, c := range []struct {
		name               string
		ok, notOK, skipped int
	}{
		{"passing", 5, 0, 0}, {"failing", 4, 2, 1}, {"warned", 5, 0, 0}, {"in-part", 5, 0, 1},
		{"nothing", 0, 1, 0}, {"backwards", 5, 1, 0}, {"hostile", 4, 3, 1},
	} {
		points, err := harness(rendered(t, samples[c.name]()))
		if err != nil {
			t.Fatal(err)
		}
		ok, notOK, skipped := 0, 0, 0
		for _, p := range points {
			switch {
			case p.skip:
				skipped++
			case p.ok:
				ok++
			default:
				notOK++
			}
		}
		if ok != c.ok || notOK != c.notOK || skipped != c.skipped {
			t.Errorf("%s: %d ok, %d not ok, %d skipped, wanted %d, %d, %d", c.name, ok, notOK, skipped, c.ok, c.notOK, c.skipped)
		}
	}
}

func TestRenderSaysWhyACheckFailed(t *testing.T) {
	points, err := harness(rendered(t, sample.Failing()))
	if err != nil {
		t.Fatal(err)
	}
	p := points[2]
	at, _ := p.more["at"].(map[string]any)
	if p.more["wanted"] != "rises 14° ± 1°" || p.more["got"] != "drops 14.2° (9.9 mm)" || at["line"] != 21 || at["file"] != "models/tarn-sampler.feature" {
		t.Errorf("the block says %v", p.more)
	}
}

// Nothing that a file says can become more than text.
func TestRenderKeepsHostileTextWhole(t *testing.T) {
	points, err := harness(rendered(t, sample.Hostile()))
	if err != nil {
		t.Fatal(err)
	}
	if got, want := points[2].more["message"], strings.ReplaceAll(sample.Nasty, "\xff", "\uFFFD"); got != want {
		t.Errorf("message is %q, wanted %q", got, want)
	}
	if !strings.Contains(points[0].description, `<b>&amp;"' # SKIP \# TODO`) {
		t.Errorf("description is %q", points[0].description)
	}
}

// A verdict that no check shows is not ok all the same, and no plan is ever empty.
func TestRenderNeverPassesWhatFailed(t *testing.T) {
	for name, change := range map[string]func(*result.Report){
		"verdict":   func(r *result.Report) { r.Verdict = result.Failed },
		"no checks": func(r *result.Report) { r.Checks = nil },
	} {
		r := sample.Passing()
		change(r)
		points, err := harness(rendered(t, r))
		if err != nil {
			t.Fatal(err)
		}
		if len(points) == 0 || points[len(points)-1].ok {
			t.Errorf("%s: passes", name)
		}
	}
}

type failingWriter struct{}

var errFull = errors.New("full")

func (failingWriter) Write([]byte) (int, error) { return 0, errFull }

func TestRenderGivesTheWritersError(t *testing.T) {
	if err := Render(failingWriter{}, sample.Failing()); !errors.Is(err, errFull) {
		t.Errorf("error is %v", err)
	}
}
