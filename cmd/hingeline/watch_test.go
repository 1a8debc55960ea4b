package main

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/hingeline/verify/result"
)

// screen is what a running program has written so far; await waits for
// more.
type screen struct {
	mu    sync.Mutex
	more  *sync.Cond
	text  bytes.Buffer
	ended bool
}

func newScreen() *screen {
	t := &screen{}
	t.more = sync.NewCond(&t.mu)
	return t
}

func (t *screen) Write(p []byte) (int, error) {
	t.mu.Lock()
	defer t.mu.Unlock()
	defer t.more.Broadcast()
	return t.text.Write(p)
}

// end says that nothing more will come.
func (t *screen) end() {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.ended = true
	t.more.Broadcast()
}

// await waits until the words were written the given number of times; false if
// the program ended before.
func (t *screen) await(words string, times int) bool {
	t.mu.Lock()
	defer t.mu.Unlock()
	for strings.Count(t.text.String(), words) < times {
		if t.ended {
			return false
		}
		t.more.Wait()
	}
	return true
}

func (t *screen) String() string {
	t.mu.Lock()
	defer t.mu.Unlock()
	return t.text.String()
}

// longest is when a program that is being watched is given up, in place of a
// test that never ends.
const longest = time.Minute

// watching is a "check --watch" that runs while the test goes on.
type watching struct {
	t    *testing.T
	dir  string
	out  *screen
	keys *io.PipeWriter
	done chan int
}

func startWatching(t *testing.T) *watching {
	t.Helper()
	w := &watching{t: t, dir: t.TempDir(), out: newScreen(), done: make(chan int, 1)}
	w.write("mini.yaml", miniAirframe)
	w.write("mini.feature", miniScript)
	stdin, keys := io.Pipe()
	w.keys = keys
	go func() {
		w.done <- run([]string{"check", filepath.Join(w.dir, "mini.yaml"), "--watch"}, stdin, w.out, w.out)
		w.out.end()
	}()
	gaveUp := time.AfterFunc(longest, w.out.end)
	t.Cleanup(func() { gaveUp.Stop() })
	return w
}

// write puts a file in its place at one go, as careful editors do.
func (w *watching) write(name, text string) {
	w.t.Helper()
	file := filepath.Join(w.dir, name)
	if err := os.WriteFile(file+"~", []byte(text), 0o644); err != nil {
		w.t.Fatal(err)
	}
	if err := os.Rename(file+"~", file); err != nil {
		w.t.Fatal(err)
	}
}

func (w *watching) await(words string, times int) {
	w.t.Helper()
	if !w.out.await(words, times) {
		w.t.Fatalf("waited in vain for %q, %d times; got:\n%s", words, times, w.out)
	}
}

func (w *watching) quit(want int) {
	w.t.Helper()
	if _, err := io.WriteString(w.keys, "q"); err != nil {
		w.t.Fatal(err)
	}
	select {
	case got := <-w.done:
		if got != want {
			w.t.Errorf("exit status %d, wanted %d; got:\n%s", got, want, w.out)
		}
	case <-time.After(longest):
		w.t.Fatalf("q does not quit; got:\n%s", w.out)
	}
}

const (
	miniAirframe = `hingeline: 1
name: Mini
controls:
  roll stick: roll
demands:
  roll: roll stick
channels:
  1: {mix: roll}
surfaces:
  starboard aileron: {channel: 1, measured: {100%: 20° up}}
`
	miniScript = `Feature: Mini
  Scenario: Roll
    When the roll stick is full right
    Then the starboard aileron rises
`
)

var reversedAirframe = strings.Replace(miniAirframe, "mix: roll", "mix: roll, reversed: true", 1)

