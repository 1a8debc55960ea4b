package findings

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/verifytest"
)

var update = flag.Bool("update", false, "write the expected output of testdata/problems anew")

const problems = "../../testdata/problems"

// TestFindReportsEveryPlantedProblem compares what is printed for the planted
// example of each code.
func TestFindReportsEveryPlantedProblem(t *testing.T) {
	for _, code := range Codes {
		t.Run(code, func(t *testing.T) {
			text, err := os.ReadFile(filepath.Join(problems, code, "airframe.yaml"))
			if err != nil {
				t.Fatal(err)
			}
			m := verifytest.Model(t, "airframe.yaml", text)
			found := Find(m)
			if !slices.ContainsFunc(found, func(p diag.Problem) bool { return p.Code == code }) {
				t.Errorf("not found: %s", code)
			}
			for _, p := range found {
				if p.Severity != diag.Warning || p.Line == 0 || p.Column == 0 || p.Hint == "" {
					t.Errorf("%s is no placed warning with a hint: %+v", p.Code, p)
				}
			}
			var said bytes.Buffer
			diag.Write(&said, found, m.Source)
			airframestest.Golden(t, filepath.Join(problems, code, "expected.txt"), said.Bytes(), *update)
		})
	}
}

func TestCodesAreExplained(t *testing.T) {
	for _, code := range Codes {
		if info, ok := diag.Explain(code); !ok || info.Title == "" || info.Text == "" {
			t.Errorf("%s is not explained", code)
		}
	}
}

// TestFindIsSilentOnSoundModels holds every rule to what it must not report.
func TestFindIsSilentOnSoundModels(t *testing.T) {
	for _, name := range airframes.Shipped() {
		text, ok := airframes.ReadShipped(name)
		if !ok {
			t.Fatalf("%s is listed but not there", name)
		}
		m := verifytest.Model(t, name, text)
		if found := Find(m); found != nil {
			var said bytes.Buffer
			diag.Write(&said, found, m.Source)
			t.Errorf("%s:\n%s", name, &said)
		}
	}
}
