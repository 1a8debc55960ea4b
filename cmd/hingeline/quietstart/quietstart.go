// Package quietstart keeps a library that Hingeline uses from running another
// program before main: the runner of plain-language scripts calls "go env" in a
// variable initialiser, with whatever "go" stands first on PATH. A control check
// has no business starting strangers, and it takes longer than the check.
//
// The trick is the order of initialisation. Go initialises packages in the
// order of their import paths, each as soon as what it imports is ready. This
// package imports only os and its path sorts before the library's, so its
// variables are set first; it hides PATH, and main puts it back with [Restore].
// It must therefore never import anything else, and must not be moved to a path
// that sorts after "github.com".
package quietstart

import "os"

var path, hadPath = hide()

func hide() (string, bool) {
	path, ok := os.LookupEnv("PATH")
	if ok {
		os.Unsetenv("PATH")
	}
	return path, ok
}

// Restore puts PATH back. It is called first thing in main.
func Restore() {
	if hadPath {
		os.Setenv("PATH", path)
	}
}
