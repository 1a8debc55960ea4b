package jsonout

import (
	"bytes"
	"strings"
	"testing"

	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

func comparisonOf(t *testing.T, c *result.Comparison) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := RenderComparison(&b, c); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestComparisonKeepsToItsSchema(t *testing.T) {
	schema := compile(t, ComparisonSchema)
	for name, c := range map[string]*result.Comparison{
		"whole": sample.Comparison(), "none worse": sample.NoneWorse(), "nothing": sample.NoneCompared(), "same": sample.NoDifference(), "empty": {Verdict: result.NoDifference},
	} {
		if err := validate(t, schema, comparisonOf(t, c)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestComparisonGolden(t *testing.T) {
	airframestest.Golden(t, "testdata/comparison.json", comparisonOf(t, sample.Comparison()), *update)
}

func TestComparisonSchemaRefusesOtherShapes(t *testing.T) {
	schema := compile(t, ComparisonSchema)
	for _, row := range [][2]string{
		{`"verdict": "some worse"`, `"verdict": "safe"`},
		{`"hingeline_comparison": 6`, `"hingeline_comparison": 5`},
		{`"exact": true,`, ``},
		{`"unit": "%"`, `"unit": "percent"`},
		{`"signal_lost": null`, `"signal_lost": "none"`},
		{`"worse": true`, `"worse": "yes"`},
		{`"checks_on_both": 14`, `"checks_on_both": -1`},
	} {
		text := string(comparisonOf(t, sample.Comparison()))
		if !strings.Contains(text, row[0]) {
			t.Errorf("%q is not there", row[0])
		}
		if err := validate(t, schema, []byte(strings.Replace(text, row[0], row[1], 1))); err == nil {
			t.Errorf("%s passes", row[1])
		}
	}
}
