package main

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"example.com/hingeline/verify/result"
)

func TestCompareWithoutGitNamesIt(t *testing.T) {
	t.Setenv("PATH", t.TempDir())
	var out, messages bytes.Buffer
	status := run([]string{"compare", "HEAD:my-model.yaml", "bracken-20"}, strings.NewReader(""), &out, &messages)
	if status != statusBadInput || out.Len() > 0 || !strings.Contains(messages.String(), "[git-missing]") {
		t.Errorf("status %d, %q, %q", status, out.String(), messages.String())
	}
}

func TestStatusOfComparison(t *testing.T) {
	for verdict, want := range map[result.ComparisonVerdict]int{
		result.NoDifference: statusYes, result.NoneWorse: statusYes, result.SomeWorse: statusNo, result.NoneCompared: statusNothingChecked,
	} {
		if got := statusOfComparison(verdict); got != want {
			t.Errorf("%s: status %d, want %d", verdict, got, want)
		}
	}
}

// A directory of the name of a revision, a file of the name of a built-in model: what is
// there goes first, and a name that ends as airframe files do is meant as one.
func TestRevisionsAreToldFromFiles(t *testing.T) {
	t.Chdir(t.TempDir())
	write := func(name string) {
		t.Helper()
		if err := os.WriteFile(name, nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	write("here.yaml")
	write("v1")
	for _, row := range []struct{ name, other, rev, path string }{
		{"HEAD", "here.yaml", "HEAD", "here.yaml"},
		{"HEAD", "v2:there.yaml", "HEAD", "there.yaml"},
		{"v2:there.yaml", "bracken-20", "v2", "there.yaml"},
		{"v1", "here.yaml", "", ""},
		{"bracken-20", "here.yaml", "", ""},
		{"gone.yaml", "here.yaml", "", ""},
		{"HEAD", "bracken-20", "", ""},
		{"HEAD", "gone.yaml", "", ""},
		{"-", "here.yaml", "", ""},
		{":x", "bracken-20", "", ""},
	} {
		rev, path, is := revisionOf(row.name, row.other)
		if rev != row.rev || path != row.path || is != (row.rev != "") {
			t.Errorf("%s with %s: got %q, %q, %v", row.name, row.other, rev, path, is)
		}
	}
}
