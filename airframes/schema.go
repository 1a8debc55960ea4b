package airframes

import _ "embed"

//go:embed schema.json
var schema string

//go:embed reference.md
var reference string

// exampleName is the shipped model that is the shortest to copy.
const exampleName = "ousel-trainer"

// Schema is the JSON Schema (2020-12) of the file format, for editors that
// complete and check YAML by one. It knows the structure: keys, short forms,
// units, ranges, words. What takes the whole file to see, such as a name that
// nothing has or a linkage that locks, only Load sees.
func Schema() []byte { return []byte(schema) }

// Reference is the description of the file format, as Markdown.
func Reference() string { return reference }

// Example is a small airframe file to start from.
func Example() []byte {
	text, ok := ReadShipped(exampleName)
	if !ok {
		panic("airframes: the example " + exampleName + " is not embedded")
	}
	return text
}
