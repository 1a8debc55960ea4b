//go:build formats

package verify

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/features"
	"example.com/hingeline/verify/report/junit"
	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/report/tap"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// formats are every report that outside programs read: those made by hand, all built-in
// models, and built-in models with a mistake in them. They are made once, and only read.
var formats map[string]*result.Report

func formatReports(t *testing.T) map[string]*result.Report {
	t.Helper()
	if formats != nil {
		return formats
	}
	reports := map[string]*result.Report{
		"made passing": sample.Passing(), "made failing": sample.Failing(), "made warned": sample.Warned(), "made in part": sample.InPart(),
		"made nothing": sample.Nothing(), "made backwards": sample.Backwards(), "made hostile": sample.Hostile(), "made crowded": sample.Crowded(),
	}
	for _, name := range airframes.Shipped() {
		reports[name] = shippedReport(t, name, "", "")
	}
	for i, fault := range [][2]string{
		{"when: rate switch is high}\n    reversed: true\n    sub_trim: 3%", "when: rate switch is high}\n    sub_trim: 3%"},
		{"offset_mm: 22, horn: below", "offset_mm: 22, horn: above"},
		{"replace_with: -100%", "replace_with: 100%"},
	} {
		r := shippedReport(t, "bracken-20", fault[0], fault[1])
		if r.Verdict != result.Failed {
			t.Fatalf("mistake %d is not noticed", i+1)
		}
		reports[fmt.Sprintf("bracken-20 with mistake %d", i+1)] = r
	}
	formats = reports
	return formats
}

func shippedReport(t *testing.T, name, from, to string) *result.Report {
	t.Helper()
	text, ok := airframes.ReadShipped(name)
	if !ok || !strings.Contains(string(text), from) {
		t.Fatalf("%s is not there, or without %q", name, from)
	}
	m, _ := airframes.Load(name+".yaml", []byte(strings.Replace(string(text), from, to, 1)))
	says, ok := features.Read(name)
	if m == nil || !ok {
		t.Fatalf("%s cannot be used", name)
	}
	r, _ := Check(m, []script.File{{Name: name + ".feature", Text: says}}, script.Selection{})
	if r == nil {
		t.Fatalf("%s cannot be checked", name)
	}
	r.Date = "2026-11-25T20:15:00Z"
	return r
}

// xmllint says what is wrong with XML by our schema; empty for nothing.
func xmllint(t *testing.T, text []byte) string {
	t.Helper()
	c := exec.Command("xmllint", "--noout", "--schema", filepath.Join("..", "testdata", "formats", "junit.xsd"), "-")
	c.Stdin = bytes.NewReader(text)
	out, err := c.CombinedOutput()
	if err == nil {
		return ""
	}
	if _, ran := err.(*exec.ExitError); !ran {
		t.Fatal(err)
	}
	return string(out)
}

func TestFormatsJUnitByXmllint(t *testing.T) {
	for name, r := range formatReports(t) {
		var b bytes.Buffer
		if err := junit.Render(&b, r); err != nil {
			t.Fatal(err)
		}
		if wrong := xmllint(t, b.Bytes()); wrong != "" {
			t.Errorf("%s: %s", name, wrong)
		}
	}
}

// A planted fault for each rule: xmllint refuses it.
func TestFormatsXmllintRefusesPlantedFaults(t *testing.T) {
	var b bytes.Buffer
	if err := junit.Render(&b, sample.Failing()); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ name, from, to string }{
		{"no XML", "</testsuites>", ""},
		{"a character that is none", "the elevator rises", "the elevator \x01 rises"},
		{"no count", ` failures="2"`, ""},
		{"a word for a count", `tests="7"`, `tests="seven"`},
		{"an unknown attribute", ` line="21"`, ` row="21"`},
		{"a line before the first", ` line="21"`, ` line="0"`},
		{"an unknown element", "<failure ", "<oops/><failure "},
		{"no name", ` name="the elevator rises 14° ± 1°"`, ""},
		{"two suites of a name", `<testsuite name="tail"`, `<testsuite name="port wing"`},
		{"a case twice", `name="at every switch position and every stick position, no channel runs out of travel (all channels)"`,
			`name="the motor stops"`},
	} {
		bad := strings.Replace(b.String(), c.from, c.to, 1)
		if c.name == "a case twice" {
			bad = strings.Replace(bad, "Tarn Sampler.Nothing runs out of travel", "Tarn Sampler.Loss of signal", 1)
		}
		if bad == b.String() {
			t.Fatalf("%s: nothing was planted", c.name)
		}
		if xmllint(t, []byte(bad)) == "" {
			t.Errorf("%s: accepted", c.name)
		}
	}
}

