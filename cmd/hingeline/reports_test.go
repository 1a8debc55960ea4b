package main

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/features"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/report/jsonout"
)

// called runs hingeline and returns what it wrote and its exit status.
func called(args ...string) (stdout, stderr string, code int) {
	var out, messages bytes.Buffer
	code = run(args, strings.NewReader(""), &out, &messages)
	return out.String(), messages.String(), code
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	airframestest.Golden(t, filepath.Join("..", "..", "testdata", "reports", name), []byte(got), *update)
}

// The whole report of every built-in model, as a person sees it.
func TestReportsOfBuiltInModels(t *testing.T) {
	for _, name := range airframes.Shipped() {
		t.Run(name, func(t *testing.T) {
			report, messages, code := called("check", name)
			if code != statusYes || messages != "" {
				t.Errorf("exit status %d and messages %q, wanted %d and none", code, messages, statusYes)
			}
			golden(t, name+".txt", report)
		})
	}
}

type plantedFault struct{ name, model, from, to string }

// plantedFaults are single mistakes that people make, each in a built-in
// model's file. Every one must be caught.
var plantedFaults = []plantedFault{
	{"flap-not-reversed", "bracken-20", "when: rate switch is high}\n    reversed: true\n    sub_trim: 3%", "when: rate switch is high}\n    sub_trim: 3%"},
	{"elevator-horn-above", "bracken-20", "offset_mm: 22, horn: below", "offset_mm: 22, horn: above"},
	{"motor-not-safe", "bracken-20", "replace_with: -100%", "replace_with: 100%"},
}

func TestReportsOfPlantedFaults(t *testing.T) {
	for _, fault := range plantedFaults {
		t.Run(fault.name, func(t *testing.T) {
			home := plant(t, fault)
			report, messages, code := called("check", fault.model+".yaml")
			if code != statusNo {
				t.Errorf("exit status %d, wanted %d; messages:\n%s", code, statusNo, messages)
			}
			t.Chdir(home)
			golden(t, fault.name+".txt", report)
		})
	}
}

// plant writes a model with a fault, and its script, into a directory of its own,
// and goes there; home is where it came from.
func plant(t *testing.T, fault plantedFault) (home string) {
	t.Helper()
	text, _ := airframes.ReadShipped(fault.model)
	sentences, _ := features.Read(fault.model)
	bad := strings.Replace(string(text), fault.from, fault.to, 1)
	if bad == string(text) {
		t.Fatalf("%q is not in %s", fault.from, fault.model)
	}
	home, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir())
	for name, content := range map[string]string{
		fault.model + ".yaml":    strings.Replace(bad, "script: ../features/", "script: ", 1),
		fault.model + ".feature": string(sentences),
	} {
		if err := os.WriteFile(name, []byte(content), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return home
}

// What check, show and prove write as JSON keeps to the schemas that schema prints.
func TestJSONKeepsToThePrintedSchema(t *testing.T) {
	for _, c := range []struct {
		schema string
		of     []string
	}{
		{"--report", []string{"check", "--json"}},
		{"--position", []string{"show", "--json"}},
		{"--position", []string{"show", "--json", "--signal-lost"}},
		{"--proofs", []string{"prove", "--json"}},
		{"--position", []string{"show", "--json", "--speed", "16", "--set", "STICK=20%"}},
	} {
		text, _, _ := called("schema", c.schema)
		schema := compiled(t, text)
		for _, name := range airframes.Shipped() {
			args := append([]string{c.of[0], name}, c.of[1:]...)
			args[len(args)-1] = strings.Replace(args[len(args)-1], "STICK", firstStick(t, name), 1)
			out, messages, code := called(args...)
			if code != statusYes {
				t.Errorf("%q: exit status %d\n%s", args, code, messages)
				continue
			}
			doc, err := jsonschema.UnmarshalJSON(strings.NewReader(out))
			if err != nil {
				t.Fatal(err)
			}
			if err := schema.Validate(doc); err != nil {
				t.Errorf("%q: %v", args, err)
			}
		}
	}
	if text, _, _ := called("schema", "--report"); text != string(jsonout.ReportSchema) {
		t.Error("schema --report is not the report's schema")
	}
}

// firstStick is the first stick axis of a built-in model.
func firstStick(t *testing.T, name string) string {
	t.Helper()
	text, _ := airframes.ReadShipped(name)
	m, _ := airframes.Load(name, text)
	for i := range m.Setup.Controls {
		if c := &m.Setup.Controls[i]; c.Kind == mixcore.AxisControl {
			return c.Name
		}
	}
	t.Fatalf("%s has no stick", name)
	return ""
}

func compiled(t *testing.T, text string) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("schema.json", doc); err != nil {
		t.Fatal(err)
	}
	schema, err := c.Compile("schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return schema
}

// With --json a file that cannot be used is an answer too: that there is none.
func TestJSONOfProblemsKeepsToThePrintedSchema(t *testing.T) {
	text, _, _ := called("schema", "--problems")
	schema := compiled(t, text)
	broken := filepath.Join(t.TempDir(), "broken.yaml")
	if err := os.WriteFile(broken, []byte("hingeline: 1\nname: Broken\nchannels: {1: {mix: rol}}\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		args []string
		want int
	}{
		{[]string{"check", broken, "--json"}, statusBadInput},
		{[]string{"check", "no-such.yaml", "--json"}, statusBadInput},
		{[]string{"show", broken, "--json"}, statusBadInput},
		{[]string{"check", "bracken-20", "--only", "@no-such", "--json"}, statusNothingChecked},
		{[]string{"prove", broken, "--json"}, statusBadInput},
		{[]string{"prove", "bracken-20", "--only", "no-such", "--json"}, statusNothingChecked},
	} {
		out, messages, code := called(c.args...)
		if code != c.want || messages == "" {
			t.Errorf("%q: exit status %d and messages %q, wanted %d and some", c.args, code, messages, c.want)
		}
		doc, err := jsonschema.UnmarshalJSON(strings.NewReader(out))
		if err != nil {
			t.Errorf("%q: %v", c.args, err)
		} else if err := schema.Validate(doc); err != nil {
			t.Errorf("%q: %v", c.args, err)
		}
		if len(doc.(map[string]any)["problems"].([]any)) == 0 {
			t.Errorf("%q: no problems in %s", c.args, out)
		}
	}
	var to bytes.Buffer
	if code := run([]string{"check", broken, "--json"}, strings.NewReader(""), fullDisk{}, &to); code != statusNotGiven {
		t.Errorf("problems that cannot be written: exit status %d, wanted %d", code, statusNotGiven)
	}
}

// A result that cannot be written is never taken for an answer.
func TestResultThatCannotBeWrittenIsNoAnswer(t *testing.T) {
	for _, args := range [][]string{
		{"check", "bracken-20"}, {"check", "bracken-20", "--json"}, {"show", "bracken-20"},
		{"prove", "bracken-20"}, {"prove", "bracken-20", "--json"},
		{"schema"}, {"phrases"}, {"explain"}, {"version"},
		{"help"}, {"check", "--help"}, {"--version"}, {"completion", "bash"}, {"completion", "powershell"},
	} {
		var messages bytes.Buffer
		if code := run(args, strings.NewReader(""), fullDisk{}, &messages); code != statusNotGiven {
			t.Errorf("%q: exit status %d, wanted %d; messages:\n%s", args, code, statusNotGiven, &messages)
		}
		if !strings.Contains(messages.String(), "could not be written: no room") {
			t.Errorf("%q: messages are %q", args, &messages)
		}
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errors.New("no room") }
