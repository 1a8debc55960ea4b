package airframestest

import (
	"bytes"
	"os"
	"testing"
)

// Golden compares what a test got with a file that holds what is expected; with
// update it writes the file first. Line ends that a checkout turned into those of
// Windows do not count.
func Golden(t testing.TB, file string, got []byte, update bool) {
	t.Helper()
	if update {
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, bytes.ReplaceAll(want, []byte("\r\n"), []byte("\n"))) {
		t.Errorf("%s differs (run with -update to accept)\ngot:\n%s\nwant:\n%s", file, got, want)
	}
}
