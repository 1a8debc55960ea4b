package messages

import "testing"

func TestOwnFilesAreToldFromOthers(t *testing.T) {
	if !IsReport(rendered(t, failing(t))) {
		t.Error("a file of ours is not taken for it")
	}
	for _, other := range []string{"", "hingeline", `{"meta":{"implementation":{"name":"another"}}}` + "\n" + `{"hingeline":1}`} {
		if IsReport([]byte(other)) {
			t.Errorf("%q is taken for ours", other)
		}
	}
}
