//go:build formats

package main

import (
	"bytes"
	"encoding/json"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
)

// outside runs a program of others and gives what it wrote; ok is whether it was content.
func outside(t *testing.T, name string, args ...string) (text string, ok bool) {
	t.Helper()
	out, err := exec.Command(name, args...).CombinedOutput()
	if _, ran := err.(*exec.ExitError); err != nil && !ran {
		t.Fatal(err)
	}
	return string(out), err == nil
}

// squeezed is text without the spaces and line ends that a page puts between words.
func squeezed(text string) string { return strings.Join(strings.Fields(text), "") }

// Every built-in model on both sizes of paper: qpdf finds nothing wrong with the file,
// pdftotext finds every sentence, and pdftoppm draws as many pages as there are.
func TestFormatsPDFByOutsideReaders(t *testing.T) {
	for _, model := range airframes.Shipped() {
		for _, paper := range []string{"a4", "letter"} {
			dir := t.TempDir()
			sheet, card, report := filepath.Join(dir, "s.pdf"), filepath.Join(dir, "c.pdf"), filepath.Join(dir, "r.json")
			args := []string{"check", model, "--brief", "--date", "2026-11-25", "--paper", paper, "--pdf", sheet, "--card", card, "--json=" + report}
			if status := run(args, strings.NewReader(""), io.Discard, os.Stderr); status != statusYes {
				t.Fatalf("%s: exit status %d", model, status)
			}
			for _, file := range []string{sheet, card} {
				if said, ok := outside(t, "qpdf", "--check", file); !ok {
					t.Errorf("%s on %s: %s", model, paper, said)
				}
			}
			text, ok := outside(t, "pdftotext", "-layout", sheet, "-")
			if !ok {
				t.Errorf("%s: %s", model, text)
			}
			plain, _ := outside(t, "pdftotext", "-raw", sheet, "-")
			mustHold(t, model+" on "+paper, squeezed(plain), report)
			if model == "pellin-park" {
				pages, _ := outside(t, "qpdf", "--show-npages", sheet)
				outside(t, "pdftoppm", "-r", "20", "-gray", sheet, filepath.Join(dir, "page"))
				drawn, _ := filepath.Glob(filepath.Join(dir, "page*"))
				if got := strings.TrimSpace(pages); got == "" || got == "0" || len(drawn) == 0 {
					t.Errorf("%s: %s pages, %d drawn", model, got, len(drawn))
				}
			}
		}
	}
}

// mustHold wants every sentence and every caution of a report in the text of a page.
func mustHold(t *testing.T, what, page, report string) {
	t.Helper()
	text, err := os.ReadFile(report)
	if err != nil {
		t.Fatal(err)
	}
	var r struct {
		Checks   []struct{ Sentence string }
		Cautions []string
	}
	if err := json.Unmarshal(text, &r); err != nil || len(r.Checks) == 0 {
		t.Fatal(err, len(r.Checks))
	}
	for _, c := range r.Checks {
		if !strings.Contains(page, squeezed(c.Sentence)) {
			t.Errorf("%s: the page lacks %q", what, c.Sentence)
		}
	}
	for _, c := range r.Cautions {
		if !strings.Contains(page, squeezed(c)) {
			t.Errorf("%s: the page lacks %q", what, c)
		}
	}
	for _, never := range []string{"safetofly", "clearedtofly", "readytofly"} {
		if strings.Contains(strings.ToLower(page), never) {
			t.Errorf("%s: the page reads %q", what, never)
		}
	}
}

// A file that is cut, and one with a broken object, are refused by what looks at ours.
func TestFormatsQpdfRefusesPlantedFaults(t *testing.T) {
	dir := t.TempDir()
	sheet := filepath.Join(dir, "s.pdf")
	if status := run([]string{"check", "pellin-park", "--brief", "--pdf", sheet}, strings.NewReader(""), io.Discard, os.Stderr); status != statusYes {
		t.Fatalf("exit status %d", status)
	}
	text, err := os.ReadFile(sheet)
	if err != nil {
		t.Fatal(err)
	}
	for name, bad := range map[string][]byte{
		"cut":       text[:len(text)*2/3],
		"no object": bytes.Replace(text, []byte(" 0 obj"), []byte(" 0 jbo"), 1),
	} {
		file := filepath.Join(dir, "bad.pdf")
		if err := os.WriteFile(file, bad, 0o600); err != nil {
			t.Fatal(err)
		}
		if said, ok := outside(t, "qpdf", "--check", file); ok {
			t.Errorf("%s: qpdf is content: %s", name, said)
		}
	}
}
