//go:build browser

package main

import (
	"bufio"
	"bytes"
	"context"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"example.com/hingeline/airframes"
	"example.com/hingeline/features"
)

var chromium = flag.String("chromium", "chromium", "the browser to run")

// visiting is a browser of its own at an address, for a test's length.
func visiting(t *testing.T, address string) context.Context {
	t.Helper()
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(*chromium), chromedp.NoSandbox, chromedp.UserDataDir(t.TempDir()))
	within, stop := context.WithTimeout(t.Context(), 3*time.Minute)
	alone, end := chromedp.NewExecAllocator(within, options...)
	ctx, cancel := chromedp.NewContext(alone)
	t.Cleanup(func() { cancel(); end(); stop() })
	if err := chromedp.Do(ctx, chromedp.Navigate(address)); err != nil {
		t.Fatal(err)
	}
	return ctx
}

// TestServedPageFollowsTheFiles edits the airframe file and its script behind an open page:
// the checks beside it change without it being loaded again, and so does the model.
func TestServedPageFollowsTheFiles(t *testing.T) {
	dir := t.TempDir()
	model, _ := airframes.ReadShipped("bracken-20")
	asked, _ := features.Read("bracken-20.feature")
	airframe := filepath.Join(dir, "bracken-20.yaml")
	write := func(name string, text []byte) {
		t.Helper()
		if err := os.WriteFile(filepath.Join(dir, name), text, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	model = bytes.Replace(model, []byte("../features/"), nil, 1)
	write("bracken-20.yaml", model)
	write("bracken-20.feature", asked)
	address := serving(t, airframe)
	ctx := visiting(t, address)
	says := func(words string) {
		t.Helper()
		var text string
		for range 400 {
			var err error
			if text, err = chromedp.Run(ctx, chromedp.Evaluate[string](`document.querySelector("#checked").innerText + document.querySelector("#says-0").innerText + (window.same ?? "")`)); err == nil && strings.Contains(text, words) {
				return
			}
			time.Sleep(25 * time.Millisecond)
		}
		t.Fatalf("the page never said %q; it says %.500q", words, text)
	}
	says("PASSED")
	if _, err := chromedp.Run(ctx, chromedp.Evaluate[string](`window.same = "not loaded again"`)); err != nil {
		t.Fatal(err)
	}
	write("bracken-20.yaml", bytes.Replace(model, []byte("    reversed: true\n"), nil, 1))
	says("DO NOT FLY")
	says("after " + airframe + " changed")
	write("bracken-20.yaml", []byte("hingeline: 1\nname: Broken\n"))
	says("THE AIRFRAME FILE CANNOT BE USED")
	write("bracken-20.yaml", model)
	says("PASSED")
	write("bracken-20.feature", bytes.Replace(asked, []byte("the port aileron is at neutral"), []byte("the port aileron is 5° up"), 1))
	says("DO NOT FLY")
	says("not loaded again")
}

// serving starts the program and gives the address that it prints. It is told to end, as
// by Ctrl-C, when the test is over.
func serving(t *testing.T, airframe string) string {
	t.Helper()
	program := filepath.Join(t.TempDir(), "hingeline")
	if out, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	c := exec.Command(program, "serve", airframe)
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		c.Process.Signal(os.Interrupt)
		if err := c.Wait(); err != nil {
			t.Errorf("ended by Ctrl-C: %v", err)
		}
	})
	lines := bufio.NewScanner(out)
	if !lines.Scan() || !strings.HasPrefix(lines.Text(), "http://127.0.0.1:") {
		t.Fatalf("printed %q, wanted an address of this machine", lines.Text())
	}
	return lines.Text()
}

// TestPageAtTheBenchIsGoneOnWithAtTheTerminal answers some steps on the page, ends the
// program, and finishes the same record with bench; and the other way round.
func TestPageAtTheBenchIsGoneOnWithAtTheTerminal(t *testing.T) {
	dir := t.TempDir()
	text, _ := airframes.ReadShipped("pellin-park")
	airframe := filepath.Join(dir, "pellin.yaml")
	text = bytes.Replace(text, []byte("../features/"), nil, 1)
	if err := os.WriteFile(airframe, text, 0o600); err != nil {
		t.Fatal(err)
	}
	asked, _ := features.Read("pellin-park.feature")
	if err := os.WriteFile(filepath.Join(dir, "pellin-park.feature"), asked, 0o600); err != nil {
		t.Fatal(err)
	}
	program := filepath.Join(dir, "hingeline")
	if out, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	typed := func(lines string, more ...string) string {
		t.Helper()
		c := exec.Command(program, append([]string{"bench", airframe, "--brief"}, more...)...)
		c.Stdin = strings.NewReader(lines)
		out, _ := c.CombinedOutput()
		return string(out)
	}
	if out := typed("yes\nyes\nyes\ny\n"); !strings.Contains(out, "NOT FINISHED") {
		t.Fatalf("begun at the terminal: %s", out)
	}
	address := serving(t, airframe)
	ctx := visiting(t, address+"bench")
	press := func(words, until string) {
		t.Helper()
		script := `(words => { const b = [...document.querySelectorAll("#now button")].find(b => b.textContent === words && !b.disabled && document.documentElement.dataset.fresh === undefined); b?.click(); return !!b; })("` + words + `")`
		for range 400 {
			if did, err := chromedp.Run(ctx, chromedp.Evaluate[bool](script)); err == nil && did {
				for range 400 {
					if head, err := chromedp.Run(ctx, chromedp.Evaluate[string](`document.querySelector("#now-head").textContent`)); err == nil && strings.HasPrefix(head, until) {
						return
					}
					time.Sleep(25 * time.Millisecond)
				}
				break
			}
			time.Sleep(25 * time.Millisecond)
		}
		text, _ := chromedp.Run(ctx, chromedp.Evaluate[string](`document.body.innerText`))
		t.Fatalf("%q never led to %q: %s", words, until, text)
	}
	press("Go on with record 1", "Before it goes on")
	press("No", "Before anything moves: 1 of 3")
	press("Yes", "Before anything moves: 2 of 3")
	press("Yes", "Before anything moves: 3 of 3")
	press("Yes", "Step 2 of")
	press("All as expected", "Step 3 of")
	press("Pause", "With the model in hand")
	out := typed("no\nyes\nyes\nyes\n"+strings.Repeat("y\n", 40), "--resume")
	if strings.Contains(out, "STEP 2 of") || !strings.Contains(out, "STEP 3 of") || !strings.Contains(out, "SEEN AS EXPECTED") {
		t.Errorf("gone on with at the terminal: %s", out)
	}
	if entries, _ := os.ReadDir(filepath.Join(dir, "pellin.bench")); len(entries) != 1 {
		t.Errorf("%d records, wanted the one", len(entries))
	}
}
