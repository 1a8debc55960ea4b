package junit

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
	for _, other := range []string{"", "Hingeline", "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<testsuites name=\"other\"><testsuite name=\"hingeline.\"></testsuite></testsuites>"} {
		if IsReport([]byte(other)) {
			t.Errorf("%q is taken for ours", other)
		}
	}
}
