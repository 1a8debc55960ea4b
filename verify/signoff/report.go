package signoff

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"
)

// Named is what a report says about itself, by which its check can be run again.
type Named struct {
	Format  int    `json:"hingeline_report"`
	Tool    string `json:"tool"`
	Date    string `json:"date"`
	Verdict string `json:"verdict"`
	Model   struct {
		File string `json:"file"`
	} `json:"model"`
	Scripts []string `json:"scripts"`
}

// ReadReport reads what a report says about itself. Nothing of it is trusted: see
// [SameReport].
func ReadReport(text []byte) (*Named, error) {
	if _, err := tree(text); err != nil {
		return nil, err
	}
	n := &Named{}
	if err := json.Unmarshal(text, n); err != nil {
		return nil, errors.New("it is JSON, but no report of check --json")
	}
	if n.Format == 0 || n.Model.File == "" {
		return nil, errors.New("it is JSON, but no report of check --json")
	}
	return n, nil
}

// SameReport holds a report that was handed in against what this program writes for the
// same files. They must be the same byte for byte; the [Refusal] names the first
// difference.
func SameReport(given, ours []byte) error {
	if bytes.Equal(given, ours) {
		return nil
	}
	const hint = "check again with --json, read that report, and sign it"
	a, err := tree(given)
	if err != nil {
		return refuse(hint, "the report is not as check wrote it: %v", err)
	}
	b, err := tree(ours)
	if err != nil {
		return err
	}
	d := firstDifference("", a, b)
	if d == nil {
		return refuse(hint, "the report says what check would write, but not byte for byte: spaces, line ends or the order of keys are others")
	}
	return refuse(hint, "the report is not what check finds in these files: at %s it says %s, and it is %s", d.path, says(d.a), says(d.b))
}

// longestSaid is the most characters of a value that is shown.
const longestSaid = 60

// says is a JSON value in a line.
func says(v any) string {
	switch v := v.(type) {
	case absent:
		return "nothing"
	case map[string]any:
		return "settings"
	case []any:
		return fmt.Sprintf("a list of %d", len(v))
	case string:
		if utf8.RuneCountInString(v) > longestSaid {
			v = string([]rune(v)[:longestSaid]) + "…"
		}
		return fmt.Sprintf("%q", v)
	case nil:
		return "null"
	}
	return strings.TrimSpace(fmt.Sprint(v))
}
