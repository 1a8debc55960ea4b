// Package features holds the scripts of the shipped models: for each model in
// package airframes a Gherkin file of the same name that says, in plain
// sentences, what every surface of it should do.
//
// It holds text and nothing else; package verify/script reads it. Start at
// [Names].
package features

import (
	"embed"
	"slices"
	"strings"
)

//go:embed *.feature
var scripts embed.FS

const suffix = ".feature"

// Names lists the scripts in alphabetical order, without ".feature".
func Names() []string {
	entries, err := scripts.ReadDir(".")
	if err != nil {
		panic("features: the embedded scripts cannot be listed: " + err.Error())
	}
	names := make([]string, 0, len(entries))
	for _, entry := range entries {
		names = append(names, strings.TrimSuffix(entry.Name(), suffix))
	}
	slices.Sort(names)
	return names
}

// Read is the text of a script by its name, with or without ".feature"; false
// if none is called that.
func Read(name string) ([]byte, bool) {
	text, err := scripts.ReadFile(strings.TrimSuffix(name, suffix) + suffix)
	return text, err == nil
}
