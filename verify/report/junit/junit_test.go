package junit

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

var update = flag.Bool("update", false, "write the golden files anew")

func rendered(t *testing.T, r *result.Report) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Render(&b, r); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// node is any element, as a reader that knows nothing of our shapes sees it.
type node struct {
	XMLName xml.Name
	Attrs   []xml.Attr `xml:",any,attr"`
	Text    string     `xml:",chardata"`
	Nodes   []node     `xml:",any"`
}

func (n *node) attr(name string) string {
	for _, a := range n.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func (n *node) all(name string) (found []*node) {
	for i := range n.Nodes {
		if n.Nodes[i].XMLName.Local == name {
			found = append(found, &n.Nodes[i])
		}
		found = append(found, n.Nodes[i].all(name)...)
	}
	return found
}

func parsed(t *testing.T, text []byte) *node {
	t.Helper()
	var n node
	if err := xml.Unmarshal(text, &n); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	return &n
}

// wrongCounts says which counts of a document do not add up.
func wrongCounts(doc *node) (wrong []string) {
	count := func(n *node) map[string]string {
		return map[string]string{
			"tests":    strconv.Itoa(len(n.all("testcase"))),
			"failures": strconv.Itoa(len(n.all("failure"))),
			"errors":   strconv.Itoa(len(n.all("error"))),
			"skipped":  strconv.Itoa(len(n.all("skipped"))),
		}
	}
	for _, n := range append(doc.all("testsuite"), doc) {
		for name, want := range count(n) {
			if got := n.attr(name); got != want {
				wrong = append(wrong, n.attr("name")+": "+name+" is "+got+", counted "+want)
			}
		}
	}
	return wrong
}

var samples = map[string]func() *result.Report{
	"passing": sample.Passing, "failing": sample.Failing, "warned": sample.Warned, "in-part": sample.InPart,
	"nothing": sample.Nothing, "backwards": sample.Backwards, "hostile": sample.Hostile,
}

func TestRenderGolden(t *testing.T) {
	for name, r := range samples {
		t.Run(name, func(t *testing.T) {
			text := rendered(t, r())
			airframestest.Golden(t, filepath.Join("testdata", name+".xml"), text, *update)
			if wrong := wrongCounts(parsed(t, text)); wrong != nil {
				t.Error(wrong)
			}
		})
	}
}

// A planted fault: the counting notices a case too few.
func TestWrongCountsFindsPlantedOnes(t *testing.T) {
	text := string(rendered(t, sample.Failing()))
	bad := strings.Replace(text, `failures="2"`, `failures="1"`, 1)
	if bad == text {
		t.Fatal("nothing was planted")
	}
	if wrongCounts(parsed(t, []byte(bad))) == nil {
		t.Error("a wrong count was not noticed")
	}
}

// What a reader counts is what the report says.
func TestRenderCountsWhatTheReportSays(t *testing.T) {
	for _, c := range []struct {
		name                              string
		tests, failures, errors, skippeds string
	}{
		{"passing", "5", "0", "0", "0"},
		{"failing", "7", "2", "0", "1"},
		{"warned", "5", "0", "0", "0"},
		{"in-part", "6", "0", "0", "1"},
		{"nothing", "1", "0", "1", "0"},
		{"backwards", "6", "1", "0", "0"},
	} {
		doc := parsed(t, rendered(t, samples[c.name]()))
		got := [4]string{doc.attr("tests"), doc.attr("failures"), doc.attr("errors"), doc.attr("skipped")}
		if want := [4]string{c.tests, c.failures, c.errors, c.skippeds}; got != want {
			t.Errorf("%s: tests, failures, errors, skipped are %v, wanted %v", c.name, got, want)
		}
	}
}

func TestRenderSaysWhyACheckFailed(t *testing.T) {
	doc := parsed(t, rendered(t, sample.Failing()))
	failure := doc.all("failure")[0]
	if got := failure.attr("message"); got != "WRONG WAY: wanted UP, it goes DOWN" {
		t.Errorf("message is %q", got)
	}
	for _, want := range []string{"wanted: rises 14° ± 1°", "got: drops 14.2° (9.9 mm)", "reversed = -70 %", "limit: at its stop: the servo stalls",
		"look at models/tarn-sampler.yaml:33:5  reversed: of channel 4"} {
		if !strings.Contains(failure.Text, want) {
			t.Errorf("the failure does not say %q:\n%s", want, failure.Text)
		}
	}
	if out := doc.all("system-out")[0].Text; !strings.Contains(out, "DO NOT FLY") || !strings.Contains(out, "WARNING: roll throws differ") || !strings.Contains(out, "nose wheel") {
		t.Errorf("system-out says %s", out)
	}
}

// A verdict that no check shows fails all the same: whatever made it is no pass.
func TestRenderNeverPassesWhatFailed(t *testing.T) {
	r := sample.Passing()
	r.Verdict = result.Failed
	if got := parsed(t, rendered(t, r)).attr("failures"); got != "1" {
		t.Errorf("%s failures, wanted 1", got)
	}
	r = sample.Passing()
	r.Checks = nil
	if got := parsed(t, rendered(t, r)).attr("errors"); got != "1" {
		t.Errorf("%s errors without a check, wanted 1", got)
	}
}

// A check at a stage that nobody knows is not lost.
func TestRenderKeepsUnknownStages(t *testing.T) {
	r := sample.Failing()
	r.Checks[2].Stage = "nose"
	if got := parsed(t, rendered(t, r)).attr("tests"); got != "7" {
		t.Errorf("%s cases, wanted 7", got)
	}
}

func TestRenderDates(t *testing.T) {
	for date, want := range map[string]string{
		"": "", "2026-11-25": "2026-11-25T00:00:00Z", "2026-11-25T21:15:00+01:00": "2026-11-25T20:15:00Z",
	} {
		r := sample.Passing()
		r.Date = date
		if got := parsed(t, rendered(t, r)).all("testsuite")[0].attr("timestamp"); got != want {
			t.Errorf("date %q: timestamp %q, wanted %q", date, got, want)
		}
	}
}

type failingWriter struct{}

func (failingWriter) Write([]byte) (int, error) { return 0, errFull }

var errFull = errors.New("full")

func TestRenderGivesTheWritersError(t *testing.T) {
	if err := Render(failingWriter{}, sample.Failing()); !errors.Is(err, errFull) {
		t.Errorf("error is %v", err)
	}
	if err := Render(io.Discard, sample.Failing()); err != nil {
		t.Error(err)
	}
}
