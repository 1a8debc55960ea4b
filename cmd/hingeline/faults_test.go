package main

import (
	"bytes"
	"io"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

func TestFaultsExitStatus(t *testing.T) {
	asked := func(least int, r *result.Faults) *result.Faults {
		r.Min = least
		return r
	}
	for name, c := range map[string]struct {
		r    *result.Faults
		want int
	}{
		"none missed":         {sample.NoneMissed(), statusYes},
		"in part":             {sample.NoneMissedInPart(), statusYes},
		"missed":              {sample.Faults(), statusNo},
		"missed, enough":      {asked(28, sample.Faults()), statusYes},
		"missed, not enough":  {asked(29, sample.Faults()), statusNo},
		"stopped, and enough": {sample.FaultsStopped(), statusNo},
		"already wrong":       {asked(1, sample.FaultsOfWrong()), statusNo},
		"nothing":             {asked(1, sample.NoMistakes()), statusNothingChecked},
	} {
		if got := statusOfFaults(c.r); got != c.want {
			t.Errorf("%s: %d, wanted %d", name, got, c.want)
		}
	}
	for name, c := range map[string]struct {
		r    *result.Walk
		want int
	}{
		"found": {sample.Walk(), statusYes}, "stopped": {sample.WalkMeasured(), statusNo}, "nothing": {sample.NoWalk(), statusNothingChecked},
	} {
		if got := statusOfWalk(c.r); got != c.want {
			t.Errorf("%s: %d, wanted %d", name, got, c.want)
		}
	}
}

// What is written as JSON keeps to the schema that is printed.
func TestFaultsAsJSONKeepToThePrintedSchemas(t *testing.T) {
	for _, c := range []struct {
		schema string
		args   []string
	}{
		{"--faults", []string{"faults", "pellin-park", "--json"}},
		{"--faults", []string{"faults", "ousel-trainer", "--json", "--pairs", "--only", "channel-reversed"}},
		{"--walk", []string{"faults", "pellin-park", "--walk", "--json"}},
		{"--walk", []string{"faults", "ousel-trainer", "--walk", "--ruler", "--visible", "5", "--json"}},
		{"--causes", []string{"faults", "pellin-park", "--seen", "-", "--json"}},
	} {
		text, _, _ := called("schema", c.schema)
		var out, messages bytes.Buffer
		run(c.args, strings.NewReader(seenOdd), &out, &messages)
		if err := compiled(t, text).Validate(parsed(t, out.String())); err != nil || messages.Len() > 0 {
			t.Errorf("%q: %v; messages %q", c.args, err, messages.String())
		}
	}
}

const seenOdd = "Feature: Seen\n\n  Scenario: Sticks\n    * with the turn stick full right, the rudder moves left\n"

// Every kind of mistake has a code of its own, which explain knows.
func TestExplainShowsEveryKindOfMistake(t *testing.T) {
	seen := map[string]bool{}
	for _, info := range everyCode() {
		if seen[info.Code] {
			t.Errorf("%s is explained twice", info.Code)
		}
		seen[info.Code] = true
	}
	kinds, _, _ := called("faults", "--kinds")
	for _, k := range append(slices.Clone(mistake.Kinds()), mistake.Pair()) {
		out, messages, code := called("explain", k.Code)
		if code != statusYes || !strings.Contains(strings.Join(strings.Fields(out), " "), k.Means) {
			t.Errorf("%s: exit status %d and %q, wanted what it means in\n%s", k.Code, code, messages, out)
		}
		if k != mistake.Pair() && !strings.Contains(kinds, k.Title+" ["+k.Code+"]") {
			t.Errorf("--kinds lacks %s", k.Code)
		}
	}
}

// told is a writer that says when a text was written to it.
type told struct {
	bytes.Buffer
	text string
	is   chan struct{}
}

func (w *told) Write(text []byte) (int, error) {
	n, err := w.Buffer.Write(text)
	if w.is != nil && strings.Contains(w.Buffer.String(), w.text) {
		close(w.is)
		w.is = nil
	}
	return n, err
}

// Ctrl-C ends the questions at once, though nobody presses Enter, and what was said until
// then is judged.
func TestAskInterrupted(t *testing.T) {
	answers, hand := io.Pipe()
	defer hand.Close()
	asked := make(chan struct{})
	messages := &told{text: "elevator: ", is: asked}
	var out bytes.Buffer
	ended := make(chan int, 1)
	go func() { ended <- run([]string{"faults", "pellin-park", "--ask"}, answers, &out, messages) }()
	if _, err := io.WriteString(hand, "?\nnonsense\nleft\n"); err != nil {
		t.Fatal(err)
	}
	select {
	case <-asked:
	case <-time.After(longest):
		t.Fatal("the second part was never asked about")
	}
	interruptMyself(t)
	select {
	case code := <-ended:
		if code != statusNo || !strings.Contains(out.String(), "DO NOT FLY: ") && !strings.Contains(out.String(), "NOT DECIDED, which is not a yes: 1 thing seen") {
			t.Errorf("exit status %d, wanted %d and an answer to what was said:\n%s", code, statusNo, out.String())
		}
	case <-time.After(longest):
		t.Fatal("it goes on asking after a Ctrl-C")
	}
	for _, want := range []string{"say what it does as the step is done", "not understood: "} {
		if !strings.Contains(messages.String(), want) {
			t.Errorf("the questions lack %q:\n%s", want, messages.String())
		}
	}
}

// A person who cannot say anything has seen nothing, which is no yes.
func TestAskWithoutAnswersIsNoYes(t *testing.T) {
	for _, typed := range []string{"", "q\n", "\n\n\n", strings.Repeat("\n", 2000), strings.Repeat("don't know\n", 2000)} {
		var out, messages bytes.Buffer
		code := run([]string{"faults", "pellin-park", "--ask", "--brief"}, strings.NewReader(typed), &out, &messages)
		if code == statusYes || strings.Contains(out.String(), "✓") || !strings.Contains(out.String(), "0 things seen") {
			t.Errorf("%.20q: exit status %d:\n%s", typed, code, out.String())
		}
	}
}

// A file that may not be written, and one in a folder that takes no new files, stay.
func TestReplaceFileKeepsWhatItCannotWrite(t *testing.T) {
	t.Chdir(t.TempDir())
	save(t, "kept", "old")
	if err := os.Chmod("kept", 0o640); err != nil {
		t.Fatal(err)
	}
	if err := replaceFile("kept", []byte("new")); err != nil {
		t.Fatal(err)
	}
	info, err := os.Stat("kept")
	if err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("it may be used as %v, wanted as before (%v)", info.Mode(), err)
	}
	for _, name := range []string{"nosuch", "."} {
		if err := replaceFile(name, []byte("new")); err == nil {
			t.Errorf("%s was written", name)
		}
	}
	if entries, err := os.ReadDir("."); err != nil || len(entries) != 1 {
		t.Errorf("%v is left lying about (%v)", entries, err)
	}
}
