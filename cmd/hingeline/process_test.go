package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
)

// hundredScenarios is a script for the built-in model, each scenario with a
// Given, a When and two Thens.
func hundredScenarios() string {
	var b strings.Builder
	b.WriteString("Feature: a hundred scenarios\n")
	for i := range 100 {
		fmt.Fprintf(&b, `
  Scenario: right stick, number %d
    Given rates are high
    When the roll stick is %d%% right
    Then the starboard aileron rises
    And the port aileron drops
`, i+1, 50+i/2)
	}
	return b.String()
}

// BenchmarkProcess is a check of a hundred scenarios as a whole process, against
// an empty Go program; the goal is at most 8 times as long.
func BenchmarkProcess(b *testing.B) {
	dir := b.TempDir()
	write := func(name, text string) {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			b.Fatal(err)
		}
	}
	airframe, _ := airframes.ReadShipped(defaultModel)
	write("model.yaml", string(airframe))
	write("model.feature", hundredScenarios())
	write("empty.go", "package main\n\nfunc main() {}\n")
	check, empty := filepath.Join(dir, "hingeline"), filepath.Join(dir, "empty")
	for _, build := range [][]string{{"-o", check, "."}, {"-o", empty, filepath.Join(dir, "empty.go")}} {
		if out, err := exec.Command("go", append([]string{"build"}, build...)...).CombinedOutput(); err != nil {
			b.Fatalf("%v: %s", err, out)
		}
	}
	for _, c := range []struct {
		name string
		argv []string
	}{
		{"check", []string{check, "check", "model.yaml", "model.feature"}},
		{"empty", []string{empty}},
	} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				command := exec.Command(c.argv[0], c.argv[1:]...)
				command.Dir = dir
				if out, err := command.CombinedOutput(); err != nil {
					b.Fatalf("%v: %s", err, out)
				}
			}
		})
	}
}
