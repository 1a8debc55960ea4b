package jsonout

import (
	"bytes"
	"encoding/json"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

func proofs(t *testing.T, p *result.Proofs) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := RenderProofs(&b, p); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestRenderProofsGolden(t *testing.T) {
	airframestest.Golden(t, filepath.Join("testdata", "proofs.json"), proofs(t, sample.Proofs()), *update)
	airframestest.Golden(t, filepath.Join("testdata", "universal.json"), rendered(t, sample.Universal()), *update)
}

func TestProofsKeepToTheirSchema(t *testing.T) {
	schema := compile(t, ProofsSchema)
	for name, p := range map[string]*result.Proofs{
		"all kinds of answers": sample.Proofs(), "all proved": sample.AllProved(), "in part": sample.ProvedInPart(),
		"undecided": sample.ProofsUndecided(), "stopped": sample.ProofsStopped(), "nothing": sample.NoProofs(),
		"as bare as can be": {Verdict: result.NothingProved},
	} {
		if err := validate(t, schema, proofs(t, p)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	if err := validate(t, compile(t, ReportSchema), rendered(t, sample.Universal())); err != nil {
		t.Errorf("a report with proofs: %v", err)
	}
	for name, text := range map[string][]byte{"report": ReportSchema, "problems": ProblemsSchema, "position": PositionSchema} {
		if validate(t, compile(t, text), proofs(t, sample.Proofs())) == nil {
			t.Errorf("proofs keep to the schema of a %s", name)
		}
	}
}

// Every planted fault must be refused, or the schema would accept anything.
func TestProofsSchemaRefusesOtherShapes(t *testing.T) {
	schema := compile(t, ProofsSchema)
	good := string(proofs(t, sample.Proofs()))
	for _, c := range []struct{ name, from, to string }{
		{"another verdict", `"verdict": "disproved"`, `"verdict": "safe"`},
		{"another answer", `"answer": "empty"`, `"answer": "passed"`},
		{"another key", `"stopped":`, `"colour": "red", "stopped":`},
		{"a missing key", `"limit": 200000,`, ``},
		{"no list", `"assumes": [],`, `"assumes": null,`},
		{"another unit", `"unit": "%"`, `"unit": "percent"`},
		{"a word for a number", `"value": 35`, `"value": "35"`},
		{"no counterexample but a word", `"counter": null`, `"counter": "none"`},
		{"a code with a space", `"code": "control-sense"`, `"code": "control sense"`},
		{"another format", `"hingeline_proofs": 6`, `"hingeline_proofs": 3`},
	} {
		bad := strings.Replace(good, c.from, c.to, 1)
		if bad == good {
			t.Fatalf("%s: %q is not in the proofs", c.name, c.from)
		}
		if validate(t, schema, []byte(bad)) == nil {
			t.Errorf("%s: accepted", c.name)
		}
	}
}

// Whatever the numbers are, what is written is JSON and keeps to the schema.
func TestMarginsAreNeverNaN(t *testing.T) {
	schema := compile(t, ProofsSchema)
	number := rapid.OneOf(rapid.Float64(), rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, math.Copysign(0, -1)}))
	rapid.Check(t, func(rt *rapid.T) {
		p := sample.Proofs()
		m := p.Laws[0].Claims[0].Margin
		m.Value, m.AtLeast = number.Draw(rt, "value"), number.Draw(rt, "at least")
		if err := validate(t, schema, proofs(t, p)); err != nil {
			rt.Fatal(err)
		}
	})
}

// What the proofs say, read back as another program would.
func TestRenderProofsSaysWhatTheProofsSay(t *testing.T) {
	var got struct {
		Verdict, Stopped string
		Counts           map[string]int
		Laws             []struct {
			Code   string
			None   string
			Claims []struct {
				Number  int
				Answer  string
				Limit   int
				Assumes []string
				Margin  *struct {
					Value   float64
					AtLeast float64 `json:"at_least"`
					Unit    string
				}
				Counter *struct {
					Got  string
					Set  []string
					Pose struct{ Controls, Before, Moved []string }
					Why  []struct{ Of string }
				}
				LookAt []struct{ Line int } `json:"look_at"`
			}
		}
	}
	p := sample.Proofs()
	if err := json.Unmarshal(proofs(t, p), &got); err != nil {
		t.Fatal(err)
	}
	for k, n := range map[string]int{"laws": 7, "left_out": 0, "claims": 10, "proved": 6, "disproved": 2, "undecided": 1, "empty": 1, "warnings": 1} {
		if got.Counts[k] != n {
			t.Errorf("%s is %d, wanted %d", k, got.Counts[k], n)
		}
	}
	number := 0
	for i := range p.Laws {
		for k, c := range p.Laws[i].Claims {
			number++
			g := got.Laws[i].Claims[k]
			if g.Number != number || g.Answer != string(c.Answer) || g.Limit != c.Limit || len(g.Assumes) != len(c.Assumes) || len(g.LookAt) != len(c.LookAt) {
				t.Errorf("claim %d is %+v, wanted %+v", number, g, c)
			}
			if m := c.Margin; (m == nil) != (g.Margin == nil) || m != nil && (g.Margin.Value != m.Value || g.Margin.AtLeast != m.AtLeast || g.Margin.Unit != m.Unit) {
				t.Errorf("claim %d: margin %+v, wanted %+v", number, g.Margin, m)
			}
			if x := c.Counter; (x == nil) != (g.Counter == nil) || x != nil && (g.Counter.Got != x.Got || len(g.Counter.Set) != len(x.Set) ||
				len(g.Counter.Pose.Before) != len(x.Before) || len(g.Counter.Why) != len(x.Why)) {
				t.Errorf("claim %d: counterexample %+v, wanted %+v", number, g.Counter, x)
			}
		}
	}
	if got.Verdict != "disproved" || got.Laws[6].None == "" {
		t.Errorf("verdict %q, law without claims because of %q", got.Verdict, got.Laws[6].None)
	}
}
