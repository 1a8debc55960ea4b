package main

import (
	"bytes"
	"context"
	"errors"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/laws"
	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

// proofsOf is a proving with a given answer, which notes what it was asked.
func proofsOf(answer *result.Proofs, asked *laws.Options) proving {
	return func(_ context.Context, _ *airframes.Model, o laws.Options) *result.Proofs {
		*asked = o
		return answer
	}
}

// calledProving runs hingeline with a given answer to the laws.
func calledProving(answer *result.Proofs, args ...string) (stdout, stderr string, code int, asked laws.Options) {
	var out, messages bytes.Buffer
	code = runProving(proofsOf(answer, &asked), args, strings.NewReader(miniAirframe), &out, &messages)
	return out.String(), messages.String(), code, asked
}

// Only a full proof is a yes; undecided is not one.
func TestProveExitStatus(t *testing.T) {
	for _, c := range []struct {
		name    string
		answer  *result.Proofs
		status  int
		verdict string
	}{
		{"all proved", sample.AllProved(), statusYes, "✓ PROVED: 4 of 4 claims"},
		{"in part", sample.ProvedInPart(), statusYes, "▲ PROVED IN PART: 3 of 3 claims"},
		{"disproved", sample.Proofs(), statusNo, "✗ DISPROVED, DO NOT FLY: 2 of 10 claims do not hold"},
		{"undecided", sample.ProofsUndecided(), statusNo, "▲ UNDECIDED, which is not a yes: 1 of 5 claims"},
		{"nothing", sample.NoProofs(), statusNothingChecked, "▲ NOTHING WAS PROVED"},
	} {
		for _, brief := range [][]string{nil, {"--brief"}} {
			out, messages, code, _ := calledProving(c.answer, append([]string{"prove", "-"}, brief...)...)
			if code != c.status || messages != "" || !strings.Contains(out, c.verdict) {
				t.Errorf("%s %v: exit status %d and messages %q, wanted %d and none, and %q in\n%s",
					c.name, brief, code, messages, c.status, c.verdict, out)
			}
		}
	}
}

// The commands that a report proposes name the model as the command line did.
func TestProveNamesTheModelAsItWasCalled(t *testing.T) {
	out, _, _, _ := calledProving(sample.Proofs(), "prove", "bracken-20", "--brief")
	if want := `hingeline show bracken-20 --set "rate switch=high"`; !strings.Contains(out, want) {
		t.Errorf("the report lacks %q:\n%s", want, out)
	}
}

func TestProveHandsItsFlagsOn(t *testing.T) {
	_, _, _, asked := calledProving(sample.AllProved(), "prove", "-")
	if asked.Only != nil || asked.Boxes != 200000 || asked.Replay || asked.Progress != nil {
		t.Errorf("asked %+v, wanted every law with the usual limit and, without a terminal, no progress", asked)
	}
	codes := lawCodes()
	_, messages, _, asked := calledProving(sample.AllProved(), "prove", "-", "--boxes", "7", "--replay",
		"--only", codes[0], "--only", codes[1])
	if asked.Boxes != 7 || !asked.Replay || !slices.Equal(asked.Only, codes[:2]) {
		t.Errorf("asked %+v, wanted 7 boxes, a replay and the laws %q; messages:\n%s", asked, codes[:2], messages)
	}
}

// Words that select no law are a problem of their own, and no answer at all.
func TestProveSelectsNothing(t *testing.T) {
	out, messages, code, asked := calledProving(sample.AllProved(), "prove", "-", "--only", "control-sens", "--only", "xyzzy")
	if code != statusNothingChecked || out != "" || asked.Boxes != 0 {
		t.Errorf("exit status %d, wanted %d; asked %+v; wrote\n%s", code, statusNothingChecked, asked, out)
	}
	for _, want := range []string{`"control-sens" [nothing-selected]`, `did you mean "control-sense"?`, `"xyzzy"`} {
		if !strings.Contains(messages, want) {
			t.Errorf("messages lack %q:\n%s", want, messages)
		}
	}
	out, _, code, _ = calledProving(sample.AllProved(), "prove", "-", "--only", "xyzzy", "--json")
	text, _, _ := called("schema", "--problems")
	if code != statusNothingChecked || compiled(t, text).Validate(parsed(t, out)) != nil {
		t.Errorf("exit status %d, and as JSON\n%s", code, out)
	}
}

func parsed(t *testing.T, text string) any {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
	if err != nil {
		t.Fatalf("%v:\n%s", err, text)
	}
	return doc
}

func TestProofsAsJSONKeepToThePrintedSchema(t *testing.T) {
	text, _, _ := called("schema", "--proofs")
	schema := compiled(t, text)
	for _, answer := range []*result.Proofs{sample.Proofs(), sample.AllProved(), sample.NoProofs()} {
		out, messages, _, _ := calledProving(answer, "prove", "-", "--json")
		if err := schema.Validate(parsed(t, out)); err != nil || messages != "" {
			t.Errorf("%v; messages %q", err, messages)
		}
	}
}

// interruptMyself is a Ctrl-C for this process.
func interruptMyself(t *testing.T) {
	t.Helper()
	me, err := os.FindProcess(os.Getpid())
	if err != nil {
		t.Fatal(err)
	}
	if err := me.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
}

// Ctrl-C ends the search, and what was decided until then is reported.
func TestProveInterrupted(t *testing.T) {
	how := func(ctx context.Context, _ *airframes.Model, _ laws.Options) *result.Proofs {
		interruptMyself(t)
		<-ctx.Done()
		p := sample.ProofsStopped()
		p.Stopped = ""
		return p
	}
	var out, messages bytes.Buffer
	code := runProving(how, []string{"prove", "-"}, strings.NewReader(miniAirframe), &out, &messages)
	if code != statusNo || messages.Len() > 0 {
		t.Errorf("exit status %d and messages %q, wanted %d and none", code, messages.String(), statusNo)
	}
	for _, want := range []string{"4 proved, none\n  disproved. The run was stopped by hand.", "why      the run was stopped by hand, without an answer to claim 5"} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("the report lacks %q:\n%s", want, out.String())
		}
	}
}

