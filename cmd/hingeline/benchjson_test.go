package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

// What bench --json really writes keeps to the schema that is printed: of walks that are
// right, that differ and are decided, that are measured, skipped, left open, or never begun.
func TestBenchJSONKeepsToThePrintedSchema(t *testing.T) {
	text, _, _ := called("schema", "--bench")
	schema := compiled(t, text)
	t.Chdir(t.TempDir())
	begin := "yes\nyes\nyes\n"
	for _, c := range []struct {
		name, args, answers string
		verdict             string
		status              int
	}{
		{"right", "", begin + strings.Repeat("y\n", 6), "as expected", statusYes},
		{"finished", "", begin + "y\n1 other way\ny\ny\ny\ny\nfinish\n", "differs", statusNo},
		{"decided", "", begin + "y\n1 other way\ny\ny\ny\ny\ny\ny\n", "differs", statusNo},
		{"measured", "--ruler", begin + "y\n1 22 left\n1 before 1 right\ny\n2 3 up\ny\n", "differs", statusNo},
		{"skipped", "", begin + "s the wind is too strong\nskip\nno time\ny\ny\n1 cannot say\ny\n", "not finished", statusNo},
		{"open", "--no-picture", begin, "nothing seen", statusNothingChecked},
	} {
		file := filepath.Join(".", c.name+".txt")
		if err := os.WriteFile(file, []byte(c.answers), 0o644); err != nil {
			t.Fatal(err)
		}
		args := append([]string{"bench", "pellin-park", "--shortest", "--json", "--answers", file}, strings.Fields(c.args)...)
		out, messages, code := called(args...)
		doc, err := jsonschema.UnmarshalJSON(strings.NewReader(out))
		if err != nil {
			t.Errorf("%s: exit status %d: %v\n%s%s", c.name, code, err, messages, out)
			continue
		}
		if err := schema.Validate(doc); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		if got := doc.(map[string]any)["verdict"]; got != c.verdict || code != c.status {
			t.Errorf("%s: %v and exit status %d, wanted %s and %d\n%s", c.name, got, code, c.verdict, c.status, messages)
		}
	}
}
