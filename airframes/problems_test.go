package airframes_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/airframes/diag"
)

var update = flag.Bool("update", false, "write the expected files anew")

const problemsDir = "../testdata/problems"

// loaderCodes are the codes whose broken files this package shows; the others
// of the directory belong to the rooms that find them.
var loaderCodes = []string{
	"alias", "bad-condition", "bad-name", "bad-number", "bad-unit", "bracket",
	"colon", "curve-ends", "detents-too-close", "duplicate-key", "duplicate-name",
	"empty-file", "holds-nothing", "indentation", "later-phase",
	"linkage-impossible", "linkage-locks", "linkage-over-centre",
	"measured-too-little", "merge-key", "missing-key", "no-value",
	"not-plain-text", "not-together", "out-of-range", "quote", "rates-order",
	"reserved-word", "scale-out-of-range", "several-documents",
	"side-against-name", "tab-indentation", "table-too-short",
	"table-turns-back", "tag", "too-deep", "too-many", "unknown-key",
	"unknown-name", "unknown-version", "unknown-word", "wrong-kind", "yaml-syntax",
}

func TestEveryLoaderProblemIsShown(t *testing.T) {
	for _, code := range loaderCodes {
		t.Run(code, func(t *testing.T) {
			dir := filepath.Join(problemsDir, code)
			text, err := os.ReadFile(filepath.Join(dir, "airframe.yaml"))
			if err != nil {
				t.Fatal(err)
			}
			model, problems := airframes.Load("airframe.yaml", text)
			if model != nil {
				t.Error("a broken file makes a model")
			}
			if !hasCode(problems, code) {
				t.Errorf("no problem has the code %s", code)
			}
			var shown bytes.Buffer
			diag.Write(&shown, problems, diag.NewSource("airframe.yaml", text))
			airframestest.Golden(t, filepath.Join(dir, "expected.txt"), shown.Bytes(), *update)
		})
	}
}

func hasCode(problems []diag.Problem, code string) bool {
	for _, p := range problems {
		if p.Code == code {
			return true
		}
	}
	return false
}
