package main

import (
	"os/exec"
	"slices"
	"strings"
	"testing"
)

// Rooms in the order of the house: a package may import packages of its own
// room and of rooms before it, never of rooms after it.
var rooms = []string{"mixcore", "airframes", "features", "verify", "cmd"}

// alone are the outside libraries that only the packages named may import, tests
// aside.
var alone = map[string][]string{
	"github.com/cucumber/godog":    {"verify/script"},
	"github.com/cucumber/gherkin/": {"verify/script"},
	"github.com/cucumber/messages": {"verify/script", "verify/report/messages"},
	"gopkg.in/yaml.v3":             {"airframes"},
	"codeberg.org/go-pdf/fpdf":     {"verify/report/pdf"},
	"golang.org/x/image/":          {"verify/report/pdf"},
	"golang.org/x/crypto/":         {"verify/signoff"},
	"gonum.org/v1/gonum":           {"verify/fit"},
	"github.com/coder/websocket":   {"verify/serve"},
	"github.com/spf13/cobra":       {"cmd/hingeline"},
	"github.com/fsnotify/fsnotify": {"cmd/hingeline"},
	"golang.org/x/term":            {"cmd/hingeline"},
}

// drawings is the one room among the renderers that others draw with.
const drawings = "verify/report/figure"

// levels are the packages about mistakes in their order, with what they stand on before
// them: none imports one of a later level.
var levels = [][]string{
	{"verify/prove"},
	{"verify/beside"},
	{"verify/faults/mistake", "verify/faults/sight", "verify/faults/same", "verify/faults/cover"},
	{"verify/faults/table"},
	{"verify/script"},
	{"verify/sheet", "verify/resolved"},
	{"verify/sentence"},
	{"verify/compare", "verify/fit"},
	{"verify/faults/walk"},
	{"verify/faults/cause"},
	{"verify/faults"},
	{"verify/bench"},
	{"verify/signoff"},
	{"verify"},
	{"verify/serve"},
	{"cmd/hingeline"},
}

// level is the index of a package's level, -1 of one that has none.
func level(path string) int {
	return slices.IndexFunc(levels, func(packages []string) bool { return slices.Contains(packages, path) })
}

const module = "example.com/hingeline/"

func TestImportsPointOneWay(t *testing.T) {
	listed, err := exec.Command("go", "list", "-f", `{{.ImportPath}} {{join .Imports " "}}`, module+"...").Output()
	if err != nil {
		t.Fatal(err)
	}
	var listedPaths []string
	for _, line := range strings.Split(strings.TrimSpace(string(listed)), "\n") {
		fields := strings.Fields(line)
		from := strings.TrimPrefix(fields[0], module)
		listedPaths = append(listedPaths, from)
		for _, imported := range fields[1:] {
			for _, complaint := range wrongImport(from, imported) {
				t.Errorf("%s imports %s: %s", from, imported, complaint)
			}
		}
	}
	for _, packages := range levels {
		for _, path := range packages {
			if !slices.Contains(listedPaths, path) {
				t.Errorf("there is no package %s", path)
			}
		}
	}
	if len(listedPaths) < 10 {
		t.Errorf("only %d packages listed: this test looks at nothing", len(listedPaths))
	}
}

func wrongImport(from, imported string) (complaints []string) {
	for prefix, owners := range alone {
		if strings.HasPrefix(imported, prefix) && !slices.Contains(owners, from) {
			complaints = append(complaints, "only "+strings.Join(owners, " and ")+" may")
		}
	}
	to, ours := strings.CutPrefix(imported, module)
	switch {
	case !ours:
		if room(from) == 0 && strings.Contains(imported, ".") {
			complaints = append(complaints, "mixcore uses the standard library only")
		}
		return complaints
	case room(to) > room(from):
		complaints = append(complaints, "it is a room further on")
	}
	if level(from) >= 0 && level(to) > level(from) {
		complaints = append(complaints, "it stands on it")
	}
	if from == "verify/faults/cover" {
		complaints = append(complaints, "it covers anything, and knows no modelling words")
	}
	if renderer(from) && !renderer(to) && !strings.HasPrefix(to, "verify/result") {
		complaints = append(complaints, "a renderer knows verify/result only")
	}
	if renderer(from) && strings.HasPrefix(to, "verify/report/") && !strings.HasPrefix(to, from) && to != drawings {
		complaints = append(complaints, "renderers do not know each other")
	}
	return complaints
}

func renderer(path string) bool { return strings.HasPrefix(path, "verify/report/") }

func room(path string) int {
	for i, name := range rooms {
		if path == name || strings.HasPrefix(path, name+"/") {
			return i
		}
	}
	return len(rooms)
}

func TestWrongImportFindsPlantedOnes(t *testing.T) {
	for _, c := range [][2]string{
		{"mixcore", "gopkg.in/yaml.v3"},
		{"mixcore", module + "airframes"},
		{"airframes", module + "verify/result"},
		{"verify/phrase", "github.com/cucumber/godog"},
		{"verify/report/terminal", module + "mixcore"},
		{"verify/report/terminal", module + "verify/report/jsonout"},
		{"verify/result", module + "cmd/hingeline"},
		{"verify/faults/mistake", module + "verify/script"},
		{"verify/faults/table", module + "verify/faults/walk"},
		{"verify/faults/walk", module + "verify/faults/cause"},
		{"verify/prove", module + "verify/faults/same"},
		{"verify/faults/cause", module + "verify"},
		{"verify/faults/cover", module + "mixcore"},
		{"verify/report/terminal", module + "verify/faults/mistake"},
		{"verify/report/html", module + "verify/report/pdf"},
		{"verify/report/figure", module + "verify/report/html"},
		{"verify/report/messages", "github.com/cucumber/gherkin/go/v42"},
		{"verify/report/html", "codeberg.org/go-pdf/fpdf"},
	} {
		if wrongImport(c[0], c[1]) == nil {
			t.Errorf("%s may import %s", c[0], c[1])
		}
	}
	for _, c := range [][2]string{
		{"mixcore", module + "mixcore/linkage"},
		{"verify/script", "github.com/cucumber/godog"},
		{"verify/report/terminal", module + "verify/result"},
		{"cmd/hingeline", module + "verify"},
		{"airframes", "gopkg.in/yaml.v3"},
		{"verify/faults/cause", module + "verify/faults/walk"},
		{"verify/faults/same", module + "verify/faults/sight"},
		{"verify/report/html", module + "verify/report/figure"},
		{"verify/report/messages", "github.com/cucumber/messages/go/v34"},
	} {
		if got := wrongImport(c[0], c[1]); got != nil {
			t.Errorf("%s may not import %s: %v", c[0], c[1], got)
		}
	}
}
