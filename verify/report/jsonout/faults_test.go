package jsonout

import (
	"bytes"
	"io"
	"path/filepath"
	"strings"
	"testing"

	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

func document(t *testing.T, write func(io.Writer) error) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func faultsOf(t *testing.T, r *result.Faults) []byte {
	return document(t, func(w io.Writer) error { return RenderFaults(w, r) })
}

func walkOf(t *testing.T, r *result.Walk) []byte {
	return document(t, func(w io.Writer) error { return RenderWalk(w, r) })
}

func causesOf(t *testing.T, r *result.Causes) []byte {
	return document(t, func(w io.Writer) error { return RenderCauses(w, r) })
}

func TestDocumentsOfMistakesGolden(t *testing.T) {
	for name, text := range map[string][]byte{
		"faults": faultsOf(t, sample.Faults()), "walk": walkOf(t, sample.Walk()), "causes": causesOf(t, sample.Causes()),
		"offered": rendered(t, sample.Offered()),
	} {
		airframestest.Golden(t, filepath.Join("testdata", name+".json"), text, *update)
	}
}

func TestDocumentsOfMistakesKeepToTheirSchemas(t *testing.T) {
	faults, walk, causes, report := compile(t, FaultsSchema), compile(t, WalkSchema), compile(t, CausesSchema), compile(t, ReportSchema)
	for name, r := range map[string]*result.Faults{
		"faults": sample.Faults(), "none missed": sample.NoneMissed(), "in part": sample.NoneMissedInPart(), "stopped": sample.FaultsStopped(),
		"already wrong": sample.FaultsOfWrong(), "no mistakes": sample.NoMistakes(), "as bare as can be": {Verdict: result.NoMistakes},
	} {
		if err := validate(t, faults, faultsOf(t, r)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, r := range map[string]*result.Walk{
		"walk": sample.Walk(), "ruler": sample.WalkMeasured(), "nothing": sample.NoWalk(), "as bare as can be": {},
	} {
		if err := validate(t, walk, walkOf(t, r)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, r := range map[string]*result.Causes{
		"several": sample.Causes(), "one": sample.OneCause(), "none": sample.NoCause(), "right": sample.SeenAsItShould(),
		"near": sample.NearCauses(), "commoner": sample.Commoner(), "not told apart": sample.NotToldApart(), "as bare as can be": {Verdict: result.NoCause},
	} {
		if err := validate(t, causes, causesOf(t, r)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, r := range map[string]*result.Report{"several": sample.Offered(), "one": sample.OfferedOne(), "none": sample.OfferedNone()} {
		if err := validate(t, report, rendered(t, r)); err != nil {
			t.Errorf("a check that offers %s: %v", name, err)
		}
	}
	if validate(t, walk, faultsOf(t, sample.Faults())) == nil || validate(t, causes, walkOf(t, sample.Walk())) == nil ||
		validate(t, faults, causesOf(t, sample.Causes())) == nil {
		t.Error("a document keeps to the schema of another")
	}
}

// Every planted fault must be refused, or the schemas would accept anything.
func TestSchemasOfMistakesRefuseOtherShapes(t *testing.T) {
	for _, c := range []struct {
		name, from, to string
		schema, good   []byte
	}{
		{"another state", `"state": "invisible"`, `"state": "timeout"`, FaultsSchema, faultsOf(t, sample.Faults())},
		{"another verdict", `"verdict": "some missed"`, `"verdict": "safe"`, FaultsSchema, faultsOf(t, sample.Faults())},
		{"another format", `"hingeline_faults": 6`, `"hingeline_faults": 4`, FaultsSchema, faultsOf(t, sample.Faults())},
		{"a missing key", `"percent": 28,`, ``, FaultsSchema, faultsOf(t, sample.Faults())},
		{"no list", `"caught_by": [],`, `"caught_by": null,`, FaultsSchema, faultsOf(t, sample.Faults())},
		{"a word for a number", `"steps_at_least": 3`, `"steps_at_least": "3"`, WalkSchema, walkOf(t, sample.Walk())},
		{"another key", `"ruler": false,`, `"ruler": false, "safe": true,`, WalkSchema, walkOf(t, sample.Walk())},
		{"another stage", `"stage": "port wing"`, `"stage": "left wing"`, WalkSchema, walkOf(t, sample.Walk())},
		{"another verdict", `"verdict": "several causes"`, `"verdict": "none"`, CausesSchema, causesOf(t, sample.Causes())},
		{"no step but a word", `"next": null`, `"next": "none"`, CausesSchema, causesOf(t, sample.OneCause())},
		{"a word for yes", `"on_model": true`, `"on_model": "yes"`, CausesSchema, causesOf(t, sample.Causes())},
		{"a repair without its checks", `"checks": 14,`, ``, ReportSchema, rendered(t, sample.OfferedOne())},
	} {
		bad := strings.Replace(string(c.good), c.from, c.to, 1)
		if bad == string(c.good) {
			t.Fatalf("%s: %q is not in the document", c.name, c.from)
		}
		if validate(t, compile(t, c.schema), []byte(bad)) == nil {
			t.Errorf("%s: accepted", c.name)
		}
	}
}
