package terminal

import (
	"io"
	"strings"
	"testing"

	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

// many is a report of n checks, the first few of them failed.
func many(n int) *result.Report {
	r := sample.Failing()
	checks := r.Checks
	r.Checks = nil
	for i := range n {
		c := checks[i%len(checks)]
		c.Place.Line = 10 + i
		c.Passed = c.Passed || i >= len(checks)
		r.Checks = append(r.Checks, c)
	}
	return r
}

// BenchmarkRender lays out a report of 200 checks; BenchmarkRenderBaseline
// writes the same bytes, line by line, with nothing laid out.
func BenchmarkRender(b *testing.B) {
	r := many(200)
	b.ReportAllocs()
	for b.Loop() {
		if err := Render(io.Discard, r, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRenderBaseline(b *testing.B) {
	var text strings.Builder
	if err := Render(&text, many(200), Options{}); err != nil {
		b.Fatal(err)
	}
	var lines []string
	for line := range strings.Lines(text.String()) {
		lines = append(lines, line)
	}
	b.ReportAllocs()
	for b.Loop() {
		var page strings.Builder
		for _, line := range lines {
			page.WriteString(line)
		}
		if _, err := io.WriteString(io.Discard, page.String()); err != nil {
			b.Fatal(err)
		}
	}
}
