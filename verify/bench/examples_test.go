package bench_test

import (
	"regexp"
	"strings"
	"testing"

	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/bench/benchtest"
	"example.com/hingeline/verify/faults/sight"
)

// What is given as an example of an answer is understood as one.
func TestExamplesAreUnderstood(t *testing.T) {
	quoted := regexp.MustCompile(`such as "([^"]+)"|Measured: "([^"]+)"|Else as "([^"]+)"`)
	tried := 0
	for _, name := range []string{"pellin-park", "tarn-measured", "bracken-20"} {
		for _, look := range []sight.Look{sight.Eye, sight.Measured} {
			m, chosen := usual(t, name, look)
			w := bench.NewWalk(m, chosen, look)
			lines := benchtest.Begin()
			for range w.Steps {
				said := through(t, w, lines[len(benchtest.Begin()):]...).Ask().Said
				for _, found := range quoted.FindAllStringSubmatch(said, -1) {
					line := strings.Join(found[1:], "")
					tried++
					if r, err := through(t, w, lines[len(benchtest.Begin()):]...).Take(line); err != nil || strings.Contains(r.Text, "is that part") || strings.Contains(r.Text, "not understood") {
						t.Errorf("%s: %q of %q: %+v, %v", name, line, said, r, err)
					}
				}
				lines = append(lines, "y")
			}
		}
	}
	if tried == 0 {
		t.Error("no example was given")
	}
}