func TestWatchChecksAgainAfterAChange(t *testing.T) {
	w := startWatching(t)
	w.await("watching for changes", 1)
	w.await("PASSED: 1 of 1 check", 1)
	w.await(": passed\n", 1)

	w.write("mini.yaml", reversedAirframe)
	w.await("DO NOT FLY", 1)
	w.await("first: the starboard aileron rises · WRONG WAY: wanted UP, it goes DOWN\n", 1)
	w.await("mini.yaml changed: now failing\n", 1)
	w.await("watching for changes", 2)

	w.write("mini.yaml", strings.Replace(miniAirframe, "channel: 1", "channel: 9", 1))
	w.await("mini.yaml:10", 1)
	w.await("mini.yaml changed: nothing was checked, a file cannot be used\n", 1)
	w.await("watching for changes", 3)

	w.write("mini.yaml", miniAirframe)
	w.await("PASSED", 2)
	w.await("mini.yaml changed: now passed\n", 1)
	w.await("watching for changes", 4)

	w.write("mini.feature", strings.Replace(miniScript, "rises", "drops", 1))
	w.await("DO NOT FLY", 2)
	w.await("mini.feature changed: now failing\n", 1)
	w.await("watching for changes", 5)

	w.write("mini.feature", strings.Replace(miniScript, "rises", "drops 3°", 1))
	w.await("mini.feature changed: still failing\n", 1)
	w.await("watching for changes", 6)

	w.write("mini.feature", miniScript)
	w.await("mini.feature changed: now passed\n", 1)
	w.await("watching for changes", 7)
	w.quit(statusYes)
	clock := regexp.MustCompile(`\nchecked again [012]\d:[0-5]\d:[0-5]\d after \S+mini.yaml changed: now failing\n`)
	if text := w.out.String(); !clock.MatchString(text) || strings.Contains(text, "LEFT TO DO") || strings.Contains(text, "pass ✓") {
		t.Errorf("not in brief, or without the time:\n%s", text)
	}
}

// A check of a part never reads as a plain pass.
func TestOutcomeSaysWhatChanged(t *testing.T) {
	for _, c := range []struct {
		before, now result.Verdict
		want        string
	}{
		{"", result.Passed, "passed"},
		{"", result.PassedInPart, "passed in part"},
		{result.Failed, result.PassedInPart, "now passed in part"},
		{result.Passed, result.Passed, "passed"},
		{"", result.Failed, "failing"},
		{result.PassedInPart, result.Failed, "now failing"},
		{result.NothingChecked, result.Failed, "failing"},
		{result.Failed, result.NothingChecked, "nothing was checked"},
	} {
		if got := outcome(c.before, c.now); got != c.want {
			t.Errorf("%q after %q: %q, wanted %q", c.now, c.before, got, c.want)
		}
	}
}

func TestWatchSurvivesAFileThatIsGoneForAMoment(t *testing.T) {
	w := startWatching(t)
	w.await("watching for changes", 1)
	if err := os.Remove(filepath.Join(w.dir, "mini.yaml")); err != nil {
		t.Fatal(err)
	}
	w.write("mini.yaml", reversedAirframe)
	w.await("DO NOT FLY", 1)
	w.await("watching for changes", 2)
	if strings.Contains(w.out.String(), "no such file") {
		t.Errorf("complains about a file that was gone for a moment:\n%s", w.out)
	}
	w.quit(statusNo)
}

func TestWatchTellsOfAFileThatStaysGone(t *testing.T) {
	w := startWatching(t)
	w.await("watching for changes", 1)
	if err := os.Remove(filepath.Join(w.dir, "mini.feature")); err != nil {
		t.Fatal(err)
	}
	w.await("no script", 1)
	w.await("watching for changes", 2)
	w.write("mini.feature", miniScript)
	w.await("PASSED", 2)
	w.await("watching for changes", 3)
	w.quit(statusYes)
}

func TestWatchQuitsAtTheEndOfInput(t *testing.T) {
	w := startWatching(t)
	w.await("watching for changes", 1)
	w.keys.Close()
	select {
	case got := <-w.done:
		if got != statusYes {
			t.Errorf("exit status %d, wanted %d; got:\n%s", got, statusYes, w.out)
		}
	case <-time.After(longest):
		t.Fatal("the end of the input does not quit")
	}
}
