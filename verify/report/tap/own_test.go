package tap

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
	for _, other := range []string{"", "Hingeline", "TAP version 14\n1..1\nok 1 - mine\n# Hingeline\n"} {
		if IsReport([]byte(other)) {
			t.Errorf("%q is taken for ours", other)
		}
	}
}
