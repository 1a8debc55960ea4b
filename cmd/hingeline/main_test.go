package main

import (
	"bytes"
	"errors"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"example.com/hingeline/cmd/hingeline/quietstart"
	"example.com/hingeline/verify/bench"
)

var update = flag.Bool("update", false, "write the golden files anew")

func TestMain(m *testing.M) {
	quietstart.Restore()
	testscript.Main(m, map[string]func(){
		"hingeline": func() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) },
		// The program for somebody who looks long enough before each answer, and never does.
		"hingeline-looking": func() { os.Exit(runTyped(bench.ShortestLook)) },
		"hingeline-hasty":   func() { os.Exit(runTyped(bench.ShortestLook / 8)) },
		// A program with a bug in it, to see what people are told then.
		"hingeline-with-a-bug": func() {
			os.Exit(guarded(os.Stderr, func() int { panic("the sky is down") }))
		},
		stubborn: func() { os.Exit(runStubborn()) },
	})
}

// runTyped is the program where each answer comes so long after its question.
func runTyped(after time.Duration) int {
	var at time.Time
	s := &session{stdin: os.Stdin, stdout: os.Stdout, stderr: os.Stderr, proving: reallyProving, clock: func() time.Time {
		at = at.Add(after)
		return at
	}}
	return s.run(os.Args[1:])
}

// The scripts in testdata/commands are the acceptance tests of the commands,
// each with the files it needs.
func TestCommands(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 filepath.Join("..", "..", "testdata", "commands"),
		UpdateScripts:       *update,
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Cmds: map[string]func(ts *testscript.TestScript, neg bool, args []string){
			"status": status,
			"crlf":   crlf,
			"bom":    bom,
			"huge":   huge,
		},
	})
}

// status STATUS COMMAND...: runs a command and wants exactly that exit status.
func status(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: status STATUS COMMAND...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	var exit *exec.ExitError
	if err := ts.Exec(args[1], args[2:]...); errors.As(err, &exit) {
		got = exit.ExitCode()
	} else {
		ts.Check(err)
	}
	if got != want {
		ts.Fatalf("exit status %d, wanted %d", got, want)
	}
}

// crlf FILE: gives a file the line ends of Windows.
func crlf(ts *testscript.TestScript, _ bool, args []string) {
	text := []byte(ts.ReadFile(args[0]))
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), bytes.ReplaceAll(text, []byte("\n"), []byte("\r\n")), 0o644))
}

// bom FILE: puts a byte order mark before a file.
func bom(ts *testscript.TestScript, _ bool, args []string) {
	text := append([]byte("\ufeff"), ts.ReadFile(args[0])...)
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), text, 0o644))
}

// huge FILE: makes a file that is too large to be read.
func huge(ts *testscript.TestScript, _ bool, args []string) {
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), make([]byte, maxFileBytes+1), 0o644))
}
