package jsonout

import (
	"io"
	"path/filepath"
	"testing"

	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

func benchOf(t *testing.T, r *result.Bench) []byte {
	return document(t, func(w io.Writer) error { return RenderBench(w, r) })
}

func TestBenchGolden(t *testing.T) {
	airframestest.Golden(t, filepath.Join("testdata", "bench.json"), benchOf(t, sample.Bench()), *update)
}

func TestBenchKeepsToItsSchema(t *testing.T) {
	schema := compile(t, BenchSchema)
	for name, r := range map[string]*result.Bench{
		"differs": sample.Bench(), "right": sample.BenchRight(), "sizes": sample.BenchSizes(), "by eye": sample.BenchByEye(), "grouped": sample.BenchGrouped(), "near": sample.BenchNear(), "ratio": sample.BenchRatio(), "no cause": sample.BenchNoCause(),
		"open": sample.BenchOpen(), "nothing": sample.BenchNothing(), "as bare as can be": {Verdict: result.NothingSeen},
	} {
		if err := validate(t, schema, benchOf(t, r)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	if validate(t, schema, walkOf(t, sample.Walk())) == nil {
		t.Error("a walk-around keeps to the schema of a bench report")
	}
}
