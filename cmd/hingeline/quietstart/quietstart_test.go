package quietstart

import (
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// hidden is whether PATH was out of sight when the tests began.
var hidden bool

func TestMain(m *testing.M) {
	_, seen := os.LookupEnv("PATH")
	hidden = !seen
	Restore()
	os.Exit(m.Run())
}

// build makes a program of this module in a directory of its own.
func build(t *testing.T, pkg string) string {
	t.Helper()
	program := filepath.Join(t.TempDir(), "program")
	if runtime.GOOS == "windows" {
		program += ".exe"
	}
	if out, err := exec.Command("go", "build", "-o", program, pkg).CombinedOutput(); err != nil {
		t.Fatalf("go build %s: %v\n%s", pkg, err, out)
	}
	return program
}

// startsGo runs a program with a "go" first on PATH that leaves a mark, and
// reports whether the mark was left. The program must see that PATH itself.
func startsGo(t *testing.T, program string, args ...string) bool {
	t.Helper()
	dir := t.TempDir()
	mark := filepath.Join(dir, "mark")
	fake, text := filepath.Join(dir, "go"), "#!/bin/sh\necho started >'"+mark+"'\n"
	if runtime.GOOS == "windows" {
		fake, text = filepath.Join(dir, "go.bat"), "@echo started >\""+mark+"\"\r\n"
	}
	if err := os.WriteFile(fake, []byte(text), 0o755); err != nil {
		t.Fatal(err)
	}
	c := exec.Command(program, args...)
	c.Env = append(os.Environ(), "PATH="+dir+string(os.PathListSeparator)+os.Getenv("PATH"))
	if out, err := c.CombinedOutput(); err != nil {
		t.Fatalf("%s: %v\n%s", program, err, out)
	}
	_, err := os.Stat(mark)
	return err == nil
}

func TestNothingIsStartedBeforeMain(t *testing.T) {
	hingeline := build(t, "example.com/hingeline/cmd/hingeline")
	for _, args := range [][]string{{"version"}, {"check", "bracken-20", "--brief"}} {
		if startsGo(t, hingeline, args...) {
			t.Errorf("hingeline %s started the \"go\" that is first on PATH", strings.Join(args, " "))
		}
	}
	if !startsGo(t, build(t, "./testdata/loud")) {
		t.Error("the same library without quietstart did not start \"go\": this test sees nothing")
	}
}

func TestPathIsHiddenThenRestored(t *testing.T) {
	if !hidden {
		t.Error("PATH was not hidden before main")
	}
	if now := os.Getenv("PATH"); now != path || path == "" {
		t.Errorf("PATH is %q after Restore, wanted %q", now, path)
	}
}
