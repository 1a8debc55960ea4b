package diag

import (
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
