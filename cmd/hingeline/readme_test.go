package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

var (
	// readmeFile is a fenced block that is a file: ```yaml dunlin.yaml
	readmeFile = regexp.MustCompile("^```[a-z]+ ([a-z0-9.-]+)$")
	// readmeEdit is a comment that changes a file: <!-- edit FILE: OLD => NEW -->
	readmeEdit = regexp.MustCompile(`^<!-- edit ([a-z0-9.-]+): (.+) => (.*) -->$`)
	// readmeCopy is a comment that copies a file and a script: <!-- copy FILE FILE: STEM -->
	readmeCopy = regexp.MustCompile(`^<!-- copy ([a-z0-9.-]+) ([a-z0-9.-]+): ([a-z0-9-]+) -->$`)
)

// TestReadmeIsTrue does what the README says in a folder of its own: saves its
// files, makes its edits, runs its commands and wants the output that it shows,
// where a line "…" stands for any lines.
func TestReadmeIsTrue(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir())
	files, commands := 0, 0
	lines := strings.Split(string(text), "\n")
	for i := 0; i < len(lines); i++ {
		if m := readmeEdit.FindStringSubmatch(lines[i]); m != nil {
			edit(t, m[1], m[2], m[3])
			continue
		}
		if m := readmeCopy.FindStringSubmatch(lines[i]); m != nil {
			for _, name := range m[1:3] {
				text, err := os.ReadFile(name)
				if err != nil {
					t.Fatal(err)
				}
				save(t, m[3]+filepath.Ext(name), string(text))
			}
			continue
		}
		if !strings.HasPrefix(lines[i], "```") {
			continue
		}
		opening := lines[i]
		var block []string
		for i++; i < len(lines) && lines[i] != "```"; i++ {
			block = append(block, lines[i])
		}
		if m := readmeFile.FindStringSubmatch(opening); m != nil {
			files++
			save(t, m[1], strings.Join(block, "\n")+"\n")
		}
		if opening == "```console" {
			commands++
			runShown(t, strings.TrimPrefix(block[0], "$ hingeline "), block[1:])
		}
	}
	if files < 2 || commands < 4 {
		t.Errorf("%d files and %d commands in the README: this test looks at nothing", files, commands)
	}
}

func save(t *testing.T, name, text string) {
	t.Helper()
	if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func edit(t *testing.T, name, old, new string) {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Count(text, []byte(old)) != 1 {
		t.Fatalf("%s has %q %d times", name, old, bytes.Count(text, []byte(old)))
	}
	save(t, name, strings.Replace(string(text), old, new, 1))
}

// runShown runs a command line and compares what it writes with what is shown.
func runShown(t *testing.T, line string, shown []string) {
	t.Helper()
	var out bytes.Buffer
	run(words(line), strings.NewReader(""), &out, &out)
	rest := out.String()
	for i, chunk := range strings.Split(strings.Join(shown, "\n"), "…\n") {
		chunk = strings.TrimSuffix(chunk, "…")
		at := strings.Index(rest, chunk)
		if at < 0 || i == 0 && at != 0 {
			t.Errorf("hingeline %s does not write\n%s\nbut\n%s", line, chunk, out.String())
			return
		}
		rest = rest[at+len(chunk):]
	}
	if shown[len(shown)-1] != "…" && strings.TrimSpace(rest) != "" {
		t.Errorf("hingeline %s goes on with\n%s", line, rest)
	}
}

// words splits a command line at spaces outside double quotes.
func words(line string) []string {
	var out []string
	for i, quoted := range strings.Split(line, `"`) {
		if i%2 == 1 {
			out = append(out, quoted)
			continue
		}
		out = append(out, strings.Fields(quoted)...)
	}
	return out
}
