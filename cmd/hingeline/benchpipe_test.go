//go:build linux || darwin

package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/sys/unix"
)

// A pipe under a record's name, which waits for ever for somebody who writes, is no record.
func TestBenchWaitsForNoPipe(t *testing.T) {
	startedRecord(t)
	if err := unix.Mkfifo(filepath.Join("pellin-park.bench", "0002.jsonl"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile("no.txt", []byte("no\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	_, messages, code := called("bench", "pellin-park", "--shortest", "--answers", "no.txt")
	if code != statusNothingChecked || !strings.Contains(messages, "record 1 in pellin-park.bench is not finished") {
		t.Errorf("exit status %d: %s", code, messages)
	}
	_, messages, code = called("bench", "pellin-park", "--resume=2", "--answers", "no.txt")
	if code != statusBadInput || !strings.Contains(messages, "it is no file") {
		t.Errorf("exit status %d: %s", code, messages)
	}
}
