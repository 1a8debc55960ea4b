package jsonout

import (
	"bytes"
	"encoding/json"
	"flag"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"example.com/hingeline/airframes/airframestest"
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

func problems(t *testing.T, p *result.Problems) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := RenderProblems(&b, p); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestRenderGolden(t *testing.T) {
	for name, got := range map[string][]byte{
		"failing":  rendered(t, sample.Failing()),
		"shown":    shown(t, sample.OnePosition()),
		"problems": problems(t, sample.Problems()),
	} {
		airframestest.Golden(t, filepath.Join("testdata", name+".json"), got, *update)
	}
}

func TestRenderKeepsToItsSchema(t *testing.T) {
	report, position := compile(t, ReportSchema), compile(t, PositionSchema)
	for name, r := range map[string]*result.Report{
		"passing": sample.Passing(), "failing": sample.Failing(), "nothing": sample.Nothing(),
		"warned": sample.Warned(), "in part": sample.InPart(),
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
	wrong := compile(t, ProblemsSchema)
	for name, p := range map[string]*result.Problems{"problems": sample.Problems(), "as bare as can be": {}} {
		if err := validate(t, wrong, problems(t, p)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// What is no answer is none by any key: not of the shape of a report, and its
// verdict never that of one that passed.
func TestProblemsAreNoReport(t *testing.T) {
	text := problems(t, sample.Problems())
	if validate(t, compile(t, ReportSchema), text) == nil {
		t.Error("problems keep to the schema of a report")
	}
	bad := bytes.Replace(text, []byte(`"nothing checked"`), []byte(`"passed"`), 1)
	if bytes.Equal(bad, text) || validate(t, compile(t, ProblemsSchema), bad) == nil {
		t.Error("problems may pass")
	}
}

// An angle has its direction as a word, and beside it as a sign: down and left
// are plus (AIAA R-004-1992 as summarised in the DAVE-ML conventions).
func TestSignedAnglesFollowTheConvention(t *testing.T) {
	for way, want := range map[string]float64{
		"DOWN": 12.5, "LEFT": 12.5, "aft": 12.5, "UP": -12.5, "RIGHT": -12.5, "fore": -12.5,
	} {
		if got := exactOf(&result.Exact{Number: 12.5, Unit: "°", Way: way}); got.Signed != want || got.Number != 12.5 || got.Way != way {
			t.Errorf("%s 12.5° is %+v, wanted it signed %g", way, got, want)
		}
	}
	if got := exactOf(&result.Exact{Number: -70, Unit: "%"}); got.Signed != -70 {
		t.Errorf("-70 %% is signed %g", got.Signed)
	}
	for name, text := range map[string][]byte{"report": ReportSchema, "position": PositionSchema} {
		var doc struct {
			Defs struct {
				Step struct {
					Properties struct {
						Exact struct {
							OneOf []struct {
								Properties struct {
									Signed struct{ Description string }
								}
							}
						}
					}
				}
			} `json:"$defs"`
		}
		if err := json.Unmarshal(text, &doc); err != nil {
			t.Fatal(err)
		}
		said := doc.Defs.Step.Properties.Exact.OneOf[0].Properties.Signed.Description
		for _, want := range []string{"plus is trailing edge DOWN, or LEFT", "DAVE-ML", "aft"} {
			if !strings.Contains(said, want) {
				t.Errorf("%s: the schema says of a signed angle %q, without %q", name, said, want)
			}
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
		{"another unit", `"unit": "µs"`, `"unit": "ms"`},
		{"a sign for a word", `"way": "fore"`, `"way": "-"`},
		{"another format", `"hingeline_report": 6`, `"hingeline_report": 3`},
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
	for name, text := range map[string][]byte{"report": ReportSchema, "position": PositionSchema, "problems": ProblemsSchema, "proofs": ProofsSchema} {
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
			Why         []struct {
				Of    string
				Chain []struct {
					Value string
					Exact *result.Exact
				}
			}
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
	if c.Number != 3 || c.Passed || c.Wanted != "rises 14° ± 1°" || c.Got != "drops 14.2° (9.9 mm)" || len(c.Why) != 1 || len(c.Why[0].Chain) != 9 {
		t.Fatalf("check 3 is %+v", c)
	}
	step := c.Why[0].Chain[7]
	if want := (result.Exact{Number: 21.2125, Unit: "°", Way: "DOWN"}); step.Value != "21.2° DOWN" || step.Exact == nil || *step.Exact != want {
		t.Errorf("step 8 is %s, exactly %+v, wanted 21.2° DOWN, exactly %+v", step.Value, step.Exact, want)
	}
	if why := got.Checks[3].Why; len(why) != 2 || why[0].Of != "starboard flap" || why[1].Of != "port flap" || why[0].Chain[0].Exact != nil {
		t.Errorf("check 4, a comparison, is explained by %+v", why)
	}
}
