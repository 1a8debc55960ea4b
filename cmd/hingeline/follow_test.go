//go:build !windows

package main

import (
	"context"
	"fmt"
	"net"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"
)

func TestFollowHearsOfFilesInADirectoryThatWasMovedAndPutBack(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "models")
	file := filepath.Join(dir, "mini.yaml")
	write := func(text string) {
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Mkdir(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	write(miniAirframe)
	w, err := newWatcher()
	if err != nil {
		t.Fatal(err)
	}
	defer w.close()
	w.follow([]diskFile{stampOf(file)})
	for _, move := range [][2]string{{dir, dir + " away"}, {dir + " away", dir}} {
		if err := os.Rename(move[0], move[1]); err != nil {
			t.Fatal(err)
		}
	}
	ctx, stop := context.WithTimeout(context.Background(), longest)
	defer stop()
	heard := make(chan []string, 1)
	go func() { heard <- w.changed(ctx, nil) }()
	time.Sleep(3 * settleTime) // what the move itself raised has been heard
	write(reversedAirframe)
	if got := <-heard; !slices.Equal(got, []string{file}) {
		t.Errorf("changed: %q, wanted %q", got, file)
	}
}

func TestFollowedFilesAreNoPipes(t *testing.T) {
	dir := t.TempDir()
	for _, c := range []struct{ airframe, script, want string }{
		{"pipe.yaml", "mini.feature", "wanted an airframe file"},
		{"mini.yaml", "pipe.feature", "wanted a script"},
	} {
		for name, text := range map[string]string{"mini.yaml": miniAirframe, "mini.feature": miniScript} {
			if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		for _, name := range []string{c.airframe, c.script} {
			if strings.HasPrefix(name, "pipe") {
				if err := syscall.Mkfifo(filepath.Join(dir, name), 0o600); err != nil {
					t.Fatal(err)
				}
			}
		}
		s := &session{follows: true}
		in := s.gather(filepath.Join(dir, c.airframe), []string{filepath.Join(dir, c.script)})
		if len(in.problems) != 1 || !strings.Contains(in.problems[0].Message, "is a pipe or a device") || !strings.Contains(in.problems[0].Message, c.want) {
			t.Errorf("%s, %s: %v, wanted that it is a pipe, %s", c.airframe, c.script, in.problems, c.want)
		}
	}
}

func TestServeNeverSharesAPort(t *testing.T) {
	taken, err := net.Listen("tcp4", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer taken.Close()
	port := taken.Addr().(*net.TCPAddr).Port
	if other, err := listenHere(port); err == nil {
		defer other.Close()
		t.Errorf("listens at %s while %s is taken: localhost:%s would be either", other.Addr(), taken.Addr(), fmt.Sprint(port))
	}
}
