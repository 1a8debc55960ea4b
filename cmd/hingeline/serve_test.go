//go:build !windows

package main

import (
	"bufio"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// TestServeGivesOutThePageUntilItIsEnded starts the program, asks for the page as this
// machine and as a stranger, and ends it as Ctrl-C does; on Windows no
// interrupt can be sent to another process.
func TestServeGivesOutThePageUntilItIsEnded(t *testing.T) {
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	program := filepath.Join(t.TempDir(), "hingeline") // testscript.Main runs a command by this name
	if err := os.Symlink(self, program); err != nil {
		t.Fatal(err)
	}
	c := exec.Command(program, "serve", "pellin-park")
	var said strings.Builder
	c.Stderr = &said
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewScanner(out)
	if !lines.Scan() || !strings.HasPrefix(lines.Text(), "http://127.0.0.1:") {
		c.Process.Kill()
		t.Fatalf("printed %q, wanted an address of this machine; %s", lines.Text(), said.String())
	}
	address := lines.Text()
	for host, want := range map[string]int{"": http.StatusOK, "evil.example": http.StatusMisdirectedRequest} {
		q, err := http.NewRequest("GET", address, nil)
		if err != nil {
			t.Fatal(err)
		}
		q.Host = host
		answer, err := http.DefaultClient.Do(q)
		if err != nil {
			t.Fatal(err)
		}
		text, _ := io.ReadAll(answer.Body)
		answer.Body.Close()
		if answer.StatusCode != want {
			t.Errorf("host %q: status %d, wanted %d: %.80q", host, answer.StatusCode, want, text)
		}
	}
	if err := c.Process.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	if err := c.Wait(); err != nil {
		t.Errorf("ended by Ctrl-C: %v", err)
	}
	for _, want := range []string{"open this address in a browser on this machine", `refused: host "evil.example"`} {
		if !strings.Contains(said.String(), want) {
			t.Errorf("stderr %q lacks %q", said.String(), want)
		}
	}
}
