package script

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/phrase"
)

var update = flag.Bool("update", false, "write the expected output of testdata/problems anew")

const problemFiles = "../../testdata/problems"

var allCodes = []string{
	codeNoScenarios, codeEmptyScenario, codeNothingAsked, codeMisspeltKeyword, codeStepArgument, codeSameScenario, codeSameScript,
	codeUnknownColumn, codeEmptyExamples, CodeNothingSelected, codeSyntax, codeLanguage, codeTooBig, codeNotText,
	phrase.CodeUnknownSentence, phrase.CodeUnknownName, phrase.CodeUnknownPosition, phrase.CodeUnclearName, phrase.CodeOutOfRange,
	phrase.CodeBadNumber, phrase.CodeBadUnit, phrase.CodeWrongMotion, phrase.CodeConflict, phrase.CodeUnclearOrder,
	phrase.CodeMissingSize, phrase.CodeNoMovement, phrase.CodeNotAlways, phrase.CodeWrongPlace,
}

// load reads an airframe that must be without error.
func load(t testing.TB, name string, text []byte) *airframes.Model {
	t.Helper()
	m, problems := airframes.Load(name, text)
	if m == nil {
		var said bytes.Buffer
		diag.Write(&said, problems, diag.NewSource(name, text))
		t.Fatalf("the test's own airframe is refused:\n%s", &said)
	}
	return m
}

// fennelText is the airframe file of the tests, after replacements of pairs of
// texts, each of which must be there.
func fennelText(t testing.TB, replace ...string) []byte {
	t.Helper()
	text, err := os.ReadFile("testdata/fennel.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for i := 0; i < len(replace); i += 2 {
		if !bytes.Contains(text, []byte(replace[i])) {
			t.Fatalf("fennel.yaml does not hold %q", replace[i])
		}
		text = bytes.Replace(text, []byte(replace[i]), []byte(replace[i+1]), 1)
	}
	return text
}

func fennel(t testing.TB, replace ...string) *airframes.Model {
	t.Helper()
	return load(t, "fennel.yaml", fennelText(t, replace...))
}

// TestRunPlacesEveryKindOfProblem compares what is printed for the broken
// script of each code.
func TestRunPlacesEveryKindOfProblem(t *testing.T) {
	m := fennel(t)
	for _, code := range allCodes {
		t.Run(code, func(t *testing.T) {
			text, err := os.ReadFile(filepath.Join(problemFiles, code, "script.feature"))
			if err != nil {
				t.Fatal(err)
			}
			files, sel := []File{{"script.feature", text}}, Selection{}
			switch code {
			case codeSameScript:
				files = append(files, File{"copy.feature", text})
			case CodeNothingSelected:
				sel.Only = []string{"@wing", "@wings", "rudder"}
			}
			record, problems := Run(m, files, sel)
			if len(record.Checks) > 0 || !slices.ContainsFunc(problems, func(p diag.Problem) bool { return p.Code == code }) {
				t.Errorf("got %d checks and %+v, want the problem %s", len(record.Checks), problems, code)
			}
			for _, p := range problems {
				if p.Severity != diag.Error || p.Message == "" || p.Hint == "" || code != CodeNothingSelected && p.File == "" {
					t.Errorf("no error with a place and a hint: %+v", p)
				}
			}
			var said bytes.Buffer
			diag.Write(&said, problems, diag.NewSource("script.feature", text))
			airframestest.Golden(t, filepath.Join(problemFiles, code, "expected.txt"), said.Bytes(), *update)
		})
	}
}

func TestCodesAreExplained(t *testing.T) {
	for _, code := range allCodes {
		if info, ok := diag.Explain(code); !ok || info.Title == "" || !strings.HasSuffix(info.Text, ".") {
			t.Errorf("%s is not explained", code)
		}
	}
}
