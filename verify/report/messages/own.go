package messages

import (
	"bytes"
	"encoding/json"
)

// IsReport says whether a file is one that Render wrote, of whatever version.
func IsReport(file []byte) bool {
	line, _, _ := bytes.Cut(file, []byte("\n"))
	var first struct {
		Meta *struct{ Implementation struct{ Name string } }
	}
	return json.Unmarshal(line, &first) == nil && first.Meta != nil && first.Meta.Implementation.Name == implementation
}

const implementation = "hingeline"
