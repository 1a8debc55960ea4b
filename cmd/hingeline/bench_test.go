package main

import (
	"io"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
)

// BenchmarkCheck is a whole check of the built-in model, from the words on the
// command line to the report; BenchmarkCheckBaseline only reads the airframe
// file, which no check can do without.
func BenchmarkCheck(b *testing.B) {
	for b.Loop() {
		if code := run([]string{"check", defaultModel}, strings.NewReader(""), io.Discard, io.Discard); code != statusYes {
			b.Fatalf("exit status %d", code)
		}
	}
}

func BenchmarkCheckBaseline(b *testing.B) {
	text, _ := airframes.ReadShipped(defaultModel)
	for b.Loop() {
		if m, _ := airframes.Load(defaultModel, text); m == nil {
			b.Fatal("the built-in model does not load")
		}
	}
}

// BenchmarkReports is what writing the report to print and the web page costs beside the
// check alone, of the built-in model; the goal is three times as much.
func BenchmarkReports(b *testing.B) {
	dir := b.TempDir()
	for _, c := range []struct {
		name string
		args []string
	}{
		{"alone", []string{"check", defaultModel}},
		{"pdf_and_html", []string{"check", defaultModel, "--pdf", dir + "/a.pdf", "--html", dir + "/a.html"}},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if code := run(c.args, strings.NewReader(""), io.Discard, io.Discard); code != statusYes {
					b.Fatalf("exit status %d", code)
				}
			}
		})
	}
}
