//go:build linux || darwin

package main

import (
	"bytes"
	"context"
	"encoding/json"
	"flag"
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
	"example.com/hingeline/verify/faults/table"
)

// programInDirectory is this test as the program itself, in a directory of its own.
func programInDirectory(t *testing.T) (program, dir string) {
	t.Helper()
	return programCalled(t, "hingeline")
}

// programCalled is this test as one of the programs of TestMain, in a directory of its own.
func programCalled(t *testing.T, name string) (program, dir string) {
	t.Helper()
	dir = t.TempDir()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	program = filepath.Join(dir, name) // testscript.Main runs a command by this name
	if err := os.Symlink(self, program); err != nil {
		t.Fatal(err)
	}
	return program, dir
}

// A sitting is somebody at a terminal of 80 by 24 without colours.
type sitting struct {
	dir  string
	argv []string

	hangsUp bool // the terminal is closed where there are no more lines; else the program is killed
}

// typed answers each prompt with the next line. It returns what was on the terminal and the
// exit status, −1 of a program that was killed.
func (s sitting) typed(t *testing.T, lines []string) (string, int) {
	t.Helper()
	c := exec.Command(s.argv[0], s.argv[1:]...)
	c.Dir = s.dir
	c.Env = append(os.Environ(), "TERM=dumb", "NO_COLOR=1", "LANG=C.UTF-8", "LC_ALL=C.UTF-8")
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
			if s.hangsUp {
				terminal.Close()
				break
			}
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

// plantedOneIn makes the slow test sit down with one mistake in so many; .ci/run takes every
// kind of mistake of every shipped model.
var plantedOneIn = flag.Int("planted-one-in", 97, "at a terminal plant one kind of mistake in `N`")

// inTheHand is somebody with a model in the hand that has a mistake.
func inTheHand(t *testing.T, m *airframes.Model, w *bench.Walk, all []mistake.Mistake, wrong int) *benchtest.Modeller {
	t.Helper()
	variant, faults := all[wrong].Variant(m)
	if faults != nil {
		return nil
	}
	hand := &benchtest.Modeller{Walk: w, Plan: variant.Plan, ByHand: true}
	if all[wrong].Kind.Timed {
		hand.Late = func(step *sight.Step, part int) bool {
			return table.New(m, all[wrong:wrong+1], []sight.Step{*step}).Late(0, 0, part) >= float64(w.Look.Visible)
		}
	}
	return hand
}

// Somebody at a terminal, whose model has a mistake, is told which, by the real program, in
// plain lines that a slow line and a screen reader can take.
func TestBenchAtATerminalNamesTheMistake(t *testing.T) {
	program, dir := programCalled(t, "hingeline-looking")
	turn, planted := 0, 0
	for _, name := range airframes.Shipped() {
		text, _ := airframes.ReadShipped(name)
		m, _ := airframes.Load(name, text)
		var w *bench.Walk
		all := mistake.All(m, mistake.Options{})
		done := map[string]bool{} // kinds of which one was planted here
		for wrong := range all {
			kind := all[wrong].Kind.Code
			if done[kind] {
				continue
			}
			if _, faults := all[wrong].Variant(m); faults != nil {
				continue
			}
			done[kind] = true
			if turn++; turn%*plantedOneIn != 0 {
				continue
			}
			if w == nil {
				w = bench.NewWalk(m, bench.Usual(context.Background(), m, sight.Eye, nil), sight.Eye)
			}
			lines := inTheHand(t, m, w, all, wrong).All()
			if !slices.ContainsFunc(lines[3:], func(line string) bool { return line != "y" && line != "x" }) {
				continue // it does not show
			}
			planted++
			on, status := sitting{dir: dir, argv: []string{program, "bench", name}}.typed(t, lines)
			if status != statusNo || !strings.Contains(on, "DO NOT FLY") {
				t.Errorf("%s: %s: exit status %d\n%s", name, all[wrong].Text, status, on)
				continue
			}
			for line := range strings.Lines(on) {
				if line = strings.TrimSuffix(line, "\n"); len([]rune(line)) > 80 || strings.ContainsAny(line, "\r\x1b\b") {
					t.Errorf("%s: wider than the terminal, or not plain: %q", name, line)
				}
			}
			if suspects := suspectsOf(t, program, dir, name); !slices.Contains(suspects, all[wrong].Text) {
				t.Errorf("%s: %s is not among %q", name, all[wrong].Text, suspects)
			}
		}
	}
	t.Logf("%d of %d kinds show and were planted", planted, turn)
	if planted == 0 {
		t.Error("nothing was planted")
	}
}

// suspectsOf are the mistakes that the report of the newest record names, and what looks
// the same.
func suspectsOf(t *testing.T, program, dir, name string) (list []string) {
	t.Helper()
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
	for _, s := range doc.Causes.Suspects {
		list = append(append(list, s.Text), s.Alike...)
	}
	return list
}

// Killed at each prompt and gone on with, the record holds the same; and so it does where
// the terminal is closed, whether the shell was told to outlive that or not.
func TestBenchKilledAtEveryPrompt(t *testing.T) {
	program, dir := programCalled(t, "hingeline-looking")
	atBench := sitting{dir: dir, argv: []string{program, "bench", "pellin-park", "--shortest"}}
	goesOn := sitting{dir: dir, argv: []string{program, "bench", "pellin-park", "--resume"}}
	text, _ := airframes.ReadShipped("pellin-park")
	m, _ := airframes.Load("pellin-park", text)
	w := bench.NewWalk(m, bench.Shortest(context.Background(), m, sight.Eye, nil), sight.Eye)
	variant, _ := mistake.All(m, mistake.Options{})[0].Variant(m)
	hand := benchtest.Modeller{Walk: w, Plan: variant.Plan, ByHand: true}
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
			if e.Kind != bench.Resumed && e.Kind != bench.Unchanged && e.Kind != bench.Confirmed && e.Kind != bench.Pause {
				e.At = ""
				events = append(events, e)
			}
		}
		return events
	}
	if on, status := atBench.typed(t, lines); status != statusNo {
		t.Fatalf("exit status %d:\n%s", status, on)
	}
	want := content()
	outlives := sitting{dir: dir, argv: []string{"/bin/sh", "-c", `trap "" HUP; exec "$0" bench pellin-park --shortest`, program}, hangsUp: true}
	closed := atBench
	closed.hangsUp = true
	for kill := 1; kill < len(lines); kill++ {
		leave := []sitting{atBench, closed, outlives}[kill%3]
		on, status := leave.typed(t, lines[:kill])
		if !leave.hangsUp && status != -1 {
			t.Fatalf("not killed: exit status %d\n%s", status, on)
		}
		paused := bench.Pause
		if kill == len(lines)-1 {
			paused = bench.End // nothing but to finish was asked
		}
		if got := lastEvent(t, recordPath(filepath.Join(dir, "pellin-park.bench"), records+1)); leave.hangsUp && got != paused {
			t.Fatalf("the terminal was closed after %d answers, and the last event is %q: exit status %d\n%s", kill, got, status, on)
		}
		from := max(kill, 3)
		if lines[from] == "x" { // the yes before it is not kept without it
			from--
		}
		rest := append(benchtest.Begin(), lines[from:]...)
		if kill > 3 {
			rest = append([]string{"no"}, rest...) // nothing was changed since
		}
		if lastEvent(t, recordPath(filepath.Join(dir, "pellin-park.bench"), records+1)) == bench.End {
			rest = nil // it only reports
		}
		if on, status := goesOn.typed(t, rest); status != statusNo {
			t.Fatalf("left after %d answers: exit status %d\n%s", kill, status, on)
		}
		if got := content(); !reflect.DeepEqual(got, want) {
			t.Errorf("left after %d answers: got\n%+v\nwanted\n%+v", kill, got, want)
		}
	}
}

