package sarif

import (
	"bytes"
	"testing"

	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

func TestOwnFilesAreToldFromOthers(t *testing.T) {
	for _, r := range []*result.Report{sample.Passing(), sample.Failing(), sample.Hostile(), sample.Nothing()} {
		var b bytes.Buffer
		if err := Render(&b, r); err != nil {
			t.Fatal(err)
		}
		if !IsReport(b.Bytes()) {
			t.Errorf("the report of %q is not taken for ours", r.Model.Name)
		}
	}
	for _, other := range []string{"", "Hingeline", `{"version": "2.1.0", "runs": [{"tool": {"driver": {"name": "other", "rules": [{"id": "Hingeline"}]}}}]}`} {
		if IsReport([]byte(other)) {
			t.Errorf("%q is taken for ours", other)
		}
	}
}
