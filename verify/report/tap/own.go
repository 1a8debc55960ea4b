package tap

import (
	"bytes"
)

// IsReport says whether a file is one that Render wrote, of whatever version.
func IsReport(file []byte) bool {
	head, rest, _ := bytes.Cut(file, []byte("\n"))
	plan, rest, _ := bytes.Cut(rest, []byte("\n"))
	return string(head) == "TAP version 14" && bytes.HasPrefix(plan, []byte("1..")) && bytes.HasPrefix(rest, []byte("# Hingeline "))
}
