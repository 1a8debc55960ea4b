//go:build linux || darwin

package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/creack/pty"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/bench/benchtest"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/sight"
)

// programInDirectory is this test as the program itself, in a directory of its own.
func programInDirectory(t *testing.T) (program, dir string) {
	t.Helper()
	dir = t.TempDir()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	program = filepath.Join(dir, "hingeline") // testscript.Main runs a command by this name
	if err := os.Symlink(self, program); err != nil {
		t.Fatal(err)
	}
	return program, dir
}

// typist sits at a terminal of 80 by 24 and answers each prompt with the next line. With
// fewer lines than prompts it kills the program at the first that has none. It returns what
// was on the terminal and the exit status, −1 of a program that was killed.
func typist(t *testing.T, dir string, lines []string, argv ...string) (string, int) {
	t.Helper()
	c := exec.Command(argv[0], argv[1:]...)
	c.Dir = dir
	c.Env = append(os.Environ(), "TERM=xterm", "NO_COLOR=1", "LANG=C.UTF-8", "LC_ALL=C.UTF-8")
	terminal, err := pty.StartWithSize(c, &pty.Winsize{Rows: 24, Cols: 80})
	if err != nil {
		t.Fatal(err)
	}
	defer terminal.Close()
	var seen bytes.Buffer
	tooLong := time.AfterFunc(longest, func() { c.Process.Kill() })
	defer tooLong.Stop()
	buffer := make([]byte, 4096)
	answered := 0 // bytes seen when the last prompt was answered
	for {
		n, err := terminal.Read(buffer)
		seen.Write(buffer[:n])
		if err != nil {
			break
		}
		if seen.Len() == answered || !bytes.HasSuffix(seen.Bytes(), []byte("> ")) {
			continue
		}
		if len(lines) == 0 {
			c.Process.Kill()
			continue
		}
		line := lines[0]
		lines = lines[1:]
		answered = seen.Len() + len(line) // what is typed is echoed
		if _, err := terminal.WriteString(line + "\n"); err != nil {
			t.Fatal(err)
		}
	}
	c.Wait()
	return strings.ReplaceAll(seen.String(), "\r\n", "\n"), c.ProcessState.ExitCode()
}

// Somebody at a terminal, whose model has a mistake, is told which, by the real program.
func TestBenchAtATerminalNamesTheMistake(t *testing.T) {
	program, dir := programInDirectory(t)
	for _, name := range []string{"pellin-park", "ousel-trainer", "quoin-delta"} {
		text, _ := airframes.ReadShipped(name)
		m, _ := airframes.Load(name, text)
		w := bench.NewWalk(m, bench.Shortest(context.Background(), m, sight.Eye, nil), sight.Eye)
		all := mistake.All(m, mistake.Options{})
		for _, i := range []int{0, len(all) / 3} {
			variant, faults := all[i].Variant(m)
			if faults != nil || all[i].Kind.Timed {
				continue
			}
			hand := benchtest.Modeller{Walk: w, Plan: variant.Plan}
			lines := hand.All()
			if !slices.ContainsFunc(lines[3:], func(line string) bool { return line != "y" }) {
				continue // it does not show
			}
			on, status := typist(t, dir, lines, program, "bench", name)
			if status != statusNo || !strings.Contains(on, "DO NOT FLY") {
				t.Errorf("%s: %s: exit status %d\n%s", name, all[i].Text, status, on)
				continue
			}
			for line := range strings.Lines(on) {
				if len([]rune(strings.TrimSuffix(line, "\n"))) > 80 {
					t.Errorf("%s: wider than the terminal: %q", name, line)
				}
			}
			report := exec.Command(program, "bench", name, "--resume", "--json")
			report.Dir = dir
			out, _ := report.Output()
			var doc struct {
				Causes struct {
					Suspects []struct {
						Text  string
						Alike []string
					}
				}
			}
			if err := json.Unmarshal(out, &doc); err != nil {
				t.Fatalf("%v: %s", err, out)
			}
			named := false
			for _, s := range doc.Causes.Suspects {
				named = named || s.Text == all[i].Text || slices.Contains(s.Alike, all[i].Text)
			}
			if !named {
				t.Errorf("%s: %s is not among %d suspects", name, all[i].Text, len(doc.Causes.Suspects))
			}
		}
	}
}

