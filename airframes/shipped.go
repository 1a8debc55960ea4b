package airframes

import (
	"embed"
	"slices"
	"strings"
)

//go:embed *.yaml
var shipped embed.FS

// Shipped names the models that come with Hingeline, in alphabetical order and
// without ".yaml".
func Shipped() []string {
	entries, err := shipped.ReadDir(".")
	if err != nil {
		panic("airframes: the embedded models cannot be listed: " + err.Error())
	}
	names := make([]string, 0, len(entries))
	for _, entry := range entries {
		names = append(names, strings.TrimSuffix(entry.Name(), shippedSuffix))
	}
	slices.Sort(names)
	return names
}

// ReadShipped is the text of a shipped model by its name, with or without
// ".yaml"; false if none is called that.
func ReadShipped(name string) ([]byte, bool) {
	text, err := shipped.ReadFile(strings.TrimSuffix(name, shippedSuffix) + shippedSuffix)
	return text, err == nil
}

const shippedSuffix = ".yaml"
