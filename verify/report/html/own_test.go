package html

import (
	"strings"
	"testing"
)

func TestOwnFilesAreToldFromOthers(t *testing.T) {
	for name, r := range reports() {
		if !IsReport(render(t, r)) {
			t.Errorf("the page of %s is not taken for ours", name)
		}
	}
	for _, other := range []string{
		"", "<!doctype html>", generator,
		"<!doctype html>\n<title>hingeline</title>",
		"<!doctype html>\n" + strings.Repeat(" ", headBytes) + generator,
	} {
		if IsReport([]byte(other)) {
			t.Errorf("%q is taken for ours", other)
		}
	}
}