// Killed at each prompt and gone on with, the record holds the same.
func TestBenchKilledAtEveryPrompt(t *testing.T) {
	program, dir := programInDirectory(t)
	text, _ := airframes.ReadShipped("pellin-park")
	m, _ := airframes.Load("pellin-park", text)
	w := bench.NewWalk(m, bench.Shortest(context.Background(), m, sight.Eye, nil), sight.Eye)
	variant, _ := mistake.All(m, mistake.Options{})[0].Variant(m)
	hand := benchtest.Modeller{Walk: w, Plan: variant.Plan}
	lines := hand.All()
	records := 0
	content := func() (events []bench.Event) {
		records++
		text, err := os.ReadFile(filepath.Join(dir, "pellin-park.bench", fmt.Sprintf("%04d.jsonl", records)))
		if err != nil {
			t.Fatal(err)
		}
		r, err := bench.Read(text)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range r.Events {
			if e.Kind != bench.Resumed && e.Kind != bench.Unchanged && e.Kind != bench.Confirmed {
				e.At = ""
				events = append(events, e)
			}
		}
		return events
	}
	if on, status := typist(t, dir, lines, program, "bench", "pellin-park"); status != statusNo {
		t.Fatalf("exit status %d:\n%s", status, on)
	}
	want := content()
	for kill := 1; kill < len(lines); kill++ {
		if on, status := typist(t, dir, lines[:kill], program, "bench", "pellin-park"); status != -1 {
			t.Fatalf("not killed: exit status %d\n%s", status, on)
		}
		rest := append(benchtest.Begin(), lines[max(kill, 3):]...)
		if kill > 3 {
			rest = append([]string{"no"}, rest...) // nothing was changed since
		}
		if on, status := typist(t, dir, rest, program, "bench", "pellin-park", "--resume"); status != statusNo {
			t.Fatalf("killed after %d answers: exit status %d\n%s", kill, status, on)
		}
		if got := content(); !reflect.DeepEqual(got, want) {
			t.Errorf("killed after %d answers: got\n%+v\nwanted\n%+v", kill, got, want)
		}
	}
}

// What is typed before a question stands there is no answer to it, so that a glove on the
// keys sees nothing as expected; nor is a bare Enter.
func TestBenchTypedAheadIsNoAnswer(t *testing.T) {
	program, dir := programInDirectory(t)
	ahead := strings.Repeat("y\n", 40)
	on, status := typist(t, dir, []string{"yes\n" + ahead, "yes\n" + ahead, "yes\n\n\n" + ahead, "", "", "y\n" + ahead}, program, "bench", "pellin-park")
	if status != -1 {
		t.Fatalf("it came to an end: exit status %d\n%s", status, on)
	}
	text, err := os.ReadFile(filepath.Join(dir, "pellin-park.bench", "0001.jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	r, err := bench.Read(text)
	if err != nil {
		t.Fatal(err)
	}
	var kinds []bench.Kind
	for i := range r.Events {
		kinds = append(kinds, r.Events[i].Kind)
	}
	if want := []bench.Kind{bench.Confirmed, bench.Confirmed, bench.Confirmed, bench.Answer}; !slices.Equal(kinds, want) {
		t.Errorf("got %q, wanted %q\n%s", kinds, want, on)
	}
	if n := strings.Count(on, "Enter alone says nothing"); n != 2 {
		t.Errorf("Enter alone was refused %d times\n%s", n, on)
	}
}

// What is said beside the questions fits the terminal too, and no word is broken.
func TestBenchSaysNothingWiderThanTheTerminal(t *testing.T) {
	program, dir := programInDirectory(t)
	typist(t, dir, append(benchtest.Begin(), "y"), program, "bench", "pellin-park")
	on, _ := typist(t, dir, append(benchtest.Begin(), "h", "gibberish", "p"), program, "bench", "pellin-park")
	again, _ := typist(t, dir, []string{"no", "yes", "no"}, program, "bench", "pellin-park", "--resume=1")
	refused, status := typist(t, dir, nil, program, "bench", "pellin-park", "--resume=77", "--date", "2026-11-25T20:15:00Z")
	if status != statusBadInput {
		t.Errorf("exit status %d: %s", status, refused)
	}
	if !strings.Contains(on, "goes on with\nit. This begins a new one.") {
		t.Errorf("no line end between the words:\n%s", on)
	}
	if !strings.Contains(again, "been changed since") || !strings.Contains(again, "nothing was begun") {
		t.Errorf("gone on with:\n%s", again)
	}
	for line := range strings.Lines(on + again + refused) {
		if len([]rune(strings.TrimSuffix(line, "\n"))) > 80 {
			t.Errorf("wider than the terminal: %q", line)
		}
	}
}
