package diag

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"
)

func TestCodesAreExplainedOnceEach(t *testing.T) {
	codes := Codes()
	kebab := regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)
	for i, info := range codes {
		if !kebab.MatchString(info.Code) {
			t.Errorf("%q is no kebab-case", info.Code)
		}
		if i > 0 && codes[i-1].Code >= info.Code {
			t.Errorf("%q is there twice or out of order", info.Code)
		}
		if info.Title == "" || unicode.IsUpper([]rune(info.Title)[0]) || strings.HasSuffix(info.Title, ".") {
			t.Errorf("%s: the title %q wants to be in lower case without a full stop", info.Code, info.Title)
		}
		if len(info.Text) < 40 || !strings.HasSuffix(strings.TrimRight(info.Text, ")"), ".") {
			t.Errorf("%s: the text %q wants to be whole sentences", info.Code, info.Text)
		}
	}
	if !slices.ContainsFunc(codes, func(c CodeInfo) bool { return c.Code == "unknown-key" }) {
		t.Error("the codes of the loader are missing")
	}
}

func TestExplainFindsACodeAndNothingElse(t *testing.T) {
	if info, ok := Explain("unknown-key"); !ok || info.Code != "unknown-key" {
		t.Errorf("got %+v, %v", info, ok)
	}
	for _, code := range []string{"", "Unknown-Key", "no-such-code"} {
		if _, ok := Explain(code); ok {
			t.Errorf("%q is explained", code)
		}
	}
}

// notShown are the codes that have no broken file, and why.
func notShown() map[string]string {
	reasons := map[string]string{"file-too-large": "a megabyte of text; a test of the loader makes one"}
	for _, info := range commandCodes {
		reasons[info.Code] = "needs a command, not a file; testdata/commands has it"
	}
	return reasons
}

// Every code is shown by a broken file that a test of its room runs, and every
// broken file shows a code that can be explained.
func TestEveryCodeHasABrokenFile(t *testing.T) {
	const dir = "../../testdata/problems"
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	shown := map[string]bool{}
	for _, e := range entries {
		shown[e.Name()] = true
		if _, ok := Explain(e.Name()); !ok {
			t.Errorf("testdata/problems/%s shows no code that there is", e.Name())
		}
		expected, err := os.ReadFile(filepath.Join(dir, e.Name(), "expected.txt"))
		if err != nil || !strings.Contains(string(expected), "["+e.Name()+"]") {
			t.Errorf("testdata/problems/%s: expected.txt does not show the code (%v)", e.Name(), err)
		}
		if broken, _ := filepath.Glob(filepath.Join(dir, e.Name(), "*.[yf]*")); len(broken) == 0 {
			t.Errorf("testdata/problems/%s has no airframe.yaml or script.feature", e.Name())
		}
	}
	reasons := notShown()
	for _, info := range Codes() {
		switch reason, excused := reasons[info.Code]; {
		case shown[info.Code] && excused:
			t.Errorf("%s has a broken file although it %s", info.Code, reason)
		case !shown[info.Code] && !excused:
			t.Errorf("%s has no broken file in testdata/problems", info.Code)
		}
		delete(reasons, info.Code)
	}
	for code := range reasons {
		t.Errorf("%s is excused and is no code", code)
	}
}
