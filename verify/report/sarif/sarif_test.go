package sarif

import (
	"bytes"
	"encoding/json"
	"errors"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

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

// schema is the format's own schema, with the forms of its texts checked too.
func schema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "..", "testdata", "formats", "sarif-2.1.0.schema.json"))
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource("sarif.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("sarif.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func validate(t *testing.T, s *jsonschema.Schema, text []byte) error {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return s.Validate(doc)
}

var samples = map[string]func() *result.Report{
	"passing": sample.Passing, "failing": sample.Failing, "warned": sample.Warned, "in-part": sample.InPart,
	"nothing": sample.Nothing, "backwards": sample.Backwards, "hostile": sample.Hostile,
}

func TestRenderGolden(t *testing.T) {
	s := schema(t)
	for name, r := range samples {
		t.Run(name, func(t *testing.T) {
			text := rendered(t, r())
			airframestest.Golden(t, filepath.Join("testdata", name+".sarif"), text, *update)
			if err := validate(t, s, text); err != nil {
				t.Error(err)
			}
		})
	}
}

// A planted fault for each kind: the schema refuses it.
func TestSchemaRefusesPlantedFaults(t *testing.T) {
	s := schema(t)
	good := string(rendered(t, sample.Failing()))
	for _, c := range []struct{ name, from, to string }{
		{"another version", `"version": "2.1.0"`, `"version": "2.0.0"`},
		{"another level", `"level": "error"`, `"level": "fatal"`},
		{"a line before the first", `"startLine": 21`, `"startLine": 0`},
		{"a word for a number", `"startLine": 21`, `"startLine": "21"`},
		{"a key of another name", `"ruleId"`, `"rule_id"`},
		{"no message", `"message": {`, `"massage": {`},
		{"no URI", `"uri": "models/tarn-sampler.feature"`, `"uri": "models\\tarn sampler%"`},
		{"other columns", "unicodeCodePoints", "bytes"},
	} {
		bad := strings.Replace(good, c.from, c.to, 1)
		if bad == good {
			t.Fatalf("%s: nothing was planted", c.name)
		}
		if validate(t, s, []byte(bad)) == nil {
			t.Errorf("%s: accepted", c.name)
		}
	}
}

// log is what a reader of the format takes from it.
type log struct {
	Runs []struct {
		Tool struct {
			Driver struct {
				Rules []struct{ ID string }
			}
		}
		Invocations []struct{ ExecutionSuccessful bool }
		Results     []struct {
			RuleID              string
			RuleIndex           int
			Level               string
			Message             struct{ Text string }
			Suppressions        []struct{ Kind string }
			PartialFingerprints map[string]string
			RelatedLocations    []location
			Locations           []location
		}
	}
}

type location struct {
	Message          struct{ Text string }
	PhysicalLocation struct {
		ArtifactLocation struct{ URI string }
		Region           struct{ StartLine, StartColumn int }
	}
}

func parsed(t *testing.T, r *result.Report) log {
	t.Helper()
	var l log
	if err := json.Unmarshal(rendered(t, r), &l); err != nil {
		t.Fatal(err)
	}
	return l
}

func TestRenderGivesEveryFindingItsLevel(t *testing.T) {
	for _, c := range []struct {
		name                                string
		errors, warnings, notes, suppressed int
		ran                                 bool
	}{
		{"passing", 0, 0, 0, 0, true}, {"failing", 2, 2, 1, 0, true}, {"warned", 0, 1, 0, 0, true},
		{"in-part", 0, 0, 1, 0, true}, {"nothing", 1, 0, 0, 0, false}, {"backwards", 1, 2, 0, 1, true},
	} {
		run := parsed(t, samples[c.name]()).Runs[0]
		n, suppressed := map[string]int{}, 0
		for _, one := range run.Results {
			n[one.Level]++
			suppressed += len(one.Suppressions)
			if id := run.Tool.Driver.Rules[one.RuleIndex].ID; id != one.RuleID {
				t.Errorf("%s: rule %s is at the place of %s", c.name, one.RuleID, id)
			}
		}
		if n["error"] != c.errors || n["warning"] != c.warnings || n["note"] != c.notes || suppressed != c.suppressed || run.Invocations[0].ExecutionSuccessful != c.ran {
			t.Errorf("%s: levels %v, %d suppressed, ran %v; wanted %+v", c.name, n, suppressed, run.Invocations[0], c)
		}
	}
}

func TestRenderPutsFailuresWhereTheyAre(t *testing.T) {
	one := parsed(t, sample.Failing()).Runs[0].Results[0]
	at := one.Locations[0].PhysicalLocation
	if at.ArtifactLocation.URI != "models/tarn-sampler.feature" || at.Region.StartLine != 21 || at.Region.StartColumn != 5 {
		t.Errorf("the failure is at %+v", at)
	}
	if !strings.HasPrefix(one.Message.Text, "the elevator rises 14° ± 1°\nWRONG WAY: wanted UP, it goes DOWN\nwanted: ") {
		t.Errorf("it says %q", one.Message.Text)
	}
	look := one.RelatedLocations[0]
	if look.PhysicalLocation.ArtifactLocation.URI != "models/tarn-sampler.yaml" || look.PhysicalLocation.Region.StartLine != 33 ||
		look.Message.Text != "look at this line, of the elevator: reversed: of channel 4" {
		t.Errorf("it points at %+v", look)
	}
}

// A fingerprint stays as lines move, and two results never share one.
func TestRenderFingerprints(t *testing.T) {
	prints := func(r *result.Report) map[string]bool {
		all := map[string]bool{}
		for _, one := range parsed(t, r).Runs[0].Results {
			all[one.PartialFingerprints["hingeline/v1"]] = true
		}
		return all
	}
	r := sample.Failing()
	r.Findings = append(r.Findings, r.Findings[0])
	before := prints(r)
	if len(before) != len(parsed(t, r).Runs[0].Results) {
		t.Errorf("%d fingerprints for %d results", len(before), len(parsed(t, r).Runs[0].Results))
	}
	for i := range r.Checks {
		r.Checks[i].Place.Line += 7
	}
	for i := range r.Findings {
		r.Findings[i].Place.Line += 7
	}
	for p := range prints(r) {
		if !before[p] {
			t.Errorf("fingerprint %s is new", p)
		}
	}
	r.Checks[2].Sentence = "the elevator rises 15° ± 1°"
	changed := 0
	for p := range prints(r) {
		if !before[p] {
			changed++
		}
	}
	if changed != 1 {
		t.Errorf("%d fingerprints are new for one new sentence", changed)
	}
}

func TestURIOfNames(t *testing.T) {
	for name, want := range map[string]string{
		"models/tarn.yaml":    "models/tarn.yaml",
		"my model #2.yaml":    "my%20model%20%232.yaml",
		"a:b.yaml":            "./a:b.yaml",
		"/home/x/50 %.yaml":   "file:///home/x/50%20%25.yaml",
		"../Flügel.yaml":      "../Fl%C3%BCgel.yaml",
		"-":                   "-",
		"bad \xff name?.yaml": "bad%20%EF%BF%BD%20name%3F.yaml",
	} {
		if got := uri(name); got != want {
			t.Errorf("%q is %q, wanted %q", name, got, want)
		}
	}
}

// A verdict that no check shows is an error all the same.
func TestRenderNeverPassesWhatFailed(t *testing.T) {
	for name, change := range map[string]func(*result.Report){
		"verdict":   func(r *result.Report) { r.Verdict = result.Failed },
		"no checks": func(r *result.Report) { r.Checks = nil },
	} {
		r := sample.Passing()
		change(r)
		if found := parsed(t, r).Runs[0].Results; len(found) != 1 || found[0].Level != "error" {
			t.Errorf("%s: results %+v", name, found)
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