// stubborn is a command that goes on searching after a Ctrl-C.
const stubborn = "hingeline-that-does-not-stop"

func runStubborn() int {
	how := func(ctx context.Context, _ *airframes.Model, _ laws.Options) *result.Proofs {
		os.Stdout.WriteString("searching\n")
		<-ctx.Done()
		os.Stdout.WriteString("asked to stop\n")
		time.Sleep(longest)
		return sample.ProofsStopped()
	}
	return runProving(how, []string{"prove", "bracken-20"}, os.Stdin, os.Stdout, os.Stderr)
}

// A second Ctrl-C ends the program, whatever it is doing.
func TestSecondInterruptEndsTheProgram(t *testing.T) {
	me, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	out := newScreen()
	command := exec.Command(me)
	command.Args[0] = stubborn
	command.Stdout, command.Stderr = out, out
	if err := command.Start(); err != nil {
		t.Fatal(err)
	}
	ended := make(chan error, 1)
	go func() {
		ended <- command.Wait()
		out.end()
	}()
	if !out.await("searching", 1) {
		t.Fatalf("it did not begin:\n%s", out)
	}
	interrupt := func() {
		if err := command.Process.Signal(os.Interrupt); err != nil && !errors.Is(err, os.ErrProcessDone) {
			t.Fatal(err)
		}
	}
	interrupt()
	if !out.await("asked to stop", 1) {
		t.Fatalf("the first Ctrl-C ended it:\n%s", out)
	}
	for range 100 { // the handler may not be gone at the first
		interrupt()
		select {
		case err := <-ended:
			if err == nil || command.ProcessState.Success() {
				t.Errorf("it ended well:\n%s", out)
			}
			return
		case <-time.After(20 * time.Millisecond):
		}
	}
	command.Process.Kill()
	t.Errorf("it goes on after a second Ctrl-C:\n%s", out)
}
