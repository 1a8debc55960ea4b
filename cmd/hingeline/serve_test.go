//go:build linux || darwin

package main

import (
	"bufio"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"strings"
	"testing"
)

// served is the program that serves: what it prints, by line, and what it says, to be read
// once it has ended.
func served(t *testing.T, args ...string) (c *exec.Cmd, printed *bufio.Scanner, said *strings.Builder) {
	t.Helper()
	program, dir := programInDirectory(t)
	c = exec.Command(program, append([]string{"serve"}, args...)...)
	said = &strings.Builder{}
	c.Dir, c.Stderr = dir, said
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	return c, bufio.NewScanner(out), said
}

// TestServeGivesOutThePageUntilItIsEnded starts the program, asks for the page as this
// machine and as a stranger, and ends it as Ctrl-C does; on Windows no
// interrupt can be sent to another process.
func TestServeGivesOutThePageUntilItIsEnded(t *testing.T) {
	c, lines, said := served(t, "pellin-park")
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

// TestServeOnTheNetworkSaysSo starts the program with --lan: it warns, and says a code; by
// its address on the network it gives out nothing but the question for the code. On a
// machine without such an address it says that, and starts nothing.
func TestServeOnTheNetworkSaysSo(t *testing.T) {
	c, lines, said := served(t, "pellin-park", "--lan")
	if !lines.Scan() {
		if c.Wait(); c.ProcessState.ExitCode() != statusWrongUse || !strings.Contains(said.String(), "no address on a private network") {
			t.Fatalf("exit status %d: %s", c.ProcessState.ExitCode(), said.String())
		}
		return
	}
	_, port, _ := strings.Cut(strings.TrimPrefix(strings.TrimSuffix(lines.Text(), "/"), "http://"), ":")
	l, err := listenPrivately(0)
	if err != nil {
		t.Fatal(err)
	}
	host, _, _ := net.SplitHostPort(l[0].Addr().String())
	for _, one := range l {
		one.Close()
	}
	for path, status := range map[string]int{"/": http.StatusOK, "/page.js": http.StatusForbidden} {
		answer, err := http.Get("http://" + net.JoinHostPort(host, port) + path)
		if err != nil {
			t.Fatal(err)
		}
		text, _ := io.ReadAll(answer.Body)
		answer.Body.Close()
		if answer.StatusCode != status || strings.Contains(string(text), "hingeline-token") {
			t.Errorf("%s from the network: status %d, wanted %d: %.80q", path, answer.StatusCode, status, text)
		}
	}
	c.Process.Signal(os.Interrupt)
	if err := c.Wait(); err != nil {
		t.Errorf("ended by Ctrl-C: %v", err)
	}
	for _, want := range []string{"is not encrypted", "give the code ", "for one device, until", `refused: "/page.js" asked for by a device that was not let in`} {
		if !strings.Contains(said.String(), want) {
			t.Errorf("stderr %q lacks %q", said.String(), want)
		}
	}
}
