package jsonout

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

var update = flag.Bool("update", false, "write the golden files anew")

func compile(t *testing.T, schema []byte) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(schema))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("schema.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("schema.json")
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

func rendered(t *testing.T, r *result.Report) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Render(&b, r); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func shown(t *testing.T, s *result.Shown) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := RenderShown(&b, s); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestRenderGolden(t *testing.T) {
	for name, got := range map[string][]byte{
		"failing": rendered(t, sample.Failing()),
		"shown":   shown(t, sample.OnePosition()),
	} {
		file := filepath.Join("testdata", name+".json")
		if *update {
			if err := os.WriteFile(file, got, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got, want) {
			t.Errorf("%s differs (run with -update to accept)\ngot:\n%s", file, got)
		}
	}
}

func TestRenderKeepsToItsSchema(t *testing.T) {
	report, position := compile(t, ReportSchema), compile(t, PositionSchema)
	for name, r := range map[string]*result.Report{
		"passing": sample.Passing(), "failing": sample.Failing(), "nothing": sample.Nothing(),
		"as bare as can be": {Verdict: result.NothingChecked},
	} {
		if err := validate(t, report, rendered(t, r)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, s := range map[string]*result.Shown{
		"one position": sample.OnePosition(), "as bare as can be": {},
	} {
		if err := validate(t, position, shown(t, s)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Every planted fault must be refused, or the schema would accept anything.
func TestSchemaRefusesOtherShapes(t *testing.T) {
	report := compile(t, ReportSchema)
	good := string(rendered(t, sample.Failing()))
	for _, c := range []struct{ name, from, to string }{
		{"another verdict", `"verdict": "failed"`, `"verdict": "safe"`},
		{"another key", `"tool":`, `"colour": "red", "tool":`},
		{"a missing key", `"subject": "elevator",`, ``},
		{"another key in a check", `"subject": "elevator",`, `"subject": "elevator", "part": "elevator",`},
		{"another stage", `"stage": "tail"`, `"stage": "nose"`},
		{"a word for a number", `"line": 33`, `"line": "33"`},
		{"no list", `"cautions": [`, `"cautions": null, "rest": [`},
		{"another format", `"hingeline_report": 1`, `"hingeline_report": 2`},
	} {
		bad := strings.Replace(good, c.from, c.to, 1)
		if bad == good {
			t.Fatalf("%s: %q is not in the report", c.name, c.from)
		}
		if validate(t, report, []byte(bad)) == nil {
			t.Errorf("%s: accepted", c.name)
		}
	}
}

// Every object of the schemas names all its keys and allows no other.
func TestSchemasAreClosed(t *testing.T) {
	for name, text := range map[string][]byte{"report": ReportSchema, "position": PositionSchema} {
		var doc any
		if err := json.Unmarshal(text, &doc); err != nil {
			t.Fatal(err)
		}
		var walk func(path string, v any)
		walk = func(path string, v any) {
			switch v := v.(type) {
			case map[string]any:
				if v["type"] == "object" {
					if v["additionalProperties"] != false {
						t.Errorf("%s%s allows other keys", name, path)
					}
					if len(v["required"].([]any)) != len(v["properties"].(map[string]any)) {
						t.Errorf("%s%s does not want all its keys", name, path)
					}
				}
				for k, x := range v {
					walk(path+"/"+k, x)
				}
			case []any:
				for _, x := range v {
					walk(path+"/", x)
				}
			}
		}
		walk("", doc)
	}
}

// What the report says, read back as another program would.
func TestRenderSaysWhatTheReportSays(t *testing.T) {
	var got struct {
		Verdict string
		Counts  map[string]int
		Checks  []struct {
			Number      int
			Wanted, Got string
			Passed      bool
			Chain       []struct{ Value string }
		}
	}
	if err := json.Unmarshal(rendered(t, sample.Failing()), &got); err != nil {
		t.Fatal(err)
	}
	want := map[string]int{"checks": 6, "passed": 4, "failed": 2, "left_out": 3, "warnings": 2}
	for k, n := range want {
		if got.Counts[k] != n {
			t.Errorf("%s is %d, wanted %d", k, got.Counts[k], n)
		}
	}
	if got.Verdict != "failed" {
		t.Errorf("verdict is %q", got.Verdict)
	}
	c := got.Checks[2]
	if c.Number != 3 || c.Passed || c.Wanted != "rises 14° ± 1°" || c.Got != "drops 14.2° (9.9 mm)" || len(c.Chain) != 9 {
		t.Errorf("check 3 is %+v", c)
	}
}