// reader prints what Perl's own reader of the protocol takes from it, a line each.
const reader = `use TAP::Parser; binmode STDOUT, ":utf8"; my $p = TAP::Parser->new({tap => do { local $/; <STDIN> }});
my ($ok, $bad, $skip, $yaml) = (0, 0, 0, 0);
while (my $r = $p->next) {
  if ($r->is_test) { if ($r->has_skip) { $skip++ } elsif ($r->has_todo) { $bad += 1000 } elsif ($r->is_ok) { $ok++ } else { $bad++ } }
  elsif ($r->is_yaml) { $yaml++ }
  elsif ($r->is_unknown) { print "unknown: ", $r->raw, "\n" }
}
print "parse error: $_\n" for $p->parse_errors;
print "$ok ok, $bad not ok, $skip skipped, $yaml blocks, planned ", $p->tests_planned, "\n";`

// byPerl is what Perl's TAP::Parser makes of a report. It knows the protocol up to version
// 13, of which version 14 is a stricter kind, so that the line with the version is changed
// for it.
func byPerl(t *testing.T, text string) string {
	t.Helper()
	c := exec.Command("perl", "-e", reader)
	c.Stdin = strings.NewReader(strings.Replace(text, "TAP version 14\n", "TAP version 13\n", 1))
	out, err := c.CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	return strings.TrimSpace(string(out))
}

func TestFormatsTAPByPerl(t *testing.T) {
	for name, r := range formatReports(t) {
		var b bytes.Buffer
		if err := tap.Render(&b, r); err != nil {
			t.Fatal(err)
		}
		passed, failed := r.Counts()
		wrong, _, _ := r.ScriptCounts()
		notOK, skipped := failed+wrong, min(r.NotSelected, 1)
		if len(r.Checks) == 0 {
			notOK++
		}
		want := fmt.Sprintf("%d ok, %d not ok, %d skipped, %d blocks, planned %d", passed, notOK, skipped, notOK, passed+notOK+skipped)
		if got := byPerl(t, b.String()); got != want {
			t.Errorf("%s: Perl reads %q, wanted %q", name, got, want)
		}
	}
}

// A planted fault for each rule: Perl's reader notices it.
func TestFormatsPerlNoticesPlantedFaults(t *testing.T) {
	var b bytes.Buffer
	if err := tap.Render(&b, sample.Failing()); err != nil {
		t.Fatal(err)
	}
	good := byPerl(t, b.String())
	for _, c := range []struct{ name, from, to string }{
		{"a point too few", "1..7", "1..8"},
		{"a number twice", "ok 2 -", "ok 1 -"},
		{"an unescaped directive", "the motor stops", "the motor # SKIP stops"},
		{"another answer", "not ok 3", "ok 3"},
		{"a line of another kind", "# DO NOT", "DO NOT"},
		{"a block that does not end", "  ...\n", ""},
	} {
		bad := strings.Replace(b.String(), c.from, c.to, 1)
		if bad == b.String() {
			t.Fatalf("%s: nothing was planted", c.name)
		}
		if byPerl(t, bad) == good {
			t.Errorf("%s: not noticed", c.name)
		}
	}
}

// Perl's harness as a whole, as a build server runs it, agrees with the verdict.
func TestFormatsProveAgreesWithTheVerdict(t *testing.T) {
	for name, r := range formatReports(t) {
		var b bytes.Buffer
		if err := tap.Render(&b, r); err != nil {
			t.Fatal(err)
		}
		file := filepath.Join(t.TempDir(), "report.tap")
		text := strings.Replace(b.String(), "TAP version 14\n", "TAP version 13\n", 1)
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		err := exec.Command("prove", "-e", "cat", file).Run()
		if passes := r.Verdict == result.Passed || r.Verdict == result.PassedInPart; passes != (err == nil) {
			t.Errorf("%s: the verdict is %q, prove says %v", name, r.Verdict, err)
		}
	}
}
