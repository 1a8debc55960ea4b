package sense

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/verifytest"
)

var update = flag.Bool("update", false, "write the expected output of testdata/problems anew")

const problems = "../../testdata/problems"

// TestLookFindsEveryPlantedFault compares what is found in the planted example of
// each code.
func TestLookFindsEveryPlantedFault(t *testing.T) {
	for _, code := range Codes {
		t.Run(code, func(t *testing.T) {
			var texts [2]string
			for i, name := range []string{"airframe.yaml", "script.feature"} {
				text, err := os.ReadFile(filepath.Join(problems, code, name))
				if err != nil {
					t.Fatal(err)
				}
				texts[i] = string(text)
			}
			list := Look(verifytest.Model(t, "airframe.yaml", texts[0]), run(t, verifytest.Model(t, "airframe.yaml", texts[0]), texts[1]).Asked)
			if len(found(list, code)) == 0 {
				t.Errorf("not found: %s", code)
			}
			var said strings.Builder
			for i := range list {
				tell(&said, &list[i])
			}
			airframestest.Golden(t, filepath.Join(problems, code, "expected.txt"), []byte(said.String()), *update)
		})
	}
}

// tell writes everything about a finding.
func tell(b *strings.Builder, f *result.ScriptFinding) {
	fmt.Fprintf(b, "%s:%d:%d: %s [%s]\n", f.Place.File, f.Place.Line, f.Place.Column, f.Message, f.Code)
	for _, line := range []struct{ label, text string }{
		{"sentence", f.Sentence}, {"why", f.Reason}, {"look", f.Picture}, {"right", f.Right}, {"do", f.Hint},
	} {
		if line.text != "" {
			fmt.Fprintf(b, "    %s: %s\n", line.label, line.text)
		}
	}
	if f.OnPurpose {
		b.WriteString("    on purpose\n")
	}
	if f.Fails {
		b.WriteString("    fails the check\n")
	}
}

func TestCodesAreExplained(t *testing.T) {
	for _, code := range Codes {
		if info, ok := diag.Explain(code); !ok || info.Title == "" || info.Text == "" {
			t.Errorf("%s is not explained", code)
		}
	}
	if !slices.Contains(Codes, codeRate) {
		t.Error("codes are missing")
	}
}
