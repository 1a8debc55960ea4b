package main

import (
	"bytes"
	"net"
	"os"
	"strings"
	"testing"
)

// What is no plain file is neither read, which need not end, nor replaced.
func TestOwnFileLeavesDevicesAlone(t *testing.T) {
	t.Chdir(t.TempDir())
	all := func([]byte) bool { return true }
	there, err := net.Listen("unix", "socket")
	if err != nil {
		t.Fatal(err)
	}
	defer there.Close()
	if err := os.Symlink("socket", "link"); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"socket", "link"} {
		f := ownFile{name: name, what: "a page", ours: all}
		if wrong := f.taken(); !strings.Contains(wrong, "no plain file") {
			t.Errorf("%s: %q", name, wrong)
		}
		if err := f.put([]byte("text")); err == nil {
			t.Errorf("%s was replaced", name)
		}
		if err := replaceFile(name, []byte("text")); err == nil {
			t.Errorf("%s was replaced", name)
		}
		if info, err := os.Stat(name); err != nil || info.Mode()&os.ModeSocket == 0 {
			t.Errorf("%s is no longer what it was: %v, %v", name, info, err)
		}
	}
}

// A link that leads nowhere is told before anything is checked.
func TestOwnFileTellsOfLinksThatLeadNowhere(t *testing.T) {
	t.Chdir(t.TempDir())
	if err := os.Symlink("nowhere", "link"); err != nil {
		t.Fatal(err)
	}
	f := ownFile{name: "link", what: "a page", ours: func([]byte) bool { return true }}
	if f.taken() == "" {
		t.Error("it is not told")
	}
}

// Reports of other programs have the same forms as ours: they are left alone.
func TestOutputsLeaveReportsOfOtherProgramsAlone(t *testing.T) {
	t.Chdir(t.TempDir())
	for flag, text := range map[string]string{
		"pdf":      "%PDF-1.4\n/Producer (another program)\n",
		"card":     "%PDF-1.4\n/Producer (another program)\n",
		"junit":    `<?xml version="1.0" encoding="UTF-8"?>` + "\n" + `<testsuites name="mine"></testsuites>`,
		"tap":      "TAP version 14\n1..1\nok 1 - mine\n",
		"messages": `{"meta":{"protocolVersion":"1","implementation":{"name":"another"}}}` + "\n",
		"sarif":    `{"version":"2.1.0","runs":[{"tool":{"driver":{"name":"another"}},"results":[]}]}`,
		"html":     `<html><!-- a note about <meta name="generator" content="hingeline"> --></html>`,
		"json":     `{"about": "what is in a \"hingeline_report\": "}`,
	} {
		name := "mine." + flag
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		if _, messages, code := called("check", "ousel-trainer", "--"+flag+"="+name); code != statusWrongUse || !strings.Contains(messages, "is there already and is not ") {
			t.Errorf("--%s: exit status %d, %q", flag, code, messages)
		}
		if now, err := os.ReadFile(name); err != nil || !bytes.Equal(now, []byte(text)) {
			t.Errorf("--%s wrote over %q", flag, text)
		}
	}
}

// A card is no report and a report is no card, however the file is called.
func TestOutputsKeepCardsAndReportsApart(t *testing.T) {
	t.Chdir(t.TempDir())
	if _, messages, code := called("check", "ousel-trainer", "--pdf", "one.pdf", "--card", "two.pdf"); code != statusYes {
		t.Fatalf("exit status %d, %q", code, messages)
	}
	if _, _, code := called("check", "ousel-trainer", "--card", "one.pdf"); code != statusWrongUse {
		t.Errorf("a card was written over a report: exit status %d", code)
	}
	if err := os.Symlink("one.pdf", "link.pdf"); err != nil {
		t.Fatal(err)
	}
	for _, twice := range [][]string{{"--pdf", "one.pdf", "--card", "link.pdf"}, {"--junit", "a.xml", "--tap", "./a.xml"}} {
		_, messages, code := called(append([]string{"check", "ousel-trainer"}, twice...)...)
		if code != statusWrongUse || !strings.Contains(messages, "both go to") {
			t.Errorf("%q: exit status %d, %q", twice, code, messages)
		}
	}
}

// Two names that end in .json are one too many: which of them is written is not guessed.
func TestJSONGoesToOneFile(t *testing.T) {
	t.Chdir(t.TempDir())
	_, messages, code := called("check", "model.json", "model.feature", "--json", "out.json")
	if code != statusWrongUse || !strings.Contains(messages, "model.json and out.json both end in .json") {
		t.Errorf("exit status %d, %q", code, messages)
	}
	for _, name := range []string{"model.json", "out.json"} {
		if _, err := os.Lstat(name); err == nil {
			t.Errorf("%s was written", name)
		}
	}
}
