// Package verifytest loads models and scripts for tests. It fails the test that asks for
// one which is not there or is refused, and says why as a pilot would be told.
//
// It judges nothing, and nothing outside tests uses it. Start at [Shipped].
package verifytest

import (
	"bytes"
	"os"
	"path/filepath"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/features"
	"example.com/hingeline/verify/script"
)

// Test is what is needed of a test: *testing.T, *testing.B and *rapid.T have it.
type Test interface {
	Helper()
	Fatalf(format string, args ...any)
}

// Model is the model of an airframe file, which must have no error. Every call reads it
// anew, so that a test may change it.
func Model[Text string | []byte](t Test, name string, text Text) *airframes.Model {
	t.Helper()
	m, problems := airframes.Load(name, []byte(text))
	if m == nil {
		var said bytes.Buffer
		diag.Write(&said, problems, diag.NewSource(name, []byte(text)))
		t.Fatalf("%s is refused:\n%s", name, &said)
	}
	return m
}

// Shipped is a model that comes with Hingeline: "bracken-20".
func Shipped(t Test, name string) *airframes.Model {
	t.Helper()
	return Model(t, name+".yaml", ShippedText(t, name))
}

// ShippedText is the airframe file of a model that comes with Hingeline.
func ShippedText(t Test, name string) []byte {
	t.Helper()
	text, ok := airframes.ReadShipped(name)
	if !ok {
		t.Fatalf("no model is called %s", name)
	}
	return text
}

// EveryShipped are all models that come with Hingeline.
func EveryShipped(t Test) (list []*airframes.Model) {
	t.Helper()
	for _, name := range airframes.Shipped() {
		list = append(list, Shipped(t, name))
	}
	return list
}

// Scripts are the scripts of a model that comes with Hingeline.
func Scripts(t Test, name string) []script.File {
	t.Helper()
	text, ok := features.Read(name)
	if !ok {
		t.Fatalf("%s has no script", name)
	}
	return []script.File{{Name: name + ".feature", Text: text}}
}

// Twelve is the large model that the benchmarks are measured on.
func Twelve(t Test) *airframes.Model {
	t.Helper()
	const name = "twelve.yaml"
	text, err := os.ReadFile(filepath.Join(root(t), "testdata", "benchmark", name))
	if err != nil {
		t.Fatalf("%v", err)
	}
	return Model(t, name, text)
}

// root is the directory of the repository; tests run in the directory of their package.
func root(t Test) string {
	t.Helper()
	at, err := os.Getwd()
	if err != nil {
		t.Fatalf("%v", err)
	}
	for {
		if _, err := os.Stat(filepath.Join(at, "go.mod")); err == nil {
			return at
		}
		up := filepath.Dir(at)
		if up == at {
			t.Fatalf("no directory above this test has a go.mod")
		}
		at = up
	}
}
