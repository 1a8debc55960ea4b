package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"time"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/report/jsonout"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/serve"
)

// Exit statuses: what a script that calls Hingeline can rely on. 70 and 74 are
// those of sysexits.h for software and for input and output.
const (
	statusYes            = 0  // passed, or done
	statusNo             = 1  // a check failed, a law was disproved or is undecided
	statusWrongUse       = 2  // the command line makes no sense
	statusBadInput       = 3  // an input file cannot be used
	statusNothingChecked = 4  // no check ran
	statusOurBug         = 70 // Hingeline itself is at fault
	statusNotGiven       = 74 // the answer could not be given, because of the machine: a full disk for instance
)

// run is the whole program: the command line without the program's name in,
// the exit status out. Results go to stdout and messages to stderr.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	return runProving(reallyProving, args, stdin, stdout, stderr)
}

// runProving is run with what decides the laws.
func runProving(how proving, args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	s := &session{stdin: stdin, stdout: stdout, stderr: stderr, proving: how, clock: time.Now}
	return s.run(args)
}

// run is the program in a session.
func (s *session) run(args []string) int {
	return guarded(s.stderr, func() int {
		own := &remembering{to: s.stdout} // help, completion and --version, which cobra writes by itself
		root := s.root(own)
		root.SetArgs(args)
		root.SetIn(s.stdin)
		root.SetErr(s.stderr)
		err := root.Execute()
		if own.err != nil {
			err = written(own.err)
		}
		if err != nil {
			return s.report(err)
		}
		return s.status
	})
}

// debugVariable is the environment variable that lets a bug be seen in full.
const debugVariable = "HINGELINE_DEBUG"

// guarded turns a panic, which can only be a bug of ours, into words and a
// status.
func guarded(stderr io.Writer, body func() int) (status int) {
	defer func() {
		bug := recover()
		if bug == nil {
			return
		}
		status = statusOurBug
		stack := debug.Stack()
		if b, elsewhere := bug.(serve.Bug); elsewhere {
			bug, stack = b.What, b.Stack
		}
		fmt.Fprintf(stderr, "hingeline: this is a bug in Hingeline, not in your files: %v\n", bug)
		if os.Getenv(debugVariable) == "1" {
			stderr.Write(stack)
			return
		}
		fmt.Fprintf(stderr, "  nothing was decided about the model; set %s=1 to see where it happened (version %s)\n",
			debugVariable, verify.Version)
	}()
	return body()
}

// usageError is wrong use of the command line.
type usageError struct {
	message string
	hint    string // a line of its own, may be empty
	usage   string // one line, may be empty
}

func (e *usageError) Error() string { return e.message }

// inputError is files that cannot be used.
type inputError struct {
	problems []diag.Problem
	sources  []*diag.Source
}

func (e *inputError) Error() string { return fmt.Sprintf("%d problems", len(e.problems)) }

// status is that of files that cannot be used, or, where they can be but none
// of their checks was selected, that of nothing checked.
func (e *inputError) status() int {
	for _, p := range e.problems {
		if p.Severity == diag.Error && p.Code != script.CodeNothingSelected {
			return statusBadInput
		}
	}
	return statusNothingChecked
}

// report says on stderr what went wrong and returns the exit status.
func (s *session) report(err error) int {
	var input *inputError
	if errors.As(err, &input) {
		s.writeProblems(input)
		if s.asJSON {
			if err := jsonout.RenderProblems(s.results(), verify.Problems(input.problems, input.sources...)); err != nil {
				return s.report(written(err))
			}
		}
		return input.status()
	}
	var output *outputError
	if errors.As(err, &output) {
		fmt.Fprintf(s.stderr, "hingeline: %v\n", output.err)
		return statusNotGiven
	}
	fmt.Fprintf(s.stderr, "hingeline: %v\n", err)
	var usage *usageError
	if errors.As(err, &usage) {
		if usage.hint != "" {
			fmt.Fprintf(s.stderr, "  %s\n", usage.hint)
		}
		if usage.usage != "" {
			fmt.Fprintf(s.stderr, "  usage: %s\n", usage.usage)
		}
	}
	return statusWrongUse
}

// writeProblems shows every problem with its excerpt, and how many there are.
func (s *session) writeProblems(e *inputError) {
	diag.Sort(e.problems)
	diag.WriteWithin(s.stderr, s.messageColumns(), e.problems, e.sources...)
	mistakes := 0
	for _, p := range e.problems {
		if p.Severity == diag.Error {
			mistakes++
		}
	}
	noun := "mistakes"
	if mistakes == 1 {
		noun = "mistake"
	}
	fmt.Fprintf(s.stderr, "\nhingeline: %d %s, so nothing was checked\n", mistakes, noun)
	fmt.Fprintln(s.stderr, "  \"hingeline explain CODE\" tells more about a code in [brackets]")
}

// outputError is an answer that could not be given, although nothing is wrong with the
// command line and the files.
type outputError struct{ err error }

func (e *outputError) Error() string { return e.err.Error() }

// written is the error of writing a result, told apart from wrong use.
func written(err error) error {
	if err == nil {
		return nil
	}
	return &outputError{fmt.Errorf("the result could not be written: %w", err)}
}

// remembering is a writer that remembers the first error, for those who write
// and do not look.
type remembering struct {
	to  io.Writer
	err error
}

func (w *remembering) Write(text []byte) (int, error) {
	n, err := w.to.Write(text)
	if w.err == nil {
		w.err = err
	}
	return n, err
}