// lastEvent is what a record ends with; empty where nothing was said.
func lastEvent(t *testing.T, name string) bench.Kind {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	r, err := bench.Read(text)
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Events) == 0 {
		return ""
	}
	return r.Events[len(r.Events)-1].Kind
}

// What is typed before a question stands there is no answer to it, so that a glove on the
// keys sees nothing as expected; nor is a bare Enter.
func TestBenchTypedAheadIsNoAnswer(t *testing.T) {
	program, dir := programCalled(t, "hingeline-looking")
	ahead := strings.Repeat("y\n", 40)
	on, status := sitting{dir: dir, argv: []string{program, "bench", "pellin-park"}}.typed(t, []string{"yes\n" + ahead, "yes\n" + ahead, "yes\n\n\n" + ahead, "", "", "y\n" + ahead})
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

// Somebody who answers faster than anybody can look, as a hand that lies on the keys does, is
// told so, and nothing is taken, however long it goes on.
func TestBenchTypedTooSoonIsNoAnswer(t *testing.T) {
	program, dir := programCalled(t, "hingeline-hasty")
	on, status := sitting{dir: dir, argv: []string{program, "bench", "pellin-park"}}.typed(t, []string{"yes", "y", "yes", "y", "y"})
	if status != -1 || strings.Count(on, "Too soon") != 5 || strings.Count(on, "Is the model held") != 6 {
		t.Errorf("exit status %d:\n%s", status, on)
	}
	if _, err := os.Stat(filepath.Join(dir, "pellin-park.bench")); err == nil {
		t.Error("there is a record")
	}
}

// What is said beside the questions fits the terminal too, and no word is broken.
func TestBenchSaysNothingWiderThanTheTerminal(t *testing.T) {
	program, dir := programCalled(t, "hingeline-looking")
	sitting{dir: dir, argv: []string{program, "bench", "pellin-park"}}.typed(t, append(benchtest.Begin(), "y"))
	on, _ := sitting{dir: dir, argv: []string{program, "bench", "pellin-park"}}.typed(t, append(benchtest.Begin(), "h", "gibberish", "p"))
	again, _ := sitting{dir: dir, argv: []string{program, "bench", "pellin-park", "--resume=1"}}.typed(t, []string{"no", "yes", "no"})
	refused, status := sitting{dir: dir, argv: []string{program, "bench", "pellin-park", "--resume=77", "--date", "2026-11-25T20:15:00Z"}}.typed(t, nil)
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
