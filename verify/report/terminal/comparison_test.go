package terminal

import (
	"io"
	"strings"
	"testing"

	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

func ofComparison(c *result.Comparison) writing {
	return func(w io.Writer, o Options) error { return RenderComparison(w, c, o) }
}

var comparisons = map[string]writing{
	"comparison":         ofComparison(sample.Comparison()),
	"comparison_better":  ofComparison(sample.NoneWorse()),
	"comparison_nothing": ofComparison(sample.NoneCompared()),
	"comparison_same":    ofComparison(sample.NoDifference()),
}

func TestComparisonGolden(t *testing.T) {
	for name, write := range comparisons {
		t.Run(name, func(t *testing.T) { golden(t, name, write.text(t, Options{})) })
	}
	for look, o := range map[string]Options{
		"narrow": {Width: 40}, "color": {Color: true}, "ascii": {ASCII: true}, "brief": {Brief: true},
	} {
		t.Run(look, func(t *testing.T) { golden(t, "comparison_"+look, comparisons["comparison"].text(t, o)) })
	}
}

// The last paragraph is the verdict; only one that found nothing has a tick, and none says
// that it is safe.
func TestVerdictOnAComparison(t *testing.T) {
	for name, want := range map[string]string{
		"comparison": "✗ DO NOT FLY: ", "comparison_better": "▲ NO CHECK GOT WORSE: ",
		"comparison_nothing": "▲ NO CHECK WAS HELD AGAINST BOTH: ", "comparison_same": "✓ NO DIFFERENCE: ",
	} {
		text := comparisons[name].text(t, Options{})
		paragraphs := strings.Split(strings.TrimSpace(text), "\n\n")
		if last := paragraphs[len(paragraphs)-1]; !strings.HasPrefix(last, want) {
			t.Errorf("%s ends in %q, want %q", name, last, want)
		}
		if strings.Contains(strings.ToLower(text), "safe to fly") {
			t.Errorf("%s says safe to fly", name)
		}
	}
}
